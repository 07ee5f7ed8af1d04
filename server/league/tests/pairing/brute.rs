//! Against exhaustive search: every way to pair up to ten players is tried.

use league::pairing::{Cost, Household, Level, NightSet, ProposeError, Task, Wish, propose};
use league::points::LeaguePoints;

use crate::season::{Chance, contender, met, night, pair, proven, task};

#[test]
fn no_pairing_of_up_to_ten_players_gives_up_less() {
    for seed in 0..300 {
        let task = scrambled(seed);
        let best = exhaustive(&task).unwrap();
        if best[0] == task.contenders.len() as u64 {
            assert_eq!(propose(&task), Err(ProposeError::NoGame));
        } else {
            assert_eq!(compared(&proven(&task).cost), best, "seed {seed}");
        }
    }
}

/// A task with crowded scores, meetings, two nights, a household, a pin and a prohibition.
fn scrambled(seed: u64) -> Task {
    let mut chance = Chance::new(seed);
    let players = 2 + chance.below(9);
    let mut task = task(players);
    let spread = 1 + chance.below(6);
    for contender in &mut task.contenders {
        contender.score = LeaguePoints::new(chance.below(spread) as i32);
        contender.byes = chance.below(2) as u8;
        contender.spare = chance.below(6) == 0;
        contender.nights = NightSet::from_bits([1, 2, 3, 3, 3][chance.below(5)]);
    }
    for _ in 0..chance.below(2 * players) {
        let (a, b) = (1 + chance.below(players), 1 + chance.below(players));
        if a != b {
            met(&mut task, &[(a, b)]);
        }
    }
    if players > 4 {
        task.contenders[0].household = Some(Household(1));
        task.contenders[1].household = Some(Household(1));
        task.forbidden.push(pair(3, 4));
    }
    let tables = players as u16 / 4 + 1;
    task.nights = vec![night(0, tables), night(1, tables)];
    task
}

/// Sitting out, rematches, byes and score differences: the levels whose meaning is repeated here.
fn compared(cost: &Cost) -> Vec<u64> {
    let wishes = [
        Wish::NoRematch,
        Wish::NoSecondBye,
        Wish::SpareSitsOut,
        Wish::ByeToFewestPoints,
        Wish::CloseScores,
    ];
    let levels = [Level::SittingOut]
        .into_iter()
        .chain(wishes.map(Level::Wish));
    levels.map(|level| cost.amount(level)).collect()
}

fn exhaustive(task: &Task) -> Option<Vec<u64>> {
    let mut best = None;
    try_all(task, 0, &mut Vec::new(), &mut vec![0; 6], &mut best);
    best
}

fn try_all(
    task: &Task,
    used: u32,
    games: &mut Vec<NightSet>,
    cost: &mut Vec<u64>,
    best: &mut Option<Vec<u64>>,
) {
    let Some(a) = (0..task.contenders.len()).find(|at| used & 1 << at == 0) else {
        if fits(task, games) && best.as_ref().is_none_or(|best| *cost < *best) {
            *best = Some(cost.clone());
        }
        return;
    };
    let one = &task.contenders[a];
    let fewest = task.contenders.iter().map(|c| c.score).min().unwrap();
    let bye = [
        1,
        0,
        u64::from(one.byes),
        u64::from(!one.spare),
        (one.score - fewest).get() as u64,
        0,
    ];
    add(cost, bye);
    try_all(task, used | 1 << a, games, cost, best);
    take(cost, bye);
    for b in (a + 1..task.contenders.len()).filter(|at| used & 1 << at == 0) {
        let other = &task.contenders[b];
        let nights = one.nights.intersection(other.nights);
        let both = pair(a + 1, b + 1);
        let housemates = one.household.is_some() && one.household == other.household;
        if nights.is_empty() || housemates || task.forbidden.contains(&both) {
            continue;
        }
        let rematches = task
            .history
            .iter()
            .filter(|meeting| meeting.pair == both)
            .count() as u64;
        let gap = (one.score - other.score).get().unsigned_abs();
        let game = [0, rematches, 0, 0, 0, u64::from(gap * gap)];
        add(cost, game);
        games.push(nights);
        try_all(task, used | 1 << a | 1 << b, games, cost, best);
        games.pop();
        take(cost, game);
    }
}

/// Games are put on nights in every way.
fn fits(task: &Task, games: &[NightSet]) -> bool {
    let tables: Vec<usize> = task.nights.iter().map(|night| night.tables.len()).collect();
    (0..1_u32 << games.len()).any(|choice| {
        let on =
            |night: usize| (0..games.len()).filter(move |g| (choice >> g & 1) as usize == night);
        let can = |night: usize| on(night).all(|g| games[g].bits() & 1 << night != 0);
        (0..2).all(|night| on(night).count() <= tables[night] && can(night))
    })
}

fn add(cost: &mut [u64], amounts: [u64; 6]) {
    cost.iter_mut()
        .zip(amounts)
        .for_each(|(sum, amount)| *sum += amount);
}

fn take(cost: &mut [u64], amounts: [u64; 6]) {
    cost.iter_mut()
        .zip(amounts)
        .for_each(|(sum, amount)| *sum -= amount);
}

#[test]
fn a_constant_added_to_every_score_changes_nothing() {
    let task = scrambled(5);
    let mut raised = task.clone();
    for contender in &mut raised.contenders {
        contender.score += LeaguePoints::new(1000);
    }
    let (before, after) = (proven(&task), proven(&raised));
    assert_eq!((before.games, before.cost), (after.games, after.cost));
    assert_eq!(contender(1).player, task.contenders[0].player);
}
