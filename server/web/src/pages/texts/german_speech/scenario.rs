//! What counts in a scenario, in German.

use league::scenario::{
    ArmyOwner, AttackerChoice, Grade, ItemMeasure, Legs, ScenarioRoles, ScoreItem, ScoringSide,
    ScoringTime, ShareBase, SheetTerms,
};
use league::side::GameRole;

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

fn role(role: GameRole) -> &'static str {
    match role {
        GameRole::Attacker => "Angreifer",
        GameRole::Defender => "Verteidiger",
    }
}

fn roles(roles: ScenarioRoles) -> Vec<String> {
    let ScenarioRoles::AttackAndDefence {
        attacker_fields,
        defender_fields,
        attacker,
        harder,
    } = roles
    else {
        return vec!["Beide Seiten haben dieselbe Aufgabe.".to_owned()];
    };
    let who = match attacker {
        AttackerChoice::Paired => "Die Paarung bestimmt den Angreifer.",
        AttackerChoice::LowerStanding => "Wer in der Tabelle tiefer steht, greift an.",
        AttackerChoice::HigherStanding => "Wer in der Tabelle höher steht, greift an.",
    };
    let fields = format!(
        "Der Angreifer beginnt mit {} der Liste, der Verteidiger mit {}.",
        percent(attacker_fields),
        percent(defender_fields)
    );
    let harder = harder.map(|side| format!("Der {} hat es schwerer.", role(side)));
    [who.to_owned(), fields].into_iter().chain(harder).collect()
}

fn of_item(terms: &SheetTerms, item: &ScoreItem) -> String {
    let when = match item.when {
        ScoringTime::DuringPlay => "",
        ScoringTime::LastTurn => ", gezählt am Ende des letzten Zuges",
    };
    let who = match item.who {
        ScoringSide::Either => String::new(),
        ScoringSide::Only(side) => format!(" (nur {})", role(side)),
    };
    let worth = match &item.measure {
        ItemMeasure::Count {
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
        ItemMeasure::ArmyShare {
            army,
            against,
            grade,
        } => of_share(*army, *against, grade),
        ItemMeasure::RestOf { item: of, out_of } => {
            let of = label(terms, of.as_str());
            format!(
                "was „{of}“ der Gegenseite von {} übrig lässt",
                counted(*out_of, "Punkt", "Punkten")
            )
        }
    };
    format!("{}{who}: {worth}{when}.", item.label)
}

fn of_share(army: ArmyOwner, against: ShareBase, grade: &Grade) -> String {
    let whole = match (against, army) {
        (ShareBase::StartingPoints, ArmyOwner::Own) => {
            "der Punkte, mit denen die eigene Armee begann"
        }
        (ShareBase::StartingPoints, ArmyOwner::Opposing) => {
            "der Punkte, mit denen die gegnerische Armee begann"
        }
        (ShareBase::Cap, _) => "der Punktgrenze",
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
