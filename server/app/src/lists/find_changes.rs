//! The difference between a list and the player's previous one.

use document::lists::army_list::ArmyListDocument;
use league::keys::WeekKey;
use league::lists::{ArmyList, ListChange, PreviousList, compare_lists};
use league::week::WeekNo;

use super::terms::{LastList, VersionChange, find_own_terms, parse_list, unreadable};
use crate::{Actor, App, Refusal};

/// A list beside the last one.
#[derive(Clone, Debug)]
pub struct ListChanges {
    /// The week of the last list; `None` when this is the first: then everything is added.
    pub since: Option<WeekNo>,
    /// The last list's units in their order, then those that are new.
    pub changes: Vec<ListChange>,
    /// What another version of the catalogue makes of the last list.
    pub catalogue: Option<VersionChange>,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn find_changes(
    app: &App,
    actor: Actor,
    week: WeekKey,
    list: ArmyListDocument,
) -> Result<ListChanges, Refusal> {
    let list = parse_list(list)?;
    let terms = find_own_terms(app, actor, week).await?;
    let nothing =
        ArmyList::new(list.faction().clone(), Vec::new()).map_err(|fault| unreadable(&fault))?;
    let first = PreviousList {
        list: &nothing,
        catalogue: &terms.catalogue,
    };
    let previous = terms.last.as_ref().map_or(first, LastList::previous);
    Ok(ListChanges {
        since: terms.last.as_ref().map(|last| last.week),
        changes: compare_lists(previous, &list, &terms.catalogue),
        catalogue: terms.version_change(),
    })
}
