//! A published round after a shock: as little as possible changes.

use league::ids::PlayerId;
use league::pairing::round::changes::{Assignment, compare_rounds};
use league::pairing::round::repair::{self, Disruption};
use league::pairing::verify;
use league::pairing::{
    AlternativeCost, Game, NightSet, Pair, Proposal, ProposeError, Task, TaskFault, propose,
};
use league::points::LeaguePoints;

use crate::season::{Chance, met, night, pair, player, proven, task};

struct Repaired {
    task: Task,
    proposal: Proposal,
    /// Games that were not published.
    changed: Vec<Pair>,
}

/// The round without those who are out, in the hall of `task`.
fn repair(task: &Task, published: &[Game], out: &[PlayerId]) -> Result<Repaired, ProposeError> {
    let none = NightSet::from_bits(0);
    let shock = Disruption {
        nights: task.nights.clone(),
        availabilities: out.iter().map(|&player| (player, none)).collect(),
        ..Disruption::default()
    };
    solve(repair::repair_task(task, published, shock), published)
}

fn solve(task: Task, published: &[Game]) -> Result<Repaired, ProposeError> {
    let proposal = propose(&task)?;
    let before = pairs(published);
    let mut changed = pairs(&proposal.games);
    changed.retain(|pair| !before.contains(pair));
    Ok(Repaired {
        task,
        proposal,
        changed,
    })
}

fn pairs(games: &[Game]) -> Vec<Pair> {
    games.iter().filter_map(Game::pair).collect()
}

#[test]
fn the_opponent_of_someone_ill_meets_who_sat_out_and_nobody_else_is_moved() {
    let task = task(9);
    let before = proven(&task);
    let out = before.games[0].attacker;
    let repaired = repair(&task, &before.games, &[out]).unwrap();
    assert_eq!(verify(&repaired.task, &repaired.proposal), Ok(()));
    assert_eq!(
        repaired.changed,
        [Pair::new(before.games[0].defender, before.byes[0]).unwrap()]
    );
    for game in &before.games[1..] {
        assert!(
            repaired.proposal.games.contains(game),
            "same night, table and roles"
        );
    }
}

#[test]
fn a_drop_from_an_even_field_changes_no_game() {
    let task = task(8);
    let before = proven(&task);
    let repaired = repair(&task, &before.games, &[before.games[2].defender]).unwrap();
    assert_eq!(repaired.changed, []);
    assert_eq!(repaired.proposal.byes, [before.games[2].attacker]);
}

/// Every set of games is tried: none keeps more of the published ones.
#[test]
fn no_repair_changes_fewer_games() {
    for seed in 0..40 {
        let mut chance = Chance::new(seed);
        let mut task = task(9);
        for contender in &mut task.contenders {
            contender.score = LeaguePoints::new(chance.below(4) as i32);
        }
        for _ in 0..20 {
            let (a, b) = (1 + chance.below(9), 1 + chance.below(9));
            if a != b && !task.forbidden.contains(&pair(a, b)) {
                task.forbidden.push(pair(a, b));
            }
        }
        let Ok(before) = propose(&task) else {
            continue;
        };
        if before.byes.len() > 1 {
            continue;
        }
        let out = player(1 + chance.below(9));
        let repaired = repair(&task, &before.games, &[out]).unwrap();
        assert_eq!(verify(&repaired.task, &repaired.proposal), Ok(()));
        let kept = pairs(&before.games);
        let players: Vec<usize> = (1..=9).filter(|&number| player(number) != out).collect();
        let best = fewest_changes(&repaired.task, &kept, &players);
        let changed = repaired.changed.len();
        assert_eq!((repaired.proposal.byes.len(), changed), best, "seed {seed}");
    }
}

/// Players left out and games changed, the fewest in that order.
fn fewest_changes(task: &Task, kept: &[Pair], players: &[usize]) -> (usize, usize) {
    let Some((&a, rest)) = players.split_first() else {
        return (0, 0);
    };
    let alone = fewest_changes(task, kept, rest);
    let paired = rest
        .iter()
        .filter(|&&b| !task.forbidden.contains(&pair(a, b)))
        .map(|&b| {
            let left: Vec<usize> = rest.iter().copied().filter(|&c| c != b).collect();
            let (out, changed) = fewest_changes(task, kept, &left);
            (out, changed + usize::from(!kept.contains(&pair(a, b))))
        });
    paired.chain([(alone.0 + 1, alone.1)]).min().unwrap()
}

#[test]
fn a_lost_night_moves_only_the_games_that_were_on_it() {
    let mut task = task(6);
    task.nights = vec![night(0, 2), night(1, 3)];
    let before = proven(&task);
    task.nights.remove(0);
    let repaired = repair(&task, &before.games, &[]).unwrap();
    assert_eq!(repaired.changed, []);
    for game in before.games.iter().filter(|game| game.night.number() == 1) {
        assert!(repaired.proposal.games.contains(game));
    }
}

#[test]
fn a_repair_with_nobody_left_is_refused() {
    let mut task = task(2);
    met(&mut task, &[]);
    let before = proven(&task);
    let refused = repair(&task, &before.games, &[player(1)]);
    assert_eq!(
        refused.err(),
        Some(ProposeError::InvalidTask(vec![TaskFault::TooFew(1)]))
    );
}

#[test]
fn a_reported_game_stays_at_its_table_even_when_its_night_is_lost() {
    let mut task = task(8);
    task.nights = vec![night(0, 2), night(1, 2)];
    let before = proven(&task);
    let on = |number: u8| {
        before
            .games
            .iter()
            .find(move |g| g.night.number() == number)
    };
    let (played, lost) = (*on(0).unwrap(), night(0, 2).key);
    let shock = Disruption {
        nights: vec![night(1, 4)],
        reported: vec![played],
        ..Disruption::default()
    };
    let repaired = solve(
        repair::repair_task(&task, &before.games, shock),
        &before.games,
    )
    .unwrap();
    let proposal = &repaired.proposal;
    assert_eq!(verify(&repaired.task, proposal), Ok(()));
    assert!(proposal.games.contains(&played));
    let on_lost = proposal.games.iter().filter(|game| game.night == lost);
    assert_eq!(on_lost.count(), 1, "only what was played there");
    assert_eq!(repaired.changed, []);
    let at = proposal.games.iter().position(|game| *game == played);
    assert_eq!(
        proposal.reasons[at.unwrap()].alternative,
        AlternativeCost::Fixed
    );
    let moved = compare_rounds(
        (&before.games, &before.byes),
        (&proposal.games, &proposal.byes),
    );
    assert_eq!(
        moved.len(),
        2,
        "the other game of the lost night: {moved:?}"
    );
}

#[test]
fn somebody_who_comes_after_all_meets_who_sat_out() {
    let mut task = task(7);
    let late = task.contenders.remove(6);
    task.contenders.remove(5);
    let before = proven(&task);
    let shock = Disruption {
        nights: task.nights.clone(),
        newcomers: vec![late.clone()],
        ..Disruption::default()
    };
    let repaired = solve(
        repair::repair_task(&task, &before.games, shock),
        &before.games,
    )
    .unwrap();
    let proposal = &repaired.proposal;
    assert_eq!(
        repaired.changed,
        [Pair::new(before.byes[0], late.player).unwrap()]
    );
    let parts = compare_rounds(
        (&before.games, &before.byes),
        (&proposal.games, &proposal.byes),
    );
    let was: Vec<Assignment> = parts.iter().map(|change| change.before).collect();
    assert_eq!(was.len(), 2);
    assert!(was.contains(&Assignment::NotPlaying) && was.contains(&Assignment::Bye));
}
