//! A round in sentences: reasons of each game, costs of the hall, changes of a repair.

use std::collections::BTreeMap;

use app::rounds::{RoundRepair, RoundRow};
use app::seasons::{Player, Week};
use league::ids::PlayerId;
use league::pairing::{NightKey, PairingReason};
use messages::{Message, proofs};
use serde::Serialize;
use utoipa::ToSchema;

use crate::problem::Problem;

/// A round in sentences.
#[derive(Serialize, ToSchema)]
pub struct RoundWordsView {
    /// One list for each game in its order, then one for each bye.
    reasons: Vec<Vec<String>>,
    /// What the tables and nights cost.
    hall: String,
    /// Why players meet again, where they must.
    barrier: Option<String>,
    /// How far the rounds to come were considered.
    looked_ahead: String,
    /// What a repair changes.
    changes: Vec<String>,
}

/// How people and nights of a week are called.
pub struct Names {
    handles: BTreeMap<PlayerId, String>,
    nights: Vec<String>,
}

impl Names {
    /// Of a season's players and a week's nights.
    pub fn new(players: Vec<Player>, week: &Week) -> Self {
        let handles = players.into_iter().map(|player| (player.id, player.handle));
        Self {
            handles: handles.collect(),
            nights: week.nights.iter().map(|night| night.key.clone()).collect(),
        }
    }

    // Whom and which night a proposal names is of its season and week: no name is ever missing.
    fn called(&self, player: PlayerId) -> String {
        self.handles.get(&player).cloned().unwrap_or_default()
    }

    fn evening(&self, night: NightKey) -> String {
        let found = self.nights.get(usize::from(night.number()));
        found.cloned().unwrap_or_default()
    }

    /// A round in their words.
    ///
    /// # Errors
    /// 500 when a proposal that was kept cannot be read.
    pub fn describe(&self, repair: &RoundRepair) -> Result<RoundWordsView, Problem> {
        let RoundRepair { round, changes } = repair;
        let proposal = parse_proposal(round)?;
        let called = |player| self.called(player);
        let evening = |night| self.evening(night);
        let sentences = |reason: &PairingReason| in_english(&reason.messages(&called));
        let changes = changes.iter();
        Ok(RoundWordsView {
            reasons: proposal.reasons.iter().map(sentences).collect(),
            hall: proposal.hall_message().to_string(),
            barrier: proposal
                .barrier
                .as_ref()
                .map(|it| it.message(&called).to_string()),
            looked_ahead: match &round.task.allowed {
                None => proposal.look_ahead.message().to_string(),
                Some(_) => proofs::proof_by_table(round.task.rounds_left).to_string(),
            },
            changes: changes
                .map(|it| it.message(&called, &evening).to_string())
                .collect(),
        })
    }
}

fn in_english(messages: &[Message]) -> Vec<String> {
    messages.iter().map(ToString::to_string).collect()
}

fn parse_proposal(round: &RoundRow) -> Result<league::pairing::Proposal, Problem> {
    let parse_proposal = round.proposal.to_proposal();
    parse_proposal.map_err(|cause| app::Refusal::Internal(cause.to_string()).into())
}
