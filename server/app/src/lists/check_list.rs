//! Checking a list while the player types. Nothing is saved.

use document::lists::army_list::ArmyListDocument;
use league::keys::WeekKey;
use league::lists::{CheckReport, Cut, find_cuts};

use super::terms::{find_own_terms, parse_list};
use crate::run_blocking::run_blocking;
use crate::{Actor, App, Refusal};

#[derive(Clone, Debug)]
pub struct CheckedList {
    /// The total and every finding.
    pub report: CheckReport,
    /// Single steps that would bring it under the cap; none when it is under it.
    pub cuts: Vec<Cut>,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn check_list(
    app: &App,
    actor: Actor,
    week: WeekKey,
    list: ArmyListDocument,
) -> Result<CheckedList, Refusal> {
    let list = parse_list(list)?;
    let terms = find_own_terms(app, actor, week).await?;
    run_blocking(move || CheckedList {
        report: terms.check(&list),
        cuts: find_cuts(&list, &terms.catalogue, &terms.terms()),
    })
    .await
}
