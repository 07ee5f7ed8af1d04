//! Players as dense numbers, and what each did round by round.

use std::collections::HashMap;

use crate::ids::PlayerId;
use crate::points::{LeaguePoints, Points};
use crate::result::{Outcome, Verdict};
use crate::share::Share;
use crate::side::Side;
use crate::week::WeekNo;

use super::facts::{Fixture, GameFact, PlayerFact, SeasonFacts};
use super::tiebreaks::{Basis, UnplayedRounds};

/// The players of the table as of a week, in the order of their identities.
pub(super) struct Roster<'f> {
    pub(super) players: Vec<&'f PlayerFact>,
    places: HashMap<PlayerId, usize>,
}

impl<'f> Roster<'f> {
    pub(super) fn as_of(facts: &'f SeasonFacts, week: WeekNo) -> Self {
        let joined = facts.players.iter().filter(|player| player.joined <= week);
        let mut players: Vec<_> = joined.collect();
        players.sort_unstable_by_key(|player| player.player);
        let places = players.iter().enumerate();
        let places = places
            .map(|(place, player)| (player.player, place))
            .collect();
        Self { players, places }
    }

    pub(super) fn place(&self, player: PlayerId) -> Option<usize> {
        self.places.get(&player).copied()
    }
}

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
    /// The opponent did not come, or both were ruled out.
    OpponentMissing,
    /// Away by the player's own choice: not there, not yet joined, or gone.
    Away,
}

impl RoundKind {
    pub(super) fn is_played(self) -> bool {
        matches!(self, Self::Played { .. })
    }
}

/// What tie-breaks are computed from. Scores are doubled, so that half points are whole numbers.
pub(super) struct Board {
    pub(super) rounds: Vec<Vec<Round>>,
    /// Own score in the basis of the tie-breaks, doubled.
    pub(super) score: Vec<i64>,
    /// The same as opponents see it, doubled.
    pub(super) score_for_opponents: Vec<i64>,
    pub(super) painting_points: Vec<LeaguePoints>,
    pub(super) painted_share: Vec<Share>,
    pub(super) basis: Basis,
    pub(super) unplayed: UnplayedRounds,
    pub(super) win: i64,
    pub(super) draw: i64,
}

impl Board {
    /// The value of a round in the basis, doubled.
    pub(super) fn worth(&self, round: &Round) -> i64 {
        worth(self.basis, round)
    }
}

pub(super) fn worth(basis: Basis, round: &Round) -> i64 {
    match basis {
        Basis::StandardPoints => round.result,
        Basis::GamePoints | Basis::Total => 2 * i64::from(round.league_points.get()),
    }
}

/// Collects the rounds of all players while the games are credited.
pub(super) struct Rounds {
    pub(super) of_player: Vec<Vec<Round>>,
}

impl Rounds {
    pub(super) fn new(players: usize, as_of: WeekNo) -> Self {
        let room = || Vec::with_capacity(as_of.number().into());
        Self {
            of_player: (0..players).map(|_| room()).collect(),
        }
    }

    pub(super) fn push(&mut self, place: usize, round: Round) {
        if let Some(rounds) = self.of_player.get_mut(place) {
            rounds.push(round);
        }
    }

    /// Adds the rounds that a player stayed away from: weeks with a settled game of somebody, but
    /// no fixture of this player.
    pub(super) fn fill(&mut self, games: &[GameFact], roster: &Roster<'_>, as_of: WeekNo) {
        let weeks = usize::from(as_of.number());
        let mut held = vec![false; weeks];
        let mut paired = vec![false; weeks * self.of_player.len()];
        for game in games.iter().filter(|game| game.week <= as_of) {
            let week = usize::from(game.week.number() - 1);
            let mut mark = |player| {
                let place = roster.place(player).map(|place| place * weeks + week);
                if let Some(cell) = place.and_then(|cell| paired.get_mut(cell)) {
                    *cell = true;
                }
            };
            let settled = match &game.fixture {
                Fixture::Bye(player) => {
                    mark(*player);
                    true
                }
                Fixture::Game {
                    players, outcome, ..
                } => {
                    mark(players.first);
                    mark(players.second);
                    outcome.is_some()
                }
            };
            if let Some(held) = held.get_mut(week) {
                *held |= settled;
            }
        }
        for (rounds, paired) in self.of_player.iter_mut().zip(paired.chunks(weeks)) {
            let missed = held.iter().zip(paired).zip(1..);
            let missed = missed.filter(|((held, paired), _)| **held && !**paired);
            rounds.extend(missed.filter_map(|(_, week)| WeekNo::new(week)).map(away));
            rounds.sort_by_key(|round| round.week);
        }
    }
}

fn away(week: WeekNo) -> Round {
    Round {
        week,
        result: 0,
        league_points: LeaguePoints::ZERO,
        kind: RoundKind::Away,
    }
}

/// The round that an outcome makes for `side`; `None` when it was struck.
pub(super) fn round_of(
    facts: &SeasonFacts,
    game: &GameFact,
    outcome: &Outcome,
    side: Side,
    opponent: usize,
    league_points: LeaguePoints,
    harder: Option<Side>,
) -> Option<Round> {
    let cap = facts.caps.get(&game.week).copied().unwrap_or(Points::ZERO);
    let half_points = |verdict| match verdict {
        Verdict::Won(winner) if winner == side => 2,
        Verdict::Drawn => 1,
        Verdict::Won(_) => 0,
    };
    let margin = outcome.score().map_or(0, |score| {
        i64::from(score.total[side]) - i64::from(score.total[side.other()])
    });
    let played = RoundKind::Played {
        opponent,
        margin,
        harder_role: harder == Some(side),
    };
    let (result, kind) = match outcome {
        Outcome::Played(score) => (half_points(facts.scoring.verdict(score, cap)), played),
        Outcome::Conceded { by, .. } => (half_points(Verdict::Won(by.other())), played),
        Outcome::NoShow { absent, .. } if *absent == side => (0, RoundKind::Away),
        Outcome::NoShow { .. } => (2, RoundKind::OpponentMissing),
        Outcome::DoubleLoss => (0, RoundKind::Away),
        Outcome::Void => return None,
    };
    Some(Round {
        week: game.week,
        result,
        league_points,
        kind,
    })
}
