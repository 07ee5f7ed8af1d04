//! Validation of a catalogue draft: collects every fault instead of stopping at the first.

use std::collections::HashSet;
use std::fmt::Display;

use crate::catalogue::draft::{CatalogueDraft, FactionDraft, OptionDraft, SizeDraft, UnitDraft};
use crate::catalogue::fault::{CatalogueFault, CatalogueFaultKind};
use crate::catalogue::key::{FactionKey, GroupKey, Keyword, KindKey, OptionKey, UnitKey};
use crate::catalogue::unit::{OptionPrice, Size, Unit, UnitOption};
use crate::catalogue::{Catalogue, Faction};
use crate::name::Name;
use crate::points::{MAX_POINTS, Points};

/// Most factions in one catalogue.
pub const MAX_FACTIONS: usize = 100;
/// Most units in one faction.
pub const MAX_UNITS: usize = 500;
/// Most sizes of one unit.
pub const MAX_SIZES: usize = 200;
/// Most options of one unit.
pub const MAX_OPTIONS: usize = 50;
/// Most keywords of one unit.
pub const MAX_KEYWORDS: usize = 50;
/// Most models in one unit.
pub const MAX_MODELS: u32 = 1_000;
/// Most painting minutes for one model: a hundred hours.
pub const MAX_MINUTES: u32 = 6_000;
/// Largest count in a limit (takings of an option, entries of a unit).
pub const MAX_TAKINGS: u32 = 1_000;

/// Collects faults while the draft is walked.
#[derive(Default)]
struct Faults(Vec<CatalogueFault>);

impl Faults {
    fn add(&mut self, pointer: impl Display, matter: impl Into<CatalogueFaultKind>) {
        self.0.push(CatalogueFault {
            pointer: pointer.to_string(),
            kind: matter.into(),
        });
    }

    fn ok<T, E: Into<CatalogueFaultKind>>(
        &mut self,
        pointer: impl Display,
        result: Result<T, E>,
    ) -> Option<T> {
        result.map_err(|fault| self.add(pointer, fault)).ok()
    }

    fn number(&mut self, pointer: impl Display, actual: i64, least: u32, most: u32) -> Option<u32> {
        match u32::try_from(actual) {
            Ok(number) if (least..=most).contains(&number) => Some(number),
            _ => {
                let (least, most) = (least.into(), most.into());
                self.add(
                    pointer,
                    CatalogueFaultKind::OutOfRange {
                        least,
                        most,
                        actual,
                    },
                );
                None
            }
        }
    }

    fn members(&mut self, pointer: impl Display, actual: usize, least: usize, most: usize) {
        if !(least..=most).contains(&actual) {
            self.add(
                pointer,
                CatalogueFaultKind::Count {
                    least,
                    most,
                    actual,
                },
            );
        }
    }

    fn unique<'a, T: std::hash::Hash + Eq + Display + ?Sized>(
        &mut self,
        pointer: impl Display,
        seen: &mut HashSet<&'a T>,
        value: &'a T,
    ) {
        if !seen.insert(value) {
            self.add(pointer, CatalogueFaultKind::Twice(value.to_string()));
        }
    }
}

/// See [`Catalogue::build`].
pub(super) fn build(draft: &CatalogueDraft) -> Result<Catalogue, Vec<CatalogueFault>> {
    let mut faults = Faults::default();
    faults.members("/factions", draft.factions.len(), 1, MAX_FACTIONS);
    let mut seen = HashSet::new();
    let mut factions = Vec::with_capacity(draft.factions.len());
    for (i, faction) in draft.factions.iter().enumerate() {
        let at = format!("/factions/{i}");
        faults.unique(format!("{at}/key"), &mut seen, faction.key.as_str());
        factions.extend(build_faction(faction, &at, &mut faults));
    }
    if faults.0.is_empty() {
        Ok(Catalogue { factions })
    } else {
        Err(faults.0)
    }
}

fn build_faction(draft: &FactionDraft, at: &str, faults: &mut Faults) -> Option<Faction> {
    let key = faults.ok(format!("{at}/key"), FactionKey::new(&draft.key));
    let name = faults.ok(format!("{at}/name"), Name::new(&draft.name));
    faults.members(format!("{at}/units"), draft.units.len(), 1, MAX_UNITS);
    let mut seen = HashSet::new();
    let mut units = Vec::with_capacity(draft.units.len());
    for (i, unit) in draft.units.iter().enumerate() {
        let at = format!("{at}/units/{i}");
        faults.unique(format!("{at}/key"), &mut seen, unit.key.as_str());
        units.extend(build_unit(unit, &at, faults));
        if let Some(joined) = &unit.joins
            && !draft.units.iter().any(|u| u.keywords.contains(joined))
        {
            let matter = CatalogueFaultKind::JoinsNothing(joined.clone());
            faults.add(format!("{at}/joins"), matter);
        }
    }
    Some(Faction::new(key?, name?, units))
}

fn build_unit(draft: &UnitDraft, at: &str, faults: &mut Faults) -> Option<Unit> {
    let key = faults.ok(format!("{at}/key"), UnitKey::new(&draft.key));
    let name = faults.ok(format!("{at}/name"), Name::new(&draft.name));
    let kind = faults.ok(format!("{at}/kind"), KindKey::new(&draft.kind));
    let keywords = build_keywords(&draft.keywords, &format!("{at}/keywords"), faults);
    let sizes = build_sizes(&draft.sizes, &format!("{at}/sizes"), faults);
    let options = build_options(&draft.options, &format!("{at}/options"), faults);
    let joins = draft
        .joins
        .as_ref()
        .and_then(|text| faults.ok(format!("{at}/joins"), Keyword::new(text)));
    let most_per_army = draft
        .most_per_army
        .and_then(|most| faults.number(format!("{at}/most_per_army"), most, 1, MAX_TAKINGS));
    let minutes = faults.number(
        format!("{at}/minutes_per_model"),
        draft.minutes_per_model,
        0,
        MAX_MINUTES,
    );
    Some(Unit {
        key: key?,
        name: name?,
        kind: kind?,
        keywords,
        sizes,
        options,
        joins,
        most_per_army,
        minutes_per_model: minutes?,
    })
}

fn build_keywords(drafts: &[String], at: &str, faults: &mut Faults) -> Vec<Keyword> {
    faults.members(at, drafts.len(), 0, MAX_KEYWORDS);
    let mut seen = HashSet::new();
    let mut keywords = Vec::with_capacity(drafts.len());
    for (i, text) in drafts.iter().enumerate() {
        faults.unique(format!("{at}/{i}"), &mut seen, text.as_str());
        keywords.extend(faults.ok(format!("{at}/{i}"), Keyword::new(text)));
    }
    keywords
}

fn build_sizes(drafts: &[SizeDraft], at: &str, faults: &mut Faults) -> Vec<Size> {
    faults.members(at, drafts.len(), 1, MAX_SIZES);
    let mut seen = HashSet::new();
    let mut sizes = Vec::with_capacity(drafts.len());
    for (i, size) in drafts.iter().enumerate() {
        faults.unique(format!("{at}/{i}/models"), &mut seen, &size.models);
        let models = faults.number(format!("{at}/{i}/models"), size.models, 1, MAX_MODELS);
        let points = faults.number(format!("{at}/{i}/points"), size.points, 0, MAX_POINTS);
        if let (Some(models), Some(points)) = (models, points) {
            let points = Points::new(points);
            sizes.push(Size { models, points });
        }
    }
    sizes.sort_by_key(|size| size.models);
    sizes
}

fn build_options(drafts: &[OptionDraft], at: &str, faults: &mut Faults) -> Vec<UnitOption> {
    faults.members(at, drafts.len(), 0, MAX_OPTIONS);
    let mut seen = HashSet::new();
    let mut options = Vec::with_capacity(drafts.len());
    for (i, option) in drafts.iter().enumerate() {
        let at = format!("{at}/{i}");
        faults.unique(format!("{at}/key"), &mut seen, option.key.as_str());
        options.extend(build_option(option, &at, faults));
    }
    options
}

fn build_option(draft: &OptionDraft, at: &str, faults: &mut Faults) -> Option<UnitOption> {
    let key = faults.ok(format!("{at}/key"), OptionKey::new(&draft.key));
    let name = faults.ok(format!("{at}/name"), Name::new(&draft.name));
    let points = faults.number(format!("{at}/points"), draft.points, 0, MAX_POINTS);
    let limit = draft.limit.unwrap_or(1);
    let limit = faults.number(format!("{at}/limit"), limit, 1, MAX_TAKINGS);
    let group = draft
        .group
        .as_ref()
        .and_then(|text| faults.ok(format!("{at}/group"), GroupKey::new(text)));
    let points = Points::new(points?);
    let price = if draft.per_model {
        OptionPrice::PerModel(points)
    } else {
        OptionPrice::PerUnit(points)
    };
    Some(UnitOption {
        key: key?,
        name: name?,
        price,
        limit: limit?,
        group,
    })
}
