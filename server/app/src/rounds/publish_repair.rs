//! A repair takes effect: games it keeps stay, the others are taken out, new ones come in.

use league::result::Slip;
use league::time::Instant;
use messages::round_refusals;
use store::Conn;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::weeks::Week;

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
    let mut gone = Vec::new();
    for old in standing {
        match games.iter().find(|new| same(old, new)) {
            None => {
                must_be_awaited(old)?;
                gone.push(old.id);
            }
            Some(new) => {
                if let Some(place) = new.meeting.as_ref().filter(|_| moved(old, new)) {
                    must_be_awaited(old)?;
                    store::repairs::move_game(conn, key.game(old.id), place).await?;
                }
            }
        }
    }
    store::repairs::delete_games(conn, key, &gone).await?;
    let new: Vec<GameRow> = games
        .iter()
        .filter(|new| !standing.iter().any(|old| same(old, new)))
        .cloned()
        .collect();
    Ok(store::games::create(conn, key, &new).await?)
}

/// The same two players, or the same one sitting out.
fn same(old: &GameRow, new: &GameRow) -> bool {
    old.meeting.is_some() == new.meeting.is_some()
        && new.involves(old.first)
        && old
            .meeting
            .as_ref()
            .is_none_or(|it| new.involves(it.second))
}

fn moved(old: &GameRow, new: &GameRow) -> bool {
    let place = |game: &GameRow| {
        let meeting = game.meeting.as_ref();
        meeting.map(|meeting| (meeting.night.clone(), meeting.table))
    };
    place(old) != place(new)
}

fn must_be_awaited(game: &GameRow) -> Result<(), Refusal> {
    match game.slip {
        Slip::Awaited => Ok(()),
        _ => Err(Refusal::rule(
            Reason::SlipStateChanged,
            round_refusals::repair_stale(),
        )),
    }
}

/// Saves the nights of those whom the repair takes out (an absence with notice) or brings in.
pub(super) async fn save_nights(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    (before, round): (&RoundRow, &RoundRow),
    now: Instant,
) -> Result<(), Refusal> {
    let key = season.key();
    let players = |round: &RoundRow| -> Vec<_> {
        let contenders = round.task.contenders.iter();
        contenders
            .map(|contender| (contender.player, contender.nights.clone()))
            .collect()
    };
    let (was, is) = (players(before), players(round));
    let out = was
        .iter()
        .filter(|(player, _)| !is.iter().any(|(other, _)| other == player));
    let into = is
        .iter()
        .filter(|(player, _)| !was.iter().any(|(other, _)| other == player));
    let told = out
        .map(|(player, _)| (player, Vec::new()))
        .chain(into.map(|(player, nights)| (player, nights.clone())));
    for (player, nights) in told {
        let keys = nights
            .iter()
            .filter_map(|&night| Some(week.nights.get(usize::from(night))?.key.clone()));
        let keys: Vec<String> = keys.collect();
        let player = league::ids::PlayerId(*player);
        store::players::save_availability(conn, key.week(week.week), player, &keys, now).await?;
    }
    Ok(())
}
