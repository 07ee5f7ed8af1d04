//! Direct encounter (FIDE Handbook C.07, art. 6): results among those who are still equal.
//!
//! When all of them have met, their points against each other decide (art. 6.1). When some have
//! not, whoever stays alone at the top whatever the missing games would bring is first, and so on
//! down; the others stay equal (art. 6.2). Games that were not played do not count, and a bye is
//! none.

use crate::standings::rounds::RoundKind;

use super::inputs::{Exact, TieBreakInputs};

/// Points against the others in half points, and how many of them were never met.
struct Among {
    points: i64,
    missing: i64,
}

pub(super) fn values(inputs: &TieBreakInputs<'_>, tied: &[usize]) -> Vec<Option<Exact>> {
    let mut is_tied = vec![false; inputs.rounds.len()];
    for &player in tied {
        if let Some(mark) = is_tied.get_mut(player) {
            *mark = true;
        }
    }
    let others = tied.len().saturating_sub(1);
    let among: Vec<Among> = tied
        .iter()
        .map(|&player| among(inputs, player, &is_tied, others))
        .collect();
    if among.iter().all(|among| among.missing == 0) {
        return among
            .iter()
            .map(|among| Some(Exact::new(among.points, 2)))
            .collect();
    }
    let mut values = vec![None; tied.len()];
    let mut open: Vec<usize> = (0..tied.len()).collect();
    while let Some(first) = alone_at_the_top(&among, &open) {
        if let (Some(value), Some(among)) = (values.get_mut(first), among.get(first)) {
            *value = Some(Exact::new(among.points, 2));
        }
        open.retain(|&other| other != first);
    }
    values
}

fn among(inputs: &TieBreakInputs<'_>, player: usize, is_tied: &[bool], others: usize) -> Among {
    let mut points = 0;
    let mut met = Vec::new();
    for round in inputs.rounds.get(player) {
        if let RoundKind::Played { opponent, .. } = round.kind
            && is_tied.get(opponent) == Some(&true)
        {
            points += round.result;
            if !met.contains(&opponent) {
                met.push(opponent);
            }
        }
    }
    let missing = i64::try_from(others.saturating_sub(met.len())).unwrap_or(i64::MAX);
    Among { points, missing }
}

/// The one of `open` whose points exceed what any other of them could still reach.
fn alone_at_the_top(among: &[Among], open: &[usize]) -> Option<usize> {
    if open.len() < 2 {
        return None;
    }
    let points = |place: usize| among.get(place).map_or(0, |among| among.points);
    let reach = |place: usize| {
        among
            .get(place)
            .map_or(0, |among| among.points + 2 * among.missing)
    };
    let first = open.iter().copied().max_by_key(|&place| points(place))?;
    let others = open.iter().filter(|&&other| other != first);
    others
        .into_iter()
        .all(|&other| reach(other) < points(first))
        .then_some(first)
}
