//! What counts in a scenario, as it is read to the players.

use messages::{Message, Value, scenario as said, values};

use crate::catalogue::key::ItemKey;
use crate::side::GameRole;

use super::item::{ArmyOwner, Grade, ItemMeasure, ScoreItem, ScoringSide, ScoringTime, ShareBase};
use super::{AttackerChoice, Legs, ScenarioRoles, SheetTerms};

pub(super) fn messages(terms: &SheetTerms) -> Vec<Message> {
    let mut messages = vec![legs(terms)];
    messages.extend(roles(terms.roles));
    messages.extend(terms.items.iter().map(|item| of_item(terms, item)));
    for joint in &terms.joint_caps {
        let labels = joint.items.iter().map(|key| label(terms, key));
        let items = Value::joined(labels, values::and);
        messages.push(said::scenario_joint_cap(items, joint.cap));
    }
    messages.push(match terms.draw_margin {
        0 => said::scenario_even_scores(),
        margin => said::scenario_draw_margin(margin),
    });
    messages
}

fn legs(terms: &SheetTerms) -> Message {
    match terms.legs {
        Legs::One => said::scenario_one_game(terms.turns),
        Legs::TwoSummed => said::scenario_two_legs_summed(terms.turns),
        Legs::TwoWonSeparately => said::scenario_two_legs_apart(terms.turns),
    }
}

fn roles(roles: ScenarioRoles) -> Vec<Message> {
    let ScenarioRoles::AttackAndDefence {
        attacker_fields,
        defender_fields,
        attacker,
        harder,
    } = roles
    else {
        return vec![said::scenario_same_task()];
    };
    let who = match attacker {
        AttackerChoice::Paired => said::scenario_attacker_paired(),
        AttackerChoice::LowerStanding => said::scenario_attacker_lower(),
        AttackerChoice::HigherStanding => said::scenario_attacker_higher(),
    };
    let fields = said::scenario_fields(attacker_fields, defender_fields);
    let harder = harder.map(|role| said::scenario_harder(role.as_str()));
    [who, fields].into_iter().chain(harder).collect()
}

fn of_item(terms: &SheetTerms, item: &ScoreItem) -> Message {
    let who = match item.who {
        ScoringSide::Either => "either",
        ScoringSide::Only(GameRole::Attacker) => "attacker",
        ScoringSide::Only(GameRole::Defender) => "defender",
    };
    let worth = match &item.measure {
        ItemMeasure::Count {
            points_each,
            most,
            exclusive,
            cap: None,
        } => said::scenario_each(points_each, most, *exclusive),
        ItemMeasure::Count {
            points_each,
            most,
            exclusive,
            cap: Some(cap),
        } => said::scenario_each_capped(points_each, most, *exclusive, cap),
        ItemMeasure::ArmyShare {
            army,
            against,
            grade,
        } => of_share(*army, *against, grade),
        ItemMeasure::RestOf { item: of, out_of } => said::scenario_rest(label(terms, of), out_of),
    };
    let when = match item.when {
        ScoringTime::DuringPlay => "during-play",
        ScoringTime::LastTurn => "last-turn",
    };
    said::scenario_item(&item.label, who, worth, when)
}

fn of_share(army: ArmyOwner, against: ShareBase, grade: &Grade) -> Message {
    let whole = match (against, army) {
        (ShareBase::StartingPoints, ArmyOwner::Own) => said::scenario_of_own_army(),
        (ShareBase::StartingPoints, ArmyOwner::Opposing) => said::scenario_of_opposing_army(),
        (ShareBase::Cap, _) => said::scenario_of_cap(),
    };
    match grade {
        Grade::PerStep {
            step,
            points_each,
            cap,
        } => said::scenario_steps(points_each, step, whole, cap),
        Grade::Bands(bands) => {
            let bands = bands.iter();
            let bands = bands.map(|band| said::scenario_band(band.points, band.from));
            said::scenario_bands(Value::joined(bands, values::comma), whole)
        }
    }
}

/// What the item of this key is called; of one that is missing, the key.
fn label(terms: &SheetTerms, key: &ItemKey) -> Value {
    let item = terms.items.iter().find(|item| item.key == *key);
    item.map_or_else(|| key.into(), |item| (&item.label).into())
}
