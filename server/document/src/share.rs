//! An exact share as a fraction.

use league::share::Share;
use messages::{Message, text_faults};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// `part` of `whole`, exact: 40 % is `{"part": 2, "whole": 5}` or `{"part": 40, "whole": 100}`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ShareDocument {
    /// Numerator.
    #[schema(example = 2)]
    pub part: u64,
    /// Denominator, at least 1.
    #[schema(example = 5, minimum = 1)]
    pub whole: u64,
}

impl TryFrom<ShareDocument> for Share {
    type Error = Message;

    fn try_from(document: ShareDocument) -> Result<Self, Message> {
        let share = Self::new(document.part, document.whole);
        share.ok_or_else(text_faults::text_share_of_nothing)
    }
}

impl From<Share> for ShareDocument {
    fn from(share: Share) -> Self {
        let (part, whole) = share.fraction();
        Self { part, whole }
    }
}
