//! Checking a full list, and reading a pasted one.
//!
//! Goals: the check of a 2,000-point list under 12 rules in under 20 microseconds, the reading of
//! a 40-line text in under 1 ms, so that a page can check every keystroke.

#![allow(clippy::unwrap_used, reason = "a benchmark fails by panicking")]

use std::collections::BTreeMap;

mod pasted;

use league::catalogue::Catalogue;
use league::catalogue::key::{Keyword, KindKey};
use league::lists::PaintedModels;
use league::lists::amount::{Amount, CountLimit};
use league::lists::kind_filter::KindFilter;
use league::lists::reader::{Certainty, parse};
use league::lists::rules::{
    ArmySize, BannedKeywords, CarryOver, Copies, Counted, FactionLock, KindCount, KindShare,
    LargestUnit, ListRule, MinimumSpend, NewPoints, PaintedShare, Rule,
};
use league::lists::satisfiable::find_unsatisfiable;
use league::lists::{ArmyList, Entry, EntryKey, ListTerms, PreviousList, check, find_fits};
use league::points::Points;
use league::share::Share;
use league::week::WeekNo;
use pasted::{catalogue, text};

fn main() {
    divan::main();
}

#[divan::bench]
fn check_2000_points_with_12_rules(bencher: divan::Bencher<'_, '_>) {
    let season = Season::new();
    let terms = season.terms();
    assert!(season.rules.len() == 12 && season.now.entries().len() == 20);
    assert_eq!(
        check(&season.now, &season.catalogue, &terms).total.get(),
        2000
    );
    assert_eq!(check(&season.now, &season.catalogue, &terms).findings, []);
    bencher.bench(|| check(divan::black_box(&season.now), &season.catalogue, &terms));
}

#[divan::bench]
fn check_with_more_than_20_findings(bencher: divan::Bencher<'_, '_>) {
    let season = Season::new();
    let terms = ListTerms {
        cap: Points::new(300),
        painted: None,
        ..season.terms()
    };
    let found = check(&season.now, &season.catalogue, &terms).findings.len();
    assert!(found > 20, "{found}");
    bencher.bench(|| check(divan::black_box(&season.now), &season.catalogue, &terms));
}

#[divan::bench]
fn what_still_fits_half_a_list(bencher: divan::Bencher<'_, '_>) {
    let season = Season::new();
    let half = season.now.entries().iter().take(10).cloned().collect();
    let half = ArmyList::new(season.now.faction().clone(), half).unwrap();
    let terms = season.terms();
    assert!(
        !find_fits(&half, &season.catalogue, &terms)
            .additions
            .is_empty()
    );
    bencher.bench(|| find_fits(divan::black_box(&half), &season.catalogue, &terms));
}

#[divan::bench(args = [40, 80, 160])]
fn read_a_text_of_lines(bencher: divan::Bencher<'_, '_>, lines: usize) {
    let catalogue = catalogue();
    let text = text(lines);
    assert_eq!(text.lines().count(), lines);
    let reading = parse(&text, &catalogue, None);
    let sure =
        |line: &league::lists::reader::ReadLine| line.certainty() != Certainty::NotUnderstood;
    assert!(reading.lines.iter().all(sure) && reading.list.is_some());
    bencher
        .counter(divan::counter::BytesCount::of_str(&text))
        .bench(|| parse(divan::black_box(&text), &catalogue, None));
}

#[divan::bench]
fn read_40_lines_of_misspelt_names(bencher: divan::Bencher<'_, '_>) {
    let catalogue = catalogue();
    let text = text(40).replace("er", "re").replace("and", "nad");
    bencher.bench(|| parse(divan::black_box(&text), &catalogue, None));
}

#[divan::bench]
fn find_what_no_list_can_satisfy_in_8_weeks(bencher: divan::Bencher<'_, '_>) {
    let season = Season::new();
    let caps: Vec<_> = (1..=8_u8)
        .map(|week| {
            (
                WeekNo::new(week).unwrap(),
                Points::new(250 * u32::from(week)),
            )
        })
        .collect();
    bencher.bench(|| find_unsatisfiable(divan::black_box(&season.rules), &caps, &season.catalogue));
}

/// A 2,000-point list in its week, after one of 1,750.
struct Season {
    catalogue: Catalogue,
    rules: Vec<ListRule>,
    before: ArmyList,
    now: ArmyList,
    painted: PaintedModels,
}

impl Season {
    fn new() -> Self {
        let now = list(20);
        let painted = now.entries().iter().map(|entry| (entry.key.clone(), 6));
        Self {
            catalogue: catalogue(),
            rules: rules().into_iter().map(ListRule::every_week).collect(),
            before: list(17),
            painted: painted.collect(),
            now,
        }
    }

    fn terms(&self) -> ListTerms<'_> {
        ListTerms {
            week: WeekNo::new(8).unwrap(),
            cap: Points::new(2000),
            rules: &self.rules,
            faction: Some(self.now.faction()),
            previous: Some(PreviousList {
                list: &self.before,
                catalogue: &self.catalogue,
            }),
            painted: Some(&self.painted),
        }
    }
}

fn rules() -> Vec<Rule> {
    let kind = |text| KindKey::new(text).unwrap();
    let share = |percent| Amount::Share(Share::percent(percent));
    vec![
        Rule::FactionLock(FactionLock),
        Rule::MinimumSpend(MinimumSpend { least: share(95) }),
        Rule::LargestUnit(LargestUnit { most: share(30) }),
        Rule::KindCount(KindCount {
            unit_kind: kind("leader"),
            least: Some(CountLimit::Fixed(1)),
            most: Some(CountLimit::Fixed(4)),
        }),
        Rule::KindCount(KindCount {
            unit_kind: kind("line"),
            least: Some(CountLimit::Per(Points::new(500))),
            most: None,
        }),
        Rule::KindShare(KindShare {
            unit_kind: kind("heavy"),
            least: None,
            most: Some(Share::percent(40)),
        }),
        Rule::Copies(Copies {
            most: CountLimit::Fixed(2),
            of: KindFilter::Except(vec![kind("line")]),
        }),
        Rule::BannedKeywords(BannedKeywords {
            keywords: vec![Keyword::new("toughness-9").unwrap()],
        }),
        Rule::ArmySize(ArmySize {
            counted: Counted::Models,
            least: None,
            most: Some(300),
        }),
        Rule::CarryOver(CarryOver {
            returning: Share::ALL,
            may_shrink: false,
            may_drop_options: false,
        }),
        Rule::NewPoints(NewPoints { most: share(20) }),
        Rule::PaintedShare(PaintedShare {
            least: Share::percent(50),
        }),
    ]
}

/// The first so many entries of a list in which every two copies cost 200 points.
fn list(entries: usize) -> ArmyList {
    let catalogue = catalogue();
    let faction = &catalogue.factions()[0];
    let entries = (0..entries).map(|i| {
        let unit = &faction.units()[i / 2 * 2];
        let option = unit.options[0].key.clone();
        Entry {
            key: EntryKey::new(&format!("{}-{}", unit.key, i % 2 + 1)).unwrap(),
            unit: unit.key.clone(),
            models: 9,
            options: BTreeMap::from([(option, 1)]),
            joins: None,
        }
    });
    ArmyList::new(faction.key().clone(), entries.collect()).unwrap()
}
