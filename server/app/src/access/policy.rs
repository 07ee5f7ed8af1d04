//! The rules of a season: checked before they are saved, parsed when they are needed.

use document::season::policy::{Policy, PolicyDocument, SeasonSize};
use league::keys::SeasonKey;
use messages::seasons;
use store::seasons::Season;
use store::weeks::Week;

use crate::{Fault, Reason, Refusal};

/// # Errors
/// [`Reason::Validation`] with every fault of the rules; what they say of weeks and rounds that the
/// season does not have is a fault, too.
pub(crate) fn check(policy: &PolicyDocument, size: SeasonSize) -> Result<(), Refusal> {
    // No error is no fault.
    let mut faults = policy.to_policy().err().unwrap_or_default();
    faults.extend(policy.faults_beyond(size));
    if faults.is_empty() {
        return Ok(());
    }
    let faults = faults.into_iter().map(Fault::from).collect();
    let message = seasons::season_rules_faults();
    Err(Refusal::faults(Reason::Validation, message, faults))
}

/// How many weeks, nights and places a saved season has, to check its rules against.
pub(crate) fn season_size(weeks: &[Week], places: Option<u16>) -> SeasonSize {
    let nights = weeks.iter().map(|week| week.nights.len());
    SeasonSize {
        weeks: weeks.len(),
        // A season without weeks has no nights.
        nights: nights.max().unwrap_or(0),
        places,
    }
}

/// The rules of a season that was saved, and so was checked.
///
/// # Errors
/// [`Refusal::Internal`] when they can no longer be read.
pub fn parse(season: &Season) -> Result<Policy, Refusal> {
    parse_document(season.key(), &season.policy)
}

/// As [`parse`], of the document alone.
pub(super) fn parse_document(
    season: SeasonKey,
    policy: &PolicyDocument,
) -> Result<Policy, Refusal> {
    policy.to_policy().map_err(|faults| {
        Refusal::Internal(format!("rules of season {}: {faults:?}", season.season))
    })
}
