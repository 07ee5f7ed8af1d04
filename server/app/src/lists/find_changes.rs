//! What a list changes against the player's last one.

use document::list::ArmyListDocument;
use league::catalogue::diff::Touched;
use league::ids::{ClubId, SeasonId};
use league::lists::{ArmyList, Change, Previous, changes};
use league::week::WeekNo;

use super::terms::{LastList, broken, find_own_terms, read};
use crate::{Actor, Desk, Refusal};

/// A list beside the last one.
#[derive(Clone, Debug)]
pub struct ListChanges {
    /// The week of the last list; `None` when this is the first: then everything is added.
    pub since: Option<WeekNo>,
    /// The last list's units in their order, then those that are new.
    pub changes: Vec<Change>,
    /// What another version of the catalogue makes of the last list.
    pub catalogue: Option<VersionChange>,
}

/// The weeks of two lists are pinned to different versions of the catalogue.
#[derive(Clone, Debug)]
pub struct VersionChange {
    /// The version of the last list.
    pub before: i32,
    /// The version of this week.
    pub now: i32,
    /// The last list's entries whose points or availability differ.
    pub touched: Vec<Touched>,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn find_changes(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<ListChanges, Refusal> {
    let list = read(list)?;
    let terms = find_own_terms(desk, actor, club, season, week).await?;
    let nothing =
        ArmyList::new(list.faction().clone(), Vec::new()).map_err(|fault| broken(&fault))?;
    let first = Previous {
        list: &nothing,
        catalogue: &terms.catalogue,
    };
    let previous = terms.last.as_ref().map_or(first, LastList::previous);
    Ok(ListChanges {
        since: terms.last.as_ref().map(|last| last.week),
        changes: changes(previous, &list, &terms.catalogue),
        catalogue: terms.version_change(),
    })
}
