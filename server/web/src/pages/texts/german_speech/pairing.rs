//! Reasons of pairings in German.

use league::ids::PlayerId;
use league::pairing::{AlternativeCost, Level, PairingReason, Subject, Wish};

use super::counted;

/// One sentence for each fact.
pub fn sentences(reason: &PairingReason, called: &dyn Fn(PlayerId) -> String) -> Vec<String> {
    let given_up = reason
        .given_up
        .iter()
        .map(|&(wish, amount)| given_up(wish, amount));
    [subject(&reason.subject, called)]
        .into_iter()
        .chain(given_up)
        .chain([price(reason.alternative)])
        .collect()
}

fn subject(subject: &Subject, called: &dyn Fn(PlayerId) -> String) -> String {
    match *subject {
        Subject::SameScore { pair, score } => {
            let [one, other] = pair.players().map(called);
            format!("{one} und {other} haben gleich viele Punkte, {score}.")
        }
        Subject::Float {
            down,
            down_score,
            up,
            up_score,
        } => format!(
            "{} mit {down_score} wird nach unten gelost und trifft {} mit {up_score}.",
            called(down),
            called(up)
        ),
        Subject::Bye { player, score } => format!(
            "{} mit {score} setzt aus, weil die Zahl nicht aufgeht.",
            called(player)
        ),
    }
}

fn given_up(wish: Wish, amount: u64) -> String {
    match wish {
        Wish::NoRematch if amount == 1 => "Sie sind sich schon einmal begegnet.".into(),
        Wish::NoRematch => format!("Sie sind sich schon {amount}-mal begegnet."),
        Wish::NoSecondBye => format!("Es ist nicht das erste Freilos: {amount} davor."),
        Wish::SpareSitsOut => "Niemand, der aussetzen wollte, konnte es.".into(),
        Wish::ByeToFewestPoints => format!("Die wenigsten Punkte sind {amount} weniger."),
        Wish::CloseScores => format!("Ihre Punkte liegen {} auseinander.", amount.isqrt()),
        Wish::ClubsApart => "Sie sind früh in der Saison aus einem Verein.".into(),
        Wish::FactionsApart => "Sie führen früh in der Saison dieselbe Fraktion.".into(),
        Wish::NoRepeatedFloat => {
            "Einer von ihnen wurde in den letzten zwei Runden schon so gelost.".into()
        }
        Wish::RolesInBounds => "Beide müssten dieselbe Rolle haben, nur einer kann es.".into(),
        Wish::RolesEven => "Beide sollten dieselbe Rolle haben, nur einer kann es.".into(),
    }
}

fn price(price: AlternativeCost) -> String {
    match price {
        AlternativeCost::Pinned => "Die Leitung hat es so festgelegt.".into(),
        AlternativeCost::Fixed => "Das stand schon vor der Auslosung fest.".into(),
        AlternativeCost::Indispensable => "Ohne sie gibt es keine Runde.".into(),
        AlternativeCost::ShorterSeason => {
            "Ohne sie gingen der Saison früher die neuen Partien aus.".into()
        }
        AlternativeCost::EquallyGood => {
            "Eine andere Runde ist genauso gut; das Los entschied.".into()
        }
        AlternativeCost::Worse(Level::Draw, _) => {
            "Ohne sie ist die Runde genauso gut; das Los entschied.".into()
        }
        AlternativeCost::Worse(level, amount) => {
            format!("Ohne sie hätte die beste Runde {}.", worse(level, amount))
        }
        AlternativeCost::NotComputed => {
            "Was ein Verbot kosten würde, wurde nicht berechnet.".into()
        }
    }
}

fn worse(level: Level, amount: u64) -> String {
    let more = |what: &str| format!("{amount} mehr an {what}");
    let amount = u32::try_from(amount).unwrap_or(u32::MAX);
    match level {
        Level::SittingOut => more("Spielern ohne Partie"),
        Level::Changed => more("Partien, die von der veröffentlichten Runde abweichen"),
        Level::Draw => more("Los"),
        Level::Wish(Wish::NoRematch) => {
            format!(
                "{} mehr als Wiederholung",
                counted(amount, "Partie", "Partien")
            )
        }
        Level::Wish(Wish::NoSecondBye) => more("zweiten Freilosen"),
        Level::Wish(Wish::SpareSitsOut) => {
            more("Freilosen für Spieler, die nicht aussetzen wollten")
        }
        Level::Wish(Wish::ByeToFewestPoints) => more("Punkten des Spielers, der aussetzt"),
        Level::Wish(Wish::CloseScores) => more("quadrierten Punktabständen"),
        Level::Wish(Wish::ClubsApart) => more("Partien innerhalb eines Vereins"),
        Level::Wish(Wish::FactionsApart) => more("Partien innerhalb einer Fraktion"),
        Level::Wish(Wish::NoRepeatedFloat) => more("wiederholtem Losen aus der Punktgruppe"),
        Level::Wish(Wish::RolesInBounds) => more("Rollen außerhalb der Grenzen"),
        Level::Wish(Wish::RolesEven) => more("ungleichen Rollen"),
    }
}
