//! A season played out: proposals are published, games get results, facts of players follow.

use league::ids::PlayerId;
use league::pairing::verify;
use league::pairing::{
    Contender, Draw, Float, Game, Meeting, Night, NightKey, NightSet, Pair, Proposal, RoleHistory,
    TableNo, Task, Wishes, propose,
};
use league::points::LeaguePoints;
use league::side::GameRole;
use league::week::WeekNo;
use uuid::Uuid;

pub fn player(number: usize) -> PlayerId {
    PlayerId(Uuid::from_u128(0x1000 + number as u128))
}

pub fn pair(a: usize, b: usize) -> Pair {
    Pair::new(player(a), player(b)).unwrap()
}

pub fn night(number: u8, tables: u16) -> Night {
    let tables = (1..=tables).map(TableNo).collect();
    Night {
        key: NightKey::new(number).unwrap(),
        tables,
    }
}

pub fn contender(number: usize) -> Contender {
    Contender {
        player: player(number),
        score: LeaguePoints::ZERO,
        nights: NightSet::ALL,
        household: None,
        club: None,
        faction: None,
        byes: 0,
        spare: false,
        floats: [None, None],
        roles: RoleHistory::default(),
        tables: Vec::new(),
    }
}

/// A first round of so many players on one night with a table for everyone.
pub fn task(players: usize) -> Task {
    Task {
        week: WeekNo::FIRST,
        contenders: (1..=players).map(contender).collect(),
        history: Vec::new(),
        nights: vec![night(0, players as u16)],
        wishes: Wishes::default(),
        pins: Vec::new(),
        forbidden: Vec::new(),
        fixed: Vec::new(),
        allowed: None,
        published: Vec::new(),
        rounds_left: 0,
        draw: Draw([7; 32]),
    }
}

pub fn met(task: &mut Task, games: &[(usize, usize)]) {
    let meetings = games.iter().map(|&(a, b)| Meeting {
        pair: pair(a, b),
        week: task.week,
    });
    task.history.extend(meetings.collect::<Vec<_>>());
}

pub fn pairs(proposal: &Proposal) -> Vec<Pair> {
    let mut pairs: Vec<Pair> = proposal
        .games
        .iter()
        .map(|game| game.pair().unwrap())
        .collect();
    pairs.sort();
    pairs
}

/// Proposes, and checks the proof before anything else may be said about it.
pub fn proven(task: &Task) -> Proposal {
    let proposal = propose(task).unwrap();
    assert_eq!(verify(task, &proposal), Ok(()));
    proposal
}

/// Plays a proposal: the result of a game is drawn from `chance`.
pub fn play(task: &mut Task, proposal: &Proposal, chance: &mut Chance) {
    let before = task.contenders.clone();
    let score = |id: PlayerId| before.iter().find(|c| c.player == id).unwrap().score;
    for game in &proposal.games {
        task.history.push(Meeting {
            pair: game.pair().unwrap(),
            week: task.week,
        });
        let result = chance.below(5);
        let points = if result == 0 {
            (1, 1)
        } else if result < 3 {
            (2, 0)
        } else {
            (0, 2)
        };
        let (attacker, defender) = (game.attacker, game.defender);
        let gap = score(attacker).cmp(&score(defender));
        let float = |gap: std::cmp::Ordering| match gap {
            std::cmp::Ordering::Greater => Some(Float::Down),
            std::cmp::Ordering::Less => Some(Float::Up),
            std::cmp::Ordering::Equal => None,
        };
        played(
            task,
            attacker,
            game,
            points.0,
            float(gap),
            GameRole::Attacker,
        );
        played(
            task,
            defender,
            game,
            points.1,
            float(gap.reverse()),
            GameRole::Defender,
        );
    }
    for &id in &proposal.byes {
        let out = find(task, id);
        out.score += LeaguePoints::new(2);
        out.byes += 1;
        out.floats = [Some(Float::Down), out.floats[0]];
    }
    task.week = task.week.next().unwrap();
    task.rounds_left = task.rounds_left.saturating_sub(1);
    let round = task.week.number();
    task.draw = Draw([round; 32]);
}

fn find(task: &mut Task, id: PlayerId) -> &mut Contender {
    task.contenders.iter_mut().find(|c| c.player == id).unwrap()
}

fn played(
    task: &mut Task,
    id: PlayerId,
    game: &Game,
    points: i32,
    float: Option<Float>,
    role: GameRole,
) {
    let player = find(task, id);
    player.score += LeaguePoints::new(points);
    player.floats = [float, player.floats[0]];
    player.tables.push(game.table);
    match role {
        GameRole::Attacker => player.roles.attacker += 1,
        GameRole::Defender => player.roles.defender += 1,
    }
    player.roles.streak = match player.roles.streak {
        Some((last, times)) if last == role => Some((last, times + 1)),
        _ => Some((role, 1)),
    };
}

/// Pseudo-random numbers for tests (xorshift, Marsaglia 2003).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        ((self.0 >> 33) as usize) % limit
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for at in (1..list.len()).rev() {
            list.swap(at, self.below(at + 1));
        }
    }
}
