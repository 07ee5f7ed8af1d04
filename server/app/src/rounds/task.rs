//! The locked inputs of a round, gathered from the facts of the season.

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::name::Name;
use league::pairing::past::{self, Course, Past};
use league::pairing::{
    Contender, Draw, Household, Night, NightKey, Nights, Pair, TableNo, Task, Wishes,
};
use league::points::LeaguePoints;
use league::result::Outcome;
use league::scenario::Roles;
use league::standings::table;
use league::week::WeekNo;
use store::games::Game;
use store::players::Player;
use store::weeks::Week;

use crate::Refusal;
use crate::facts::{Loaded, sheet};

/// What the organiser adds to the facts.
pub(super) struct Orders {
    pub pins: Vec<Pair>,
    pub forbidden: Vec<Pair>,
}

/// The task without its draw, which is keyed on all the rest.
pub(super) fn task(
    loaded: &Loaded,
    week: &Week,
    availabilities: &[(PlayerId, Vec<String>)],
    wishes: Wishes,
    orders: Orders,
) -> Result<Task, Refusal> {
    let past = past_of(loaded)?;
    let scores = Scores::new(loaded);
    let households = households(&loaded.players);
    let contenders = loaded
        .players
        .iter()
        .filter(|player| player.plays_in(week.week))
        .filter_map(|player| {
            let told = availabilities.iter().find(|(who, _)| *who == player.id);
            let nights = nights_of(week, told.map_or(&player.nights, |(_, nights)| nights));
            (!nights.is_empty()).then(|| Contender {
                player: player.id,
                score: scores.before(week.week, player.id),
                nights,
                household: player
                    .household
                    .as_ref()
                    .and_then(|name| households.get(name))
                    .copied(),
                club: None,
                faction: Name::new(&player.faction).ok(),
                byes: past::byes(&past, player.id),
                spare: false,
                floats: past::floats(&past, player.id, week.week, |w, p| scores.before(w, p)),
                roles: past::roles(&past, player.id),
                tables: past::tables(&past, player.id),
            })
        })
        .collect();
    Ok(Task {
        week: week.week,
        contenders,
        history: past::meetings(&past),
        nights: hall(week),
        wishes,
        pins: orders.pins,
        forbidden: orders.forbidden,
        published: Vec::new(),
        rounds_left: rounds_left(loaded, week.week),
        draw: Draw([0; 32]),
    })
}

fn rounds_left(loaded: &Loaded, week: WeekNo) -> u8 {
    let later = loaded
        .weeks
        .iter()
        .filter(|other| other.week > week)
        .count();
    u8::try_from(later).unwrap_or(u8::MAX)
}

/// The tables of each night; the same number means the same terrain on every night.
fn hall(week: &Week) -> Vec<Night> {
    week.nights
        .iter()
        .zip(0..)
        .filter_map(|(night, number)| {
            Some(Night {
                key: NightKey::new(number)?,
                tables: (1..=night.tables).map(TableNo).collect(),
            })
        })
        .collect()
}

fn nights_of(week: &Week, names: &[String]) -> Nights {
    let bits = week
        .nights
        .iter()
        .zip(0..8)
        .filter(|(night, _)| names.contains(&night.key))
        .fold(0, |bits, (_, number)| bits | 1 << number);
    Nights::from_bits(bits)
}

fn households(players: &[Player]) -> BTreeMap<String, Household> {
    let mut names: Vec<&String> = players
        .iter()
        .filter_map(|p| p.household.as_ref())
        .collect();
    names.sort_unstable();
    names.dedup();
    names
        .into_iter()
        .cloned()
        .zip((0..).map(Household))
        .collect()
}

/// What everybody had before each week began.
struct Scores(BTreeMap<WeekNo, BTreeMap<PlayerId, LeaguePoints>>);

impl Scores {
    fn new(loaded: &Loaded) -> Self {
        let after = |week: WeekNo| {
            let rows = table(&loaded.facts, week).rows;
            rows.into_iter()
                .map(|row| (row.player, row.total))
                .collect()
        };
        let known = loaded
            .weeks
            .iter()
            .filter(|week| week.facts.paired_at.is_some());
        Self(known.map(|week| (week.week, after(week.week))).collect())
    }

    fn before(&self, week: WeekNo, player: PlayerId) -> LeaguePoints {
        let scores = week.previous().and_then(|last| self.0.get(&last));
        scores
            .and_then(|scores| scores.get(&player))
            .copied()
            .unwrap_or_default()
    }
}

fn past_of(loaded: &Loaded) -> Result<Vec<Past>, Refusal> {
    let mut with_roles = BTreeMap::new();
    for week in &loaded.weeks {
        let sheet = sheet(week)?;
        let roles = sheet.is_some_and(|sheet| sheet.terms().roles != Roles::Symmetric);
        with_roles.insert(week.week, roles);
    }
    let past = |game: &Game| match &game.meeting {
        None => Past::Bye {
            week: game.week,
            player: game.first,
        },
        Some(meeting) => Past::Game {
            week: game.week,
            attacker: game.first,
            defender: meeting.second,
            table: TableNo(meeting.table),
            roles: with_roles.get(&game.week).copied().unwrap_or_default(),
            course: course(game, meeting.second),
        },
    };
    Ok(loaded.games.iter().map(past).collect())
}

fn course(game: &Game, second: PlayerId) -> Course {
    match game.slip.settled().map(|settled| settled.outcome) {
        Some(Outcome::NoShow { absent, .. }) => Course::Forfeit {
            winner: match absent {
                league::side::Side::First => second,
                league::side::Side::Second => game.first,
            },
        },
        Some(Outcome::DoubleLoss) => Course::Unplayed,
        Some(Outcome::Void) => Course::Void,
        Some(Outcome::Played(_) | Outcome::Conceded { .. }) | None => Course::Played,
    }
}
