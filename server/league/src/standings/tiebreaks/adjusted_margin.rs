//! Score margins, adjusted for the strength of the opponents.
//!
//! The rating of least squares: a margin is taken as the difference of two strengths (Massey 1997,
//! "Statistical Models Applied to the Rating of Sports Teams", from memory), and everybody is
//! credited with two drawn games against an average opponent, so that few games say little (the
//! method of Colley 2002, "Colley's Bias Free College Football Ranking Method", from memory):
//!
//! strength × (games + 2) = own margins + strengths of the opponents.
//!
//! With 32 players and 8 rounds this orders equal scores closer to true strength than opponents'
//! scores do; `examples/ranking.rs` measures by how much. Only played games count.

use crate::standings::rounds::{PlayerRound, RoundKind};

use super::inputs::{Exact, TieBreakInputs};

/// Parts of a game point that the passes count in, and of those how many are one thousandth.
const PARTS: i128 = 1_000_000_000;
const PARTS_OF_THOUSANDTH: i128 = PARTS / 1000;

/// The passes round down; what they may have lost must not decide how a half is rounded.
const ROUNDING_LOSS: i128 = 1000;

/// Passes after which even 60 games a player are settled: each leaves at most 60/62 of the error.
const MAX_PASSES: usize = 1500;

/// Drawn games against an average opponent.
const DRAWN_GAMES: i128 = 2;

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let all = inputs
        .adjusted_margins
        .get_or_init(|| all_strengths(inputs.rounds.iter()));
    all.get(player).copied().unwrap_or_default()
}

/// Every player's strength in game points, to the nearest thousandth. Integers throughout: the same
/// on every machine.
fn all_strengths<'r>(rounds: impl Iterator<Item = &'r [PlayerRound]>) -> Vec<Exact> {
    let games: Vec<Vec<(usize, i128)>> = rounds.map(played).collect();
    let mut strengths = vec![0_i128; games.len()];
    for _ in 0..MAX_PASSES {
        let next: Vec<i128> = games
            .iter()
            .map(|games| fitted(games, &strengths))
            .collect();
        let settled = next == strengths;
        strengths = next;
        if settled {
            break;
        }
    }
    strengths.into_iter().map(thousandths).collect()
}

/// Opponents and margins in parts.
fn played(rounds: &[PlayerRound]) -> Vec<(usize, i128)> {
    let games = rounds.iter().filter_map(|round| match round.kind {
        RoundKind::Played {
            opponent, margin, ..
        } => Some((opponent, i128::from(margin) * PARTS)),
        _ => None,
    });
    games.collect()
}

/// The strength that explains these games best while the opponents' stay as they are.
fn fitted(games: &[(usize, i128)], strengths: &[i128]) -> i128 {
    let strength = |opponent: usize| strengths.get(opponent).copied().unwrap_or(0);
    let sum: i128 = games
        .iter()
        .map(|&(opponent, margin)| margin + strength(opponent))
        .sum();
    sum / (games.len() as i128 + DRAWN_GAMES)
}

fn thousandths(parts: i128) -> Exact {
    let half = (PARTS_OF_THOUSANDTH / 2 + ROUNDING_LOSS) * parts.signum();
    let rounded = (parts + half) / PARTS_OF_THOUSANDTH;
    Exact::new(i64::try_from(rounded).unwrap_or(0), 1000)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::points::LeaguePoints;
    use crate::week::WeekNo;

    fn games(of: &[&[(usize, i64)]]) -> Vec<Vec<PlayerRound>> {
        let round = |&(opponent, margin): &(usize, i64)| PlayerRound {
            week: WeekNo::FIRST,
            result: 1 + margin.signum(),
            league_points: LeaguePoints::ZERO,
            kind: RoundKind::Played {
                opponent,
                margin,
                harder_role: false,
            },
        };
        of.iter()
            .map(|rounds| rounds.iter().map(round).collect())
            .collect()
    }

    /// Solved by hand: 3a = 6 + b, 4b = -3 + a + c, 3c = -3 + b.
    #[test]
    fn a_margin_is_shared_between_both_strengths() {
        let rounds = games(&[&[(1, 6)], &[(0, -6), (2, 3)], &[(1, -3)]]);
        let tenths = |number| Exact::new(number, 10);
        let strengths = all_strengths(rounds.iter().map(Vec::as_slice));
        assert_eq!(strengths, [tenths(18), tenths(-6), tenths(-12)]);
    }

    #[test]
    fn the_same_margin_against_a_stronger_opponent_is_worth_more() {
        // Players 0 and 1 win by 4; the opponent of 0 beat somebody else by 9, that of 1 lost by 9.
        let rounds = games(&[
            &[(2, 4)],
            &[(3, 4)],
            &[(0, -4), (4, 9)],
            &[(1, -4), (5, -9)],
            &[(2, -9)],
            &[(3, 9)],
        ]);
        let all = all_strengths(rounds.iter().map(Vec::as_slice));
        assert!(all[0] > all[1]);
    }

    #[test]
    fn strengths_of_a_closed_field_add_up_to_nothing() {
        let rounds = games(&[&[(1, 7), (2, -2)], &[(0, -7), (2, 5)], &[(0, 2), (1, -5)]]);
        let sum: Exact = all_strengths(rounds.iter().map(Vec::as_slice))
            .into_iter()
            .sum();
        assert!(sum < Exact::new(1, 100) && sum > Exact::new(-1, 100));
    }

    #[test]
    fn who_has_not_played_is_average() {
        assert_eq!(
            all_strengths(std::iter::once::<&[PlayerRound]>(&[])),
            [Exact::default()]
        );
    }
}
