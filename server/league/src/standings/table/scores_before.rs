//! Scores that a round is paired by: those at the beginning of its week, before anything of the week counts,
//! for the first of the week.

use std::collections::BTreeMap;

use crate::ids::PlayerId;
use crate::ledger::LineKind;
use crate::points::LeaguePoints;
use crate::standings::facts::SeasonFacts;
use crate::week::WeekNo;

use super::table;

/// The scores that a week's round of this number, from 1, is paired by: later rounds of a week go by all that is
/// settled.
pub fn scores_before_round(
    facts: &SeasonFacts,
    week: WeekNo,
    number: u8,
) -> BTreeMap<PlayerId, LeaguePoints> {
    if number == 1 {
        return scores_before_week(facts, week);
    }
    let rows = table(facts, week).rows.into_iter();
    rows.map(|row| (row.player, row.total)).collect()
}

/// The totals of the week before; whoever joins in this week has what the season gives for the weeks
/// that they missed. Common practice, no source.
fn scores_before_week(facts: &SeasonFacts, week: WeekNo) -> BTreeMap<PlayerId, LeaguePoints> {
    let with_joiners = table(facts, week).rows.into_iter();
    let mut scores: BTreeMap<_, _> = with_joiners
        .map(|row| (row.player, row.sums.sum_of(LineKind::CatchUp)))
        .collect();
    if let Some(before) = week.previous() {
        let rows = table(facts, before).rows.into_iter();
        scores.extend(rows.map(|row| (row.player, row.total)));
    }
    scores
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scoring::LateJoiner;
    use crate::standings::tests::seasons::{plain_scoring, played, player, points, season, week};

    #[test]
    fn whoever_joins_is_paired_by_the_points_for_the_weeks_missed() {
        let mut scoring = plain_scoring();
        scoring.late_joiner = LateJoiner::Fixed(points(3));
        let mut facts = season(3, scoring)
            .with_game(1, 1, 2, played(5, 3))
            .with_game(2, 1, 2, played(5, 3))
            .with_game(3, 1, 3, played(0, 9));
        facts.players.last_mut().unwrap().joined = week(3);
        let scores = scores_before_round(&facts, week(3), 1);
        let of = |number| scores[&player(number)].get();
        assert_eq!([of(1), of(2), of(3)], [4, 0, 6]);
    }

    #[test]
    fn a_second_round_of_a_week_is_paired_by_what_its_first_settled() {
        let facts = season(2, plain_scoring()).with_game(1, 1, 2, played(5, 3));
        let of = |number| scores_before_round(&facts, week(1), number)[&player(1)].get();
        assert_eq!([of(1), of(2)], [0, 2]);
    }

    #[test]
    fn nobody_has_anything_before_the_first_week() {
        let facts = season(2, plain_scoring()).with_game(1, 1, 2, played(5, 3));
        let scores = scores_before_round(&facts, week(1), 1);
        assert!(scores.values().all(|score| *score == LeaguePoints::ZERO));
    }
}
