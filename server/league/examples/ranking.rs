//! How well a short season finds the true order: random pairing, greedy score groups, ours, and a
//! full round robin, over seeded repetitions.
//!
//! `ranking [REPETITIONS]` prints Kendall's tau-b against true strength with 95 % intervals, how
//! often the best player comes first, rematches, and the mean difference of scores in a game. Each
//! season is ranked by score, opponents' scores and Sonneborn-Berger; by score and then the
//! tie-break `adjusted_margin`; by that alone; and by a rating fit over results without margins
//! (Bradley-Terry by the iteration of Hunter 2004 with one drawn game against an average player, so
//! that nobody's rating is infinite).
//!
//! Results follow Elo's logistic expectation with rare draws. The margin of a game, 1 to 10 game
//! points, grows with the same latent difference that decides it, 60 rating points a step: an
//! assumption about the trade, without a source. Where margins say nothing of strength, only the
//! rows without margins hold.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a measuring program"
)]

#[path = "../benches/pairing/season.rs"]
mod season;

use std::collections::HashSet;

use league::pairing::robin::berger;
use league::pairing::{Meeting, Pair, RoleHistory, Task, propose};
use league::points::LeaguePoints;
use season::Chance;

const PLAYERS: usize = 32;
const ROUNDS: u8 = 8;
const DEVIATION: f64 = 250.0;
const DRAWS: f64 = 0.03;

/// Who met whom, the first player's half points and margin.
type Played = Vec<(usize, usize, Outcome)>;

#[derive(Clone, Copy)]
struct Outcome {
    points: i32,
    margin: f64,
}

fn main() {
    let repetitions: u64 = std::env::args()
        .nth(1)
        .map_or(400, |word| word.parse().unwrap());
    for (name, run) in [
        ("random", random as fn(&[f64], &mut Chance) -> Played),
        ("greedy", greedy),
        ("ours", ours),
        ("round robin", everyone),
    ] {
        let mut rows: [Vec<f64>; 10] = std::array::from_fn(|_| Vec::new());
        for repetition in 0..repetitions {
            let mut chance = Chance::new(repetition);
            let strengths: Vec<f64> = (0..PLAYERS)
                .map(|_| DEVIATION * normal(&mut chance))
                .collect();
            let games = run(&strengths, &mut chance);
            let best = (0..PLAYERS)
                .max_by(|&a, &b| strengths[a].total_cmp(&strengths[b]))
                .unwrap();
            let (table, fit, adjusted) = (table(&games), fit(&games), adjusted(&games));
            let scores = scores(&games);
            let after_score = scores.iter().zip(&adjusted);
            let after_score: Vec<f64> = after_score
                .map(|(score, own)| f64::from(*score) * 1e6 + own)
                .collect();
            let first = |values: &[f64]| {
                let top = values.iter().copied().fold(f64::MIN, f64::max);
                f64::from(u8::from(values[best] == top))
            };
            let distinct: HashSet<(usize, usize)> = games
                .iter()
                .map(|&(a, b, _)| (a.min(b), a.max(b)))
                .collect();
            let row = [
                tau_b(&table, &strengths),
                first(&table),
                tau_b(&after_score, &strengths),
                first(&after_score),
                tau_b(&adjusted, &strengths),
                first(&adjusted),
                tau_b(&fit, &strengths),
                first(&fit),
                (games.len() - distinct.len()) as f64,
                gap(&games),
            ];
            rows.iter_mut()
                .zip(row)
                .for_each(|(list, value)| list.push(value));
        }
        println!("{name}");
        let titles = [
            "tau, table",
            "best first, table",
            "tau, score then adjusted margin",
            "best first, score then adjusted margin",
            "tau, adjusted margin alone",
            "best first, adjusted margin alone",
            "tau, fit",
            "best first, fit",
            "rematches",
            "gap",
        ];
        for (title, values) in titles.iter().zip(&rows) {
            let (mean, half) = interval(values);
            println!("  {title}: {mean:.3} +- {half:.3}");
        }
    }
}

fn normal(chance: &mut Chance) -> f64 {
    (0..12).map(|_| chance.unit()).sum::<f64>() - 6.0
}

/// The latent difference is that of the strengths and logistic noise of Elo's scale: its sign wins.
fn result(strengths: &[f64], a: usize, b: usize, chance: &mut Chance) -> Outcome {
    if chance.unit() < DRAWS {
        return Outcome {
            points: 1,
            margin: 0.0,
        };
    }
    let luck = chance.unit().clamp(1e-9, 1.0 - 1e-9);
    let noise = 400.0 / 10_f64.ln() * (luck / (1.0 - luck)).ln();
    let latent = strengths[a] - strengths[b] + noise;
    let steps = (latent.abs() / 60.0).round().clamp(1.0, 10.0);
    Outcome {
        points: if latent > 0.0 { 2 } else { 0 },
        margin: steps * latent.signum(),
    }
}

fn random(strengths: &[f64], chance: &mut Chance) -> Played {
    by_rounds(strengths, chance, |order, _| order)
}

fn greedy(strengths: &[f64], chance: &mut Chance) -> Played {
    by_rounds(strengths, chance, |mut order, scores| {
        order.sort_by_key(|&player| -scores[player]);
        order
    })
}

/// Pairs the first of the order with the next they have not met.
fn by_rounds(
    strengths: &[f64],
    chance: &mut Chance,
    arrange: impl Fn(Vec<usize>, &[i32]) -> Vec<usize>,
) -> Played {
    let (mut games, mut met, mut scores) = (Played::new(), HashSet::new(), vec![0; PLAYERS]);
    for _ in 0..ROUNDS {
        let mut order: Vec<usize> = (0..PLAYERS).collect();
        chance.shuffle(&mut order);
        let mut order = arrange(order, &scores);
        while order.len() > 1 {
            let a = order.remove(0);
            let at = order
                .iter()
                .position(|&b| !met.contains(&(a.min(b), a.max(b))))
                .unwrap_or(0);
            let b = order.remove(at);
            met.insert((a.min(b), a.max(b)));
            let outcome = result(strengths, a, b, chance);
            scores[a] += outcome.points;
            scores[b] += 2 - outcome.points;
            games.push((a, b, outcome));
        }
    }
    games
}

fn ours(strengths: &[f64], chance: &mut Chance) -> Played {
    let mut task: Task = season::first_round(PLAYERS, chance);
    task.wishes = league::pairing::Wishes::default();
    let mut games = Played::new();
    for round in 0..ROUNDS {
        task.rounds_left = ROUNDS - 1 - round;
        task.draw = league::pairing::Draw([chance.below(256) as u8; 32]);
        let proposal = propose(&task).unwrap();
        for game in &proposal.games {
            let number = |player: league::ids::PlayerId| player.0.as_u128() as usize - 1;
            let (a, b) = (number(game.attacker), number(game.defender));
            let outcome = result(strengths, a, b, chance);
            games.push((a, b, outcome));
            task.history.push(Meeting {
                pair: Pair::new(game.attacker, game.defender).unwrap(),
                week: task.week,
            });
            for (player, points) in [(a, outcome.points), (b, 2 - outcome.points)] {
                let contender = &mut task.contenders[player];
                contender.score += LeaguePoints::new(points);
                contender.roles = RoleHistory::default();
            }
        }
        task.week = task.week.next().unwrap();
    }
    games
}

fn everyone(strengths: &[f64], chance: &mut Chance) -> Played {
    let rounds = berger::berger_table(PLAYERS).unwrap();
    let games = rounds.into_iter().flatten();
    games
        .map(|(a, b)| (a - 1, b - 1, result(strengths, a - 1, b - 1, chance)))
        .collect()
}

/// Score, then opponents' scores, then Sonneborn-Berger, as one number that orders alike.
fn table(games: &Played) -> Vec<f64> {
    let scores = scores(games);
    let (mut opponents, mut berger) = ([0; PLAYERS], [0; PLAYERS]);
    for &(a, b, Outcome { points, .. }) in games {
        for (player, opponent, points) in [(a, b, points), (b, a, 2 - points)] {
            opponents[player] += scores[opponent];
            berger[player] += points * scores[opponent];
        }
    }
    let order = |at: usize| {
        f64::from(scores[at]) * 1e9 + f64::from(opponents[at]) * 1e5 + f64::from(berger[at])
    };
    (0..PLAYERS).map(order).collect()
}

/// Half points.
fn scores(games: &Played) -> [i32; PLAYERS] {
    let mut scores = [0; PLAYERS];
    for &(a, b, Outcome { points, .. }) in games {
        scores[a] += points;
        scores[b] += 2 - points;
    }
    scores
}

/// The formula of the tie-break of this name: strength times games and two more is the sum of the
/// margins and of the opponents' strengths.
fn adjusted(games: &Played) -> Vec<f64> {
    let mut strengths = vec![0.0; PLAYERS];
    for _ in 0..300 {
        let (mut sums, mut weights) = (vec![0.0; PLAYERS], vec![2.0; PLAYERS]);
        for &(a, b, Outcome { margin, .. }) in games {
            sums[a] += margin + strengths[b];
            sums[b] += strengths[a] - margin;
            weights[a] += 1.0;
            weights[b] += 1.0;
        }
        strengths = sums.iter().zip(&weights).map(|(s, w)| s / w).collect();
    }
    strengths
}

fn fit(games: &Played) -> Vec<f64> {
    let mut strength = vec![1.0; PLAYERS];
    for _ in 0..200 {
        let mut won = vec![0.5; PLAYERS];
        let mut weight: Vec<f64> = strength.iter().map(|own| 1.0 / (own + 1.0)).collect();
        for &(a, b, Outcome { points, .. }) in games {
            won[a] += f64::from(points) / 2.0;
            won[b] += f64::from(2 - points) / 2.0;
            let shared = 1.0 / (strength[a] + strength[b]);
            weight[a] += shared;
            weight[b] += shared;
        }
        strength = won
            .iter()
            .zip(&weight)
            .map(|(won, weight)| won / weight)
            .collect();
    }
    strength
}

/// Kendall's tau-b: ties in the ranking shrink the denominator.
fn tau_b(values: &[f64], truth: &[f64]) -> f64 {
    let (mut agree, mut untied, mut pairs) = (0.0_f64, 0.0_f64, 0.0_f64);
    for a in 0..values.len() {
        for b in a + 1..values.len() {
            pairs += 1.0;
            if values[a] != values[b] {
                untied += 1.0;
                agree += if (values[a] > values[b]) == (truth[a] > truth[b]) {
                    1.0
                } else {
                    -1.0
                };
            }
        }
    }
    agree / (untied * pairs).sqrt()
}

/// Mean difference of the scores of two opponents when they meet, in half points.
fn gap(games: &Played) -> f64 {
    let mut scores = [0_i32; PLAYERS];
    let mut sum = 0.0;
    for round in games.chunks(PLAYERS / 2) {
        sum += round
            .iter()
            .map(|&(a, b, _)| f64::from((scores[a] - scores[b]).abs()))
            .sum::<f64>();
        for &(a, b, Outcome { points, .. }) in round {
            scores[a] += points;
            scores[b] += 2 - points;
        }
    }
    sum / games.len() as f64
}

fn interval(values: &[f64]) -> (f64, f64) {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let variance = values
        .iter()
        .map(|value| (value - mean).powi(2))
        .sum::<f64>()
        / (count - 1.0);
    (mean, 1.96 * (variance / count).sqrt())
}
