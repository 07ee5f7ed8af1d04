//! Seasons to measure on: some rounds of greedy pairing, then a task for the next.

use league::ids::PlayerId;
use league::name::Name;
use league::pairing::{
    Contender, Draw, Float, Meeting, Night, NightKey, NightSet, Pair, RoleHistory, TableNo, Task,
    Wish, Wishes,
};
use league::points::LeaguePoints;
use league::week::WeekNo;
use uuid::Uuid;

/// Numbers from a fixed sequence (xorshift, Marsaglia 2003).
pub struct Chance(u64);

#[allow(dead_code, reason = "each measuring program uses its part")]
impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn unit(&mut self) -> f64 {
        self.below(1 << 30) as f64 / f64::from(1 << 30)
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for at in (1..list.len()).rev() {
            list.swap(at, self.below(at + 1));
        }
    }
    pub fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 33) as usize % limit
    }
}

#[allow(dead_code, reason = "each measuring program uses its part")]
/// A task for the fifth round. `wdl` scores 2, 1 or 0 a round; `bp` scores 0 to 20.
pub fn after_four_rounds(players: usize, profile: &str) -> Task {
    after(4, players, profile)
}

#[allow(dead_code, reason = "each measuring program uses its part")]
/// A task for the round after so many.
pub fn after(rounds: u8, players: usize, profile: &str) -> Task {
    let mut chance = Chance(0x9e37_79b9_7f4a_7c15 ^ players as u64);
    let mut task = first_round(players, &mut chance);
    for week in 1..=rounds {
        round(&mut task, profile, week, &mut chance);
    }
    task.week = WeekNo::new(rounds + 1).unwrap();
    task
}

/// What makes a season hard to pair.
#[allow(dead_code, reason = "each measuring program uses its part")]
pub const HARD: [&str; 6] = [
    "after one round",
    "after fifteen rounds",
    "one club of a third",
    "everyone equal",
    "two nights",
    "every wish",
];

#[allow(dead_code, reason = "each measuring program uses its part")]
/// A hard season of that name, battle points otherwise.
pub fn hard(name: &str, players: usize) -> Task {
    let mut task = match name {
        "after one round" => after(1, players, "bp"),
        "after fifteen rounds" => after(15, players, "bp"),
        _ => after_four_rounds(players, "bp"),
    };
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        match name {
            "one club of a third" => {
                contender.club = Name::new("Club").ok().filter(|_| at % 3 == 0);
            }
            "everyone equal" => contender.score = LeaguePoints::ZERO,
            "two nights" => contender.nights = NightSet::from_bits([1, 2, 3][at % 3]),
            _ => {}
        }
    }
    match name {
        "one club of a third" => {
            let mut order = task.wishes.order().to_vec();
            order.insert(2, Wish::ClubsApart);
            task.wishes = Wishes::new(order, 9).unwrap();
        }
        "two nights" => {
            let mut other = task.nights[0].clone();
            other.key = NightKey::new(1).unwrap();
            task.nights.push(other);
        }
        "every wish" => task.wishes = Wishes::new(Wishes::default().order().to_vec(), 9).unwrap(),
        _ => {}
    }
    task
}

/// A task for the first round, with eight factions.
pub fn first_round(players: usize, chance: &mut Chance) -> Task {
    let contender = |at: usize, faction: usize| Contender {
        player: PlayerId(Uuid::from_u128(at as u128 + 1)),
        score: LeaguePoints::ZERO,
        nights: NightSet::ALL,
        household: None,
        club: None,
        faction: Name::new(&format!("Faction {faction}")).ok(),
        byes: 0,
        spare: false,
        floats: [None, None],
        roles: RoleHistory::default(),
        tables: Vec::new(),
    };
    Task {
        week: WeekNo::FIRST,
        contenders: (0..players)
            .map(|at| contender(at, chance.below(8)))
            .collect(),
        history: Vec::new(),
        nights: vec![Night {
            key: NightKey::new(0).unwrap(),
            tables: (1..=players as u16 / 2 + 1).map(TableNo).collect(),
        }],
        wishes: Wishes::new(
            vec![
                Wish::NoRematch,
                Wish::CloseScores,
                Wish::FactionsApart,
                Wish::NoRepeatedFloat,
            ],
            9,
        )
        .unwrap(),
        pins: Vec::new(),
        forbidden: Vec::new(),
        fixed: Vec::new(),
        allowed: None,
        published: Vec::new(),
        rounds_left: 0,
        draw: Draw([5; 32]),
    }
}

#[allow(dead_code, reason = "each measuring program uses its part")]
/// Pairs neighbours in order of score who have not met, and draws results.
fn round(task: &mut Task, profile: &str, week: u8, chance: &mut Chance) {
    let mut order: Vec<usize> = (0..task.contenders.len()).collect();
    chance.shuffle(&mut order);
    order.sort_by_key(|&at| -task.contenders[at].score.get());
    let met: std::collections::HashSet<Pair> = task.history.iter().map(|m| m.pair).collect();
    while order.len() > 1 {
        let a = order.remove(0);
        let fresh = |&b: &usize| !met.contains(&pair(task, a, b));
        let at = order.iter().take(50).position(fresh).unwrap_or(0);
        let b = order.remove(at);
        task.history.push(Meeting {
            pair: pair(task, a, b),
            week: WeekNo::new(week).unwrap(),
        });
        let points = match profile {
            "wdl" => [(2, 0), (0, 2), (1, 1)][chance.below(3)],
            _ => {
                let own = chance.below(21) as i32;
                (own, 20 - own)
            }
        };
        let gap = task.contenders[a].score.cmp(&task.contenders[b].score);
        for (player, points, gap) in [(a, points.0, gap), (b, points.1, gap.reverse())] {
            let contender = &mut task.contenders[player];
            contender.score += LeaguePoints::new(points);
            let float = match gap {
                std::cmp::Ordering::Less => Some(Float::Up),
                std::cmp::Ordering::Equal => None,
                std::cmp::Ordering::Greater => Some(Float::Down),
            };
            contender.floats = [float, contender.floats[0]];
        }
    }
}

#[allow(dead_code, reason = "each measuring program uses its part")]
fn pair(task: &Task, a: usize, b: usize) -> Pair {
    Pair::new(task.contenders[a].player, task.contenders[b].player).unwrap()
}
