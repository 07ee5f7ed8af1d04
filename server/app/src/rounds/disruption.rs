//! The disruption of a published round: what the organiser says and what the slips show has changed
//! since it was drawn.

use league::ids::PlayerId;
use league::pairing::history::past::RoundKey;
use league::pairing::round::households::pairs_of_newcomers;
use league::pairing::round::neutrality::check_own_game;
use league::pairing::round::orders::Orders;
use league::pairing::round::repair::{Disruption, change_nights, reported_games};
use league::pairing::{Contender, Night, NightKey, NightSet, Pair, Task};
use league::result::Slip;
use league::season::MAX_TABLES_PER_NIGHT;
use messages::round_refusals;
use store::Conn;
use store::games::GameRow;
use store::seasons::Season;
use store::weeks::Week;

use super::build_task::{build_task, parse_nights};
use super::households::household_pairs;
use super::neutrality::{conflict, must_give_no_orders, own_player};
use super::occupied_tables::occupied_tables;
use super::propose_round::parse_orders;
use super::repair_round::{RepairRound, StandingRound};
use crate::access::policy;
use crate::loaded_season::LoadedSeason;
use crate::seasons::must_be_nights_of;
use crate::{Actor, Reason, Refusal};

/// # Errors
/// [`Reason::Validation`] for nights and players that are not there or a player whose game is
/// reported, [`Reason::ConflictOfInterest`] for orders about a round that one plays in, and for taking
/// out oneself or one's opponent.
pub(super) async fn gather_disruption(
    conn: &mut Conn,
    season: &Season,
    loaded: &LoadedSeason,
    before: StandingRound<'_>,
    actor: Actor,
    command: &RepairRound,
) -> Result<Disruption, Refusal> {
    let RoundKey { week, number } = before.key();
    let of_week = || loaded.games.iter().filter(|game| game.week == week);
    let games: Vec<&GameRow> = of_week().filter(|game| game.round_no == number).collect();
    must_be_neutral(loaded, &games, actor, command)?;
    let orders = parse_orders(loaded, &command.pins, &command.forbidden)?;
    must_give_no_orders(loaded, actor, &before.row.task, &orders)?;
    let Orders { pins, forbidden } = orders;
    let week = loaded.week(week).ok_or(Refusal::NotFound)?;
    let others = of_week().filter(|game| game.round_no != number);
    let occupied = occupied_tables(week, others)?;
    let contenders = &before.drawn.contenders;
    let drawn = contenders.iter().map(|it| (it.player, it.nights));
    let mut disruption = Disruption {
        nights: occupied.free_tables(night_tables(week, before.drawn, command)?),
        availabilities: occupied.nights_left(drawn),
        reported: reported_games(before.published, &reported_pairs(&games)),
        pins,
        forbidden,
        ..Disruption::default()
    };
    for (at, (player, keys)) in command.availabilities.iter().enumerate() {
        let pointer = format!("/availabilities/{at}");
        let fault = |message| Refusal::fault(Reason::Validation, &pointer, message);
        must_be_nights_of(week, keys).map_err(|refusal| refusal.below(&pointer))?;
        let not_reported = disruption.check_not_reported(*player);
        not_reported.map_err(|reported| fault(reported.message()))?;
        let nights = parse_nights(week, keys).difference(occupied.nights_of(*player));
        if contenders.iter().any(|it| it.player == *player) {
            disruption.availabilities.push((*player, nights));
        } else {
            let newcomer = newcomer(conn, season, loaded, before.key(), (*player, nights)).await?;
            let newcomer = newcomer.ok_or_else(|| fault(round_refusals::not_in_the_season()))?;
            disruption.newcomers.push(newcomer);
        }
    }
    let apart = newcomers_at_home(season, loaded, contenders, &disruption.newcomers)?;
    disruption.forbidden.extend(apart);
    Ok(disruption)
}

/// Who lives with a newcomer.
fn newcomers_at_home(
    season: &Season,
    loaded: &LoadedSeason,
    drawn: &[Contender],
    newcomers: &[Contender],
) -> Result<Vec<Pair>, Refusal> {
    let there = drawn.iter().chain(newcomers).map(|it| it.player).collect();
    let method = policy::parse(season)?.rounds.method();
    let pairs = household_pairs(loaded, &there, method);
    let newcomers: Vec<PlayerId> = newcomers.iter().map(|it| it.player).collect();
    Ok(pairs_of_newcomers(pairs, &newcomers))
}

fn must_be_neutral(
    loaded: &LoadedSeason,
    games: &[&GameRow],
    actor: Actor,
    command: &RepairRound,
) -> Result<(), Refusal> {
    let Some(own) = own_player(loaded, actor) else {
        return Ok(());
    };
    let mut own_game = vec![own];
    if let Some(game) = games.iter().find(|game| game.involves(own)) {
        own_game.push(game.first);
        own_game.extend(game.meeting.as_ref().map(|meeting| meeting.second));
    }
    let named = command.availabilities.iter().map(|&(player, _)| player);
    check_own_game(&own_game, named).map_err(conflict)
}

/// The nights of the round as they are now.
fn night_tables(week: &Week, drawn: &Task, command: &RepairRound) -> Result<Vec<Night>, Refusal> {
    let mut changes = Vec::new();
    for (at, (key, tables)) in command.nights.iter().enumerate() {
        let number = week.nights.iter().position(|night| night.key == *key);
        let known = number.and_then(|number| NightKey::new(u8::try_from(number).ok()?));
        let Some(night) = known.filter(|_| *tables <= MAX_TABLES_PER_NIGHT) else {
            let message = round_refusals::hall_night(MAX_TABLES_PER_NIGHT);
            let pointer = format!("/nights/{at}");
            return Err(Refusal::fault(Reason::Validation, &pointer, message));
        };
        changes.push((night, *tables));
    }
    Ok(change_nights(drawn.nights.clone(), changes))
}

/// Who has reported a game.
fn reported_pairs(games: &[&GameRow]) -> Vec<Pair> {
    let reported = games.iter().filter(|game| game.slip != Slip::Awaited);
    let pair = |game: &&GameRow| Pair::new(game.first, game.meeting.as_ref()?.second);
    reported.filter_map(pair).collect()
}

/// Somebody who was not in the round, with what the season knows of them.
async fn newcomer(
    conn: &mut Conn,
    season: &Season,
    loaded: &LoadedSeason,
    round: RoundKey,
    (player, nights): (PlayerId, NightSet),
) -> Result<Option<Contender>, Refusal> {
    let week = loaded.week(round.week).ok_or(Refusal::NotFound)?;
    let drawn = store::rounds::list(conn, season.key(), None).await?;
    let every = week.nights.iter().map(|night| night.key.clone()).collect();
    let wishes = policy::parse(season)?.pairing;
    let none = Orders::default();
    let all = build_task(loaded, &drawn, round, &[(player, every)], wishes, &none)?.contenders;
    let found = all.into_iter().find(|contender| contender.player == player);
    Ok(found
        .filter(|_| !nights.is_empty())
        .map(|contender| Contender {
            nights,
            ..contender
        }))
}
