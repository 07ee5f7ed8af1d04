//! Painting rules and the stages of models as JSON.

use league::painting::{
    Checker, FinishedMeasure, ModelStages, PaintCounting, PaintedBonus, Painting, PaintingFault,
    PaintingTerms, Stage, StageFault, Tier,
};
use league::points::{LeaguePoints, Points};
use league::share::Share;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::{DocumentFault, ok_or_note};
use crate::mirror_enum::mirror_enum;
use crate::share::ShareDocument;

/// A season's painting rules.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PaintingDocument {
    /// The stage from which a model counts as painted: `coloured` or `finished`.
    pub painted_from: StageDocument,
    /// How a unit counts that is painted in part.
    pub counting: CountingDocument,
    /// What painting is worth.
    #[serde(default)]
    pub bonuses: Vec<PaintedBonusDocument>,
    /// Who may check a claim.
    #[serde(default)]
    pub checked_by: Vec<CheckerDocument>,
}

mirror_enum! {
    /// How far a model is.
    StageDocument is Stage {
        /// Without any paint.
        Bare,
        /// With an undercoat.
        Primed,
        /// Main colours on.
        Coloured,
        /// As the season's painting standard asks.
        Finished,
    }
}

mirror_enum! {
    /// How a unit counts that is painted in part.
    CountingDocument is PaintCounting {
        /// Pro rata by painted models.
        ByModel,
        /// All or nothing.
        WholeUnits,
    }
}

mirror_enum! {
    /// Who may check a claim.
    CheckerDocument is Checker {
        /// The opponent of that week, at the table.
        Opponent,
        /// A referee, with the models in hand.
        Referee,
        /// A referee, by a photo.
        Photo,
    }
}

/// One painted bonus.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum PaintedBonusDocument {
    /// All at once when the painted share reaches a threshold.
    AtThreshold {
        /// The threshold.
        share: ShareDocument,
        /// What it gives.
        points: i32,
    },
    /// The highest tier that the painted share reaches.
    Tiers {
        /// From the lowest share upwards.
        tiers: Vec<TierDocument>,
    },
    /// In proportion to the painted share, rounded down.
    Proportional {
        /// For a list painted as a whole.
        for_all: i32,
    },
    /// For what was newly finished this week.
    NewlyFinished {
        /// What is counted.
        counted: YardstickDocument,
        /// For each.
        each: i32,
        /// Most of a week.
        most: i32,
    },
}

/// One tier.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TierDocument {
    /// Painted share from which it holds.
    pub from: ShareDocument,
    /// What it gives.
    pub points: i32,
}

/// What newly finished things are counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum YardstickDocument {
    /// Whole units.
    Units,
    /// Every so many army points.
    Points {
        /// The step.
        step: u32,
    },
}

/// How many models of a unit are at each stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ModelStagesDocument {
    /// Without any paint.
    #[serde(default)]
    pub bare: u32,
    /// With an undercoat.
    #[serde(default)]
    pub primed: u32,
    /// Main colours on.
    #[serde(default)]
    pub coloured: u32,
    /// As the season's painting standard asks.
    #[serde(default)]
    pub finished: u32,
}

impl TryFrom<ModelStagesDocument> for ModelStages {
    type Error = StageFault;

    fn try_from(document: ModelStagesDocument) -> Result<Self, StageFault> {
        let ModelStagesDocument {
            bare,
            primed,
            coloured,
            finished,
        } = document;
        Self::new([bare, primed, coloured, finished])
    }
}

impl From<ModelStages> for ModelStagesDocument {
    fn from(stages: ModelStages) -> Self {
        let [bare, primed, coloured, finished] = stages.models();
        Self {
            bare,
            primed,
            coloured,
            finished,
        }
    }
}

impl TryFrom<PaintingDocument> for Painting {
    type Error = Vec<DocumentFault>;

    fn try_from(document: PaintingDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let bonuses = document.bonuses.iter().enumerate();
        let bonuses: Vec<_> = bonuses
            .filter_map(|(i, bonus)| read_bonus(bonus, &format!("/bonuses/{i}"), &mut faults))
            .collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        Self::build(PaintingTerms {
            painted_from: document.painted_from.into(),
            counting: document.counting.into(),
            bonuses,
            checked_by: document.checked_by.into_iter().map(Into::into).collect(),
        })
        .map_err(|faults| faults.iter().map(locate).collect())
    }
}

fn locate(fault: &PaintingFault) -> DocumentFault {
    let pointer = match fault {
        PaintingFault::PaintedFrom => "/painted_from".to_owned(),
        PaintingFault::NobodyChecks => "/checked_by".to_owned(),
        PaintingFault::Amount { bonus, .. }
        | PaintingFault::Threshold { bonus, .. }
        | PaintingFault::Tiers { bonus, .. }
        | PaintingFault::Step { bonus } => format!("/bonuses/{bonus}"),
    };
    let measured = match *fault {
        PaintingFault::Amount { limit, actual, .. } => {
            let (most, actual) = (i64::from(limit.get()), i64::from(actual.get()));
            Some((actual.clamp(1, most), actual))
        }
        _ => None,
    };
    DocumentFault::new(pointer, fault.code(), fault.message()).with_limit_if_any(measured)
}

fn read_bonus(
    document: &PaintedBonusDocument,
    at: &str,
    faults: &mut Vec<DocumentFault>,
) -> Option<PaintedBonus> {
    let mut share = |pointer: String, document: ShareDocument| {
        ok_or_note(faults, pointer, "painting.share", Share::try_from(document))
    };
    let points = LeaguePoints::new;
    Some(match document {
        PaintedBonusDocument::AtThreshold {
            share: threshold,
            points: value,
        } => PaintedBonus::AtThreshold {
            share: share(format!("{at}/share"), *threshold)?,
            points: points(*value),
        },
        PaintedBonusDocument::Tiers { tiers } => {
            let tiers = tiers.iter().enumerate().map(|(i, tier)| {
                let from = share(format!("{at}/tiers/{i}/from"), tier.from)?;
                let points = points(tier.points);
                Some(Tier { from, points })
            });
            let tiers: Vec<_> = tiers.collect();
            PaintedBonus::Tiers(tiers.into_iter().collect::<Option<_>>()?)
        }
        PaintedBonusDocument::Proportional { for_all } => PaintedBonus::Proportional {
            for_all: points(*for_all),
        },
        PaintedBonusDocument::NewlyFinished {
            counted,
            each,
            most,
        } => PaintedBonus::NewlyFinished {
            counted: match counted {
                YardstickDocument::Units => FinishedMeasure::Units,
                YardstickDocument::Points { step } => FinishedMeasure::Points {
                    step: Points::new(*step),
                },
            },
            each: points(*each),
            most: points(*most),
        },
    })
}

impl From<&Painting> for PaintingDocument {
    fn from(painting: &Painting) -> Self {
        let terms = painting.terms();
        Self {
            painted_from: terms.painted_from.into(),
            counting: terms.counting.into(),
            bonuses: terms.bonuses.iter().map(Into::into).collect(),
            checked_by: terms
                .checked_by
                .iter()
                .map(|&checker| checker.into())
                .collect(),
        }
    }
}

impl From<&PaintedBonus> for PaintedBonusDocument {
    fn from(bonus: &PaintedBonus) -> Self {
        match bonus {
            PaintedBonus::AtThreshold { share, points } => Self::AtThreshold {
                share: (*share).into(),
                points: points.get(),
            },
            PaintedBonus::Tiers(tiers) => Self::Tiers {
                tiers: tiers
                    .iter()
                    .map(|tier| TierDocument {
                        from: tier.from.into(),
                        points: tier.points.get(),
                    })
                    .collect(),
            },
            PaintedBonus::Proportional { for_all } => Self::Proportional {
                for_all: for_all.get(),
            },
            PaintedBonus::NewlyFinished {
                counted,
                each,
                most,
            } => Self::NewlyFinished {
                counted: match counted {
                    FinishedMeasure::Units => YardstickDocument::Units,
                    FinishedMeasure::Points { step } => {
                        YardstickDocument::Points { step: step.get() }
                    }
                },
                each: each.get(),
                most: most.get(),
            },
        }
    }
}
