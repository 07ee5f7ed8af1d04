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
    pub part: u32,
    /// Denominator, at least 1.
    #[schema(example = 5, minimum = 1)]
    pub whole: u32,
}

/// A share of nothing at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the whole of a share must be at least 1")]
pub struct EmptyWhole;

impl TryFrom<ShareDocument> for Share {
    type Error = EmptyWhole;

    fn try_from(document: ShareDocument) -> Result<Self, EmptyWhole> {
        Self::new(document.part.into(), document.whole.into()).ok_or(EmptyWhole)
    }
}

impl From<Share> for ShareDocument {
    /// Exact for every share that came from a document; a finer one is rounded down to
    /// billionths.
    fn from(share: Share) -> Self {
        let (part, whole) = share.fraction();
        match (u32::try_from(part), u32::try_from(whole)) {
            (Ok(part), Ok(whole)) => Self { part, whole },
            _ => Self {
                part: u32::try_from(u128::from(part) * 1_000_000_000 / u128::from(whole.max(1)))
                    .unwrap_or(u32::MAX),
                whole: 1_000_000_000,
            },
        }
    }
}
