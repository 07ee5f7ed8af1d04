//! Reading a pasted text as a list, saying line by line what was understood. Nothing is saved.

use league::catalogue::key::FactionKey;
use league::ids::{ClubId, SeasonId};
use league::lists::reader::{self, Reading};
use league::lists::{ArmyList, brought_list};
use league::week::WeekNo;

use super::terms::find_own_terms;
use crate::aside::aside;
use crate::seasons::look::find_place;
use crate::{Actor, Desk, Reason, Refusal};

/// Most bytes of a text.
const MOST_TEXT: usize = 32 * 1024;

/// Units of the text that can be those of the player's last list, or of what was brought into the
/// season before the first, get their keys, so that carry-over and paint go on.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::InvalidText`] for a text of more
/// than 32 KiB.
pub async fn read_list(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    text: String,
) -> Result<Reading, Refusal> {
    if text.len() > MOST_TEXT {
        let detail = format!("A list as text has at most {MOST_TEXT} bytes.");
        let refusal = Refusal::fault(Reason::InvalidText, "/text", detail);
        return Err(refusal.with(MOST_TEXT, text.len()));
    }
    let terms = find_own_terms(desk, actor, club, season, week).await?;
    let known = match &terms.last {
        Some(last) => Some(last.list.clone()),
        None => find_brought(desk, actor, club, season, &terms.faction).await?,
    };
    aside(move || {
        let reading = reader::read(&text, &terms.catalogue, Some(&terms.faction));
        match &known {
            Some(known) => reading.continued(known),
            None => reading,
        }
    })
    .await
}

/// What was brought into the season, as a list.
async fn find_brought(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    faction: &FactionKey,
) -> Result<Option<ArmyList>, Refusal> {
    desk.store
        .read(async |conn| {
            let (season, player) = find_place(conn, actor.account, club, season).await?;
            let brought = store::brought::list(conn, club, season.id, Some(player.id)).await?;
            Ok(brought_list(&brought, faction))
        })
        .await
}
