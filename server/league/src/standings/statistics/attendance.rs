//! Attendance: how many of the players came, week by week, for a club's report on its hall. Common
//! practice, no source.

use std::collections::BTreeMap;

use crate::ids::PlayerId;
use crate::result::Outcome;
use crate::standings::facts::{Fixture, GameFact, SeasonFacts};
use crate::week::WeekNo;

/// What the players of one week did. Everybody counts once, however many rounds the week has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeekAttendance {
    pub week: WeekNo,
    /// Who had a place in the season.
    pub players: usize,
    /// Who came to a game.
    pub came: usize,
    /// Who was expected and did not come.
    pub no_shows: usize,
    /// Whose game nobody has settled yet.
    pub open: usize,
    /// Who had a bye.
    pub byes: usize,
    /// Who had said in time that they could not come.
    pub away: usize,
}

/// What one player did in a week. Of several rounds the last of this order counts.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Presence {
    Away,
    Bye,
    Open,
    NoShow,
    Came,
}

/// The attendance of every week up to one, in their order.
pub fn attendance(facts: &SeasonFacts, as_of: WeekNo) -> Vec<WeekAttendance> {
    let mut presences = presences(facts);
    let weeks = (1..=as_of.number()).filter_map(WeekNo::new);
    let attendance_of = |week| {
        let players = facts.players.iter();
        let players = players.filter(|player| player.takes_part_in(week));
        let presences = presences.remove(&week).unwrap_or_default();
        let count = |wanted| presences.values().filter(|&&it| it == wanted).count();
        WeekAttendance {
            week,
            players: players.count(),
            came: count(Presence::Came),
            no_shows: count(Presence::NoShow),
            open: count(Presence::Open),
            byes: count(Presence::Bye),
            away: count(Presence::Away),
        }
    };
    weeks.map(attendance_of).collect()
}

fn presences(facts: &SeasonFacts) -> BTreeMap<WeekNo, BTreeMap<PlayerId, Presence>> {
    let mut presences = BTreeMap::<_, BTreeMap<_, _>>::new();
    let mut note = |week: WeekNo, player: PlayerId, presence: Presence| {
        let of_week = presences.entry(week).or_default();
        let known = of_week.entry(player).or_insert(presence);
        *known = presence.max(*known);
    };
    for absence in &facts.absences {
        note(absence.week, absence.player, Presence::Away);
    }
    for game in &facts.games {
        for (player, presence) in players_of(game) {
            note(game.week, player, presence);
        }
    }
    presences
}

/// The players of a game with what they did; nobody's in a game that was struck.
fn players_of(game: &GameFact) -> Vec<(PlayerId, Presence)> {
    let (players, outcome) = match &game.fixture {
        Fixture::Bye(player) => return vec![(*player, Presence::Bye)],
        Fixture::Game {
            players, outcome, ..
        } => (players, outcome),
    };
    let both = |presence| vec![(players.first, presence), (players.second, presence)];
    match outcome {
        None => both(Presence::Open),
        Some(Outcome::Played(_) | Outcome::Conceded { .. }) => both(Presence::Came),
        Some(Outcome::NoShow { absent, .. }) => vec![
            (players[*absent], Presence::NoShow),
            (players[absent.other()], Presence::Came),
        ],
        Some(Outcome::DoubleLoss) => both(Presence::NoShow),
        Some(Outcome::Void) => Vec::new(),
    }
}
