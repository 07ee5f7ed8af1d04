//! Cross-tables whose tie-break values are known from outside.

use super::league_of::{plain_scoring, played, player, season, week};
use super::tiebreaks::TieBreak::{
    DirectEncounter, OpponentsScore, OpponentsScoreCut, OpponentsScoreMedian, SonnebornBerger,
};
use super::tiebreaks::{Exact, UnplayedRounds};
use super::{SeasonFacts, Standings, TieBreak, table};

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
