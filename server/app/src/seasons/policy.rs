//! Whether a season's rules can be kept at all, before anybody has to keep them.

use document::policy::{Policy, PolicyDocument};
use league::ids::SeasonId;
use store::seasons::Season;

use crate::{Fault, Reason, Refusal};

/// # Errors
/// [`Reason::Validation`] with every fault of the rules.
pub(super) fn check(policy: &PolicyDocument) -> Result<(), Refusal> {
    policy.read().map(|_| ()).map_err(|faults| {
        let faults = faults.into_iter().map(Fault::from).collect();
        Refusal::faults(
            Reason::Validation,
            "The rules of the season have faults.",
            faults,
        )
    })
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
