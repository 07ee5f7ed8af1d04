//! Painting: the stages of models, exact painted shares, bonuses, and claims with their checks.

mod bonus;
mod claim;
mod log;
mod models;
mod perceptual_hash;
mod share;
mod stage;
mod week;

use messages::{Message, Value, painting_faults, painting_rules, values};

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
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaintingFault {
    /// Bare and primed models are not painted.
    PaintedFrom,
    /// A bonus of nothing, or beyond reason.
    Amount {
        /// Which bonus, from zero.
        bonus: usize,
        limit: LeaguePoints,
        actual: LeaguePoints,
    },
    /// A threshold of nothing or more than everything.
    Threshold {
        /// Which bonus, from zero.
        bonus: usize,
        actual: Share,
    },
    /// Tiers do not rise.
    Tiers {
        /// Which bonus, from zero.
        bonus: usize,
        /// The tier that does not.
        from: Share,
    },
    /// A step of no army points.
    Step {
        /// Which bonus, from zero.
        bonus: usize,
    },
    /// A bonus could never be checked.
    NobodyChecks,
}

impl PaintingFault {
    pub fn message(&self) -> Message {
        match *self {
            Self::PaintedFrom => painting_faults::painting_fault_painted_from(),
            Self::Amount { limit, actual, .. } => {
                painting_faults::painting_fault_amount(limit, actual)
            }
            Self::Threshold { actual, .. } => painting_faults::painting_fault_threshold(actual),
            Self::Tiers { from, .. } => painting_faults::painting_fault_tiers(from),
            Self::Step { .. } => painting_faults::painting_fault_step(),
            Self::NobodyChecks => painting_faults::painting_fault_nobody_checks(),
        }
    }
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
    pub fn messages(&self) -> Vec<Message> {
        let terms = &self.0;
        let stage = terms.painted_from.as_str();
        let mut messages = vec![painting_rules::painting_rule_painted(stage, terms.counting)];
        messages.extend(terms.bonuses.iter().map(PaintedBonus::message));
        if !terms.checked_by.is_empty() {
            let checkers = terms.checked_by.iter().map(|checker| checker.message());
            let checkers = Value::joined(checkers, values::comma_or);
            messages.push(painting_rules::painting_rule_checked(checkers));
        }
        messages
    }
}
