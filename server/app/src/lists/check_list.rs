//! Checking a list without saving anything: as often as a player types.

use document::list::ArmyListDocument;
use league::ids::{ClubId, SeasonId};
use league::lists::Report;
use league::week::WeekNo;

use super::terms::{WeekTerms, read};
use crate::seasons::look::{look, must_play, own_place};
use crate::{Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play; [`Reason::Validation`](crate::Reason) for
/// a list that is none.
pub async fn check_list(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    list: ArmyListDocument,
) -> Result<Report, Refusal> {
    let list = read(list)?;
    desk.store
        .read(async |conn| {
            let season = look(conn, Some(actor), club, season).await?.season;
            let player = own_place(conn, actor, &season).await?;
            must_play(&player, week)?;
            let week = store::weeks::find(conn, club, season.id, week).await?;
            Ok(WeekTerms::load(conn, &season, &week, &player)
                .await?
                .check(&list))
        })
        .await
}
