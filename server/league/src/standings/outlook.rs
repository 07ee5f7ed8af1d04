//! The outlook at the end of a season: totals without the open games, and what these can add.

mod chain;
pub mod forecast;
pub mod reach;
pub mod what_if;

use crate::ids::PlayerId;
use crate::points::LeaguePoints;
use crate::result::{GameScore, Outcome, Verdict};
use crate::side::{PerSide, Side};
use crate::week::WeekNo;

use super::facts::{Fixture, SeasonFacts};
use super::table::credits::Credits;
use super::table::season::IndexedSeason;

/// An open game of a published round.
pub struct OpenGame {
    pub players: PerSide<usize>,
    week: usize,
    weight: i32,
}

/// Totals without the open games, and the open games. Attendance at an open game is counted as
/// earned, and everything else than its result is taken as it stands.
pub struct Outlook {
    pub players: Vec<PlayerId>,
    pub games: Vec<OpenGame>,
    /// What a game can give.
    pub results: Vec<PerSide<LeaguePoints>>,
    /// Points of every week without open games.
    weeks: Vec<Vec<i32>>,
    best_weeks: usize,
}

impl Outlook {
    pub fn new(facts: &SeasonFacts, last: WeekNo) -> Self {
        let mut supposed = facts.clone();
        supposed.games.iter_mut().for_each(suppose_a_draw);
        let season = IndexedSeason::new(&supposed, last);
        let credits = Credits::new(&season, last);
        let with_row = (0..season.players.len()).filter(|&number| season.has_row(number, last));
        let numbers: Vec<usize> = with_row.collect();
        let place = |number: usize| numbers.binary_search(&number).ok();
        let weeks = numbers.iter().map(|&number| credits.weeks.get(number));
        let weeks = weeks.map(|weeks| weeks.iter().map(|week| week.points.get()).collect());
        let mut outlook = Self {
            players: numbers
                .iter()
                .filter_map(|&number| season.players.get(number))
                .map(|player| player.player)
                .collect(),
            games: Vec::new(),
            results: facts.scoring.possible_results(),
            weeks: weeks.collect(),
            best_weeks: facts.scoring.terms().best_weeks.unwrap_or(u8::MAX).into(),
        };
        let draw = facts.scoring.draw().get();
        let open = open_games(facts, last);
        for (players, week) in open {
            let number = |player| {
                season
                    .players
                    .binary_search_by_key(&player, |fact| fact.player)
            };
            let places = number(players.first).ok().zip(number(players.second).ok());
            let places = places.and_then(|(a, b)| place(a).zip(place(b)));
            let Some((first, second)) = places else {
                continue;
            };
            let game = OpenGame {
                players: PerSide::new(first, second),
                week: usize::from(week.number() - 1),
                weight: facts.scoring.weight(week),
            };
            for player in [first, second] {
                let weeks = outlook.weeks.get_mut(player);
                if let Some(points) = weeks.and_then(|weeks| weeks.get_mut(game.week)) {
                    *points -= draw * game.weight;
                }
            }
            outlook.games.push(game);
        }
        outlook
    }

    /// The open games of a player, in order.
    pub fn games_of(&self, player: usize) -> Vec<usize> {
        let games = self.games.iter().enumerate();
        let own = games.filter(|(_, game)| game.players.side_of(&player).is_some());
        own.map(|(number, _)| number).collect()
    }

    /// What a player gets from a game that ends with a result.
    pub fn points_from(&self, player: usize, game: usize, result: usize) -> i32 {
        let (Some(game), Some(result)) = (self.games.get(game), self.results.get(result)) else {
            return 0;
        };
        let side = game.players.side_of(&player).unwrap_or(Side::First);
        result[side].get() * game.weight
    }

    /// A player's total when the open games end with these results.
    pub fn total(&self, player: usize, ended: &[(usize, usize)]) -> i32 {
        let mut weeks = self.weeks.get(player).cloned().unwrap_or_default();
        for &(game, result) in ended {
            let week = self.games.get(game).map(|game| game.week);
            if let Some(points) = week.and_then(|week| weeks.get_mut(week)) {
                *points += self.points_from(player, game, result);
            }
        }
        self.sum_of_best(&mut weeks)
    }

    /// The sum of the weeks that count.
    pub fn sum_of_best(&self, weeks: &mut [i32]) -> i32 {
        weeks.sort_unstable_by_key(|points| std::cmp::Reverse(*points));
        weeks.iter().take(self.best_weeks).sum()
    }

    /// Points of a player's weeks without open games.
    pub fn weeks_of(&self, player: usize) -> &[i32] {
        self.weeks.get(player).map_or(&[], Vec::as_slice)
    }

    /// Adds what a result gives to both sides' weeks.
    pub fn add_result(&self, weeks: &mut [Vec<i32>], game: usize, result: usize) {
        let Some(open) = self.games.get(game) else {
            return;
        };
        for player in [open.players.first, open.players.second] {
            let week = weeks
                .get_mut(player)
                .and_then(|weeks| weeks.get_mut(open.week));
            if let Some(points) = week {
                *points += self.points_from(player, game, result);
            }
        }
    }
}

fn suppose_a_draw(game: &mut super::facts::GameFact) {
    if let Fixture::Game { outcome, .. } = &mut game.fixture
        && outcome.is_none()
    {
        *outcome = Some(Outcome::Played(GameScore {
            legs: Vec::new(),
            total: PerSide::new(0, 0),
            verdict: Verdict::Drawn,
        }));
    }
}

fn open_games(facts: &SeasonFacts, last: WeekNo) -> Vec<(PerSide<PlayerId>, WeekNo)> {
    let games = facts.games.iter().filter(|game| game.week <= last);
    let open = games.filter_map(|game| match &game.fixture {
        Fixture::Game {
            players,
            outcome: None,
            ..
        } => Some((*players, game.week)),
        _ => None,
    });
    open.collect()
}
