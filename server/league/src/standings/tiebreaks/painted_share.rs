//! Painted share of the player's latest list. Common practice, no source.

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let share = inputs.painted_share.get(player).copied();
    let (part, whole) = share.map_or((0, 1), crate::share::Share::fraction);
    match (i64::try_from(part), i64::try_from(whole)) {
        (Ok(part), Ok(whole)) => Exact::new_raw(part, whole),
        // One bit less of a fraction that fine still orders everything a list can hold.
        _ => Exact::new(
            i64::try_from(part / 2).unwrap_or(i64::MAX),
            i64::try_from(whole / 2).unwrap_or(i64::MAX).max(1),
        ),
    }
}
