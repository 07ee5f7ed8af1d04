//! Building the task of the pairing (the locked inputs of a round) from the facts of the season.

use std::collections::{BTreeMap, BTreeSet};

use league::ids::PlayerId;
use league::name::Name;
use league::pairing::history::past::{self, PastOutcome, PastPairing, RoundKey};
use league::pairing::round::orders::Orders;
use league::pairing::round::week_nights::{nights_of_round, number_nights, number_tables};
use league::pairing::{Contender, Draw, NightSet, TableNo, Task, Wishes};
use league::points::LeaguePoints;
use league::result::Outcome;
use league::scenario::ScenarioRoles;
use league::standings::{scores_before, table};
use store::games::GameRow;
use store::rounds::RoundRow;
use store::weeks::Week;

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
    let scores = Scores::new(loaded, drawn, key);
    let occupied = occupied_tables(week, &loaded.games);
    let share = nights_of_round(week.nights.len(), loaded.per_week, key.number);
    let tables = week.nights.iter().map(|night| night.tables);
    let contenders = loaded
        .players
        .iter()
        .filter(|player| player.plays_in(week.week) && player.left_after.is_none())
        .filter_map(|player| {
            let told = availabilities.iter().find(|(who, _)| *who == player.id);
            let nights = parse_nights(week, told.map_or(&player.nights, |(_, nights)| nights));
            let nights = nights
                .intersection(share)
                .difference(occupied.nights_of(player.id));
            (!nights.is_empty()).then(|| Contender {
                player: player.id,
                score: scores.now(player.id),
                nights,
                household: None,
                club: None,
                faction: Name::new(&player.faction).ok(),
                byes: past::byes(&past, player.id),
                spare: false,
                floats: past::floats(&past, player.id, key, |round, p| scores.at(round, p)),
                roles: past::roles(&past, player.id),
                tables: past::tables(&past, player.id),
            })
        })
        .collect();
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

/// What everybody has, and had when earlier rounds were paired.
struct Scores {
    now: BTreeMap<PlayerId, LeaguePoints>,
    paired: BTreeMap<(RoundKey, PlayerId), LeaguePoints>,
}

impl Scores {
    /// The first round of a week is paired by the table of the week before; later ones by all that is
    /// settled.
    fn new(loaded: &LoadedSeason, drawn: &[RoundRow], key: RoundKey) -> Self {
        let now = if key.number == 1 {
            scores_before(&loaded.facts, key.week)
        } else {
            let rows = table(&loaded.facts, key.week).rows.into_iter();
            rows.map(|row| (row.player, row.total)).collect()
        };
        let paired = drawn.iter().filter(|round| round.published_at.is_some());
        let paired = paired.flat_map(|round| {
            let key = RoundKey {
                week: round.week,
                number: round.number,
            };
            round.task.contenders.iter().map(move |contender| {
                let score = LeaguePoints::new(contender.score);
                ((key, PlayerId(contender.player)), score)
            })
        });
        Self {
            now,
            paired: paired.collect(),
        }
    }

    fn now(&self, player: PlayerId) -> LeaguePoints {
        // Whoever has no row in the table yet has no points.
        self.now.get(&player).copied().unwrap_or_default()
    }

    fn at(&self, round: RoundKey, player: PlayerId) -> LeaguePoints {
        // As above, of that round.
        self.paired
            .get(&(round, player))
            .copied()
            .unwrap_or_default()
    }
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
            outcome: past_outcome(game, meeting.second),
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

fn past_outcome(game: &GameRow, second: PlayerId) -> PastOutcome {
    match game.slip.settled().map(|settled| settled.outcome) {
        Some(Outcome::NoShow { absent, .. }) => PastOutcome::Forfeit {
            winner: match absent {
                league::side::Side::First => second,
                league::side::Side::Second => game.first,
            },
        },
        Some(Outcome::DoubleLoss) => PastOutcome::Unplayed,
        Some(Outcome::Void) => PastOutcome::Void,
        Some(Outcome::Played(_) | Outcome::Conceded { .. }) | None => PastOutcome::Played,
    }
}
