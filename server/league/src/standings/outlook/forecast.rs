//! Forecast of ranks by simulation, for when too much is open for an exact answer. The seed is an
//! argument; every result that the scoring knows is equally likely and rounds to come are paired at
//! random. It says what the table leaves open, not who plays well.

use fastrand::Rng;

use crate::ids::PlayerId;
use crate::points::LeaguePoints;
use crate::scoring::Bye;
use crate::standings::facts::SeasonFacts;
use crate::standings::statistics::wilson::WilsonInterval;
use crate::week::WeekNo;

use super::Outlook;

/// The input of a simulation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Simulation {
    /// Last week that has a published round.
    pub last: WeekNo,
    /// Rounds that are not paired yet.
    pub rounds_to_come: u8,
    /// Same seed, same answer.
    pub seed: u64,
    /// How often the rest of the season is played.
    pub runs: u32,
}

/// How often a player ended where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Forecast {
    pub player: PlayerId,
    /// Runs that ended at each rank, from the first; ties by total share the better rank.
    pub ended: Vec<u32>,
    pub runs: u32,
}

impl Forecast {
    /// The share of runs that ended at `rank` or better, with its 95 % interval: the error of the
    /// simulation, not of its suppositions.
    pub fn at_least(&self, rank: u32) -> Option<WilsonInterval> {
        let ranks = usize::try_from(rank).unwrap_or(usize::MAX);
        WilsonInterval::new(self.ended.iter().take(ranks).sum(), self.runs)
    }
}

/// Plays the rest of the season again and again.
pub fn forecast(facts: &SeasonFacts, simulation: &Simulation) -> Vec<Forecast> {
    let outlook = Outlook::new(facts, simulation.last);
    let players = outlook.players.len();
    let active: Vec<usize> = (0..players)
        .filter(|&player| is_active(facts, &outlook, player, simulation))
        .collect();
    let mut rng = Rng::with_seed(simulation.seed);
    let mut forecasts: Vec<Forecast> = outlook
        .players
        .iter()
        .map(|&player| Forecast {
            player,
            ended: vec![0; players],
            runs: simulation.runs,
        })
        .collect();
    for _ in 0..simulation.runs {
        let mut totals = play_on(facts, &outlook, &active, simulation, &mut rng);
        totals.sort_unstable_by_key(|(_, total)| std::cmp::Reverse(*total));
        let mut rank = 0;
        for same in totals.chunk_by(|a, b| a.1 == b.1) {
            for (player, _) in same {
                let ended = forecasts
                    .get_mut(*player)
                    .and_then(|f| f.ended.get_mut(rank));
                if let Some(ended) = ended {
                    *ended += 1;
                }
            }
            rank += same.len();
        }
    }
    forecasts
}

fn is_active(
    facts: &SeasonFacts,
    outlook: &Outlook,
    player: usize,
    simulation: &Simulation,
) -> bool {
    let player = outlook.players.get(player);
    let fact = facts
        .players
        .iter()
        .find(|fact| Some(&fact.player) == player);
    fact.is_some_and(|fact| fact.takes_part_in(simulation.last))
}

fn play_on(
    facts: &SeasonFacts,
    outlook: &Outlook,
    active: &[usize],
    simulation: &Simulation,
    rng: &mut Rng,
) -> Vec<(usize, i32)> {
    let players = 0..outlook.players.len();
    let mut weeks: Vec<Vec<i32>> = players
        .clone()
        .map(|player| outlook.weeks_of(player).to_vec())
        .collect();
    for game in 0..outlook.games.len() {
        outlook.add_result(&mut weeks, game, rng.usize(..outlook.results.len()));
    }
    let mut order = active.to_vec();
    for _ in 0..simulation.rounds_to_come {
        rng.shuffle(&mut order);
        for weeks in &mut weeks {
            weeks.push(0);
        }
        let attendance = facts.scoring.terms().attendance;
        for pair in order.chunks(2) {
            let result = outlook.results.get(rng.usize(..outlook.results.len()));
            let shares = result.map_or_else(Default::default, |r| [r.first, r.second]);
            let gained = match pair {
                [_, _] => shares.map(|share| share + attendance),
                _ => [bye(facts), LeaguePoints::ZERO],
            };
            for (&player, points) in pair.iter().zip(gained) {
                if let Some(week) = weeks.get_mut(player).and_then(|weeks| weeks.last_mut()) {
                    *week = points.get();
                }
            }
        }
    }
    let totals = weeks.iter_mut().map(|weeks| outlook.sum_of_best(weeks));
    players.zip(totals).collect()
}

fn bye(facts: &SeasonFacts) -> LeaguePoints {
    match facts.scoring.terms().bye {
        Bye::Fixed(value) => value,
        Bye::Win => facts.scoring.win(),
        Bye::OwnAverage { floor } => facts.scoring.draw().max(floor),
    }
}
