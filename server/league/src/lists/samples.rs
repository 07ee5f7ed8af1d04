//! Test fixtures: a small catalogue, and a short notation for lists.

use crate::catalogue::Catalogue;
use crate::catalogue::draft::{CatalogueDraft, FactionDraft, OptionDraft, SizeDraft, UnitDraft};
use crate::catalogue::key::{FactionKey, Keyword, KindKey, OptionKey, UnitKey, slug};
use crate::lists::army_list::PaintedModels;
use crate::lists::army_list::{ArmyList, Entry, EntryKey};
use crate::lists::carry_over::PreviousList;
use crate::lists::check::{CheckReport, check};
use crate::lists::finding::Finding;
use crate::lists::rules::{ListRule, Rule};
use crate::lists::terms::ListTerms;
use crate::points::Points;
use crate::week::WeekNo;

/// Name, kind, keywords, smallest and largest size, points of the smallest, points of each
/// further model, options, minutes.
type Row<'a> = (&'a str, &'a str, &'a str, [i64; 4], &'a str, i64);

/// Sodwether Moot of the demo, with a leader that joins units on foot, and a second faction.
const MOOT: [Row<'_>; 8] = [
    (
        "Mire Speaker",
        "leader",
        "toughness-3",
        [1, 1, 75, 0],
        "reed mask 10",
        120,
    ),
    (
        "Sump Midwife",
        "leader",
        "toughness-2",
        [1, 1, 50, 0],
        "leech jar 10",
        80,
    ),
    (
        "Turf Cutters",
        "line",
        "toughness-1 on-foot",
        [8, 16, 56, 7],
        "mud sledges 8",
        20,
    ),
    (
        "Rushlight Kin",
        "line",
        "toughness-1 on-foot",
        [6, 12, 48, 8],
        "marsh gas 12",
        20,
    ),
    (
        "Stilt Waders",
        "swift",
        "toughness-1",
        [4, 8, 60, 15],
        "eel nets 10",
        30,
    ),
    (
        "Bog-Oak Hulks",
        "heavy",
        "toughness-3",
        [2, 4, 90, 45],
        "root armour 20",
        80,
    ),
    (
        "Fen Trebuchet",
        "engine",
        "toughness-2",
        [4, 4, 95, 0],
        "rotten bales 10",
        35,
    ),
    (
        "Drowned Bell-Beast",
        "colossus",
        "toughness-4",
        [1, 1, 170, 0],
        "second bell 20",
        250,
    ),
];

/// The draft of [`catalogue`].
pub fn draft() -> CatalogueDraft {
    let mut moot: Vec<UnitDraft> = MOOT.iter().map(unit).collect();
    if let Some(speaker) = moot.first_mut() {
        speaker.joins = Some("on-foot".into());
        speaker.most_per_army = Some(1);
    }
    if let Some(cutters) = moot.get_mut(2) {
        for (name, group) in [
            ("long spades", Some("hands")),
            ("short spades", Some("hands")),
        ] {
            cutters.options.push(OptionDraft {
                key: slug(name),
                name: name.into(),
                points: 1,
                per_model: true,
                limit: None,
                group: group.map(Into::into),
            });
        }
    }
    let levy = unit(&(
        "Orchard Levy",
        "line",
        "toughness-1",
        [10, 20, 50, 5],
        "standard 10",
        18,
    ));
    let faction = |name: &str, units| FactionDraft {
        key: slug(name),
        name: name.into(),
        units,
    };
    CatalogueDraft {
        factions: vec![
            faction("Sodwether Moot", moot),
            faction("Bramblestile Steadings", vec![levy]),
        ],
    }
}

fn unit(
    &(name, kind, keywords, [least, most, points, extra], option, minutes): &Row<'_>,
) -> UnitDraft {
    let (option, option_points) = option.rsplit_once(' ').unwrap();
    UnitDraft {
        key: slug(name),
        name: name.into(),
        kind: kind.into(),
        keywords: keywords.split(' ').map(Into::into).collect(),
        sizes: (least..=most)
            .map(|models| SizeDraft {
                models,
                points: points + extra * (models - least),
            })
            .collect(),
        options: vec![OptionDraft {
            key: slug(option),
            name: option.into(),
            points: option_points.parse().unwrap(),
            ..OptionDraft::default()
        }],
        minutes_per_model: minutes,
        ..UnitDraft::default()
    }
}

pub fn catalogue() -> Catalogue {
    Catalogue::build(&draft()).unwrap()
}

/// The sample catalogue with one unit of the Moot dearer by so many points at every size.
pub fn repriced(unit: &str, dearer: i64) -> Catalogue {
    let mut draft = draft();
    let units = &mut draft.factions[0].units;
    for size in &mut units.iter_mut().find(|u| u.key == unit).unwrap().sizes {
        size.points += dearer;
    }
    Catalogue::build(&draft).unwrap()
}

/// A list of the Moot: entries as "key unit models option option", joined by commas. An option
/// may be followed by `*2`, and `>key` joins another entry.
pub fn list(text: &str) -> ArmyList {
    list_of("sodwether-moot", text)
}

/// As [`list`] for another faction.
pub fn list_of(faction: &str, text: &str) -> ArmyList {
    let entries = text.split(',').filter(|entry| !entry.trim().is_empty());
    ArmyList::new(
        FactionKey::new(faction).unwrap(),
        entries.map(entry).collect(),
    )
    .unwrap()
}

fn entry(text: &str) -> Entry {
    let mut words = text.split_whitespace();
    let mut entry = Entry {
        key: EntryKey::new(words.next().unwrap()).unwrap(),
        unit: UnitKey::new(words.next().unwrap()).unwrap(),
        models: words.next().unwrap().parse().unwrap(),
        options: [].into(),
        joins: None,
    };
    for word in words {
        if let Some(joined) = word.strip_prefix('>') {
            entry.joins = Some(EntryKey::new(joined).unwrap());
        } else {
            let (option, taken) = word.split_once('*').unwrap_or((word, "1"));
            let option = OptionKey::new(option).unwrap();
            entry.options.insert(option, taken.parse().unwrap());
        }
    }
    entry
}

/// Terms of week 2 with this cap and nothing else.
pub fn terms(cap: u32, rules: &[ListRule]) -> ListTerms<'_> {
    ListTerms {
        week: WeekNo::new(2).unwrap(),
        cap: Points::new(cap),
        rules,
        faction: None,
        previous: None,
        painted: None,
    }
}

/// The check of a list of the Moot under one rule.
pub fn under(rule: Rule, cap: u32, now: &str) -> Vec<Finding> {
    check(
        &list(now),
        &catalogue(),
        &terms(cap, &[ListRule::every_week(rule)]),
    )
    .findings
}

/// The check of a list of the Moot under one rule, a week after another.
pub fn after(before: &str, rule: Rule, cap: u32, now: &str) -> Vec<Finding> {
    let (before, catalogue) = (list(before), catalogue());
    let rules = [ListRule::every_week(rule)];
    let previous = Some(PreviousList {
        list: &before,
        catalogue: &catalogue,
    });
    let terms = ListTerms {
        previous,
        ..terms(cap, &rules)
    };
    check(&list(now), &catalogue, &terms).findings
}

/// The check of a list of the Moot under one rule, with finished models as "key models".
pub fn painted(rule: Rule, now: &str, finished: &[(&str, u32)]) -> CheckReport {
    let finished: PaintedModels = finished
        .iter()
        .map(|&(key, models)| (EntryKey::new(key).unwrap(), models))
        .collect();
    let rules = [ListRule::every_week(rule)];
    let terms = ListTerms {
        painted: Some(&finished),
        ..terms(2000, &rules)
    };
    check(&list(now), &catalogue(), &terms)
}

/// Codes with limit and actual value, 0 where there is none.
pub fn numbers(findings: &[Finding]) -> Vec<(&'static str, u32, u32)> {
    findings
        .iter()
        .map(|finding| {
            let measured = finding.measured;
            (
                finding.code,
                measured.map_or(0, |m| m.limit),
                measured.map_or(0, |m| m.actual),
            )
        })
        .collect()
}

/// The entries of a finding as text.
pub fn entries(finding: &Finding) -> Vec<&str> {
    finding.entries.iter().map(EntryKey::as_str).collect()
}

pub fn kind(text: &str) -> KindKey {
    KindKey::new(text).unwrap()
}

pub fn keyword(text: &str) -> Keyword {
    Keyword::new(text).unwrap()
}
