//! Seasons for tests, written as short as a cross-table.

use std::collections::BTreeMap;

use uuid::Uuid;

use crate::ids::{GameId, PlayerId};
use crate::painting::Painting;
use crate::points::LeaguePoints;
use crate::result::{AbsenceNotice, GameScore, Outcome, Verdict};
use crate::scoring::{Bye, Concession, GamePoints, LateJoiner, NoShow, Scoring, ScoringTerms};
use crate::side::{PerSide, Side};
use crate::standings::{
    Absence, Basis, Fixture, GameFact, PlayerFact, SeasonFacts, TieBreak, TieBreaks,
    TieBreaksTerms, UnplayedRounds,
};
use crate::week::WeekNo;

pub(crate) fn week(number: u8) -> WeekNo {
    WeekNo::new(number).unwrap()
}

pub(crate) fn player(number: u128) -> PlayerId {
    PlayerId(Uuid::from_u128(number))
}

pub(crate) const fn points(amount: i32) -> LeaguePoints {
    LeaguePoints::new(amount)
}

/// Two points for a win, one for a draw; everything else as plain as can be.
pub(crate) fn plain_scoring() -> ScoringTerms {
    ScoringTerms {
        games: GamePoints::WinDrawLoss {
            win: points(2),
            draw: points(1),
            loss: points(0),
            draw_margin: 0,
        },
        concession: Concession {
            winner_at_least: points(2),
            loser_at_most: points(0),
        },
        no_show: NoShow {
            present: points(2),
            absent_with_notice: points(0),
            absent_without_notice: points(0),
        },
        double_loss: points(0),
        bye: Bye::Win,
        late_list: Vec::new(),
        attendance: points(0),
        painting_cap: None,
        bonus_cap: None,
        best_weeks: None,
        late_joiner: LateJoiner::Nothing,
        weights: BTreeMap::new(),
    }
}

/// A season of players 1 to `players` who all joined in week 1.
pub(crate) fn season(players: u128, scoring: ScoringTerms) -> SeasonFacts {
    let place = |number| PlayerFact {
        player: player(number),
        joined: WeekNo::FIRST,
        left: None,
    };
    SeasonFacts {
        scoring: Scoring::build(scoring).unwrap(),
        painting: Painting::without_bonus(),
        tie_breaks: tie_breaks(UnplayedRounds::LeftOut, &[]),
        caps: BTreeMap::new(),
        players: (1..=players).map(place).collect(),
        games: Vec::new(),
        absences: Vec::new(),
        late_lists: Vec::new(),
        painted: Vec::new(),
        adjustments: Vec::new(),
    }
}

pub(crate) fn tie_breaks(unplayed: UnplayedRounds, order: &[TieBreak]) -> TieBreaks {
    TieBreaks::build(TieBreaksTerms {
        basis: Basis::StandardPoints,
        unplayed,
        order: order.to_vec(),
    })
    .unwrap()
}

pub(crate) fn played(first: u32, second: u32) -> Outcome {
    let total = PerSide::new(first, second);
    Outcome::Played(GameScore {
        legs: Vec::new(),
        total,
        verdict: Verdict::from_totals(total, 0),
    })
}

pub(crate) fn no_show(absent: Side) -> Outcome {
    let notice = AbsenceNotice::NotGiven;
    Outcome::NoShow { absent, notice }
}

impl SeasonFacts {
    pub(crate) fn with_game(
        self,
        number: u8,
        first: u128,
        second: u128,
        outcome: impl Into<Option<Outcome>>,
    ) -> Self {
        self.with_fixture(
            number,
            Fixture::Game {
                players: PerSide::new(player(first), player(second)),
                harder: None,
                outcome: outcome.into(),
                ruling: None,
            },
        )
    }

    pub(crate) fn with_bye(self, number: u8, of: u128) -> Self {
        self.with_fixture(number, Fixture::Bye(player(of)))
    }

    pub(crate) fn with_absence(mut self, number: u8, of: u128) -> Self {
        self.absences.push(Absence {
            player: player(of),
            week: week(number),
        });
        self
    }

    pub(crate) fn with_fixture(mut self, number: u8, fixture: Fixture) -> Self {
        let game = GameId(Uuid::from_u128(self.games.len() as u128 + 1));
        self.games.push(GameFact {
            game,
            week: week(number),
            fixture,
            version: 1,
        });
        self
    }

    pub(crate) fn ordered_by(mut self, unplayed: UnplayedRounds, order: &[TieBreak]) -> Self {
        self.tie_breaks = tie_breaks(unplayed, order);
        self
    }
}
