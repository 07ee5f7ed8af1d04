//! Nights, tables, pins and prohibitions.

use std::collections::BTreeSet;

use league::pairing::{
    AlternativeCost, Household, Level, NightSet, ProposeError, TaskFault, Wish, propose,
};
use league::points::LeaguePoints;

use crate::season::{Chance, met, night, pair, pairs, play, player, proven, task};

/// DEMO.md: 17 players on two evenings, 6 and 5 tables, eight weeks.
#[test]
fn a_club_with_two_nights_plays_eight_weeks_without_a_rematch() {
    let nights = [3, 1, 1, 2, 3, 1, 3, 2, 2, 3, 1, 3, 2, 1, 3, 2, 3];
    for seed in 0..3 {
        let mut task = task(nights.len());
        task.rounds_left = 7;
        task.nights = vec![night(0, 6), night(1, 5)];
        for (contender, bits) in task.contenders.iter_mut().zip(nights) {
            contender.nights = NightSet::from_bits(bits);
        }
        let mut chance = Chance::new(seed);
        for _ in 0..8 {
            let proposal = proven(&task);
            assert_eq!((proposal.games.len(), proposal.byes.len()), (8, 1));
            assert_eq!(proposal.cost.amount(Level::Wish(Wish::NoRematch)), 0);
            play(&mut task, &proposal, &mut chance);
        }
        assert!(task.contenders.iter().all(|c| c.byes <= 1));
        let twice = |c: &&league::pairing::Contender| {
            c.tables.iter().collect::<BTreeSet<_>>().len() < c.tables.len()
        };
        assert!(task.contenders.iter().filter(twice).count() <= 17);
    }
}

#[test]
fn a_full_night_pairs_those_who_can_come_on_no_other_among_themselves() {
    let mut task = task(8);
    task.nights = vec![night(0, 2), night(1, 2)];
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = LeaguePoints::new(at as i32 / 2);
        contender.nights = if at % 2 == 0 {
            NightSet::from_bits(1)
        } else {
            NightSet::from_bits(3)
        };
    }
    let proposal = proven(&task);
    assert_eq!(proposal.games.len(), 4);
    assert!(
        proposal.cost > proposal.cost_without_hall,
        "the hall has its price"
    );
}

#[test]
fn a_hall_that_is_too_small_leaves_more_players_out_and_no_more_than_it_must() {
    let mut task = task(9);
    task.nights = vec![night(0, 2), night(1, 1)];
    assert_eq!(proven(&task).byes.len(), 3);
}

#[test]
fn two_nights_that_nobody_shares_leave_one_out_on_each() {
    let mut task = task(6);
    task.nights = vec![night(0, 5), night(1, 5)];
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.nights = NightSet::from_bits(if at < 3 { 1 } else { 2 });
    }
    assert_eq!(proven(&task).byes.len(), 2);
}

#[test]
fn pins_are_kept_and_everything_else_is_solved_around_them() {
    let mut task = task(8);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = LeaguePoints::new(at as i32);
    }
    task.pins = vec![pair(1, 8)];
    task.forbidden = vec![pair(2, 3)];
    let proposal = proven(&task);
    assert_eq!(
        pairs(&proposal),
        [pair(1, 8), pair(2, 4), pair(3, 5), pair(6, 7)]
    );
    let prices: Vec<AlternativeCost> = proposal
        .reasons
        .iter()
        .map(|reason| reason.alternative)
        .collect();
    assert_eq!(
        prices
            .iter()
            .filter(|price| **price == AlternativeCost::Pinned)
            .count(),
        1
    );
}

#[test]
fn every_fault_of_a_task_is_told_at_once() {
    let mut task = task(4);
    task.nights.clear();
    task.contenders[1].household = Some(Household(4));
    task.contenders[2].household = Some(Household(4));
    task.contenders[3].score = LeaguePoints::new(2_000_000);
    task.pins = vec![pair(2, 3), pair(1, 9)];
    let faults = vec![
        TaskFault::Score(player(4)),
        TaskFault::HallClosed,
        TaskFault::PinExcluded(pair(2, 3)),
        TaskFault::PinAbsent(player(9)),
    ];
    assert_eq!(propose(&task), Err(ProposeError::InvalidTask(faults)));
}

#[test]
fn an_unavoidable_rematch_names_the_sets_that_force_it() {
    let mut task = task(6);
    met(
        &mut task,
        &[
            (1, 4),
            (2, 5),
            (3, 6),
            (1, 5),
            (2, 6),
            (3, 4),
            (1, 6),
            (2, 4),
            (3, 5),
        ],
    );
    let proposal = proven(&task);
    assert_eq!(proposal.cost.amount(Level::Wish(Wish::NoRematch)), 1);
    let barrier = proposal.barrier.unwrap();
    let mut sets = barrier.odd_sets;
    sets.iter_mut().for_each(|set| set.sort());
    sets.sort();
    assert_eq!(sets, [[1, 2, 3].map(player), [4, 5, 6].map(player)]);
    assert_eq!((barrier.removed.len(), barrier.rematches), (0, 1));
}

#[test]
fn a_price_says_what_the_best_round_without_the_game_gives_up() {
    let mut task = task(4);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = LeaguePoints::new([6, 6, 0, 0][at]);
    }
    let level = Level::Wish(Wish::CloseScores);
    for reason in proven(&task).reasons {
        assert_eq!(reason.alternative, AlternativeCost::Worse(level, 72));
    }
}
