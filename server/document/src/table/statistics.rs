//! Statistics, outlooks and prizes as JSON.

use league::standings::{
    Forecast, Prize, PrizeAward, RankHistory, Reach, Supposition, Tally, WilsonInterval,
};
use league::{ids::GameId, result::Outcome};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::fault::DocumentFault;
use crate::mirror_enum::mirror_enum;
use crate::results::OutcomeDocument;
use crate::table::standings::ExactDocument;

/// A counted share with its 95 % interval (Wilson).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct IntervalDocument {
    /// Counted successes.
    #[schema(example = 7)]
    pub successes: u32,
    /// Counted trials.
    #[schema(example = 12)]
    pub trials: u32,
    /// Lower bound, 0 to 1.
    pub low: f64,
    /// Upper bound, 0 to 1.
    pub high: f64,
}

/// The games of one faction, role or scenario.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct TallyDocument {
    /// What the games have in common.
    #[schema(example = "vesper-orrery")]
    pub key: String,
    /// Games won.
    pub won: u32,
    /// Games drawn.
    pub drawn: u32,
    /// Games lost.
    pub lost: u32,
    /// Too few games to say more than their number.
    pub too_few: bool,
    /// Share of games won; absent when there are too few.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub win_share: Option<IntervalDocument>,
    /// Mean of own game points less the opponent's; absent when there are too few.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mean_margin: Option<ExactDocument>,
}

/// A player's rank after every week.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct RankHistoryDocument {
    /// Who.
    pub player: Uuid,
    /// From the first week; null before the player joined.
    pub ranks: Vec<Option<u32>>,
}

/// What the open games can still make of a player's rank; ranks are by total alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ReachDocument {
    /// Best rank that some results give, every tie won.
    pub best: u32,
    /// Worst rank that some results give, every tie lost.
    pub worst: u32,
    /// Fewest league points from own open games with which the rank asked for is possible; null
    /// when it is out of reach.
    pub needed: Option<i32>,
    /// Fewest league points from own open games with which it is certain; null when nothing makes
    /// it certain.
    pub enough: Option<i32>,
}

/// How often a simulation ended where.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ForecastDocument {
    /// Who.
    pub player: Uuid,
    /// Runs that ended at each rank, from the first.
    pub ended: Vec<u32>,
    /// All runs.
    pub runs: u32,
}

/// A supposed result of an open game.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SuppositionDocument {
    /// The game.
    pub game: Uuid,
    /// How it is supposed to end.
    pub outcome: OutcomeDocument,
}

mirror_enum! {
    /// What a prize is for.
    PrizeDocument is Prize {
        /// Most army points newly finished over the season.
        PaintedProgress,
        /// Most games played.
        MostGames,
        /// Highest mean of the opponents' totals.
        ToughestSchedule,
        /// Most places gained from the worst rank to the final one.
        BiggestClimb,
    }
}

/// A prize and who gets it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct AwardedDocument {
    /// What for.
    pub prize: PrizeDocument,
    /// Everyone with the best value.
    pub holders: Vec<Uuid>,
    /// That value.
    pub value: ExactDocument,
}

impl From<WilsonInterval> for IntervalDocument {
    fn from(interval: WilsonInterval) -> Self {
        Self {
            successes: interval.successes,
            trials: interval.trials,
            low: interval.low,
            high: interval.high,
        }
    }
}

impl<K: ToString> From<&Tally<K>> for TallyDocument {
    fn from(tally: &Tally<K>) -> Self {
        Self {
            key: tally.key.to_string(),
            won: tally.won,
            drawn: tally.drawn,
            lost: tally.lost,
            too_few: tally.win_share.is_none(),
            win_share: tally.win_share.map(Into::into),
            mean_margin: tally.mean_margin.map(Into::into),
        }
    }
}

impl From<&RankHistory> for RankHistoryDocument {
    fn from(history: &RankHistory) -> Self {
        Self {
            player: history.player.0,
            ranks: history.ranks.clone(),
        }
    }
}

impl From<Reach> for ReachDocument {
    fn from(reach: Reach) -> Self {
        Self {
            best: reach.best,
            worst: reach.worst,
            needed: reach.needed.map(|points| points.get()),
            enough: reach.enough.map(|points| points.get()),
        }
    }
}

impl From<&Forecast> for ForecastDocument {
    fn from(forecast: &Forecast) -> Self {
        Self {
            player: forecast.player.0,
            ended: forecast.ended.clone(),
            runs: forecast.runs,
        }
    }
}

impl TryFrom<SuppositionDocument> for Supposition {
    type Error = Vec<DocumentFault>;

    fn try_from(document: SuppositionDocument) -> Result<Self, Vec<DocumentFault>> {
        Ok(Self {
            game: GameId(document.game),
            outcome: Outcome::try_from(document.outcome)?,
        })
    }
}

impl From<&PrizeAward> for AwardedDocument {
    fn from(awarded: &PrizeAward) -> Self {
        Self {
            prize: awarded.prize.into(),
            holders: awarded.holders.iter().map(|player| player.0).collect(),
            value: awarded.value.into(),
        }
    }
}
