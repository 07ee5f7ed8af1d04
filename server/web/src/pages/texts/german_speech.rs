//! The league's sentences in German.

mod details;
mod findings;
mod list_rules;
mod painting;
mod pairing;
mod proofs;
mod refusals;
mod rounds;
mod scenario;
mod scoring;

use document::season::policy::Policy;
use league::ledger::LineReason;
use league::lists::Finding;
use league::pairing::round::changes::AssignmentChange;
use league::pairing::{Barrier, LookAhead, NightKey};
use league::scenario::ScenarioSheet;
use league::share::Share;
use league::standings::{Basis, TieBreak, TieBreaks, UnplayedRounds};

use crate::pages::texts::speech::{Called, Named, Speech};

/// German.
pub struct German;

impl Speech for German {
    fn rules(&self, policy: &Policy) -> Vec<String> {
        let lists = policy.list_rules.iter().map(list_rules::sentence);
        lists
            .chain(scoring::sentences(&policy.scoring))
            .chain([silence(policy.confirm_within_hours)])
            .chain(painting::sentences(&policy.painting))
            .chain(equal_totals(&policy.tie_breaks))
            .chain(rounds::sentences(policy.rounds))
            .collect()
    }

    fn scenario(&self, sheet: &ScenarioSheet) -> Vec<String> {
        scenario::sentences(sheet.terms())
    }

    fn finding(&self, finding: &Finding, named: Named<'_>) -> Option<String> {
        findings::sentence(finding, named)
    }

    fn credited(&self, reason: &LineReason) -> String {
        credited(reason)
    }

    fn paired(&self, reason: &league::pairing::PairingReason, called: Called<'_>) -> Vec<String> {
        pairing::sentences(reason, called)
    }

    fn barrier(&self, barrier: &Barrier, called: Called<'_>) -> String {
        proofs::barrier(barrier, called)
    }

    fn looked_ahead(&self, known: &LookAhead) -> String {
        proofs::looked_ahead(known)
    }

    fn changed(
        &self,
        change: &AssignmentChange,
        called: Called<'_>,
        evening: &dyn Fn(NightKey) -> String,
    ) -> String {
        proofs::changed(change, called, evening)
    }

    fn tie_break(&self, tie_break: TieBreak) -> &'static str {
        match tie_break {
            TieBreak::OpponentsScore => "Punktsumme der Gegner",
            TieBreak::OpponentsScoreCut => "Punktsumme der Gegner ohne die niedrigste",
            TieBreak::OpponentsScoreMedian => {
                "Punktsumme der Gegner ohne die niedrigste und die höchste"
            }
            TieBreak::SonnebornBerger => "Sonneborn–Berger",
            TieBreak::DirectEncounter => "direkte Begegnung",
            TieBreak::Wins => "gewonnene Partien",
            TieBreak::WinsInHarderRole => "gewonnene Partien in der schwereren Rolle",
            TieBreak::ScoreMargin => "Vorsprung an Spielpunkten",
            TieBreak::AdjustedMargin => "Vorsprung, angepasst an die Stärke der Gegner",
            TieBreak::PaintingPoints => "Punkte für Bemalung",
            TieBreak::PaintedShare => "bemalter Anteil",
            TieBreak::FewestByes => "wenigste Freilose",
        }
    }

    fn refusal(&self, code: &str) -> Option<&'static str> {
        refusals::sentence(code)
    }

    fn detail(&self, english: &str) -> Option<String> {
        details::sentence(english)
    }
}

fn silence(hours: u16) -> String {
    format!("Ein gemeldetes Ergebnis, dem niemand antwortet, gilt nach {hours} h.")
}

fn credited(reason: &LineReason) -> String {
    match reason {
        LineReason::Won { own, other } => format!("{own} zu {other} gewonnen"),
        LineReason::Drew { own, other } => format!("{own} zu {other} unentschieden"),
        LineReason::Lost { own, other } => format!("{own} zu {other} verloren"),
        LineReason::Conceded => "aufgegeben".to_owned(),
        LineReason::OpponentConceded => "der Gegner gab auf".to_owned(),
        LineReason::OpponentAbsent => "der Gegner war nicht da".to_owned(),
        LineReason::AbsentWithNotice => "abgemeldet gefehlt".to_owned(),
        LineReason::AbsentWithoutNotice => "unabgemeldet gefehlt".to_owned(),
        LineReason::DoubleLoss => "beide Seiten verlieren".to_owned(),
        LineReason::Bye => "Freilos".to_owned(),
        LineReason::ByeByAverage { games: 1 } => "Freilos, nach einer eigenen Partie".to_owned(),
        LineReason::ByeByAverage { games } => {
            format!("Freilos, nach dem Mittel von {games} eigenen Partien")
        }
        LineReason::Attended => "am Tisch gewesen".to_owned(),
        LineReason::PaintedShare(share) => format!("{} der Liste bemalt", percent(*share)),
        LineReason::NewlyFinished { count } => format!("{count} neu fertig"),
        LineReason::AboveBonusCap { limit, earned } => {
            format!("{earned} an Boni in einer Woche, die {limit} zulässt")
        }
        LineReason::Late { seconds } => format!(
            "Liste {} h {} min zu spät",
            seconds / 3600,
            seconds / 60 % 60
        ),
        LineReason::MedianOfWeek { median, less } => {
            format!("vor dem Einstieg: Median {median} weniger {less}")
        }
        LineReason::MissedWeek => "vor dem Einstieg".to_owned(),
        LineReason::Ruled(words) => words.as_str().to_owned(),
        LineReason::NotAmongBest { best } => format!("nicht unter den besten {best} Wochen"),
    }
}

fn equal_totals(tie_breaks: &TieBreaks) -> [String; 2] {
    let terms = tie_breaks.terms();
    let order = terms.order.iter().map(|one| German.tie_break(*one));
    let order = order.collect::<Vec<_>>().join(", dann ");
    let basis = match terms.basis {
        Basis::StandardPoints => "1 für einen Sieg und ½ für ein Unentschieden",
        Basis::GamePoints => "Ligapunkte aus Partien und Freilosen",
        Basis::Total => "Gesamtpunkte der Tabelle",
    };
    let unplayed = match terms.unplayed {
        UnplayedRounds::LeftOut => "bleiben außer Betracht",
        UnplayedRounds::VirtualOpponent => "zählen als Partien gegen einen gedachten Gegner",
        UnplayedRounds::OwnScore => "zählen als Partien gegen einen Gegner mit eigener Punktzahl",
    };
    [
        match order.as_str() {
            "" => "Bei gleicher Punktzahl wird der Platz geteilt.".to_owned(),
            order => format!(
                "Bei gleicher Punktzahl entscheiden: {order}. Wer danach noch gleich ist, teilt den Platz."
            ),
        },
        format!("Punkte der Gegner sind: {basis}. Runden ohne Partie {unplayed}."),
    ]
}

/// A share with the comma of the language.
fn percent(share: Share) -> String {
    share.to_string().replace('.', ",")
}

/// "1 Punkt", "3 Punkte".
fn counted(amount: u32, one: &str, many: &str) -> String {
    format!("{amount} {}", if amount == 1 { one } else { many })
}
