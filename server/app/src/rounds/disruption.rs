//! The disruption of a published round: what the organiser says and what the slips show has changed
//! since it was drawn.

use league::ids::PlayerId;
use league::pairing::history::past::RoundKey;
use league::pairing::round::neutrality::check_own_game;
use league::pairing::round::occupied_tables::OccupiedTables;
use league::pairing::round::orders::Orders;
use league::pairing::round::repair::{Disruption, change_nights};
use league::pairing::{Contender, Night, NightKey, NightSet, Pair};
use league::result::Slip;
use league::season::MAX_TABLES_PER_NIGHT;
use messages::round_refusals;
use store::Conn;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::seasons::Season;
use store::weeks::Week;

use super::build_task::{build_task, parse_nights};
use super::households::household_pairs;
use super::internal_error::internal_error;
use super::neutrality::{conflict, must_give_no_orders, own_player};
use super::occupied_tables::occupied_tables;
use super::propose_round::parse_orders;
use super::repair_round::RepairRound;
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
    before: &RoundRow,
    actor: Actor,
    command: &RepairRound,
) -> Result<Disruption, Refusal> {
    let games: Vec<&GameRow> = loaded
        .games
        .iter()
        .filter(|game| game.week == before.week && game.round_no == before.number)
        .collect();
    must_be_neutral(loaded, &games, actor, command)?;
    let orders = parse_orders(loaded, &command.pins, &command.forbidden)?;
    must_give_no_orders(loaded, actor, &before.task, &orders)?;
    let Orders { pins, forbidden } = orders;
    let week = loaded.week(before.week).ok_or(Refusal::NotFound)?;
    let others = loaded.games.iter();
    let occupied = occupied_tables(week, others.filter(|game| game.round_no != before.number));
    let mut disruption = Disruption {
        nights: occupied.free_tables(night_tables(week, before, command)?),
        availabilities: occupied_nights(before, &occupied),
        reported: reported(before, &games)?,
        pins,
        forbidden,
        ..Disruption::default()
    };
    for (at, (player, keys)) in command.availabilities.iter().enumerate() {
        let pointer = format!("/availabilities/{at}");
        must_be_nights_of(week, keys).map_err(|refusal| refusal.below(&pointer))?;
        if disruption
            .reported
            .iter()
            .any(|game| [game.attacker, game.defender].contains(player))
        {
            let message = round_refusals::game_reported();
            return Err(Refusal::fault(Reason::Validation, &pointer, message));
        }
        let nights = parse_nights(week, keys).difference(occupied.nights_of(*player));
        if before
            .task
            .contenders
            .iter()
            .any(|it| it.player == player.0)
        {
            disruption.availabilities.push((*player, nights));
        } else {
            let newcomer = newcomer(conn, season, loaded, before, (*player, nights)).await?;
            let fault = || {
                Refusal::fault(
                    Reason::Validation,
                    &pointer,
                    round_refusals::not_in_the_season(),
                )
            };
            disruption.newcomers.push(newcomer.ok_or_else(fault)?);
        }
    }
    let apart = newcomers_at_home(season, loaded, before, &disruption.newcomers)?;
    disruption.forbidden.extend(apart);
    Ok(disruption)
}

/// Who lives with a newcomer. Those who were there stay as they were drawn.
fn newcomers_at_home(
    season: &Season,
    loaded: &LoadedSeason,
    before: &RoundRow,
    newcomers: &[Contender],
) -> Result<Vec<Pair>, Refusal> {
    let known = before.task.contenders.iter();
    let known = known.map(|contender| PlayerId(contender.player));
    let there = known.chain(newcomers.iter().map(|it| it.player)).collect();
    let method = policy::parse(season)?.rounds.method();
    let mut pairs = household_pairs(loaded, &there, method);
    pairs.retain(|pair| newcomers.iter().any(|it| pair.contains(it.player)));
    Ok(pairs)
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

/// Players whose nights another round of the week has taken since.
fn occupied_nights(before: &RoundRow, occupied: &OccupiedTables) -> Vec<(PlayerId, NightSet)> {
    let contenders = before.task.contenders.iter();
    contenders
        .filter_map(|contender| {
            let player = PlayerId(contender.player);
            let nights = contender.nights.iter().filter_map(|&n| NightKey::new(n));
            let (could, busy) = (nights.collect::<NightSet>(), occupied.nights_of(player));
            (!busy.is_empty()).then_some((player, could.difference(busy)))
        })
        .collect()
}

/// The nights of the round as they are now.
fn night_tables(
    week: &Week,
    before: &RoundRow,
    command: &RepairRound,
) -> Result<Vec<Night>, Refusal> {
    let drawn = before.task.to_task(league::pairing::Draw([0; 32]));
    let drawn = drawn.map_err(|faults| internal_error(&faults))?.nights;
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
    Ok(change_nights(drawn, changes))
}

/// The published games that somebody has reported.
fn reported(before: &RoundRow, games: &[&GameRow]) -> Result<Vec<league::pairing::Game>, Refusal> {
    let is_reported = |pair: Pair| {
        let mut reported = games.iter().filter(|game| game.slip != Slip::Awaited);
        reported.any(|game| {
            let second = game.meeting.as_ref().map(|meeting| meeting.second);
            second.and_then(|second| Pair::new(game.first, second)) == Some(pair)
        })
    };
    let published = before.proposal.games.iter().map(|game| game.to_game());
    let mut published = published
        .collect::<Result<Vec<_>, messages::Message>>()
        .map_err(|fault| internal_error(&fault))?;
    published.retain(|game| game.pair().is_some_and(is_reported));
    Ok(published)
}

/// Somebody who was not in the round, with what the season knows of them.
async fn newcomer(
    conn: &mut Conn,
    season: &Season,
    loaded: &LoadedSeason,
    before: &RoundRow,
    (player, nights): (PlayerId, NightSet),
) -> Result<Option<Contender>, Refusal> {
    let week = loaded.week(before.week).ok_or(Refusal::NotFound)?;
    let drawn = store::rounds::list(conn, season.key(), None).await?;
    let key = RoundKey {
        week: before.week,
        number: before.number,
    };
    let every = week.nights.iter().map(|night| night.key.clone()).collect();
    let wishes = policy::parse(season)?.pairing;
    let none = Orders::default();
    let all = build_task(loaded, &drawn, key, &[(player, every)], wishes, &none)?.contenders;
    let found = all.into_iter().find(|contender| contender.player == player);
    Ok(found
        .filter(|_| !nights.is_empty())
        .map(|contender| Contender {
            nights,
            ..contender
        }))
}
