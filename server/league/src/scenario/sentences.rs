//! The scenario sheet as English sentences.

use crate::side::GameRole;

use super::item::{ArmyOwner, Grade, ItemMeasure, ScoreItem, ScoringSide, ScoringTime, ShareBase};
use super::{AttackerChoice, Legs, ScenarioRoles, SheetTerms};

pub(super) fn describe_sheet(terms: &SheetTerms) -> Vec<String> {
    let mut sentences = vec![legs(terms)];
    sentences.extend(roles(terms.roles));
    sentences.extend(terms.items.iter().map(|item| item_sentence(terms, item)));
    for joint in &terms.joint_caps {
        let labels = joint.items.iter().map(|key| label(terms, key.as_str()));
        sentences.push(format!(
            "{} together give at most {} to a side.",
            labels.collect::<Vec<_>>().join(" and "),
            points(joint.cap)
        ));
    }
    sentences.push(match terms.draw_margin {
        0 => "Equal scores are a draw.".to_owned(),
        margin => format!("A difference of up to {} is a draw.", points(margin)),
    });
    sentences
}

fn legs(terms: &SheetTerms) -> String {
    let turns = counted(terms.turns.into(), "turn");
    match terms.legs {
        Legs::One => format!("One game of {turns}."),
        Legs::TwoSummed => {
            format!("Two legs of {turns} each with the roles swapped; their scores are added.")
        }
        Legs::TwoWonSeparately => {
            format!("Two legs of {turns} each with the roles swapped; each is won on its own.")
        }
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
        return vec!["Both sides have the same task.".to_owned()];
    };
    let who = match attacker {
        AttackerChoice::Paired => "The pairing names the attacker.",
        AttackerChoice::LowerStanding => "The player with the lower standing attacks.",
        AttackerChoice::HigherStanding => "The player with the higher standing attacks.",
    };
    let fields = format!(
        "The attacker starts with {attacker_fields} of the list, the defender with {defender_fields}."
    );
    let harder = harder.map(|role| format!("The {} has the harder task.", role.as_str()));
    [who.to_owned(), fields].into_iter().chain(harder).collect()
}

fn item_sentence(terms: &SheetTerms, item: &ScoreItem) -> String {
    let when = match item.when {
        ScoringTime::DuringPlay => "",
        ScoringTime::LastTurn => ", counted at the end of the last turn",
    };
    let who = match item.who {
        ScoringSide::Either => "",
        ScoringSide::Only(GameRole::Attacker) => " (attacker only)",
        ScoringSide::Only(GameRole::Defender) => " (defender only)",
    };
    let worth = match &item.measure {
        ItemMeasure::Count {
            points_each,
            most,
            exclusive,
            cap,
        } => {
            let shared = if *exclusive {
                " for both sides together"
            } else {
                ""
            };
            let cap = cap.map(|cap| format!(", worth at most {}", points(cap)));
            format!(
                "{} each, up to {most}{shared}{}",
                points(*points_each),
                cap.unwrap_or_default()
            )
        }
        ItemMeasure::ArmyShare {
            army,
            against,
            grade,
        } => share_worth(*army, *against, grade),
        ItemMeasure::RestOf { item: of, out_of } => {
            let of = label(terms, of.as_str());
            format!("what the opponent's \"{of}\" leaves of {}", points(*out_of))
        }
    };
    format!("{}{who}: {worth}{when}.", item.label)
}

fn share_worth(army: ArmyOwner, against: ShareBase, grade: &Grade) -> String {
    let whole = match (against, army) {
        (ShareBase::StartingPoints, ArmyOwner::Own) => "of the points your army started with",
        (ShareBase::StartingPoints, ArmyOwner::Opposing) => {
            "of the points the opposing army started with"
        }
        (ShareBase::Cap, _) => "of the points cap",
    };
    match grade {
        Grade::PerStep {
            step,
            points_each,
            cap,
        } => format!(
            "{} for every full {step} {whole}, at most {}",
            points(*points_each),
            points(*cap)
        ),
        Grade::Bands(bands) => {
            let bands = bands
                .iter()
                .map(|band| format!("{} from {}", points(band.points), band.from));
            format!("{} {whole}", bands.collect::<Vec<_>>().join(", "))
        }
    }
}

fn label<'t>(terms: &'t SheetTerms, key: &'t str) -> &'t str {
    let item = terms.items.iter().find(|item| item.key.as_str() == key);
    item.map_or(key, |item| item.label.as_str())
}

fn points(amount: u32) -> String {
    counted(amount, "point")
}

fn counted(amount: u32, noun: &str) -> String {
    let plural = if amount == 1 { "" } else { "s" };
    format!("{amount} {noun}{plural}")
}
