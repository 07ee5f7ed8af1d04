//! Trial of a changed list: would the change make it worse? Every candidate passes the same check as
//! the list itself, so that no rule is written twice.
//!
//! A candidate does no harm when it brings no breach that the list does not have already and
//! makes none worse: an unfinished list may still miss its line units, but nothing may lead away
//! from legal.

use crate::catalogue::Catalogue;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry, EntryKey, MAX_ENTRIES};
use crate::lists::check::{CheckReport, check};
use crate::lists::finding::{Finding, Severity};
use crate::lists::terms::ListTerms;

/// A list with its report, against which candidates are held.
pub struct Trial<'a> {
    list: &'a ArmyList,
    catalogue: &'a Catalogue,
    terms: &'a ListTerms<'a>,
    /// What the check says about the list as it is.
    pub before: CheckReport,
}

impl<'a> Trial<'a> {
    /// Checks the list as it is.
    pub fn new(list: &'a ArmyList, catalogue: &'a Catalogue, terms: &'a ListTerms<'a>) -> Self {
        Self {
            list,
            catalogue,
            terms,
            before: check(list, catalogue, terms),
        }
    }

    /// The report of the list with this unit added, if that does no harm.
    pub fn with_added(&self, unit: &Unit, models: u32) -> Option<CheckReport> {
        let mut entries = self.list.entries().to_vec();
        entries.push(Entry {
            key: self.free_key()?,
            unit: unit.key.clone(),
            models,
            options: [].into(),
            joins: None,
        });
        self.check_candidate(entries)
    }

    /// The report of the list with the entry of this key changed, if that does no harm.
    pub fn with_replaced(&self, entry: Entry) -> Option<CheckReport> {
        let mut entries = self.list.entries().to_vec();
        let at = self.list.position(&entry.key)?;
        *entries.get_mut(at)? = entry;
        self.check_candidate(entries)
    }

    /// The report of the list without this entry, if that does no harm. Who joined it joins
    /// nobody.
    pub fn without(&self, key: &EntryKey) -> Option<CheckReport> {
        let mut entries = self.list.entries().to_vec();
        entries.retain(|entry| &entry.key != key);
        for entry in &mut entries {
            entry.joins = entry.joins.take().filter(|joined| joined != key);
        }
        self.check_candidate(entries)
    }

    fn check_candidate(&self, entries: Vec<Entry>) -> Option<CheckReport> {
        let list = ArmyList::new(self.list.faction().clone(), entries).ok()?;
        let after = check(&list, self.catalogue, self.terms);
        let harmless = breaches(&after).all(|breach| {
            let (count, distance) = weight(&after, breach);
            let (count_before, distance_before) = weight(&self.before, breach);
            count <= count_before && distance <= distance_before
        });
        harmless.then_some(after)
    }

    /// A key that no entry of this list or the last one has.
    fn free_key(&self) -> Option<EntryKey> {
        let taken = |key: &EntryKey| {
            let before = self.terms.previous.and_then(|last| last.list.entry(key));
            self.list.entry(key).is_some() || before.is_some()
        };
        (0..=2 * MAX_ENTRIES)
            .filter_map(|i| EntryKey::new(&format!("trial-{i}")).ok())
            .find(|key| !taken(key))
    }
}

fn breaches(report: &CheckReport) -> impl Iterator<Item = &Finding> {
    let findings = report.findings.iter();
    findings.filter(|finding| finding.severity == Severity::Breach)
}

/// How many breaches a report has of the same matter and limit, and how far they are off in sum.
fn weight(report: &CheckReport, like: &Finding) -> (usize, u64) {
    let limit = |finding: &Finding| finding.measured.map(|measured| measured.limit);
    breaches(report)
        .filter(|breach| {
            breach.code == like.code && breach.about == like.about && limit(breach) == limit(like)
        })
        .fold((0, 0), |(count, distance), breach| {
            let off = breach.measured.map_or(0, |measured| measured.difference());
            (count + 1, distance + u64::from(off))
        })
}
