//! Cross-tables whose tie-break values are known from outside.

use crate::side::Side;
use crate::standings::TieBreak::{
    self, DirectEncounter, OpponentsScore, OpponentsScoreCut, OpponentsScoreMedian, SonnebornBerger,
};
use crate::standings::{Exact, SeasonFacts, Standings, UnplayedRounds, table};

use super::seasons::{no_show, plain_scoring, played, player, season, week};

fn value(standings: &Standings, number: u128, tie_break: TieBreak) -> Option<Exact> {
    let row = standings.row_of(player(number)).unwrap();
    let found = row
        .tie_breaks
        .iter()
        .find(|value| value.tie_break == tie_break);
    found.unwrap().value
}

fn assert_values(standings: &Standings, tie_break: TieBreak, quarters: &[i64]) {
    for (number, &quarters) in (1..).zip(quarters) {
        let found = value(standings, number, tie_break);
        assert_eq!(
            found,
            Some(Exact::new(quarters, 4)),
            "{tie_break:?} of player {number}"
        );
    }
}

/// Six players, three rounds; values computed by hand and by a script with exact fractions
/// (definitions: FIDE Handbook C.07, art. 8.1, 9.1, 14.1, 14.3 and 6).
fn six_players() -> SeasonFacts {
    let (won, drawn, lost) = (played(1, 0), played(0, 0), played(0, 1));
    season(6, plain_scoring())
        .with_game(1, 1, 4, won.clone())
        .with_game(1, 2, 5, won.clone())
        .with_game(1, 3, 6, drawn.clone())
        .with_game(2, 1, 2, drawn)
        .with_game(2, 3, 5, won.clone())
        .with_game(2, 6, 4, lost.clone())
        .with_game(3, 3, 1, lost)
        .with_game(3, 2, 4, won.clone())
        .with_game(3, 5, 6, won)
}

#[test]
fn six_players_have_the_computed_sums_and_order() {
    let order = [
        DirectEncounter,
        OpponentsScore,
        OpponentsScoreCut,
        OpponentsScoreMedian,
        SonnebornBerger,
    ];
    let facts = six_players().ordered_by(UnplayedRounds::LeftOut, &order);
    let standings = table(&facts, week(3));
    assert_values(&standings, OpponentsScore, &[20, 18, 16, 22, 18, 14]);
    assert_values(&standings, OpponentsScoreCut, &[16, 14, 14, 20, 16, 10]);
    assert_values(&standings, OpponentsScoreMedian, &[6, 4, 4, 10, 6, 4]);
    assert_values(&standings, SonnebornBerger, &[15, 13, 5, 2, 2, 3]);
    let ranks = standings
        .rows
        .iter()
        .map(|row| (row.rank, row.player))
        .collect::<Vec<_>>();
    assert_eq!(ranks, [1, 2, 3, 4, 5, 6].map(|n| (n, player(n.into()))));
    let second = standings.rows.get(1).unwrap();
    assert_eq!(second.decided_by, Some(OpponentsScore), "1 and 2 drew");
    assert_eq!(
        value(&standings, 4, DirectEncounter),
        None,
        "4 and 5 never met"
    );
}

/// Five players, three rounds, byes of a full point: the three readings of unplayed rounds.
#[test]
fn unplayed_rounds_count_as_each_edition_says() {
    let (won, drawn, lost) = (played(1, 0), played(0, 0), played(0, 1));
    let facts = season(5, plain_scoring())
        .with_game(1, 1, 3, won.clone())
        .with_game(1, 2, 4, won.clone())
        .with_bye(1, 5)
        .with_game(2, 1, 2, won.clone())
        .with_game(2, 5, 3, lost)
        .with_bye(2, 4)
        .with_game(3, 1, 5, won)
        .with_game(3, 4, 3, drawn)
        .with_bye(3, 2);
    let sums = [
        (UnplayedRounds::LeftOut, [18, 18, 22, 14, 18]),
        (UnplayedRounds::VirtualOpponent, [14, 20, 18, 14, 22]),
        (UnplayedRounds::OwnScore, [18, 26, 22, 20, 22]),
    ];
    for (unplayed, quarters) in sums {
        let facts = facts.clone().ordered_by(unplayed, &[OpponentsScore]);
        assert_values(&table(&facts, week(3)), OpponentsScore, &quarters);
    }
}

/// "Sonneborn-Berger", Sensei's Library: four players, everyone twice; 11, 9, 6 and 4 points.
#[test]
fn a_double_round_robin_has_the_published_sonneborn_berger_values() {
    let wins = [
        (1, 1, 2),
        (2, 1, 3),
        (3, 1, 4),
        (3, 2, 3),
        (2, 2, 4),
        (1, 3, 4),
        (4, 1, 3),
        (5, 2, 1),
        (6, 2, 4),
        (5, 3, 4),
        (4, 4, 1),
        (6, 3, 2),
    ];
    let facts = wins
        .into_iter()
        .fold(season(4, plain_scoring()), |facts, (number, a, b)| {
            facts.with_game(number, a, b, played(1, 0))
        });
    let facts = facts.ordered_by(UnplayedRounds::LeftOut, &[SonnebornBerger]);
    assert_values(&table(&facts, week(6)), SonnebornBerger, &[44, 36, 24, 16]);
}

/// Ten players, everyone once, in the Berger tables of FIDE Handbook C.05 annex 1: nobody but
/// player 1 misses a round.
fn berger_of_ten(result_of_player_1: impl Fn(u8) -> crate::result::Outcome) -> SeasonFacts {
    let mut facts = season(10, plain_scoring());
    for round in 1..=9_u8 {
        let k = u128::from((u32::from(round) - 1) * 5 % 9 + 1);
        let around = |number: u128| (number + 8) % 9 + 1;
        let mut pairs = vec![(k, 10)];
        pairs.extend((1..=4).map(|step| (around(k + step), around(k + 9 - step))));
        for (a, b) in pairs {
            let (a, b) = if b == 1 { (b, a) } else { (a, b) };
            let outcome = if a == 1 {
                result_of_player_1(round)
            } else {
                played(0, 0)
            };
            facts = facts.with_game(round, a, b, outcome);
        }
    }
    facts
}

/// What the virtual opponent adds to the sum over those who were met.
fn virtual_opponent(facts: &SeasonFacts, after: u8) -> Exact {
    let sum = |unplayed| {
        let facts = facts.clone().ordered_by(unplayed, &[OpponentsScore]);
        value(&table(&facts, week(after)), 1, OpponentsScore).unwrap()
    };
    sum(UnplayedRounds::VirtualOpponent) - sum(UnplayedRounds::LeftOut)
}

/// The two worked cases of the handbook's text of 2022 (C.07, virtual opponent).
#[test]
fn a_virtual_opponent_scores_as_in_the_worked_cases() {
    let absent_in_3 = berger_of_ten(|round| match round {
        1 => played(1, 0),
        3 => no_show(Side::First),
        _ => played(0, 0),
    });
    assert_eq!(virtual_opponent(&absent_in_3, 3), Exact::new(5, 2));
    assert_eq!(virtual_opponent(&absent_in_3, 9), Exact::new(11, 2));
    let left_alone_in_6 = berger_of_ten(|round| match round {
        1 | 2 => played(1, 0),
        6 => no_show(Side::Second),
        _ => played(0, 0),
    });
    assert_eq!(virtual_opponent(&left_alone_in_6, 6), Exact::new(7, 2));
    assert_eq!(virtual_opponent(&left_alone_in_6, 9), Exact::new(5, 1));
}

/// FIDE Handbook C.07, art. 6.2: who cannot be caught whatever the missing games bring is first.
#[test]
fn direct_encounter_without_all_games_puts_only_an_uncatchable_leader_first() {
    // 1, 2 and 3 end with 2 wins each; 2 and 3 never meet.
    let beaten_both = season(7, plain_scoring())
        .with_game(1, 1, 2, played(1, 0))
        .with_game(2, 1, 3, played(1, 0))
        .with_game(2, 2, 4, played(1, 0))
        .with_game(3, 2, 5, played(1, 0))
        .with_game(1, 3, 6, played(1, 0))
        .with_game(3, 3, 7, played(1, 0))
        .ordered_by(UnplayedRounds::LeftOut, &[DirectEncounter]);
    let standings = table(&beaten_both, week(3));
    let ranks = standings.rows.iter().map(|row| (row.rank, row.player));
    let ranks: Vec<_> = ranks.take(3).collect();
    assert_eq!(ranks, [(1, player(1)), (2, player(2)), (2, player(3))]);
    assert_eq!(
        value(&standings, 1, DirectEncounter),
        Some(Exact::from_integer(2))
    );
    assert_eq!(value(&standings, 2, DirectEncounter), None);
    let row = standings.row_of(player(2)).unwrap();
    assert_eq!(row.decided_by, Some(DirectEncounter));
}

/// The league's own, without a handbook: three equal players of whom two have not met and no one
/// is beyond reach, so direct encounter says nothing and the rank is shared.
#[test]
fn direct_encounter_is_skipped_where_a_missing_game_could_turn_it() {
    let facts = season(5, plain_scoring())
        .with_game(1, 1, 2, played(1, 0))
        .with_game(1, 3, 5, played(1, 0))
        .with_game(2, 2, 4, played(1, 0))
        .ordered_by(UnplayedRounds::LeftOut, &[DirectEncounter]);
    let rows = table(&facts, week(2)).rows;
    let shared: Vec<_> = rows
        .iter()
        .take(3)
        .map(|row| (row.rank, row.shared))
        .collect();
    assert_eq!(shared, [(1, true); 3]);
}
