//! A player's own collection: every unit of the lists handed in, with its paint.

use league::ids::{ClubId, SeasonId};
use league::lists::{ArmyList, CollectionUnit, collection};
use league::painting::painted_models;
use league::week::WeekNo;
use store::lists::PlayerList;

use super::terms::broken;
use crate::seasons::look::look;
use crate::seasons::policy;
use crate::{Actor, Desk, Refusal};

/// The units in the order in which they first appeared. A list that is still sealed counts: only its
/// owner sees the collection.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play.
pub async fn find_collection(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
) -> Result<Vec<CollectionUnit>, Refusal> {
    desk.store
        .read(async |conn| {
            let season = look(conn, Some(actor), club, season).await?.season;
            let id = season.id;
            let player = store::players::find_by_account(conn, club, id, actor.account).await?;
            let player = player.ok_or(Refusal::NotFound)?.id;
            let lists = store::lists::list_of_player(conn, club, id, player).await?;
            let lists: Vec<(WeekNo, ArmyList)> = lists
                .into_iter()
                .filter_map(sealed)
                .collect::<Result<_, _>>()?;
            let claims = store::painting::list(conn, club, id, Some(player)).await?;
            let painting = policy::read(&season)?.painting;
            let painted = painted_models(&painting, WeekNo::LAST, &claims);
            Ok(collection(
                lists.iter().map(|(week, list)| (*week, list)),
                &painted,
            ))
        })
        .await
}

fn sealed(list: PlayerList) -> Option<Result<(WeekNo, ArmyList), Refusal>> {
    let week = list.week;
    let read = ArmyList::try_from(list.sealed?.list);
    Some(
        read.map(|list| (week, list))
            .map_err(|faults| broken(&faults)),
    )
}
