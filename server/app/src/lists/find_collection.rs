//! A player's collection: every unit brought into the season or sealed in a list, with its paint.

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::lists::{ArmyList, CollectionUnit, build_collection};
use league::painting::{PaintingLog, painted_models};
use league::week::WeekNo;
use store::Conn;
use store::lists::PlayerList;
use store::seasons::Season;

use super::terms::unreadable;
use crate::access::{policy, view_season};
use crate::{Actor, App, Refusal};

/// The units in the order in which they first appeared. A list that is still sealed counts: only its
/// owner sees the collection.
///
/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play.
pub async fn find_collection(
    app: &App,
    actor: Actor,
    season: SeasonKey,
) -> Result<Vec<CollectionUnit>, Refusal> {
    app.store
        .read(async |conn| {
            let season = view_season(conn, Some(actor), season).await?.season;
            let own = store::players::find_by_account(conn, season.key(), actor.account).await?;
            let player = own.ok_or(Refusal::NotFound)?.id;
            Ok(load_collection(conn, &season, player).await?.0)
        })
        .await
}

/// A player's collection, and the painting log behind it.
///
/// # Errors
/// [`Refusal::Internal`] when a stored value can no longer be read.
pub(crate) async fn load_collection(
    conn: &mut Conn,
    season: &Season,
    player: PlayerId,
) -> Result<(Vec<CollectionUnit>, PaintingLog), Refusal> {
    let key = season.key();
    let lists = store::lists::list_by_player(conn, key, player).await?;
    let lists: Vec<(WeekNo, ArmyList)> = lists
        .into_iter()
        .filter_map(sealed)
        .collect::<Result<_, _>>()?;
    let log = store::painting::find_log(conn, key, Some(player)).await?;
    let painting = policy::parse(season)?.painting;
    let painted = painted_models(&painting, player, WeekNo::LAST, &log);
    let lists = lists.iter().map(|(week, list)| (*week, list));
    Ok((build_collection(&log.brought, lists, &painted), log))
}

fn sealed(list: PlayerList) -> Option<Result<(WeekNo, ArmyList), Refusal>> {
    let week = list.week;
    let read = ArmyList::try_from(list.sealed?.list);
    Some(
        read.map(|list| (week, list))
            .map_err(|faults| unreadable(&faults)),
    )
}
