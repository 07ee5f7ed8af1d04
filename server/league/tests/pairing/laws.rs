//! FIDE Handbook C.04.1, basic rules for Swiss systems (in force from 1 July 2025), article by
//! article, over whole seasons.

use std::collections::BTreeSet;

use league::pairing::{Level, Task, Wish};

use league::side::GameRole;

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

/// A forfeit win counts as a bye does, over whole seasons in which some game of each round is one.
#[test]
fn article_4_nobody_who_scored_without_playing_sits_out_while_another_can() {
    for (mut task, rounds, mut chance) in seasons().filter(|(t, ..)| t.contenders.len() % 2 == 1) {
        for _ in 0..rounds {
            let proposal = proven(&task);
            let fresh = task.contenders.iter().filter(|c| c.byes == 0).count();
            let second = proposal.cost.amount(Level::Wish(Wish::NoSecondBye));
            assert!(fresh == 0 || second == 0, "{fresh} have none yet");
            play(&mut task, &proposal, &mut chance);
            let winner = proposal.games[chance.below(proposal.games.len())].attacker;
            let mut contenders = task.contenders.iter_mut();
            contenders.find(|c| c.player == winner).unwrap().byes += 1;
        }
    }
}

/// Players come late, pause and leave: articles 2 to 4 hold for those who are there.
#[test]
fn articles_2_to_4_hold_for_a_field_that_changes_every_round() {
    for seed in 0..12 {
        let mut chance = Chance::new(seed);
        let mut season = task(12);
        let mut met = BTreeSet::new();
        for _ in 0..5 {
            let mut round = season.clone();
            for _ in 0..chance.below(3) {
                let away = chance.below(round.contenders.len());
                round.contenders.remove(away);
            }
            let proposal = proven(&round);
            assert!(pairs(&proposal).into_iter().all(|pair| met.insert(pair)));
            assert_eq!(proposal.byes.len(), round.contenders.len() % 2);
            for bye in &proposal.byes {
                let out = round.contenders.iter().find(|c| c.player == *bye);
                assert_eq!(
                    out.unwrap().byes,
                    0,
                    "an absence is no bye, a bye comes once"
                );
            }
            play(&mut season, &proposal, &mut chance);
        }
    }
}

#[test]
fn article_5_equal_scores_meet_where_they_can() {
    let mut task = task(8);
    for (at, contender) in task.contenders.iter_mut().enumerate() {
        contender.score = league::points::LeaguePoints::new(at as i32 / 2);
    }
    let proposal = proven(&task);
    assert_eq!(proposal.cost.amount(Level::Wish(Wish::CloseScores)), 0);
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
    task.contenders[0].roles.streak = Some((GameRole::Attacker, 1));
    assert_eq!(proven(&task).games[0].defender, task.contenders[0].player);
}

/// Of two who should have different roles, neither is given the wrong one.
#[test]
fn article_8_nobody_has_the_wrong_role_without_need_in_a_whole_season() {
    for (mut task, rounds, mut chance) in seasons() {
        for _ in 0..rounds {
            let proposal = proven(&task);
            let due = |id| {
                let mut contenders = task.contenders.iter();
                contenders
                    .find(|c| c.player == id)
                    .unwrap()
                    .roles
                    .due_role()
            };
            for game in &proposal.games {
                let role = |due: Option<(GameRole, bool)>| due.map(|(role, _)| role);
                let (attacks, defends) = (due(game.attacker), due(game.defender));
                let both_wrong = role(attacks) == Some(GameRole::Defender)
                    && role(defends) != Some(GameRole::Defender);
                assert!(!both_wrong, "the other could have defended");
                let other_wrong = role(defends) == Some(GameRole::Attacker)
                    && role(attacks) != Some(GameRole::Attacker);
                assert!(!other_wrong, "the other could have attacked");
            }
            play(&mut task, &proposal, &mut chance);
        }
    }
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
