//! Reachable ranks: whether a rank can still be reached, and what it takes. Exact while everyone has
//! at most two open games.

use messages::{Message, standings_faults as said};

use crate::ids::PlayerId;
use crate::points::LeaguePoints;
use crate::standings::facts::SeasonFacts;
use crate::week::WeekNo;

use super::Outlook;
use super::chain::Chain;

/// What the open games can still make of a player's rank. Ranks are by total alone: `best` supposes
/// that every tie is won on tie-breaks, `worst` that every tie is lost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reach {
    /// Best rank that some results give.
    pub best: u32,
    /// Worst rank that some results give.
    pub worst: u32,
    /// Fewest league points from own open games with which the rank asked for is possible; `None`
    /// when it is out of reach.
    pub needed: Option<LeaguePoints>,
    /// Fewest league points from own open games with which the rank asked for is certain, whatever
    /// others do; `None` when nothing makes it certain.
    pub enough: Option<LeaguePoints>,
}

/// Why there is no exact answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReachRefusal {
    /// The player has no row.
    NoRow,
    /// Someone has more than two open games: use a forecast.
    TooOpen {
        /// Most open games of one player.
        limit: usize,
        /// Open games of the player with the most.
        actual: usize,
    },
}

impl ReachRefusal {
    pub fn message(&self) -> Message {
        match *self {
            Self::NoRow => said::outlook_no_row(),
            Self::TooOpen { limit, actual } => said::outlook_too_open(actual, limit),
        }
    }
}

const MAX_OPEN_GAMES: usize = 2;

/// What the open games up to `last` can make of a player's rank, and what `rank` takes.
///
/// # Errors
/// [`ReachRefusal`] without a row, or when too much is open for an exact answer.
pub fn reach(
    facts: &SeasonFacts,
    player: PlayerId,
    rank: u32,
    last: WeekNo,
) -> Result<Reach, ReachRefusal> {
    let outlook = Outlook::new(facts, last);
    let asked = outlook
        .players
        .binary_search(&player)
        .map_err(|_| ReachRefusal::NoRow)?;
    let search = Search::new(&outlook, asked)?;
    let mut reach = Reach {
        best: u32::MAX,
        worst: 0,
        needed: None,
        enough: None,
    };
    let mut endings = search.own_endings();
    endings.sort_by_key(|ending| ending.points);
    for same in endings.chunk_by(|a, b| a.points == b.points) {
        let ranks = same
            .iter()
            .map(|ending| (search.best(ending), search.worst(ending)));
        let ranks: Vec<(u32, u32)> = ranks.collect();
        let points = same.first().map(|ending| LeaguePoints::new(ending.points));
        if ranks.iter().any(|(best, _)| *best <= rank) {
            reach.needed = reach.needed.or(points);
        }
        let certain = ranks.iter().all(|(_, worst)| *worst <= rank);
        reach.enough = points.filter(|_| certain).and(reach.enough.or(points));
        for (best, worst) in ranks {
            reach.best = reach.best.min(best);
            reach.worst = reach.worst.max(worst);
        }
    }
    Ok(reach)
}

/// One way in which the own open games can end.
struct Ending {
    results: Vec<(usize, usize)>,
    points: i32,
    total: i32,
}

struct Search<'o> {
    outlook: &'o Outlook,
    asked: usize,
    games_of: Vec<Vec<usize>>,
    /// For each player, the total for every combination of results of the own open games.
    totals: Vec<Vec<i32>>,
    chains: Vec<Chain>,
    in_chain: Vec<bool>,
}

impl<'o> Search<'o> {
    fn new(outlook: &'o Outlook, asked: usize) -> Result<Self, ReachRefusal> {
        let players = 0..outlook.players.len();
        let games_of: Vec<_> = players.map(|player| outlook.games_of(player)).collect();
        let most = games_of.iter().map(Vec::len).max().unwrap_or(0);
        if most > MAX_OPEN_GAMES {
            return Err(ReachRefusal::TooOpen {
                limit: MAX_OPEN_GAMES,
                actual: most,
            });
        }
        let mut search = Self {
            outlook,
            asked,
            totals: Vec::new(),
            chains: Vec::new(),
            in_chain: vec![false; games_of.len()],
            games_of,
        };
        let numbered = search.games_of.iter().enumerate();
        search.totals = numbered
            .map(|(player, games)| search.all_totals(player, games))
            .collect();
        search.find_chains();
        Ok(search)
    }

    fn results(&self) -> usize {
        self.outlook.results.len()
    }

    fn all_totals(&self, player: usize, games: &[usize]) -> Vec<i32> {
        let results = 0..self.results();
        match *games {
            [] => vec![self.outlook.total(player, &[])],
            [game] => results
                .map(|r| self.outlook.total(player, &[(game, r)]))
                .collect(),
            [one, two, ..] => results
                .clone()
                .flat_map(|a| results.clone().map(move |b| (a, b)))
                .map(|(a, b)| self.outlook.total(player, &[(one, a), (two, b)]))
                .collect(),
        }
    }

    /// The total of a player whose open games end so.
    fn total(&self, player: usize, ended: impl Fn(usize) -> usize) -> i32 {
        let games = self.games_of.get(player).into_iter().flatten();
        let at = games.fold(0, |at, &game| at * self.results() + ended(game));
        self.totals
            .get(player)
            .and_then(|totals| totals.get(at))
            .copied()
            .unwrap_or(0)
    }

    fn own_endings(&self) -> Vec<Ending> {
        let own = self.games_of.get(self.asked).map_or(&[][..], Vec::as_slice);
        let mut endings = vec![Vec::new()];
        for &game in own {
            let longer = endings.iter().flat_map(|ending: &Vec<(usize, usize)>| {
                (0..self.results()).map(move |result| {
                    let mut longer = ending.clone();
                    longer.push((game, result));
                    longer
                })
            });
            endings = longer.collect();
        }
        let ending = |results: Vec<(usize, usize)>| Ending {
            points: results
                .iter()
                .map(|&(game, result)| self.outlook.points_from(self.asked, game, result))
                .sum(),
            total: self.total(self.asked, |game| result_in(&results, game).unwrap_or(0)),
            results,
        };
        endings.into_iter().map(ending).collect()
    }

    fn best(&self, ending: &Ending) -> u32 {
        let above = self.min_cost(ending, &|total| i64::from(total > ending.total));
        1 + u32::try_from(above).unwrap_or(u32::MAX - 1)
    }

    fn worst(&self, ending: &Ending) -> u32 {
        let not_below = self.min_cost(ending, &|total| -i64::from(total >= ending.total));
        1 + u32::try_from(-not_below).unwrap_or(u32::MAX - 1)
    }

    /// The smallest sum of costs over all other players that some results give.
    fn min_cost(&self, ending: &Ending, cost: &impl Fn(i32) -> i64) -> i64 {
        let fixed = |game| result_in(&ending.results, game);
        let alone = (0..self.totals.len())
            .filter(|&player| player != self.asked && self.in_chain.get(player) == Some(&false))
            .map(|player| cost(self.total(player, |game| fixed(game).unwrap_or(0))));
        let together = self.chains.iter().map(|chain| {
            let cost_of = |player: usize, known: [Option<(usize, usize)>; 2]| {
                cost(self.total(player, |game| {
                    let in_chain = known
                        .into_iter()
                        .flatten()
                        .find(|(known, _)| *known == game);
                    in_chain
                        .map(|(_, result)| result)
                        .or_else(|| fixed(game))
                        .unwrap_or(0)
                }))
            };
            chain.min_cost(self.results(), &cost_of)
        });
        alone.sum::<i64>() + together.sum::<i64>()
    }

    fn find_chains(&mut self) {
        let mut left: Vec<bool> = (0..self.outlook.games.len())
            .map(|game| {
                !self
                    .games_of
                    .get(self.asked)
                    .is_some_and(|own| own.contains(&game))
            })
            .collect();
        let degree = |search: &Self, left: &[bool], player: usize| {
            let games = search.games_of.get(player).into_iter().flatten();
            games.filter(|game| left.get(**game) == Some(&true)).count()
        };
        for wanted in [1, 2] {
            for player in 0..self.games_of.len() {
                if degree(self, &left, player) == wanted {
                    let chain = self.follow(player, &mut left, wanted == 2);
                    for &player in &chain.players {
                        if let Some(mark) = self.in_chain.get_mut(player) {
                            *mark = true;
                        }
                    }
                    self.chains.push(chain);
                }
            }
        }
    }

    fn follow(&self, start: usize, left: &mut [bool], ring: bool) -> Chain {
        let mut chain = Chain {
            players: vec![start],
            games: Vec::new(),
            ring,
        };
        let mut player = start;
        loop {
            let games = self.games_of.get(player).into_iter().flatten();
            let Some(&game) = games
                .into_iter()
                .find(|game| left.get(**game) == Some(&true))
            else {
                return chain;
            };
            if let Some(left) = left.get_mut(game) {
                *left = false;
            }
            chain.games.push(game);
            let Some(open) = self.outlook.games.get(game) else {
                return chain;
            };
            let next = match open.players.first == player {
                true => open.players.second,
                false => open.players.first,
            };
            if ring && next == start {
                return chain;
            }
            chain.players.push(next);
            player = next;
        }
    }
}

fn result_in(results: &[(usize, usize)], game: usize) -> Option<usize> {
    results
        .iter()
        .find(|(ended, _)| *ended == game)
        .map(|(_, result)| *result)
}
