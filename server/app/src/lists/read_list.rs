//! Reading a pasted text as a list, saying line by line what was understood. Nothing is saved.

use league::ids::{ClubId, SeasonId};
use league::lists::reader::{self, Reading};
use league::week::WeekNo;

use super::terms::WeekTerms;
use crate::seasons::look::{look, must_play, own_place};
use crate::{Actor, Desk, Reason, Refusal};

/// Most bytes of a text.
pub const MOST_TEXT: usize = 32 * 1024;

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::InvalidText`] for a text of more
/// than [`MOST_TEXT`] bytes.
pub async fn read_list(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    text: &str,
) -> Result<Reading, Refusal> {
    if text.len() > MOST_TEXT {
        let detail = format!("A list as text has at most {MOST_TEXT} bytes.");
        return Err(Refusal::fault(Reason::InvalidText, "/text", detail));
    }
    desk.store
        .read(async |conn| {
            let season = look(conn, Some(actor), club, season).await?.season;
            let player = own_place(conn, actor, &season).await?;
            must_play(&player, week)?;
            let week = store::weeks::find(conn, club, season.id, week).await?;
            let terms = WeekTerms::load(conn, &season, &week, &player).await?;
            let faction = Some(terms.faction());
            Ok(reader::read(text, &terms.catalogue, faction))
        })
        .await
}
