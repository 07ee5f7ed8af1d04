//! How a season makes its rounds, in German.

use league::pairing::round::method::{Cycles, PairingMethod, RoundSettings};

/// The rules as players read them.
pub fn sentences(rounds: RoundSettings) -> [String; 2] {
    let method = match rounds.method() {
        PairingMethod::ByScore => {
            "In jeder Runde treffen sich gleiche Punktzahlen, soweit die Wünsche es zulassen."
        }
        PairingMethod::RoundRobin(Cycles::Single) => {
            "Alle treffen einmal auf alle, nach den Berger-Tabellen; eine versäumte Partie wird \
             nachgeholt, wenn beide frei sind."
        }
        PairingMethod::RoundRobin(Cycles::Double) => {
            "Alle treffen zweimal auf alle, mit getauschten Rollen, nach den Berger-Tabellen; eine \
             versäumte Partie wird nachgeholt, wenn beide frei sind."
        }
    };
    let per_week = match rounds.per_week() {
        1 => "Eine Woche hat eine Runde.".to_owned(),
        more => format!(
            "Eine Woche hat bis zu {more} Runden, jede mit ihrem Anteil an den Abenden in ihrer Folge."
        ),
    };
    [method.to_owned(), per_week]
}
