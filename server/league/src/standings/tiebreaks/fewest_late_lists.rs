//! Number of lists that came after their deadline; fewer is better. Common practice, no source.

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let late = inputs.late_lists.get(player).copied().unwrap_or_default();
    Exact::from_integer(i64::try_from(late).unwrap_or(i64::MAX))
}
