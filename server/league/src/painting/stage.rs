//! Painting stages: how far the models of a unit are.

use messages::{Message, painting_faults};

use crate::catalogue::MAX_MODELS;

/// How far one model is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// Built or not, without any paint.
    Bare,
    /// With an undercoat.
    Primed,
    /// Main colours on.
    Coloured,
    /// As the season's painting standard asks, base included.
    Finished,
}

impl Stage {
    /// All stages in order.
    pub const ALL: [Self; 4] = [Self::Bare, Self::Primed, Self::Coloured, Self::Finished];

    /// The word of the trade.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Bare => "bare",
            Self::Primed => "primed",
            Self::Coloured => "coloured",
            Self::Finished => "finished",
        }
    }
}

/// How many models of a unit are at each stage.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct ModelStages([u32; 4]);

/// Why stages cannot be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StageFault {
    pub actual: u32,
}

impl StageFault {
    pub fn message(&self) -> Message {
        painting_faults::claim_fault_models(MAX_MODELS, self.actual)
    }
}

impl ModelStages {
    /// Models at each stage, in the order of [`Stage::ALL`].
    ///
    /// # Errors
    /// [`StageFault`] for no models or more than [`MAX_MODELS`].
    pub fn new(models: [u32; 4]) -> Result<Self, StageFault> {
        let actual = models
            .iter()
            .fold(0, |sum: u32, models| sum.saturating_add(*models));
        if (1..=MAX_MODELS).contains(&actual) {
            Ok(Self(models))
        } else {
            Err(StageFault { actual })
        }
    }

    /// Models at each stage, in the order of [`Stage::ALL`].
    pub fn models(self) -> [u32; 4] {
        self.0
    }

    pub fn total(self) -> u32 {
        self.at_least(Stage::Bare)
    }

    /// Models that are at `stage` or further.
    pub fn at_least(self, stage: Stage) -> u32 {
        let counted = Stage::ALL.into_iter().zip(self.0);
        counted
            .filter(|(at, _)| *at >= stage)
            .map(|(_, models)| models)
            .sum()
    }

    /// Whether some model would be less far than in `before`: paint does not come off. A unit may
    /// grow by bare models.
    pub fn goes_back_from(self, before: Self) -> bool {
        Stage::ALL
            .into_iter()
            .any(|stage| self.at_least(stage) < before.at_least(stage))
    }
}
