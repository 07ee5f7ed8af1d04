//! Units and upgrades that still fit into a list without breaking a further rule.

use document::lists::army_list::ArmyListDocument;
use league::keys::WeekKey;
use league::lists::{self, Fits};

use super::terms::{find_own_terms, parse_list};
use crate::run_blocking::run_blocking;
use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn find_fits(
    app: &App,
    actor: Actor,
    week: WeekKey,
    list: ArmyListDocument,
) -> Result<Fits, Refusal> {
    let list = parse_list(list)?;
    let terms = find_own_terms(app, actor, week).await?;
    run_blocking(move || lists::find_fits(&list, &terms.catalogue, &terms.terms())).await
}
