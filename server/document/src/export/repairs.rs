//! Check of repairs: does a later version of a round repair the one before, and is it what is played?

use std::collections::{BTreeMap, BTreeSet};

use uuid::Uuid;

use super::{RoundRecordDocument, WeekRecordDocument};
use crate::rounds::task::{ContenderDocument, TaskDocument};

/// A repair names the version before, starts from its games, and changes nothing of what it was drawn
/// from but who can come when, the tables, and the organiser's orders.
pub fn is_repair_of(before: &RoundRecordDocument, after: &RoundRecordDocument) -> bool {
    let named = after.repair.as_ref().map(|repair| repair.of);
    named == Some(before.round)
        && games(&after.inputs) == games_of(before)
        && unmoved(&before.inputs) == unmoved(&after.inputs)
        && is_known(&before.inputs, &after.inputs)
}

fn games(inputs: &TaskDocument) -> BTreeSet<(u8, u16, Uuid, Uuid)> {
    let games = inputs.published.iter();
    games
        .map(|game| (game.night, game.table, game.attacker, game.defender))
        .collect()
}

fn games_of(round: &RoundRecordDocument) -> BTreeSet<(u8, u16, Uuid, Uuid)> {
    let games = round.proposal.games.iter();
    games
        .map(|game| (game.night, game.table, game.attacker, game.defender))
        .collect()
}

/// The inputs without what a shock may change.
fn unmoved(inputs: &TaskDocument) -> TaskDocument {
    TaskDocument {
        contenders: Vec::new(),
        nights: Vec::new(),
        pins: Vec::new(),
        forbidden: Vec::new(),
        fixed: Vec::new(),
        allowed: None,
        published: Vec::new(),
        ..inputs.clone()
    }
}

/// Whoever is in both is the same in both, but for the nights.
fn is_known(before: &TaskDocument, after: &TaskDocument) -> bool {
    let facts = |contender: &ContenderDocument| ContenderDocument {
        nights: Vec::new(),
        ..contender.clone()
    };
    let known: BTreeMap<Uuid, ContenderDocument> = before
        .contenders
        .iter()
        .map(|contender| (contender.player, facts(contender)))
        .collect();
    after.contenders.iter().all(|contender| {
        let before = known.get(&contender.player);
        before.is_none_or(|before| *before == facts(contender))
    })
}

/// The games of the week's round are those that this version of it proposes.
pub fn is_played(week: &WeekRecordDocument, round: &RoundRecordDocument) -> bool {
    let pair = |a: Uuid, b: Uuid| (a.min(b), a.max(b));
    let versions: BTreeSet<Uuid> = week
        .rounds
        .iter()
        .filter(|other| other.number == round.number)
        .map(|other| other.round)
        .collect();
    let proposed: BTreeSet<_> = round
        .proposal
        .games
        .iter()
        .map(|game| pair(game.attacker, game.defender))
        .collect();
    let games = || {
        week.games
            .iter()
            .filter(|game| versions.contains(&game.round))
    };
    let played: BTreeSet<_> = games()
        .filter_map(|game| Some(pair(game.first, game.second?)))
        .collect();
    let byes: BTreeSet<_> = games()
        .filter(|game| game.second.is_none())
        .map(|game| game.first)
        .collect();
    proposed == played && byes == round.proposal.byes.iter().copied().collect()
}
