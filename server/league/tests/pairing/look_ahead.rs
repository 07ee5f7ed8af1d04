//! Corners that the pairing must not walk into. Sources: Schmand, Schroeder, Vargas Koch, arXiv
//! 2007.10704, and Rosa and Wallis 1982 (from memory); the counts were computed for this project.

use league::pairing::{Level, LookAhead, Pair, Task, Wish};
use league::points::LeaguePoints;

use crate::season::{Chance, met, pair, pairs, proven, task};

/// All perfect matchings of six players.
fn rounds() -> Vec<Vec<(usize, usize)>> {
    let mut all = Vec::new();
    for b in 2..=6 {
        let rest: Vec<usize> = (2..=6).filter(|&x| x != b).collect();
        for at in 1..4 {
            let others: Vec<usize> = (1..4).filter(|&x| x != at).collect();
            all.push(vec![
                (1, b),
                (rest[0], rest[at]),
                (rest[others[0]], rest[others[1]]),
            ]);
        }
    }
    all
}

/// STANDARDS 2.1: of the 480 ordered histories of three rounds without rematch, 120 admit no fourth.
#[test]
fn a_quarter_of_the_histories_of_six_players_end_after_three_rounds() {
    let (mut histories, mut dead) = (0, 0);
    for first in rounds() {
        for second in rounds() {
            for third in rounds() {
                let games: Vec<(usize, usize)> = [&first[..], &second, &third].concat();
                let distinct: std::collections::BTreeSet<_> = games.iter().collect();
                if distinct.len() < games.len() {
                    continue;
                }
                histories += 1;
                let mut task = task(6);
                met(&mut task, &games);
                let proposal = proven(&task);
                let rematches = proposal.cost.amount(Level::Wish(Wish::NoRematch));
                dead += usize::from(rematches > 0);
                assert_eq!(rematches > 0, proposal.barrier.is_some());
            }
        }
    }
    assert_eq!((histories, dead), (480, 120));
}

#[test]
fn the_third_round_of_six_players_never_kills_the_fourth() {
    for first in rounds() {
        for second in rounds() {
            if first.iter().any(|game| second.contains(game)) {
                continue;
            }
            let mut task = task(6);
            task.rounds_left = 1;
            met(&mut task, &[&first[..], &second].concat());
            tempt(&mut task);
            let proposal = proven(&task);
            let LookAhead::Playable(plan) = &proposal.look_ahead else {
                panic!("{:?}", proposal.look_ahead)
            };
            assert_eq!(plan.len(), 1);
            task.history
                .extend(pairs(&proposal).into_iter().map(meeting));
            task.rounds_left = 0;
            assert_eq!(proven(&task).cost.amount(Level::Wish(Wish::NoRematch)), 0);
        }
    }
}

/// Scores that make one of the rounds that lead to a dead end look best.
fn tempt(task: &mut Task) {
    let dead = rounds().into_iter().find(|round| {
        let mut after = task.clone();
        let fresh = round
            .iter()
            .all(|&(a, b)| task.history.iter().all(|m| m.pair != pair(a, b)));
        met(&mut after, round);
        after.rounds_left = 0;
        fresh && proven(&after).cost.amount(Level::Wish(Wish::NoRematch)) > 0
    });
    for (at, (a, b)) in dead.into_iter().flatten().enumerate() {
        for number in [a, b] {
            task.contenders[number - 1].score = LeaguePoints::new(10 * at as i32);
        }
    }
}

fn meeting(pair: Pair) -> league::pairing::Meeting {
    league::pairing::Meeting {
        pair,
        week: league::week::WeekNo::FIRST,
    }
}

/// STANDARDS 2.1: five rounds between two groups of five use up every game between them.
#[test]
fn ten_players_who_have_only_met_across_two_groups_of_five_cannot_play_again() {
    let mut task = task(10);
    for shift in 0..5 {
        let round: Vec<_> = (0..5).map(|at| (at + 1, (at + shift) % 5 + 6)).collect();
        met(&mut task, &round);
    }
    let proposal = proven(&task);
    assert_eq!(proposal.cost.amount(Level::Wish(Wish::NoRematch)), 1);
    assert_eq!(proposal.barrier.map(|b| b.odd_sets.len()), Some(2));
}

#[test]
fn four_rounds_across_two_groups_of_five_are_not_followed_by_a_fifth() {
    let mut task = task(10);
    for shift in 0..4 {
        let round: Vec<_> = (0..5).map(|at| (at + 1, (at + shift) % 5 + 6)).collect();
        met(&mut task, &round);
    }
    for at in 0..5 {
        task.contenders[at].score = LeaguePoints::new(at as i32 * 9);
        task.contenders[(at + 4) % 5 + 5].score = LeaguePoints::new(at as i32 * 9);
    }
    task.rounds_left = 1;
    let proposal = proven(&task);
    assert!(matches!(proposal.look_ahead, LookAhead::Playable(_)));
    assert!(
        proposal.certificate.tree.len() > 1,
        "the best round alone was the dead end"
    );
}

#[test]
fn short_seasons_of_even_fields_never_run_dry_however_they_go() {
    let mut chance = Chance::new(3);
    for players in [8, 12, 40] {
        let mut task = task(players);
        task.rounds_left = players as u8 / 2 - 1;
        for _ in 0..players / 2 {
            let proposal = proven(&task);
            let safe = [LookAhead::NeverRunsDry, LookAhead::LastRound];
            assert!(safe.contains(&proposal.look_ahead));
            crate::season::play(&mut task, &proposal, &mut chance);
        }
        assert_eq!(proven(&task).games.len(), players / 2);
    }
}

#[test]
fn a_season_longer_than_the_field_says_when_it_runs_dry() {
    let mut task = task(4);
    task.rounds_left = 5;
    let LookAhead::RunsDry(plan) = proven(&task).look_ahead else {
        panic!()
    };
    assert_eq!(plan.len(), 2);
}
