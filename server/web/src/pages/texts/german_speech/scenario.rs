//! What counts in a scenario, in German.

use league::scenario::{
    Against, Army, AttackerIs, Grade, Item, Legs, Measure, Roles, SheetTerms, When, Who,
};
use league::side::Role;

use super::{counted, percent};

/// The sheet as sentences.
pub fn sentences(terms: &SheetTerms) -> Vec<String> {
    let mut sentences = vec![legs(terms)];
    sentences.extend(roles(terms.roles));
    sentences.extend(terms.items.iter().map(|item| of_item(terms, item)));
    for joint in &terms.joint_caps {
        let labels = joint.items.iter().map(|key| label(terms, key.as_str()));
        sentences.push(format!(
            "{} geben einer Seite zusammen höchstens {}.",
            labels.collect::<Vec<_>>().join(" und "),
            points(joint.cap)
        ));
    }
    sentences.push(match terms.draw_margin {
        0 => "Gleich viele Punkte sind ein Unentschieden.".to_owned(),
        1 => "Ein Unterschied von 1 Punkt ist noch ein Unentschieden.".to_owned(),
        margin => format!("Ein Unterschied von bis zu {margin} Punkten ist ein Unentschieden."),
    });
    sentences
}

fn legs(terms: &SheetTerms) -> String {
    let turns = counted(terms.turns.into(), "Zug", "Züge");
    match terms.legs {
        Legs::One => format!("Eine Partie über {turns}."),
        Legs::TwoSummed => format!(
            "Zwei Durchgänge über je {turns} mit getauschten Rollen; ihre Punkte werden addiert."
        ),
        Legs::TwoWonSeparately => format!(
            "Zwei Durchgänge über je {turns} mit getauschten Rollen; jeder wird für sich gewonnen."
        ),
    }
}

fn role(role: Role) -> &'static str {
    match role {
        Role::Attacker => "Angreifer",
        Role::Defender => "Verteidiger",
    }
}

fn roles(roles: Roles) -> Vec<String> {
    let Roles::AttackAndDefence {
        attacker_fields,
        defender_fields,
        attacker,
        harder,
    } = roles
    else {
        return vec!["Beide Seiten haben dieselbe Aufgabe.".to_owned()];
    };
    let who = match attacker {
        AttackerIs::Paired => "Die Paarung bestimmt den Angreifer.",
        AttackerIs::LowerStanding => "Wer in der Tabelle tiefer steht, greift an.",
        AttackerIs::HigherStanding => "Wer in der Tabelle höher steht, greift an.",
    };
    let fields = format!(
        "Der Angreifer beginnt mit {} der Liste, der Verteidiger mit {}.",
        percent(attacker_fields),
        percent(defender_fields)
    );
    let harder = harder.map(|side| format!("Der {} hat es schwerer.", role(side)));
    [who.to_owned(), fields].into_iter().chain(harder).collect()
}

fn of_item(terms: &SheetTerms, item: &Item) -> String {
    let when = match item.when {
        When::DuringPlay => "",
        When::LastTurn => ", gezählt am Ende des letzten Zuges",
    };
    let who = match item.who {
        Who::Either => String::new(),
        Who::Only(side) => format!(" (nur {})", role(side)),
    };
    let worth = match &item.measure {
        Measure::Count {
            points_each,
            most,
            exclusive,
            cap,
        } => {
            let shared = if *exclusive {
                " für beide Seiten zusammen"
            } else {
                ""
            };
            let cap = cap.map(|cap| format!(", im Wert von höchstens {}", points(cap)));
            format!(
                "je {}, bis zu {most}{shared}{}",
                points(*points_each),
                cap.unwrap_or_default()
            )
        }
        Measure::ArmyShare {
            army,
            against,
            grade,
        } => of_share(*army, *against, grade),
        Measure::RestOf { item: of, out_of } => {
            let of = label(terms, of.as_str());
            format!(
                "was „{of}“ der Gegenseite von {} übrig lässt",
                counted(*out_of, "Punkt", "Punkten")
            )
        }
    };
    format!("{}{who}: {worth}{when}.", item.label)
}

fn of_share(army: Army, against: Against, grade: &Grade) -> String {
    let whole = match (against, army) {
        (Against::StartingPoints, Army::Own) => "der Punkte, mit denen die eigene Armee begann",
        (Against::StartingPoints, Army::Opposing) => {
            "der Punkte, mit denen die gegnerische Armee begann"
        }
        (Against::Cap, _) => "der Punktgrenze",
    };
    match grade {
        Grade::PerStep {
            step,
            points_each,
            cap,
        } => format!(
            "{} für je volle {} {whole}, höchstens {}",
            points(*points_each),
            percent(*step),
            points(*cap)
        ),
        Grade::Bands(bands) => {
            let bands = bands
                .iter()
                .map(|band| format!("{} ab {}", points(band.points), percent(band.from)));
            format!("{} {whole}", bands.collect::<Vec<_>>().join(", "))
        }
    }
}

fn label<'t>(terms: &'t SheetTerms, key: &'t str) -> &'t str {
    let item = terms.items.iter().find(|item| item.key.as_str() == key);
    item.map_or(key, |item| item.label.as_str())
}

fn points(amount: u32) -> String {
    counted(amount, "Punkt", "Punkte")
}
