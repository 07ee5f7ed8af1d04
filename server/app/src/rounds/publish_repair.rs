//! A repair takes effect: games it keeps stay, the others are taken out, new ones come in.

use document::repair::RepairDocument;
use league::ids::RoundId;
use league::result::Slip;
use league::time::Instant;
use store::Conn;
use store::games::Game;
use store::rounds::Round;
use store::seasons::Season;
use store::weeks::Week;

use crate::{Reason, Refusal};

/// # Errors
/// [`Reason::SlipStateChanged`] when a game that would change is reported.
pub(super) async fn publish_repair(
    conn: &mut Conn,
    season: &Season,
    standing: &[Game],
    games: &[Game],
) -> Result<(), Refusal> {
    let (club, id) = (season.club, season.id);
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
                    store::repairs::move_game(conn, club, id, old.id, place).await?;
                }
            }
        }
    }
    store::repairs::delete_games(conn, club, id, &gone).await?;
    let new: Vec<Game> = games
        .iter()
        .filter(|new| !standing.iter().any(|old| same(old, new)))
        .cloned()
        .collect();
    Ok(store::games::create(conn, club, id, &new).await?)
}

/// The same two players, or the same one sitting out.
fn same(old: &Game, new: &Game) -> bool {
    old.meeting.is_some() == new.meeting.is_some()
        && new.has(old.first)
        && old.meeting.as_ref().is_none_or(|it| new.has(it.second))
}

fn moved(old: &Game, new: &Game) -> bool {
    let place = |game: &Game| {
        let meeting = game.meeting.as_ref();
        meeting.map(|meeting| (meeting.night.clone(), meeting.table))
    };
    place(old) != place(new)
}

fn must_be_awaited(game: &Game) -> Result<(), Refusal> {
    match game.slip {
        Slip::Awaited => Ok(()),
        _ => Err(Refusal::rule(
            Reason::SlipStateChanged,
            "A game that this repair changes has been reported. Repair the round anew.",
        )),
    }
}

/// Who is out has said so in time; who came in can come.
pub(super) async fn tell_nights(
    conn: &mut Conn,
    season: &Season,
    week: &Week,
    round: &Round,
    repair: &RepairDocument,
    now: Instant,
) -> Result<(), Refusal> {
    let (club, id) = (season.club, season.id);
    let before = store::rounds::find(conn, club, id, RoundId(repair.of)).await?;
    let players = |round: &Round| -> Vec<_> {
        let contenders = round.task.contenders.iter();
        contenders
            .map(|contender| (contender.player, contender.nights.clone()))
            .collect()
    };
    let (was, is) = (players(&before), players(round));
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
        store::players::tell_availability(conn, club, id, week.week, player, &keys, now).await?;
    }
    Ok(())
}
