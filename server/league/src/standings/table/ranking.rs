//! Ranking: orders the table by total, then by each tie-break among those still equal.

use std::cmp::Reverse;

use crate::points::LeaguePoints;
use crate::standings::tiebreaks::inputs::{Exact, TieBreakInputs};
use crate::standings::tiebreaks::{TieBreak, TieBreakRule};
use crate::week::WeekNo;

use super::credits::Credits;
use super::season::IndexedSeason;

/// A player's rank, and what decided it.
#[derive(Clone, Copy)]
pub struct RankedPlayer {
    pub player: usize,
    pub rank: u32,
    pub shared: bool,
    pub decided_by: Option<TieBreak>,
}

/// Splits ties, and keeps what it computed for them.
pub struct Ranking<'b> {
    inputs: &'b TieBreakInputs<'b>,
    order: &'b [TieBreak],
    /// For each tie-break, for each player: computed only where a tie asked for it.
    values: Vec<Vec<Option<Exact>>>,
    decided_by: Vec<Option<TieBreak>>,
    shared_with_above: Vec<bool>,
}

impl<'b> Ranking<'b> {
    pub fn new(season: &'b IndexedSeason<'_>, inputs: &'b TieBreakInputs<'b>) -> Self {
        let players = season.players.len();
        let order = &season.facts.tie_breaks.terms().order;
        Self {
            inputs,
            order,
            values: vec![vec![None; players]; order.len()],
            decided_by: vec![None; players],
            shared_with_above: vec![false; players],
        }
    }

    /// Everybody who has a row as of a week, best first.
    pub fn ranked_players(
        &mut self,
        season: &IndexedSeason<'_>,
        credits: &Credits<'_>,
        as_of: WeekNo,
    ) -> Vec<RankedPlayer> {
        let totals: Vec<LeaguePoints> = credits.sums.iter().map(|sums| sums.total()).collect();
        let total_of = |player: &usize| totals.get(*player).copied().unwrap_or_default();
        let with_row = (0..totals.len()).filter(|&player| season.has_row(player, as_of));
        let mut players: Vec<usize> = with_row.collect();
        players.sort_by_key(|player| Reverse(total_of(player)));
        for tied in players.chunk_by_mut(|a, b| total_of(a) == total_of(b)) {
            self.split_ties(tied, 0);
        }
        self.assign_ranks(&players)
    }

    /// Orders players that are equal in everything before the tie-break at `depth`.
    fn split_ties(&mut self, tied: &mut [usize], depth: usize) {
        if tied.len() < 2 {
            return;
        }
        let Some(&tie_break) = self.order.get(depth) else {
            for &player in tied.iter().skip(1) {
                if let Some(shared) = self.shared_with_above.get_mut(player) {
                    *shared = true;
                }
            }
            return;
        };
        let mut valued = self.values_of_tied(tie_break, tied);
        if tie_break.fewer_is_better() {
            valued.sort_by_key(|(_, value)| *value);
        } else {
            valued.sort_by_key(|(_, value)| Reverse(*value));
        }
        for (ranked, &(player, value)) in tied.iter_mut().zip(&valued) {
            *ranked = player;
            let values = self.values.get_mut(depth);
            if let Some(cell) = values.and_then(|values| values.get_mut(player)) {
                *cell = value;
            }
        }
        let mut rest = tied;
        for (group, equal) in valued.chunk_by(|a, b| a.1 == b.1).enumerate() {
            let (equal, others) = rest.split_at_mut(equal.len());
            self.split_ties(equal, depth + 1);
            // Only now is it known who leads the group.
            if let (true, Some(first)) = (group > 0, equal.first())
                && let Some(decided) = self.decided_by.get_mut(*first)
            {
                *decided = Some(tie_break);
            }
            rest = others;
        }
    }

    fn values_of_tied(&self, tie_break: TieBreak, tied: &[usize]) -> Vec<(usize, Option<Exact>)> {
        let players = tied.iter().copied();
        match tie_break.rule() {
            TieBreakRule::Each(value) => players
                .map(|player| (player, Some(value(self.inputs, player))))
                .collect(),
            TieBreakRule::Among(values) => players.zip(values(self.inputs, tied)).collect(),
        }
    }

    fn assign_ranks(&self, players: &[usize]) -> Vec<RankedPlayer> {
        let shares = |player: usize| self.shared_with_above.get(player) == Some(&true);
        let mut rank = 0;
        let below = players.iter().skip(1).map(Some).chain([None]);
        let ranked_players = players.iter().zip(below).zip(1..);
        let ranked_players = ranked_players.map(|((&player, below), position)| {
            if !shares(player) {
                rank = position;
            }
            RankedPlayer {
                player,
                rank,
                shared: shares(player) || below.is_some_and(|&below| shares(below)),
                decided_by: self.decided_by.get(player).copied().flatten(),
            }
        });
        ranked_players.collect()
    }

    /// The value of every tie-break for a player, ties or not.
    pub fn values_of(&self, player: usize) -> impl Iterator<Item = (TieBreak, Option<Exact>)> {
        self.order
            .iter()
            .zip(&self.values)
            .map(move |(&tie_break, values)| {
                let known = values.get(player).copied().flatten();
                let value = match tie_break.rule() {
                    TieBreakRule::Each(value) => known.or_else(|| Some(value(self.inputs, player))),
                    TieBreakRule::Among(_) => known,
                };
                (tie_break, value)
            })
    }
}
