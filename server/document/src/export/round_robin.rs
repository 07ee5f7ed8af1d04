//! Check of a round robin: were its seats drawn by lot, and is each round that of the table?

use std::collections::BTreeMap;

use league::ids::PlayerId;
use league::pairing::robin::table_round::{SeatNumbers, TablePosition, restrict_to_table};
use league::pairing::round::draw::DrawSecret;
use league::pairing::round::method::{Cycles, PairingMethod, RoundSettings};
use league::pairing::{Draw, Task};

use super::{PlayerRecordDocument, RoundRecordDocument, SeasonExportDocument};
use crate::fault::DocumentFault;
use crate::rounds::seats;

/// The seats of a season.
pub struct RoundRobinTable {
    seats: usize,
    cycles: Cycles,
    per_week: u8,
    players: Vec<PlayerRecordDocument>,
}

impl RoundRobinTable {
    /// `None` unless the season is a round robin.
    ///
    /// # Errors
    /// Rounds that no season can have.
    pub fn from_export(export: &SeasonExportDocument) -> Result<Option<Self>, Vec<DocumentFault>> {
        let rounds: RoundSettings = export.policy.rounds.to_rounds()?;
        let PairingMethod::RoundRobin(cycles) = rounds.method() else {
            return Ok(None);
        };
        let seats = export.players.iter().filter_map(|player| player.seat).max();
        Ok(Some(Self {
            // A table without seats holds no game: then every round of the export is found wrong.
            seats: usize::from(seats.unwrap_or(0)),
            cycles,
            per_week: rounds.per_week(),
            players: export.players.clone(),
        }))
    }

    /// The seats were given in the order of the lots. Whoever came late sits where nobody sat before
    /// only in the last seat.
    pub fn is_drawn(&self, secret: &DrawSecret, export: &SeasonExportDocument) -> bool {
        let mut first: BTreeMap<u8, &PlayerRecordDocument> = BTreeMap::new();
        for player in &self.players {
            let Some(seat) = player.seat else { continue };
            let before = first.entry(seat).or_insert(player);
            if player.joined_week < before.joined_week {
                *before = player;
            }
        }
        let sitting: Vec<PlayerId> = first.values().map(|player| PlayerId(player.id)).collect();
        let lots = seats::seat_draw(secret, export.season);
        let in_order =
            |sitting: &[PlayerId]| seats::order_by_lot(&lots, sitting.to_vec()) == sitting;
        let contiguous = first.keys().copied().eq(1..=self.seats as u8);
        let but_last = sitting.split_last().map_or(&[][..], |(_, rest)| rest);
        contiguous && (in_order(&sitting) || (self.seats.is_multiple_of(2) && in_order(but_last)))
    }

    /// Nobody may meet ahead of the table, and a round as it was drawn has the table's games.
    pub fn matches_round(&self, round: &RoundRecordDocument) -> bool {
        let Ok(task) = round.inputs.to_task(Draw([0; 32])) else {
            return false;
        };
        let week = round.inputs.week;
        let before = usize::from(week.saturating_sub(1)) * usize::from(self.per_week);
        let place = TablePosition {
            seats: self.seats.next_multiple_of(2),
            cycles: self.cycles,
            number: before + usize::from(round.number.saturating_sub(1)),
        };
        let expected =
            restrict_to_table(task.clone(), &self.seat_holders(week), place).map(sorted_pairs);
        let task = sorted_pairs(task);
        expected.is_some_and(|expected| match round.version {
            1 => expected == task,
            _ => expected.allowed == task.allowed,
        })
    }

    fn seat_holders(&self, week: u8) -> SeatNumbers {
        let there = self.players.iter().filter(|player| {
            player.joined_week <= week && player.left_after_week.is_none_or(|last| week <= last)
        });
        there
            .filter_map(|player| Some((PlayerId(player.id), player.seat?)))
            .collect()
    }
}

fn sorted_pairs(mut task: Task) -> Task {
    task.fixed.sort();
    task.allowed.iter_mut().for_each(|pairs| pairs.sort());
    task
}
