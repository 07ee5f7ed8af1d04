//! Which lists of a week are open: those of the players who had not withdrawn when the lists were
//! opened.

use league::ids::PlayerId;
use league::keys::WeekKey;
use league::season::is_list_opened;
use league::time::Instant;
use league::week::WeekNo;
use store::Conn;
use store::lists::PlayerList;
use store::players::Player;
use store::weeks::Week;

use crate::Refusal;

/// Whether the list that somebody has for a week, if there is one, is opened.
pub(crate) fn is_list_open(
    weeks: &[Week],
    players: &[Player],
    (week, owner): (WeekNo, PlayerId),
) -> bool {
    let week = weeks.iter().find(|known| known.week == week);
    let opened_at = week.and_then(|week| week.facts.lists_opened_at);
    let owner = players.iter().find(|player| player.id == owner);
    opened_at
        .zip(owner)
        .is_some_and(|(at, owner)| is_list_opened(owner.left_at, at))
}

/// The lists that were opened at `opened_at`, in the order of the players' identities.
///
/// # Errors
/// A fault of the database.
pub(crate) async fn list_opened_lists(
    conn: &mut Conn,
    week: WeekKey,
    opened_at: Instant,
) -> Result<Vec<PlayerList>, Refusal> {
    let mut lists = store::lists::list_by_week(conn, week).await?;
    let mut players = store::players::list(conn, week.season).await?;
    players.retain(|player| !is_list_opened(player.left_at, opened_at));
    lists.retain(|list| list.sealed.is_some());
    lists.retain(|list| players.iter().all(|gone| gone.id != list.player));
    Ok(lists)
}
