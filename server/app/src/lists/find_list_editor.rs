//! The state of the list editor: all that a player needs to write the list of a week, from one
//! snapshot.

use league::keys::WeekKey;
use std::sync::Arc;

use document::lists::army_list::ArmyListDocument;
use league::catalogue::Catalogue;
use league::lists::{ArmyList, CheckReport};
use league::season::WeekPhase;
use store::lists::PlayerList;
use store::players::Player;
use store::weeks::Week;

use super::terms::{VersionChange, WeekTerms, parse_list};
use crate::access::{authorize_player, must_play};
use crate::{Actor, App, Refusal};

#[derive(Clone, Debug)]
pub struct ListEditor {
    pub week: Week,
    pub phase: WeekPhase,
    /// Whose list it is.
    pub player: Player,
    /// What may be fielded.
    pub catalogue: Arc<Catalogue>,
    /// What the player has for this week, if anything.
    pub own: Option<PlayerList>,
    /// The list to go on with.
    pub list: ArmyList,
    /// Where it comes from.
    pub origin: ListOrigin,
    /// What the check says about it.
    pub report: CheckReport,
    /// The list sealed last before this week.
    pub previous: Option<ArmyList>,
    /// What another version of the catalogue makes of that list.
    pub version_change: Option<VersionChange>,
}

/// Where the list in the editor comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListOrigin {
    /// From the draft of this week.
    FromDraft,
    /// From the list sealed for this week.
    FromSealed,
    /// From the list sealed last before this week.
    FromLast,
    Anew,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play,
/// [`Reason::PlayerLeft`](crate::Reason::PlayerLeft) outside the player's weeks.
pub async fn find_list_editor(
    app: &App,
    actor: Actor,
    week: WeekKey,
) -> Result<ListEditor, Refusal> {
    app.store
        .read(async |conn| {
            let (season, player) = authorize_player(conn, actor.account, week.season).await?;
            must_play(&player, week.week)?;
            let week = store::weeks::find(conn, week).await?;
            let now = store::clock::now(conn).await?;
            let own = store::lists::find(conn, season.key.week(week.week), player.id).await?;
            let terms = WeekTerms::load(app, conn, season, week.limits(), &player).await?;
            let previous = terms.last.as_ref().map(|last| last.list.clone());
            let (list, origin) = choose_list(own.as_ref(), previous.as_ref(), &terms)?;
            let report = terms.check(&list);
            let version_change = terms.version_change();
            Ok(ListEditor {
                phase: week.facts.phase(now),
                week,
                player,
                catalogue: terms.catalogue,
                own,
                list,
                origin,
                report,
                previous,
                version_change,
            })
        })
        .await
}

fn choose_list(
    own: Option<&PlayerList>,
    previous: Option<&ArmyList>,
    terms: &WeekTerms,
) -> Result<(ArmyList, ListOrigin), Refusal> {
    let draft = own.and_then(|own| own.draft.clone());
    let sealed = own.and_then(|own| own.sealed.clone());
    Ok(match (draft, sealed, previous) {
        (Some(draft), _, _) => (parse_list(draft)?, ListOrigin::FromDraft),
        (None, Some(sealed), _) => (parse_list(sealed.list)?, ListOrigin::FromSealed),
        (None, None, Some(last)) => (last.clone(), ListOrigin::FromLast),
        (None, None, None) => {
            let nothing = ArmyListDocument {
                faction: terms.faction.to_string(),
                entries: Vec::new(),
            };
            (parse_list(nothing)?, ListOrigin::Anew)
        }
    })
}
