//! What each player did, round by round.

use crate::points::{LeaguePoints, Points};
use crate::result::{Outcome, Verdict};
use crate::side::Side;
use crate::week::WeekNo;

use super::season::{Game, Season};

/// One round of one player. Results are in half points: 2 for a win, 1 for a draw.
#[derive(Clone, Copy, Debug)]
pub(super) struct Round {
    pub(super) week: WeekNo,
    pub(super) result: i64,
    pub(super) league_points: LeaguePoints,
    pub(super) kind: RoundKind,
}

#[derive(Clone, Copy, Debug)]
pub(super) enum RoundKind {
    Played {
        opponent: usize,
        margin: i64,
        harder_role: bool,
    },
    Bye,
    /// The opponent did not come.
    OpponentAbsent,
    /// Away by the player's own choice: not there, not yet joined, or gone.
    Away,
}

impl RoundKind {
    pub(super) fn is_played(self) -> bool {
        matches!(self, Self::Played { .. })
    }
}

/// The round that an outcome makes for `side`; `None` when it was struck.
pub(super) fn round_of(
    season: &Season<'_>,
    game: &Game<'_>,
    outcome: &Outcome,
    side: Side,
    league_points: LeaguePoints,
) -> Option<Round> {
    let half_points = |verdict| match verdict {
        Verdict::Won(winner) if winner == side => 2,
        Verdict::Drawn => 1,
        Verdict::Won(_) => 0,
    };
    let margin = outcome.score().map_or(0, |score| {
        i64::from(score.total[side]) - i64::from(score.total[side.other()])
    });
    let played = RoundKind::Played {
        opponent: game.players[side.other()],
        margin,
        harder_role: game.harder == Some(side),
    };
    let (result, kind) = match outcome {
        Outcome::Played(score) => {
            let cap = season.facts.caps.get(&game.fact.week);
            let cap = cap.copied().unwrap_or(Points::ZERO);
            (
                half_points(season.facts.scoring.verdict(score, cap)),
                played,
            )
        }
        Outcome::Conceded { by, .. } => (half_points(Verdict::Won(by.other())), played),
        Outcome::NoShow { absent, .. } if *absent == side => (0, RoundKind::Away),
        Outcome::NoShow { .. } => (2, RoundKind::OpponentAbsent),
        Outcome::DoubleLoss => (0, RoundKind::Away),
        Outcome::Void => return None,
    };
    Some(Round {
        week: game.fact.week,
        result,
        league_points,
        kind,
    })
}

/// Adds the rounds that a player stayed away from without a word: weeks in which somebody's round
/// counts but this player had none.
pub(super) fn add_missed(rounds: &mut [Vec<Round>], season: &Season<'_>, as_of: WeekNo) {
    let weeks = usize::from(as_of.number());
    let mut held = vec![false; weeks];
    let mut paired = vec![false; weeks * rounds.len()];
    let mut mark = |player: usize, week: WeekNo, settled: bool| {
        let week = usize::from(week.number() - 1);
        if let Some(cell) = paired.get_mut(player * weeks + week) {
            *cell = true;
        }
        if let Some(held) = held.get_mut(week) {
            *held |= settled;
        }
    };
    for game in season.games.iter().filter(|game| game.fact.week <= as_of) {
        for player in [game.players.first, game.players.second] {
            mark(player, game.fact.week, game.outcome.is_some());
        }
    }
    for bye in season.byes.iter().filter(|bye| bye.fact.week <= as_of) {
        mark(bye.player, bye.fact.week, true);
    }
    for absence in &season.absences {
        if absence.fact.week <= as_of {
            mark(absence.player, absence.fact.week, true);
        }
    }
    for (rounds, paired) in rounds.iter_mut().zip(paired.chunks(weeks)) {
        let missed = held.iter().zip(paired).zip(1..);
        let missed = missed.filter(|((held, paired), _)| **held && !**paired);
        let missed = missed.filter_map(|(_, week)| WeekNo::new(week));
        rounds.extend(missed.map(|week| away(week, LeaguePoints::ZERO)));
        rounds.sort_by_key(|round| round.week);
    }
}

/// A round that the player stayed away from.
pub(super) const fn away(week: WeekNo, league_points: LeaguePoints) -> Round {
    Round {
        week,
        result: 0,
        league_points,
        kind: RoundKind::Away,
    }
}
