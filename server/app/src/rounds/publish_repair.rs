//! A repair takes effect: games it keeps stay, the others are taken out, new ones come in.

use league::ids::PlayerId;
use league::pairing::NightSet;
use league::pairing::round::changes::changed_nights;
use league::pairing::round::game_changes::{GamePlace, RoundGame, StaleRepair, change_games};
use league::result::Slip;
use league::time::Instant;
use store::Conn;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::weeks::Week;

use super::repair_round::drawn_task;
use crate::{Reason, Refusal};

/// # Errors
/// [`Reason::SlipStateChanged`] when a game that would change is reported.
pub(super) async fn publish_repair(
    conn: &mut Conn,
    season: &Season,
    standing: &[GameRow],
    games: &[GameRow],
) -> Result<(), Refusal> {
    let key = season.key();
    let before: Vec<RoundGame<'_>> = standing.iter().map(round_game).collect();
    let after: Vec<RoundGame<'_>> = games.iter().map(round_game).collect();
    let changes = change_games(&before, &after).map_err(stale)?;
    for (game, place) in changes.moved {
        store::repairs::move_game(conn, key.game(game), place.night, place.table).await?;
    }
    store::repairs::delete_games(conn, key, &changes.gone).await?;
    let new = games.iter().filter(|game| changes.new.contains(&game.id));
    let new: Vec<GameRow> = new.cloned().collect();
    Ok(store::games::create(conn, key, &new).await?)
}

fn round_game(game: &GameRow) -> RoundGame<'_> {
    RoundGame {
        id: game.id,
        first: game.first,
        meeting: game.meeting.as_ref().map(|meeting| {
            let place = GamePlace {
                night: &meeting.night,
                table: meeting.table,
            };
            (meeting.second, place)
        }),
        is_reported: game.slip != Slip::Awaited,
    }
}

fn stale(fault: StaleRepair) -> Refusal {
    Refusal::rule(Reason::SlipStateChanged, fault.message())
}

/// Saves the nights of those whom the repair takes out or brings in.
///
/// # Errors
/// [`Refusal::Internal`] when a round that was kept cannot be read, or has a night that its week does not have.
pub(super) async fn save_nights(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    (before, round): (&RoundRow, &RoundRow),
    now: Instant,
) -> Result<(), Refusal> {
    let key = season.key().week(week.week);
    for (player, nights) in changed_nights(&drawn_nights(before)?, &drawn_nights(round)?) {
        let name = |night: league::pairing::NightKey| {
            let number = night.number();
            let night = week.nights.get(usize::from(number));
            let name = night.map(|night| night.key.clone());
            name.ok_or_else(|| Refusal::Internal(format!("round {} has night {number}", round.id)))
        };
        let names: Vec<String> = nights.iter().map(name).collect::<Result<_, _>>()?;
        store::players::save_availability(conn, key, player, &names, now).await?;
    }
    Ok(())
}

fn drawn_nights(round: &RoundRow) -> Result<Vec<(PlayerId, NightSet)>, Refusal> {
    let contenders = drawn_task(round)?.contenders.into_iter();
    Ok(contenders.map(|it| (it.player, it.nights)).collect())
}
