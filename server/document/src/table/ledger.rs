//! Ledger lines as JSON.

use league::ledger::{LedgerLine, LineKind, LineReason, LineSource};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::csv::table::{columns, escape_formula, optional_cell, word_cell};
use crate::mirror_enum::mirror_enum;
use crate::share::ShareDocument;

/// One credited amount.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct LineDocument {
    /// Whose.
    pub player: Uuid,
    /// The week it belongs to.
    #[schema(example = 3)]
    pub week: u8,
    /// What for.
    pub kind: LineKindDocument,
    /// How much; a penalty is negative.
    #[schema(example = 7)]
    pub amount: i32,
    /// Why, as data.
    pub reason: LineReasonDocument,
    /// Why, in plain English.
    #[schema(example = "won 14 to 9")]
    pub sentence: String,
    /// Where it comes from.
    pub source: LineSourceDocument,
    /// Version of the source.
    #[schema(example = 1)]
    pub version: u32,
}

mirror_enum! {
    /// What an amount is for.
    LineKindDocument is LineKind {
        /// A game of two players, played or not.
        Game,
        /// A week without an opponent.
        Bye,
        /// A week away, said before the round was paired.
        Absence,
        /// Turning up.
        Attendance,
        /// Painted models.
        Painting,
        /// Bonuses above the season's cap, taken off.
        BonusCap,
        /// A list after its deadline.
        LateList,
        /// A week before the player joined.
        CatchUp,
        /// A referee's correction.
        Ruling,
        /// A week that does not count among the best.
        DroppedWeek,
    }
}

/// Where an amount comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LineSourceDocument {
    /// The slip of a game, or a bye of the round.
    Game {
        /// Its identity.
        id: Uuid,
    },
    /// A claim of the painting log.
    Claim {
        /// Its identity.
        id: Uuid,
    },
    /// A ruling.
    Ruling {
        /// Its identity.
        id: Uuid,
    },
    /// The season's rules alone.
    Rule,
}

/// Why an amount was credited.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LineReasonDocument {
    /// Won with this score.
    Won {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Drew with this score.
    Drew {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Lost with this score.
    Lost {
        /// Game points.
        own: u32,
        /// Game points of the opponent.
        other: u32,
    },
    /// Gave the game up.
    Conceded,
    /// The opponent gave the game up.
    OpponentConceded,
    /// The opponent was not there.
    OpponentAbsent,
    /// Was not there, with word in time.
    AbsentWithNotice,
    /// Was not there, without word.
    AbsentWithoutNotice,
    /// Both sides lose.
    DoubleLoss,
    /// No opponent.
    Bye,
    /// No opponent: the average of own games.
    ByeByAverage {
        /// Games averaged.
        games: u32,
    },
    /// Came to the table.
    Attended,
    /// Share of the list that is painted.
    PaintedShare {
        /// The share.
        share: ShareDocument,
    },
    /// Finished this week.
    NewlyFinished {
        /// Units, or steps of army points.
        count: u32,
    },
    /// Bonuses of the week above what a win allows.
    AboveBonusCap {
        /// Most bonus points of a week.
        limit: i32,
        /// Bonus points earned.
        earned: i32,
    },
    /// The list came late.
    Late {
        /// Seconds after the deadline.
        seconds: u32,
    },
    /// Joined later: the median of that week.
    MedianOfWeek {
        /// The median.
        median: i32,
        /// What the season takes off.
        less: i32,
    },
    /// Joined later: a fixed value.
    MissedWeek,
    /// A referee's words.
    Ruled {
        /// The words.
        words: String,
    },
    /// Not among the best weeks.
    NotAmongBest {
        /// Weeks that count.
        best: u8,
    },
}

impl LineDocument {
    /// The names of its cells in a spreadsheet program.
    pub fn columns() -> Vec<String> {
        columns(&[
            "week",
            "kind",
            "amount",
            "sentence",
            "version",
            "source",
            "source_id",
        ])
    }

    /// The line as cells.
    pub fn cells(&self) -> Vec<String> {
        let (source, id) = match self.source {
            LineSourceDocument::Game { id } => ("game", Some(id)),
            LineSourceDocument::Claim { id } => ("claim", Some(id)),
            LineSourceDocument::Ruling { id } => ("ruling", Some(id)),
            LineSourceDocument::Rule => ("rule", None),
        };
        vec![
            self.week.to_string(),
            word_cell(&self.kind),
            self.amount.to_string(),
            escape_formula(&self.sentence),
            self.version.to_string(),
            source.to_owned(),
            optional_cell(id),
        ]
    }
}

impl From<&LedgerLine> for LineDocument {
    fn from(line: &LedgerLine) -> Self {
        Self {
            player: line.player.0,
            week: line.week.number(),
            kind: line.kind.into(),
            amount: line.amount.get(),
            reason: (&line.reason).into(),
            sentence: line.reason.message().to_string(),
            source: line.source.into(),
            version: line.version,
        }
    }
}

impl From<LineSource> for LineSourceDocument {
    fn from(source: LineSource) -> Self {
        match source {
            LineSource::Game(game) => Self::Game { id: game.0 },
            LineSource::Claim(claim) => Self::Claim { id: claim.0 },
            LineSource::Ruling(ruling) => Self::Ruling { id: ruling.0 },
            LineSource::Rule => Self::Rule,
        }
    }
}

impl From<&LineReason> for LineReasonDocument {
    fn from(reason: &LineReason) -> Self {
        match *reason {
            LineReason::Won { own, other } => Self::Won { own, other },
            LineReason::Drew { own, other } => Self::Drew { own, other },
            LineReason::Lost { own, other } => Self::Lost { own, other },
            LineReason::Conceded => Self::Conceded,
            LineReason::OpponentConceded => Self::OpponentConceded,
            LineReason::OpponentAbsent => Self::OpponentAbsent,
            LineReason::AbsentWithNotice => Self::AbsentWithNotice,
            LineReason::AbsentWithoutNotice => Self::AbsentWithoutNotice,
            LineReason::DoubleLoss => Self::DoubleLoss,
            LineReason::Bye => Self::Bye,
            LineReason::ByeByAverage { games } => Self::ByeByAverage { games },
            LineReason::Attended => Self::Attended,
            LineReason::PaintedShare(share) => Self::PaintedShare {
                share: share.into(),
            },
            LineReason::NewlyFinished { count } => Self::NewlyFinished { count },
            LineReason::AboveBonusCap { limit, earned } => Self::AboveBonusCap {
                limit: limit.get(),
                earned: earned.get(),
            },
            LineReason::Late { seconds } => Self::Late { seconds },
            LineReason::MedianOfWeek { median, less } => Self::MedianOfWeek {
                median: median.get(),
                less: less.get(),
            },
            LineReason::MissedWeek => Self::MissedWeek,
            LineReason::Ruled(ref words) => Self::Ruled {
                words: words.as_str().to_owned(),
            },
            LineReason::NotAmongBest { best } => Self::NotAmongBest { best },
        }
    }
}
