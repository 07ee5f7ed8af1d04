//! Faults of a scenario sheet: what makes it unplayable or its score doubtful.

use messages::{Message, scenario_faults as said};

use crate::catalogue::key::ItemKey;
use crate::share::Share;

use super::item::{Grade, ItemMeasure, ScoreItem, ScoringSide};
use super::map::MAX_TABLE_EDGE;
use super::{Legs, MAX_ITEMS, MAX_TURNS, ScenarioRoles, SheetTerms};

/// Largest number a sheet may use for points, counts and caps.
pub const MAX_NUMBER: u32 = 1_000;

/// One fault of a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SheetFault {
    /// Too few or too many items.
    ItemCount(usize),
    /// Too few or too many turns.
    Turns(u8),
    /// A key stands for two items.
    KeyTwice(ItemKey),
    /// A number of the item is zero or beyond reason.
    Number { item: ItemKey, actual: u32 },
    /// Bands or steps of the item do not rise from above nothing.
    Grade(ItemKey),
    /// Only one side may score it, so nothing can be exclusive about it.
    ExclusiveForOneRole(ItemKey),
    /// A role is named on a symmetric sheet.
    NoRoles(ItemKey),
    /// The rest of an item that is missing, is itself a rest, or belongs to the same role.
    RestOfNothing(ItemKey),
    /// The opponent's item can take more than there is.
    RestTooSmall {
        /// The item that gets the rest.
        item: ItemKey,
        /// Game points shared out.
        limit: u32,
        /// Most that the opponent's item gives.
        actual: u32,
    },
    /// A joint cap names an item that does not exist, or fewer than two.
    JointCap(u32),
    /// Two legs swap roles, so there must be roles.
    LegsWithoutRoles,
    /// A role starts with nothing or with more than its list.
    Fields(Share),
    /// The table has no size or an absurd one.
    TableEdge(u16),
    /// A zone or marker is not on the table.
    OffTable(String),
}

impl SheetFault {
    pub fn message(&self) -> Message {
        match self {
            Self::ItemCount(items) => said::sheet_fault_item_count(MAX_ITEMS, *items),
            Self::Turns(turns) => said::sheet_fault_turns(MAX_TURNS, turns),
            Self::KeyTwice(item) => said::sheet_fault_key_twice(item),
            Self::Number { item, actual } => said::sheet_fault_number(item, MAX_NUMBER, actual),
            Self::Grade(item) => said::sheet_fault_grade(item),
            Self::ExclusiveForOneRole(item) => said::sheet_fault_exclusive_for_one_role(item),
            Self::NoRoles(item) => said::sheet_fault_no_roles(item),
            Self::RestOfNothing(item) => said::sheet_fault_rest_of_nothing(item),
            Self::RestTooSmall {
                item,
                limit,
                actual,
            } => said::sheet_fault_rest_too_small(item, actual, limit),
            Self::JointCap(cap) => said::sheet_fault_joint_cap(cap),
            Self::LegsWithoutRoles => said::sheet_fault_legs_without_roles(),
            Self::Fields(share) => said::sheet_fault_fields(share),
            Self::TableEdge(edge) => said::sheet_fault_table_edge(MAX_TABLE_EDGE, edge),
            Self::OffTable(label) => said::sheet_fault_off_table(label),
        }
    }
    pub const fn code(&self) -> &'static str {
        match self {
            Self::ItemCount(_) => "scenario.item-count",
            Self::Turns(_) => "scenario.turns",
            Self::KeyTwice(_) => "scenario.key-twice",
            Self::Number { .. } => "scenario.number",
            Self::Grade(_) => "scenario.grade",
            Self::ExclusiveForOneRole(_) => "scenario.exclusive-for-one-role",
            Self::NoRoles(_) => "scenario.no-roles",
            Self::RestOfNothing(_) => "scenario.rest-of-nothing",
            Self::RestTooSmall { .. } => "scenario.rest-too-small",
            Self::JointCap(_) => "scenario.joint-cap",
            Self::LegsWithoutRoles => "scenario.legs-without-roles",
            Self::Fields(_) => "scenario.fields",
            Self::TableEdge(_) => "scenario.table-edge",
            Self::OffTable(_) => "scenario.off-table",
        }
    }
}

pub(super) fn find_faults(terms: &SheetTerms) -> Vec<SheetFault> {
    let mut faults = Vec::new();
    if !(1..=MAX_ITEMS).contains(&terms.items.len()) {
        faults.push(SheetFault::ItemCount(terms.items.len()));
    }
    if !(1..=MAX_TURNS).contains(&terms.turns) {
        faults.push(SheetFault::Turns(terms.turns));
    }
    for (at, item) in terms.items.iter().enumerate() {
        if terms
            .items
            .iter()
            .take(at)
            .any(|before| before.key == item.key)
        {
            faults.push(SheetFault::KeyTwice(item.key.clone()));
        }
        find_in_item(terms, item, &mut faults);
    }
    find_in_roles(terms, &mut faults);
    for joint in &terms.joint_caps {
        let known = |key: &ItemKey| terms.items.iter().any(|item| item.key == *key);
        if joint.items.len() < 2 || !joint.items.iter().all(known) {
            faults.push(SheetFault::JointCap(joint.cap));
        }
    }
    let edges = [terms.table.width, terms.table.depth];
    let absurd = edges
        .into_iter()
        .filter(|edge| !(1..=MAX_TABLE_EDGE).contains(edge));
    faults.extend(absurd.map(SheetFault::TableEdge));
    let off_table = terms.table.labels_off_table();
    faults.extend(off_table.map(|label| SheetFault::OffTable(label.to_string())));
    faults
}

fn find_in_roles(terms: &SheetTerms, faults: &mut Vec<SheetFault>) {
    match terms.roles {
        ScenarioRoles::Symmetric if terms.legs != Legs::One => {
            faults.push(SheetFault::LegsWithoutRoles)
        }
        ScenarioRoles::Symmetric => {}
        ScenarioRoles::AttackAndDefence {
            attacker_fields,
            defender_fields,
            ..
        } => {
            let fields = [attacker_fields, defender_fields];
            let wrong = |share: &Share| *share == Share::NOTHING || *share > Share::ALL;
            faults.extend(fields.into_iter().filter(wrong).map(SheetFault::Fields));
        }
    }
}

fn find_in_item(terms: &SheetTerms, item: &ScoreItem, faults: &mut Vec<SheetFault>) {
    if terms.roles == ScenarioRoles::Symmetric && item.who != ScoringSide::Either {
        faults.push(SheetFault::NoRoles(item.key.clone()));
    }
    let mut number = |actual: u32| {
        if !(1..=MAX_NUMBER).contains(&actual) {
            let item = item.key.clone();
            faults.push(SheetFault::Number { item, actual });
        }
    };
    match &item.measure {
        ItemMeasure::Count {
            points_each,
            most,
            exclusive,
            cap,
        } => {
            [*points_each, *most]
                .into_iter()
                .chain(*cap)
                .for_each(&mut number);
            if *exclusive && item.who != ScoringSide::Either {
                faults.push(SheetFault::ExclusiveForOneRole(item.key.clone()));
            }
        }
        ItemMeasure::ArmyShare { grade, .. } => {
            number(grade.max_points());
            if !is_rising(grade) {
                faults.push(SheetFault::Grade(item.key.clone()));
            }
        }
        ItemMeasure::RestOf { item: of, out_of } => {
            number(*out_of);
            faults.extend(find_in_rest(terms, item, of, *out_of));
        }
    }
}

fn is_rising(grade: &Grade) -> bool {
    match grade {
        Grade::PerStep {
            step, points_each, ..
        } => *step > Share::NOTHING && *points_each > 0,
        Grade::Bands(bands) => {
            let above = |share: Share, points: u32| share > Share::NOTHING && points > 0;
            bands
                .first()
                .is_some_and(|band| above(band.from, band.points))
                && bands
                    .iter()
                    .zip(bands.iter().skip(1))
                    .all(|(low, high)| low.from < high.from && low.points < high.points)
        }
    }
}

fn find_in_rest(
    terms: &SheetTerms,
    item: &ScoreItem,
    of: &ItemKey,
    out_of: u32,
) -> Option<SheetFault> {
    let other = terms.items.iter().find(|other| other.key == *of);
    let counted = other.filter(|other| !matches!(other.measure, ItemMeasure::RestOf { .. }));
    match (
        counted.map(|other| (other.who, other.measure.max_points())),
        item.who,
    ) {
        (Some((ScoringSide::Only(theirs), actual)), ScoringSide::Only(mine)) if theirs != mine => {
            (actual > out_of).then(|| SheetFault::RestTooSmall {
                item: item.key.clone(),
                limit: out_of,
                actual,
            })
        }
        _ => Some(SheetFault::RestOfNothing(item.key.clone())),
    }
}
