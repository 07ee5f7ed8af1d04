//! Statistics of games by any key: faction, role, scenario, opponent.

pub mod attendance;
pub mod awards;
pub mod rank_history;
pub mod wilson;

use std::collections::BTreeMap;

use crate::ids::{GameId, PlayerId};
use crate::side::Side;
use crate::week::WeekNo;

use super::facts::SeasonFacts;
use super::rounds::RoundKind;
use super::table::season::{IndexedSeason, PlayerGame};
use super::tiebreaks::inputs::Exact;

use wilson::WilsonInterval;

/// A played game from the view of one side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SideGame {
    pub game: GameId,
    pub week: WeekNo,
    pub player: PlayerId,
    pub side: Side,
    pub opponent: PlayerId,
    /// How it ended for this side.
    pub ending: SideResult,
    /// Own game points less the opponent's.
    pub margin: i64,
}

/// How a game ended for one side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SideResult {
    Won,
    Drawn,
    Lost,
}

/// Every game that was played up to a week, twice: once from each side.
pub fn list_side_games(facts: &SeasonFacts, as_of: WeekNo) -> Vec<SideGame> {
    let season = IndexedSeason::new(facts, as_of);
    let players = season.players.iter().enumerate();
    let games = players.flat_map(|(number, player)| {
        let games = season.games.up_to(number, as_of).iter();
        games.filter_map(|game| side_game(&season, player.player, game))
    });
    games.collect()
}

fn side_game(
    season: &IndexedSeason<'_>,
    player: PlayerId,
    game: &PlayerGame<'_>,
) -> Option<SideGame> {
    let round = game.counted.as_ref()?.round;
    let RoundKind::Played {
        opponent, margin, ..
    } = round.kind
    else {
        return None;
    };
    Some(SideGame {
        game: game.fact.game,
        week: round.week,
        player,
        side: game.side,
        opponent: season.players.get(opponent)?.player,
        ending: match round.result {
            2 => SideResult::Won,
            1 => SideResult::Drawn,
            _ => SideResult::Lost,
        },
        margin,
    })
}

/// The games of one key.
#[derive(Clone, Debug, PartialEq)]
pub struct Tally<K> {
    pub key: K,
    pub won: u32,
    pub drawn: u32,
    pub lost: u32,
    /// Share of games won with its interval; `None` when there are too few games.
    pub win_share: Option<WilsonInterval>,
    /// Mean of own game points less the opponent's; `None` when there are too few games.
    pub mean_margin: Option<Exact>,
}

impl<K> Tally<K> {
    pub fn games(&self) -> u32 {
        self.won + self.drawn + self.lost
    }
}

/// Counts games by key; games without a key are left out. Shares and means are given from `fewest`
/// games on: below that they say more about chance than about the key.
pub fn tally<K: Ord>(
    games: &[SideGame],
    fewest: u32,
    key: impl Fn(&SideGame) -> Option<K>,
) -> Vec<Tally<K>> {
    let mut groups: BTreeMap<K, Vec<&SideGame>> = BTreeMap::new();
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
            won: count(SideResult::Won),
            drawn: count(SideResult::Drawn),
            lost: count(SideResult::Lost),
            win_share: None,
            mean_margin: None,
        };
        if tally.games() >= fewest.max(1) {
            let margins = games.iter().map(|game| game.margin).sum();
            tally.win_share = WilsonInterval::new(tally.won, tally.games());
            tally.mean_margin = Some(Exact::new(margins, tally.games().into()));
        }
        tally
    });
    tallies.collect()
}
