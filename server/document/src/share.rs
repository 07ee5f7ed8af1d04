//! An exact share as a fraction.

use league::share::Share;
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

/// A share of nothing at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the whole of a share must be at least 1")]
pub struct EmptyWhole;

impl TryFrom<ShareDocument> for Share {
    type Error = EmptyWhole;

    fn try_from(document: ShareDocument) -> Result<Self, EmptyWhole> {
        Self::new(document.part, document.whole).ok_or(EmptyWhole)
    }
}

impl From<Share> for ShareDocument {
    fn from(share: Share) -> Self {
        let (part, whole) = share.fraction();
        Self { part, whole }
    }
}
