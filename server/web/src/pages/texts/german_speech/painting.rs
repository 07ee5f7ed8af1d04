//! Painting rules in German.

use league::painting::{Checker, FinishedMeasure, PaintCounting, PaintedBonus, Painting, Stage};

use super::percent;

/// The rules as players read them.
pub fn sentences(painting: &Painting) -> Vec<String> {
    let terms = painting.terms();
    let stage = match terms.painted_from {
        Stage::Bare => "zusammengebaut",
        Stage::Primed => "grundiert",
        Stage::Coloured => "in Farbe",
        Stage::Finished => "fertig",
    };
    let counting = match terms.counting {
        PaintCounting::ByModel => "eine Einheit zählt anteilig nach bemalten Modellen",
        PaintCounting::WholeUnits => "eine Einheit zählt, wenn alle ihre Modelle bemalt sind",
    };
    let mut sentences = vec![format!(
        "Ein Modell gilt als bemalt, wenn es {stage} ist; {counting}. Eine bemalte Einheit bleibt bemalt."
    )];
    sentences.extend(terms.bonuses.iter().map(bonus));
    if !terms.checked_by.is_empty() {
        let who = terms.checked_by.iter().map(|checker| match checker {
            Checker::Opponent => "vom Gegner am Tisch",
            Checker::Referee => "vom Schiedsrichter",
            Checker::Photo => "vom Schiedsrichter nach Foto",
        });
        let who = who.collect::<Vec<_>>().join(" oder ");
        sentences.push(format!("Gemeldetes wird {who} geprüft."));
    }
    sentences
}

fn bonus(bonus: &PaintedBonus) -> String {
    match bonus {
        PaintedBonus::AtThreshold { share, points } => format!(
            "Eine Liste, die zu mindestens {} bemalt ist, gibt {points} je Woche.",
            percent(*share)
        ),
        PaintedBonus::Tiers(tiers) => {
            let tiers = tiers
                .iter()
                .map(|tier| format!("{} ab {}", tier.points, percent(tier.from)));
            let tiers = tiers.collect::<Vec<_>>().join(", ");
            format!("Der bemalte Anteil der Liste gibt je Woche: {tiers}.")
        }
        PaintedBonus::Proportional { for_all } => format!(
            "Der bemalte Anteil der Liste gibt diesen Anteil von {for_all} je Woche, abgerundet."
        ),
        PaintedBonus::NewlyFinished {
            counted: FinishedMeasure::Units,
            each,
            most,
        } => format!("Jede in der Woche fertige Einheit gibt {each}, höchstens {most} je Woche."),
        PaintedBonus::NewlyFinished {
            counted: FinishedMeasure::Points { step },
            each,
            most,
        } => format!(
            "Je {step} in der Woche fertige Armeepunkte geben {each}, höchstens {most} je Woche."
        ),
    }
}
