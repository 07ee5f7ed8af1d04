//! Building the task of the pairing (the locked inputs of a round) from the facts of the season.

use std::collections::BTreeSet;

use league::ids::PlayerId;
use league::name::Name;
use league::pairing::history::past::{self, PastOutcome, PastPairing, RoundKey};
use league::pairing::history::scores::PairingScores;
use league::pairing::round::orders::Orders;
use league::pairing::round::week_nights::{nights_of_round, number_nights, number_tables};
use league::pairing::{Contender, Draw, NightSet, TableNo, Task, Wishes};
use league::points::LeaguePoints;
use league::scenario::ScenarioRoles;
use league::side::PerSide;
use league::standings::scores_before_round;
use store::games::GameRow;
use store::rounds::RoundRow;
use store::weeks::Week;

use super::internal_error::internal_error;
use super::occupied_tables::occupied_tables;
use crate::Refusal;
use crate::loaded_season::{LoadedSeason, parse_sheet};

/// The task without its draw, which is keyed on all the rest. `drawn` are the rounds so far.
pub(super) fn build_task(
    loaded: &LoadedSeason,
    drawn: &[RoundRow],
    key: RoundKey,
    availabilities: &[(PlayerId, Vec<String>)],
    wishes: Wishes,
    orders: &Orders,
) -> Result<Task, Refusal> {
    let week = loaded.week(key.week).ok_or(Refusal::NotFound)?;
    let past = past_pairings(loaded)?;
    let scores = pairing_scores(loaded, drawn, key);
    let occupied = occupied_tables(week, &loaded.games)?;
    let share = nights_of_round(week.nights.len(), loaded.per_week, key.number);
    let tables = week.nights.iter().map(|night| night.tables);
    let mut contenders = Vec::new();
    for player in &loaded.players {
        if !player.plays_in(week.week) || player.left_after.is_some() {
            continue;
        }
        let told = availabilities.iter().find(|(who, _)| *who == player.id);
        let nights = parse_nights(week, told.map_or(&player.nights, |(_, nights)| nights));
        let nights = nights
            .intersection(share)
            .difference(occupied.nights_of(player.id));
        if nights.is_empty() {
            continue;
        }
        let faction = Name::new(&player.faction);
        let faction = faction.map_err(|fault| internal_error(&fault.message()))?;
        contenders.push(Contender {
            player: player.id,
            score: scores.now(player.id),
            nights,
            household: None,
            club: None,
            faction: Some(faction),
            byes: past::byes(&past, player.id),
            spare: false,
            floats: past::floats(&past, player.id, key, |round, p| scores.at(round, p)),
            roles: past::roles(&past, player.id),
            tables: past::tables(&past, player.id),
        });
    }
    Ok(Task {
        week: week.week,
        contenders,
        history: past::meetings(&past),
        nights: occupied.free_tables(number_tables(tables, share)),
        wishes,
        pins: orders.pins.clone(),
        forbidden: orders.forbidden.clone(),
        fixed: Vec::new(),
        allowed: None,
        published: Vec::new(),
        rounds_left: loaded.rounds_after(key),
        draw: Draw([0; 32]),
    })
}

/// Which of the week's nights these are.
pub(super) fn parse_nights(week: &Week, names: &[String]) -> NightSet {
    number_nights(week.nights.iter().map(|night| night.key.as_str()), names)
}

/// The scores that the round is paired by, and those that the published ones were.
fn pairing_scores(loaded: &LoadedSeason, drawn: &[RoundRow], key: RoundKey) -> PairingScores {
    let now = scores_before_round(&loaded.facts, key.week, key.number);
    let published = drawn.iter().filter(|round| round.published_at.is_some());
    let paired = published.flat_map(|round| {
        let key = RoundKey {
            week: round.week,
            number: round.number,
        };
        round.task.contenders.iter().map(move |contender| {
            let score = LeaguePoints::new(contender.score);
            (key, PlayerId(contender.player), score)
        })
    });
    PairingScores::new(now, paired)
}

fn past_pairings(loaded: &LoadedSeason) -> Result<Vec<PastPairing>, Refusal> {
    let mut with_roles = BTreeSet::new();
    for week in &loaded.weeks {
        let sheet = parse_sheet(week)?;
        if sheet.is_some_and(|sheet| sheet.terms().roles != ScenarioRoles::Symmetric) {
            with_roles.insert(week.week);
        }
    }
    let past = |game: &GameRow| match &game.meeting {
        None => PastPairing::Bye {
            round: round_of(game),
            player: game.first,
        },
        Some(meeting) => PastPairing::Game {
            round: round_of(game),
            attacker: game.first,
            defender: meeting.second,
            table: TableNo(meeting.table),
            roles: with_roles.contains(&game.week),
            outcome: PastOutcome::new(
                game.slip.settled().map(|settled| settled.outcome),
                PerSide::new(game.first, meeting.second),
            ),
        },
    };
    Ok(loaded.games.iter().map(past).collect())
}

fn round_of(game: &GameRow) -> RoundKey {
    RoundKey {
        week: game.week,
        number: game.round_no,
    }
}
