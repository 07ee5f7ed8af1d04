//! FIDE Handbook C.04.1, basic rules for Swiss systems (in force from 1 July 2025), article by
//! article, over whole seasons.

use std::collections::BTreeSet;

use league::pairing::{Level, Task, Wish};

use league::side::Role;

use crate::season::{Chance, pairs, play, proven, task};

/// Seasons of every size from 6 to 13 with as many rounds as can always be played.
fn seasons() -> impl Iterator<Item = (Task, usize, Chance)> {
    (6..14).flat_map(|players| {
        (0..4).map(move |seed| {
            let rounds = players / 2;
            let mut task = task(players);
            task.rounds_left = rounds as u8 - 1;
            (task, rounds, Chance::new(seed + 100 * players as u64))
        })
    })
}

#[test]
fn article_2_two_players_meet_at_most_once() {
    for (mut task, rounds, mut chance) in seasons() {
        let mut met = BTreeSet::new();
        for _ in 0..rounds {
            let proposal = proven(&task);
            assert!(pairs(&proposal).into_iter().all(|pair| met.insert(pair)));
            play(&mut task, &proposal, &mut chance);
        }
    }
}

#[test]
fn article_3_an_odd_number_leaves_exactly_one_player_out() {
    for (mut task, rounds, mut chance) in seasons() {
        for _ in 0..rounds {
            let proposal = proven(&task);
            assert_eq!(proposal.byes.len(), task.contenders.len() % 2);
            play(&mut task, &proposal, &mut chance);
        }
    }
}

#[test]
fn article_4_nobody_has_two_byes() {
    for (mut task, rounds, mut chance) in seasons() {
        for _ in 0..rounds {
            play_on(&mut task, &mut chance);
        }
        assert!(task.contenders.iter().all(|c| c.byes <= 1));
    }
}

#[test]
fn article_4_a_forfeit_win_bars_from_the_bye() {
    let mut task = task(5);
    task.contenders[0].byes = 1;
    assert!(!proven(&task).byes.contains(&task.contenders[0].player));
}

#[test]
fn article_5_equal_scores_meet_where_they_can() {
    let mut task = task(8);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = league::points::LeaguePoints::new(at as i32 / 2);
    }
    let proposal = proven(&task);
    assert_eq!(proposal.cost.of(Level::Wish(Wish::CloseScores)), 0);
}

#[test]
fn articles_6_and_7_roles_stay_within_two_and_never_three_in_a_row() {
    for (mut task, rounds, mut chance) in seasons().filter(|(t, ..)| t.contenders.len() >= 8) {
        for _ in 0..rounds - 1 {
            play_on(&mut task, &mut chance);
        }
        for roles in task.contenders.iter().map(|c| c.roles) {
            assert!(roles.attacker.abs_diff(roles.defender) <= 2);
            assert!(roles.streak.is_some_and(|(_, times)| times <= 2));
        }
    }
}

#[test]
fn article_8_who_attacked_before_defends_now() {
    let mut task = task(2);
    task.contenders[0].roles.attacker = 1;
    task.contenders[0].roles.streak = Some((Role::Attacker, 1));
    assert_eq!(proven(&task).games[0].defender, task.contenders[0].player);
}

#[test]
fn the_order_of_the_lists_has_no_influence() {
    for (mut task, rounds, mut chance) in seasons() {
        for _ in 0..rounds {
            let proposal = proven(&task);
            let mut shuffled = task.clone();
            chance.shuffle(&mut shuffled.contenders);
            chance.shuffle(&mut shuffled.history);
            assert_eq!(proposal, proven(&shuffled));
            play(&mut task, &proposal, &mut chance);
        }
    }
}

fn play_on(task: &mut Task, chance: &mut Chance) {
    let proposal = proven(task);
    play(task, &proposal, chance);
}
