//! What is proven of a round and what a repair changes, in German.

use league::ids::PlayerId;
use league::pairing::round::changes::{Assignment, AssignmentChange};
use league::pairing::{Barrier, LookAhead, NightKey};

use super::counted;
use crate::pages::texts::speech::Called;

/// Why a rematch cannot be avoided.
pub fn barrier(barrier: &Barrier, called: Called<'_>) -> String {
    let names = |players: &[PlayerId]| {
        let names: Vec<String> = players.iter().map(|&player| called(player)).collect();
        names.join(", ")
    };
    let sets = barrier
        .odd_sets
        .iter()
        .map(|set| format!("({})", names(set)));
    let sets = sets.collect::<Vec<_>>().join(" und ");
    let without = match &barrier.removed[..] {
        [] => String::new(),
        removed => format!(", und {} können nur je einer Gruppe helfen", names(removed)),
    };
    format!(
        "Mindestens {} muss eine Wiederholung sein: In {sets} kann niemand außerhalb der eigenen Gruppe \
         noch auf jemand Neues treffen{without}, und in einer Gruppe ungerader Größe bleibt immer jemand \
         übrig.",
        counted(barrier.rematches, "Partie", "Partien"),
    )
}

/// What is known of the rounds to come.
pub fn looked_ahead(known: &LookAhead) -> String {
    let rounds = |plan: usize| counted(u32::try_from(plan).unwrap_or(u32::MAX), "Runde", "Runden");
    match known {
        LookAhead::LastRound => "Das ist die letzte Runde.".into(),
        LookAhead::Playable(plan) => format!(
            "Nach dieser Runde gehen noch {} ohne Wiederholung; ein Weg ist gefunden.",
            rounds(plan.len())
        ),
        LookAhead::NeverRunsDry => {
            "Alle kommenden Runden gehen ohne Wiederholung, wie auch immer es läuft.".into()
        }
        LookAhead::RunsDry(plan) => format!(
            "Wie auch immer diese Runde gepaart wird, danach geht ohne Wiederholung nur noch: {}.",
            rounds(plan.len())
        ),
        LookAhead::OneRound => "Nur diese Runde wurde betrachtet, nicht die kommenden.".into(),
    }
}

/// The change as those it befalls read it.
pub fn changed(
    change: &AssignmentChange,
    called: Called<'_>,
    evening: &dyn Fn(NightKey) -> String,
) -> String {
    let part = |part| match part {
        Assignment::Game {
            opponent,
            night,
            table,
        } => format!(
            "gegen {} ({}, Tisch {})",
            called(opponent),
            evening(night),
            table.0
        ),
        Assignment::Bye => "setzt aus".to_owned(),
        Assignment::NotPlaying => "nicht in der Runde".to_owned(),
    };
    format!(
        "{}: {}; vorher: {}.",
        called(change.player),
        part(change.after),
        part(change.before)
    )
}
