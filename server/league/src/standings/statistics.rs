//! Games counted by any key: faction, role, scenario, opponent.

pub mod awards;
pub mod rank_history;
pub mod wilson;

use std::collections::BTreeMap;

use wilson::Interval;

use crate::ids::{GameId, PlayerId};
use crate::side::Side;
use crate::week::WeekNo;

use super::facts::SeasonFacts;
use super::rounds::RoundKind;
use super::table::season::{Season, Seat};
use super::tiebreaks::inputs::Exact;

/// A played game as one side saw it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GameSeen {
    /// Which game.
    pub game: GameId,
    /// When.
    pub week: WeekNo,
    /// Who saw it.
    pub player: PlayerId,
    /// From which side.
    pub side: Side,
    /// Against whom.
    pub opponent: PlayerId,
    /// How it ended for this side.
    pub ending: Ending,
    /// Own game points less the opponent's.
    pub margin: i64,
}

/// How a game ended for one side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ending {
    /// Won.
    Won,
    /// Drawn.
    Drawn,
    /// Lost.
    Lost,
}

/// Every game that was played up to a week, twice: once from each side.
pub fn games_seen(facts: &SeasonFacts, as_of: WeekNo) -> Vec<GameSeen> {
    let season = Season::of(facts, as_of);
    let players = season.players.iter().enumerate();
    let seats = players.flat_map(|(number, player)| {
        let seats = season.games.until(number, as_of).iter();
        seats.filter_map(|seat| seen(&season, player.player, seat))
    });
    seats.collect()
}

fn seen(season: &Season<'_>, player: PlayerId, seat: &Seat<'_>) -> Option<GameSeen> {
    let round = seat.stands.as_ref()?.round;
    let RoundKind::Played {
        opponent, margin, ..
    } = round.kind
    else {
        return None;
    };
    Some(GameSeen {
        game: seat.fact.game,
        week: round.week,
        player,
        side: seat.side,
        opponent: season.players.get(opponent)?.player,
        ending: match round.result {
            2 => Ending::Won,
            1 => Ending::Drawn,
            _ => Ending::Lost,
        },
        margin,
    })
}

/// The games of one key.
#[derive(Clone, Debug, PartialEq)]
pub struct Tally<K> {
    /// The key.
    pub key: K,
    /// Games won.
    pub won: u32,
    /// Games drawn.
    pub drawn: u32,
    /// Games lost.
    pub lost: u32,
    /// Share of games won with its interval; `None` when there are too few games.
    pub win_share: Option<Interval>,
    /// Mean of own game points less the opponent's; `None` when there are too few games.
    pub mean_margin: Option<Exact>,
}

impl<K> Tally<K> {
    /// All games.
    pub fn games(&self) -> u32 {
        self.won + self.drawn + self.lost
    }
}

/// Counts games by key; games without a key are left out. Shares and means are given from `fewest`
/// games on: below that they say more about chance than about the key.
pub fn tally<K: Ord>(
    games: &[GameSeen],
    fewest: u32,
    key: impl Fn(&GameSeen) -> Option<K>,
) -> Vec<Tally<K>> {
    let mut groups: BTreeMap<K, Vec<&GameSeen>> = BTreeMap::new();
    for game in games {
        if let Some(key) = key(game) {
            groups.entry(key).or_default().push(game);
        }
    }
    let tallies = groups.into_iter().map(|(key, games)| {
        let count = |ending| {
            let games = games.iter().filter(|game| game.ending == ending);
            u32::try_from(games.count()).unwrap_or(u32::MAX)
        };
        let mut tally = Tally {
            key,
            won: count(Ending::Won),
            drawn: count(Ending::Drawn),
            lost: count(Ending::Lost),
            win_share: None,
            mean_margin: None,
        };
        if tally.games() >= fewest.max(1) {
            let margins = games.iter().map(|game| game.margin).sum();
            tally.win_share = Interval::of(tally.won, tally.games());
            tally.mean_margin = Some(Exact::new(margins, tally.games().into()));
        }
        tally
    });
    tallies.collect()
}
