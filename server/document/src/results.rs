//! Results of games as JSON: what is typed, the score made of it, outcomes and result slips.

mod outcome;
mod score;
mod sides;
mod slip;

pub use outcome::{NoticeDocument, OutcomeDocument, TypedResultDocument};
pub use score::{
    CountsDocument, GameScoreDocument, ImpossibleDocument, ItemScoreDocument, LegScoreDocument,
    SideCountsDocument, VerdictDocument,
};
pub use sides::{BothDocument, RoleDocument, SideDocument};
pub use slip::{ConfirmationDocument, RulingDocument, SaidDocument, SlipDocument};
