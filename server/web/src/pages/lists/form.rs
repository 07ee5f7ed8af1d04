//! The form of a list: parses fields to a list, and fills fields from a list.

use std::collections::BTreeMap;

use app::lists::ListEditor;
use app::{Reason, Refusal};
use document::lists::army_list::{ArmyListDocument, EntryDocument};
use league::catalogue::key::UnitKey;
use league::catalogue::unit::{OptionPrice, Unit, UnitOption};
use league::catalogue::{Catalogue, Faction, MAX_MODELS, MAX_TAKINGS};
use league::lists::line::entry_points;
use league::lists::{ArmyList, Entry};

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_reader::FormReader;
use crate::pages::words::factions::faction_name;
use messages::{Texts, forms};

/// One unit of the list, as the form shows it.
pub struct EntryFields {
    /// Key of the entry.
    pub key: String,
    /// Key of the unit.
    pub unit: String,
    /// Name of the unit.
    pub name: String,
    /// Points of the whole entry.
    pub points: u32,
    /// Models, with what they cost, and whether chosen.
    pub sizes: Vec<(u32, String, bool)>,
    /// What the unit may take.
    pub options: Vec<OptionFields>,
    /// Entries that it may join, and whether it does; `None` for units that join nobody.
    pub joins: Option<Vec<(String, String, bool)>>,
}

/// One option of a unit.
pub struct OptionFields {
    /// Key of the option.
    pub key: String,
    pub label: String,
    /// How often it is taken, or what was typed in its place.
    pub taken: String,
    /// How often it may be taken.
    pub limit: u32,
}

/// The units of a faction by kind, for the choice of one more.
pub struct KindChoice {
    /// Name of the kind.
    pub kind: String,
    /// Key and label of each unit.
    pub units: Vec<(String, String)>,
}

/// The list that the fields describe.
///
/// # Errors
/// Every number that cannot be read.
pub fn parse_list(fields: &FormData, faction: &str, t: Texts) -> Result<ArmyListDocument, Refusal> {
    let mut form = FormReader::new(fields);
    let keys = fields.values("entry").into_iter();
    let list = ArmyListDocument {
        faction: faction.to_owned(),
        entries: keys
            .map(|key| parse_entry(&mut form, fields, key, t))
            .collect(),
    };
    form.finish(list)
}

fn parse_entry(
    form: &mut FormReader<'_>,
    fields: &FormData,
    key: String,
    t: Texts,
) -> EntryDocument {
    let unit = form.text(&format!("unit.{key}"));
    let of_unit = |label: &str| format!("{}, {label}", faction_name(&unit));
    let prefix = format!("option.{key}.");
    let mut options = BTreeMap::new();
    for (name, option) in fields
        .without_token()
        .filter_map(|(name, _)| Some((name, name.strip_prefix(&prefix)?)))
    {
        let label = of_unit(&faction_name(option));
        match form.optional_number(name, &label, 0..=MAX_TAKINGS) {
            None | Some(0) => {}
            Some(taken) => {
                options.insert(option.to_owned(), taken);
            }
        }
    }
    let joins = form.text(&format!("joins.{key}"));
    let models = format!("models.{key}");
    EntryDocument {
        models: form.number(&models, &of_unit(&t.models()), 1..=MAX_MODELS),
        options,
        joins: (!joins.is_empty()).then_some(joins),
        unit,
        key,
    }
}

/// Puts what was typed into the numbers of entries.
pub fn restore_typed(entries: &mut [EntryFields], typed: &FormData) {
    for entry in entries {
        for option in &mut entry.options {
            let name = format!("option.{}.{}", entry.key, option.key);
            // The box of an option that is not taken is not sent.
            let typed = typed.raw(&name).unwrap_or("0");
            option.taken = typed.to_owned();
        }
        let models = typed.text(&format!("models.{}", entry.key));
        for (size, _, is_chosen) in &mut entry.sizes {
            *is_chosen = size.to_string() == models;
        }
        let joins = typed.text(&format!("joins.{}", entry.key));
        for (other, _, is_chosen) in entry.joins.iter_mut().flatten() {
            *is_chosen = other == joins;
        }
    }
}

/// Adds the smallest size of a unit under a key that the list does not use yet. A unit of the last
/// list that is missing comes back under its old key, so that it counts as returning.
///
/// # Errors
/// A unit that the faction does not have.
pub fn add_unit(
    list: &mut ArmyListDocument,
    unit: &str,
    editor: &ListEditor,
    t: Texts,
) -> Result<(), Refusal> {
    let found = faction(editor).and_then(|faction| faction.unit(&UnitKey::new(unit).ok()?));
    let found = found.ok_or_else(|| {
        let message = forms::form_choice(&*t.add_unit());
        Refusal::fault(Reason::Validation, "/new", message)
    })?;
    let last = editor.previous.iter().flat_map(ArmyList::entries);
    let returning = last.filter(|entry| entry.unit.as_str() == unit);
    let fresh = (1..).map(|number| format!("{}-{number}", short(unit)));
    let key = returning
        .map(|entry| entry.key.to_string())
        .chain(fresh)
        .find(|key| !list.entries.iter().any(|entry| entry.key == *key));
    list.entries.push(EntryDocument {
        // There is always one: fresh keys do not end.
        key: key.unwrap_or_default(),
        unit: unit.to_owned(),
        models: found.sizes.first().map_or(1, |size| size.models),
        options: BTreeMap::new(),
        joins: None,
    });
    Ok(())
}

/// Takes an entry out, and nobody joins it any more.
pub fn remove_entry(list: &mut ArmyListDocument, key: &str) {
    list.entries.retain(|entry| entry.key != key);
    for entry in &mut list.entries {
        if entry.joins.as_deref() == Some(key) {
            entry.joins = None;
        }
    }
}

/// Room for a number within the 40 characters of an entry's key.
fn short(unit: &str) -> String {
    unit.chars().take(36).collect()
}

/// The faction that the list is of.
pub fn faction(editor: &ListEditor) -> Option<&Faction> {
    editor.catalogue.faction(editor.list.faction())
}

/// The fields of every entry.
pub fn entries(editor: &ListEditor, t: Texts) -> Vec<EntryFields> {
    let all = editor.list.entries().iter();
    all.map(|entry| entry_fields(editor, entry, t)).collect()
}

fn entry_fields(editor: &ListEditor, entry: &Entry, t: Texts) -> EntryFields {
    let unit = faction(editor).and_then(|faction| faction.unit(&entry.unit));
    let Some(unit) = unit else {
        return EntryFields {
            key: entry.key.to_string(),
            unit: entry.unit.to_string(),
            name: faction_name(entry.unit.as_str()),
            points: 0,
            sizes: vec![(entry.models, entry.models.to_string(), true)],
            options: Vec::new(),
            joins: None,
        };
    };
    EntryFields {
        key: entry.key.to_string(),
        unit: entry.unit.to_string(),
        name: unit.name.to_string(),
        points: entry_points(entry, unit).get(),
        sizes: sizes(entry, unit, t),
        options: unit
            .options
            .iter()
            .map(|option| option_fields(entry, option, t))
            .collect(),
        joins: unit.joins.as_ref().map(|_| joinable(editor, entry)),
    }
}

/// What each entry costs, in the order of the list.
pub fn parts(catalogue: &Catalogue, list: &ArmyList) -> Vec<(String, u32)> {
    let faction = catalogue.faction(list.faction());
    let part = |entry: &Entry| {
        let unit = faction.and_then(|faction| faction.unit(&entry.unit));
        match unit {
            Some(unit) => (unit.name.to_string(), entry_points(entry, unit).get()),
            None => (faction_name(entry.unit.as_str()), 0),
        }
    };
    list.entries().iter().map(part).collect()
}

fn sizes(entry: &Entry, unit: &Unit, t: Texts) -> Vec<(u32, String, bool)> {
    let mut sizes: Vec<(u32, String, bool)> = unit
        .sizes
        .iter()
        .map(|size| {
            let label = t.models_points(size.models, size.points.get());
            (size.models, label, size.models == entry.models)
        })
        .collect();
    if !sizes.iter().any(|(_, _, chosen)| *chosen) {
        sizes.push((entry.models, entry.models.to_string(), true));
    }
    sizes
}

fn option_fields(entry: &Entry, option: &UnitOption, t: Texts) -> OptionFields {
    let label = match option.price {
        OptionPrice::PerUnit(points) => t.option_points(option.name.as_str(), points.get()),
        OptionPrice::PerModel(points) => t.option_each(option.name.as_str(), points.get()),
    };
    OptionFields {
        key: option.key.to_string(),
        label,
        taken: entry.options.get(&option.key).unwrap_or(&0).to_string(),
        limit: option.limit,
    }
}

fn joinable(editor: &ListEditor, leader: &Entry) -> Vec<(String, String, bool)> {
    let others = editor.list.entries().iter();
    others
        .filter(|entry| entry.key != leader.key)
        .map(|entry| {
            let label = format!("{} ({})", faction_name(entry.unit.as_str()), entry.models);
            let chosen = leader.joins.as_ref() == Some(&entry.key);
            (entry.key.to_string(), label, chosen)
        })
        .collect()
}

/// Every unit of the faction, by kind.
pub fn choices(editor: &ListEditor, t: Texts) -> Vec<KindChoice> {
    let mut kinds: Vec<KindChoice> = Vec::new();
    for unit in faction(editor).into_iter().flat_map(Faction::units) {
        let kind = faction_name(unit.kind.as_str());
        let label = t.option_points(unit.name.as_str(), unit.min_points().get());
        let choice = (unit.key.to_string(), label);
        match kinds.iter_mut().find(|known| known.kind == kind) {
            Some(known) => known.units.push(choice),
            None => kinds.push(KindChoice {
                kind,
                units: vec![choice],
            }),
        }
    }
    kinds
}
