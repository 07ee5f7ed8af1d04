//! All that a player needs to write the list of a week, from one snapshot.

use std::sync::Arc;

use document::list::ArmyListDocument;
use league::catalogue::Catalogue;
use league::ids::{ClubId, SeasonId};
use league::lists::{ArmyList, Report};
use league::season::Phase;
use league::week::WeekNo;
use store::lists::PlayerList;
use store::players::Player;
use store::weeks::Week;

use super::find_changes::VersionChange;
use super::terms::{WeekTerms, read};
use crate::seasons::look::{find_place, must_play};
use crate::{Actor, Desk, Refusal};

/// What lies before a player who writes a list.
#[derive(Clone, Debug)]
pub struct ListDesk {
    /// The week.
    pub week: Week,
    /// Where it stands.
    pub phase: Phase,
    /// Whose list it is.
    pub player: Player,
    /// What may be fielded.
    pub catalogue: Arc<Catalogue>,
    /// What the player has for this week, if anything.
    pub own: Option<PlayerList>,
    /// The list to go on with.
    pub list: ArmyList,
    /// Where it comes from.
    pub begun: Begun,
    /// What the check says about it.
    pub report: Report,
    /// The list sealed last before this week.
    pub previous: Option<ArmyList>,
    /// What another version of the catalogue makes of that list.
    pub version_change: Option<VersionChange>,
}

/// Where a list to go on with comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Begun {
    /// From the draft of this week.
    FromDraft,
    /// From the list sealed for this week.
    FromSealed,
    /// From the list sealed last before this week.
    FromLast,
    /// From nothing.
    Anew,
}

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play,
/// [`Reason::PlayerLeft`](crate::Reason::PlayerLeft) outside the player's weeks.
pub async fn find_list_desk(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<ListDesk, Refusal> {
    desk.store
        .read(async |conn| {
            let (season, player) = find_place(conn, actor.account, club, season).await?;
            must_play(&player, week)?;
            let week = store::weeks::find(conn, club, season.id, week).await?;
            let now = store::clock::now(conn).await?;
            let own = store::lists::find(conn, club, season.id, week.week, player.id).await?;
            let terms = WeekTerms::load(desk, conn, season, week.bounds(), &player).await?;
            let previous = terms.last.as_ref().map(|last| last.list.clone());
            let (list, begun) = begin(own.as_ref(), previous.as_ref(), &terms)?;
            let report = terms.check(&list);
            let version_change = terms.version_change();
            Ok(ListDesk {
                phase: week.facts.phase(now),
                week,
                player,
                catalogue: terms.catalogue,
                own,
                list,
                begun,
                report,
                previous,
                version_change,
            })
        })
        .await
}

fn begin(
    own: Option<&PlayerList>,
    previous: Option<&ArmyList>,
    terms: &WeekTerms,
) -> Result<(ArmyList, Begun), Refusal> {
    let draft = own.and_then(|own| own.draft.clone());
    let sealed = own.and_then(|own| own.sealed.clone());
    Ok(match (draft, sealed, previous) {
        (Some(draft), _, _) => (read(draft)?, Begun::FromDraft),
        (None, Some(sealed), _) => (read(sealed.list)?, Begun::FromSealed),
        (None, None, Some(last)) => (last.clone(), Begun::FromLast),
        (None, None, None) => {
            let nothing = ArmyListDocument {
                faction: terms.faction.to_string(),
                entries: Vec::new(),
            };
            (read(nothing)?, Begun::Anew)
        }
    })
}
