//! Computes the inputs of the tie-breaks. Scores are doubled, so that half points are whole numbers.

use std::cell::OnceCell;

use crate::ledger::LineKind;
use crate::points::LeaguePoints;
use crate::share::Share;
use crate::standings::by_player::ByPlayer;
use crate::standings::rounds::{PlayerRound, RoundKind};
use crate::standings::tiebreaks::inputs::{OpponentScore, TieBreakInputs};
use crate::standings::tiebreaks::{Basis, UnplayedRounds};
use crate::week::WeekNo;

use super::credits::Credits;
use super::season::IndexedSeason;

/// What everybody brings to the tie-breaks as of a week.
pub fn tie_break_inputs<'c>(
    season: &IndexedSeason<'_>,
    credits: &'c Credits<'_>,
    as_of: WeekNo,
) -> TieBreakInputs<'c> {
    let scores = Scores::new(season, credits);
    let mut met = ByPlayer::with_capacity(credits.rounds.len(), as_of.number().into());
    for (rounds, own) in credits.rounds.iter().zip(&scores.own) {
        met.push(scores.met(rounds, *own));
    }
    TieBreakInputs {
        rounds: &credits.rounds,
        met,
        painting_points: credits
            .sums
            .iter()
            .map(|sums| sums.sum_of(LineKind::Painting))
            .collect(),
        painted_share: latest_shares(season, as_of),
        late_lists: late_lists(season, as_of),
        adjusted_margins: OnceCell::new(),
    }
}

/// The scores that opponents' sums add up, in the season's basis and doubled.
struct Scores {
    basis: Basis,
    unplayed: UnplayedRounds,
    win: i64,
    draw: i64,
    own: Vec<i64>,
    for_opponents: Vec<i64>,
}

impl Scores {
    fn new(season: &IndexedSeason<'_>, credits: &Credits<'_>) -> Self {
        let terms = season.facts.tie_breaks.terms();
        let doubled = |points: LeaguePoints| 2 * i64::from(points.get());
        let (win, draw) = match terms.basis {
            Basis::StandardPoints => (2, 1),
            Basis::GamePoints | Basis::Total => {
                let scoring = &season.facts.scoring;
                (doubled(scoring.win()), doubled(scoring.draw()))
            }
        };
        let mut scores = Self {
            basis: terms.basis,
            unplayed: terms.unplayed,
            win,
            draw,
            own: Vec::new(),
            for_opponents: Vec::new(),
        };
        scores.own = match terms.basis {
            Basis::Total => credits
                .sums
                .iter()
                .map(|sums| doubled(sums.total()))
                .collect(),
            Basis::StandardPoints | Basis::GamePoints => {
                let sum =
                    |rounds: &[PlayerRound]| rounds.iter().map(|round| scores.worth(round)).sum();
                credits.rounds.iter().map(sum).collect()
            }
        };
        let seen = credits.rounds.iter().zip(&scores.own);
        scores.for_opponents = seen
            .map(|(rounds, own)| own + scores.unplayed_as_draws(rounds))
            .collect();
        scores
    }

    fn worth(&self, round: &PlayerRound) -> i64 {
        match self.basis {
            Basis::StandardPoints => round.result,
            Basis::GamePoints | Basis::Total => 2 * i64::from(round.league_points.get()),
        }
    }

    /// What a player's unplayed rounds change in the score that opponents get from them.
    fn unplayed_as_draws(&self, rounds: &[PlayerRound]) -> i64 {
        let change = |round: &PlayerRound| self.draw - self.worth(round);
        match self.unplayed {
            UnplayedRounds::LeftOut => 0,
            UnplayedRounds::VirtualOpponent => rounds
                .iter()
                .filter(|round| !round.kind.is_played())
                .map(change)
                .sum(),
            UnplayedRounds::OwnScore => {
                let away = |round: &&PlayerRound| matches!(round.kind, RoundKind::Away);
                rounds.iter().rev().take_while(away).map(change).sum()
            }
        }
    }

    fn met(&self, rounds: &[PlayerRound], own: i64) -> impl Iterator<Item = OpponentScore> {
        let mut before = 0;
        let mut left = i64::try_from(rounds.len()).unwrap_or(0);
        rounds.iter().filter_map(move |round| {
            left -= 1;
            let score = match (round.kind, self.unplayed) {
                (RoundKind::Played { opponent, .. }, _) => {
                    self.for_opponents.get(opponent).copied()
                }
                (_, UnplayedRounds::LeftOut) => None,
                (_, UnplayedRounds::VirtualOpponent) => {
                    Some(self.virtual_opponent(round, before, left))
                }
                (_, UnplayedRounds::OwnScore) => Some(own),
            };
            before += self.worth(round);
            score.map(|score| OpponentScore {
                score,
                result: round.result,
                voluntary: matches!(round.kind, RoundKind::Away),
            })
        })
    }

    /// `Svon = S_before + (1 - result) + 0.5 * (n - R)` of the edition to 2022, in the season's
    /// basis.
    fn virtual_opponent(&self, round: &PlayerRound, before: i64, rounds_left: i64) -> i64 {
        before + (self.win - self.worth(round)) + self.draw * rounds_left
    }
}

fn latest_shares(season: &IndexedSeason<'_>, as_of: WeekNo) -> Vec<Share> {
    let players = 0..season.players.len();
    let latest = players.map(|player| season.painted.up_to(player, as_of).last());
    latest
        .map(|painted| painted.map_or(Share::NOTHING, |painted| painted.share))
        .collect()
}

fn late_lists(season: &IndexedSeason<'_>, as_of: WeekNo) -> Vec<usize> {
    let players = 0..season.players.len();
    let late = players.map(|player| season.late_lists.up_to(player, as_of).len());
    late.collect()
}
