//! Whether a season's rules can be kept at all, before anybody has to keep them.

use document::policy::{Frame, Policy, PolicyDocument};
use league::ids::SeasonId;
use store::seasons::Season;
use store::weeks::Week;

use crate::{Fault, Reason, Refusal};

/// # Errors
/// [`Reason::Validation`] with every fault of the rules; what they say of weeks and rounds that the
/// season does not have is a fault, too.
pub(super) fn check(policy: &PolicyDocument, frame: Frame) -> Result<(), Refusal> {
    let mut faults = policy.read().err().unwrap_or_default();
    faults.extend(policy.beyond(frame));
    if faults.is_empty() {
        return Ok(());
    }
    let faults = faults.into_iter().map(Fault::from).collect();
    let detail = "The rules of the season have faults.";
    Err(Refusal::faults(Reason::Validation, detail, faults))
}

/// The frame of a season that is kept.
pub(super) fn frame(weeks: &[Week], places: Option<u16>) -> Frame {
    let nights = weeks.iter().map(|week| week.nights.len());
    Frame {
        weeks: weeks.len(),
        nights: nights.max().unwrap_or(0),
        places,
    }
}

/// The rules of a season that was saved, and so was checked.
///
/// # Errors
/// [`Refusal::Broken`] when they can no longer be read.
pub(crate) fn read(season: &Season) -> Result<Policy, Refusal> {
    parse(season.id, &season.policy)
}

/// As [`read`].
pub(super) fn parse(season: SeasonId, policy: &PolicyDocument) -> Result<Policy, Refusal> {
    policy
        .read()
        .map_err(|faults| Refusal::Broken(format!("rules of season {season}: {faults:?}")))
}
