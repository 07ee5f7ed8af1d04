//! Painting: the stages of models, exact painted shares, bonuses, and claims with their checks.

mod bonus;
mod claim;
mod log;
mod models;
mod perceptual_hash;
mod share;
mod stage;
mod week;

use crate::points::{LeaguePoints, Points};
use crate::share::Share;

pub use bonus::{FinishedMeasure, PaintedBonus, PaintedWeek, Tier};
pub use claim::{
    Checker, ClaimRefusal, ClaimState, Evidence, FirstPainted, NewClaim, PaintingClaim,
    PhotoDigest, UnitRecord, accept_claim,
};
pub use log::{BroughtUnit, PaintingLog};
pub use models::painted_models;
pub use perceptual_hash::PerceptualHash;
pub use share::{PaintCounting, UnitOnList, painted_share};
pub use stage::{ModelStages, Stage, StageFault};
pub use week::{ListedUnit, PaintedUnit, painted_units, painted_week};

/// Painting rules as written, before they are checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaintingTerms {
    /// The stage from which a model counts as painted.
    pub painted_from: Stage,
    /// How a unit counts that is painted in part.
    pub counting: PaintCounting,
    /// What painting is worth.
    pub bonuses: Vec<PaintedBonus>,
    /// Who may check a claim.
    pub checked_by: Vec<Checker>,
}

/// One fault of a season's painting rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PaintingFault {
    /// Bare and primed models are not painted.
    #[error("a model counts as painted from \"coloured\" or \"finished\" on")]
    PaintedFrom,
    /// A bonus of nothing, or beyond reason.
    #[error("a bonus is worth 1 to {limit} points, not {actual}")]
    Amount {
        /// Which bonus, from zero.
        bonus: usize,
        limit: LeaguePoints,
        actual: LeaguePoints,
    },
    /// A threshold of nothing or more than everything.
    #[error("a threshold lies above 0 % and at most at 100 %, not at {actual}")]
    Threshold {
        /// Which bonus, from zero.
        bonus: usize,
        actual: Share,
    },
    /// Tiers do not rise.
    #[error("tiers must rise: the one from {from} does not")]
    Tiers {
        /// Which bonus, from zero.
        bonus: usize,
        /// The tier that does not.
        from: Share,
    },
    /// A step of no army points.
    #[error("a bonus for newly finished points needs a step of at least 1 point")]
    Step {
        /// Which bonus, from zero.
        bonus: usize,
    },
    /// A bonus could never be checked.
    #[error("bonuses need someone who may check the claims")]
    NobodyChecks,
}

impl PaintingFault {
    pub const fn code(&self) -> &'static str {
        match self {
            Self::PaintedFrom => "painting.painted-from",
            Self::Amount { .. } => "painting.amount",
            Self::Threshold { .. } => "painting.threshold",
            Self::Tiers { .. } => "painting.tiers",
            Self::Step { .. } => "painting.step",
            Self::NobodyChecks => "painting.nobody-checks",
        }
    }
}

/// Painting rules that can be applied without doubt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Painting(PaintingTerms);

impl Painting {
    /// # Errors
    /// Every [`PaintingFault`] at once.
    pub fn build(terms: PaintingTerms) -> Result<Self, Vec<PaintingFault>> {
        let bonuses = terms.bonuses.iter().enumerate();
        let mut faults: Vec<PaintingFault> =
            bonuses.flat_map(|(at, bonus)| bonus.faults(at)).collect();
        if terms.painted_from < Stage::Coloured {
            faults.push(PaintingFault::PaintedFrom);
        }
        if !terms.bonuses.is_empty() && terms.checked_by.is_empty() {
            faults.push(PaintingFault::NobodyChecks);
        }
        if faults.is_empty() {
            Ok(Self(terms))
        } else {
            Err(faults)
        }
    }

    /// Rules of a season in which painting gives nothing.
    pub fn without_bonus() -> Self {
        Self(PaintingTerms {
            painted_from: Stage::Finished,
            counting: PaintCounting::ByModel,
            bonuses: Vec::new(),
            checked_by: Vec::new(),
        })
    }

    /// The terms as written.
    pub fn terms(&self) -> &PaintingTerms {
        &self.0
    }

    /// The painted share of a list; exact.
    pub fn share_of(&self, units: &[UnitOnList]) -> Share {
        painted_share(units, self.0.counting)
    }

    /// A unit on a list with what the log shows of it; nothing is painted that the log lacks.
    pub fn on_list(&self, points: Points, models: u32, record: Option<&UnitRecord>) -> UnitOnList {
        let painted = record.map_or(0, |record| record.stages.at_least(self.0.painted_from));
        UnitOnList {
            points,
            models,
            painted: painted.min(models),
        }
    }

    /// Whether a unit with these stages is painted as a whole.
    pub fn is_painted(&self, stages: ModelStages) -> bool {
        stages.total() > 0 && stages.at_least(self.0.painted_from) == stages.total()
    }

    /// The rules as players read them.
    pub fn sentences(&self) -> Vec<String> {
        let stage = self.0.painted_from.as_str();
        let counting = match self.0.counting {
            PaintCounting::ByModel => "a unit counts pro rata by its painted models",
            PaintCounting::WholeUnits => "a unit counts when all its models are painted",
        };
        let mut sentences = vec![format!(
            "A model is painted when it is {stage}; {counting}. A painted unit stays painted."
        )];
        sentences.extend(self.0.bonuses.iter().map(PaintedBonus::sentence));
        if !self.0.checked_by.is_empty() {
            let who = self.0.checked_by.iter().map(|checker| checker.words());
            let who = who.collect::<Vec<_>>().join(", or ");
            sentences.push(format!("Claims are checked by {who}."));
        }
        sentences
    }
}
