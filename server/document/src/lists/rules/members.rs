//! The members of list rules: how each is read, with every fault, and written.

use std::collections::BTreeSet;

use league::catalogue::key::{KeyFault, Keyword, KindKey};
use league::lists::amount::{Amount, CountLimit};
use league::lists::kind_filter::KindFilter;
use league::lists::rules::Counted;
use league::lists::week_set::WeekSet;
use league::points::{MAX_POINTS, Points};
use league::share::Share;
use league::week::WeekNo;
use messages::{Message, list_faults};

use super::{AmountDocument, CountDocument, CountedDocument, KindsDocument};
use crate::fault::{DocumentFault, ok_or_note};
use crate::share::ShareDocument;

const CODE: &str = "list-rule.value";

/// A member of a rule in both of its forms.
pub(super) trait Member: Sized {
    /// Its form in the league.
    type League;

    /// The value for the league; what is wrong with it is noted under `name`.
    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<Self::League>;

    fn write(league: &Self::League) -> Self;
}

/// Notes faults under one rule's pointer.
pub(super) struct Reader<'a> {
    pub at: &'a str,
    pub faults: Vec<DocumentFault>,
}

impl<'a> Reader<'a> {
    pub fn at(at: &'a str) -> Self {
        let faults = Vec::new();
        Self { at, faults }
    }

    fn fault(&mut self, name: &str, message: Message) {
        let pointer = format!("{}/{name}", self.at);
        self.faults.push(DocumentFault::new(pointer, CODE, message));
    }

    /// Notes that the rule demands nothing.
    pub fn no_bound(&mut self) {
        let message = list_faults::list_rule_fault_no_bound();
        self.faults.push(DocumentFault::new(self.at, CODE, message));
    }

    pub fn weeks(&mut self, numbers: Option<&[u8]>) -> Option<WeekSet> {
        let Some(numbers) = numbers else {
            return Some(WeekSet::EVERY);
        };
        let weeks: BTreeSet<WeekNo> = numbers.iter().filter_map(|&no| WeekNo::new(no)).collect();
        if weeks.is_empty() || weeks.len() != numbers.len() {
            self.fault("weeks", list_faults::list_rule_fault_weeks());
            return None;
        }
        Some(WeekSet::from_weeks(weeks))
    }

    fn keys<K>(
        &mut self,
        name: &str,
        texts: &[String],
        read: fn(&str) -> Result<K, KeyFault>,
    ) -> Option<Vec<K>> {
        if texts.is_empty() {
            self.fault(name, list_faults::list_rule_fault_nothing_named());
        }
        let mut keys = Vec::with_capacity(texts.len());
        for (i, text) in texts.iter().enumerate() {
            keys.extend(self.key(&format!("{name}/{i}"), text, read));
        }
        (keys.len() == texts.len()).then_some(keys)
    }

    fn key<K>(
        &mut self,
        name: &str,
        text: &str,
        read: fn(&str) -> Result<K, KeyFault>,
    ) -> Option<K> {
        let pointer = format!("{}/{name}", self.at);
        let key = read(text).map_err(|fault| fault.message());
        ok_or_note(&mut self.faults, pointer, CODE, key)
    }

    fn points(&mut self, name: &str, points: u32, least: u32) -> Option<Points> {
        let bounded = Points::new_checked(points).filter(|points| points.get() >= least);
        if bounded.is_none() {
            let message = list_faults::list_rule_fault_points(least, MAX_POINTS);
            let pointer = format!("{}/{name}", self.at);
            let fault = DocumentFault::new(pointer, CODE, message);
            self.faults
                .push(fault.with_limit(points.clamp(least, MAX_POINTS), points));
        }
        bounded
    }

    fn share(&mut self, name: &str, document: ShareDocument) -> Option<Share> {
        let pointer = format!("{}/{name}", self.at);
        ok_or_note(&mut self.faults, pointer, CODE, Share::try_from(document))
    }
}

impl<D: Member> Member for Option<D> {
    type League = Option<D::League>;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<Self::League> {
        match self {
            Some(document) => document.read(reader, name).map(Some),
            None => Some(None),
        }
    }

    fn write(league: &Self::League) -> Self {
        league.as_ref().map(D::write)
    }
}

impl Member for bool {
    type League = Self;

    fn read(&self, _: &mut Reader<'_>, _: &str) -> Option<Self> {
        Some(*self)
    }

    fn write(league: &Self) -> Self {
        *league
    }
}

impl Member for u32 {
    type League = Self;

    fn read(&self, _: &mut Reader<'_>, _: &str) -> Option<Self> {
        Some(*self)
    }

    fn write(league: &Self) -> Self {
        *league
    }
}

/// The key of a unit kind.
impl Member for String {
    type League = KindKey;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<KindKey> {
        reader.key(name, self, KindKey::new)
    }

    fn write(league: &KindKey) -> Self {
        league.to_string()
    }
}

/// Keywords, at least one.
impl Member for Vec<String> {
    type League = Vec<Keyword>;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<Vec<Keyword>> {
        reader.keys(name, self, Keyword::new)
    }

    fn write(league: &Vec<Keyword>) -> Self {
        league.iter().map(ToString::to_string).collect()
    }
}

/// At most the whole.
impl Member for ShareDocument {
    type League = Share;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<Share> {
        let share = reader.share(name, *self)?;
        if share > Share::ALL {
            reader.fault(name, list_faults::list_rule_fault_more_than_all());
            return None;
        }
        Some(share)
    }

    fn write(league: &Share) -> Self {
        (*league).into()
    }
}

impl Member for AmountDocument {
    type League = Amount;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<Amount> {
        match *self {
            Self::Points { points } => reader
                .points(&format!("{name}/points"), points, 0)
                .map(Amount::Points),
            Self::Share { part, whole } => reader
                .share(name, ShareDocument { part, whole })
                .map(Amount::Share),
        }
    }

    fn write(league: &Amount) -> Self {
        match *league {
            Amount::Points(points) => Self::Points {
                points: points.get(),
            },
            Amount::Share(share) => {
                let ShareDocument { part, whole } = share.into();
                Self::Share { part, whole }
            }
        }
    }
}

impl Member for CountDocument {
    type League = CountLimit;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<CountLimit> {
        match *self {
            Self::Fixed { count } => Some(CountLimit::Fixed(count)),
            Self::PerPoints { points } => reader
                .points(&format!("{name}/points"), points, 1)
                .map(CountLimit::Per),
        }
    }

    fn write(league: &CountLimit) -> Self {
        match *league {
            CountLimit::Fixed(count) => Self::Fixed { count },
            CountLimit::Per(points) => Self::PerPoints {
                points: points.get(),
            },
        }
    }
}

impl Member for KindsDocument {
    type League = KindFilter;

    fn read(&self, reader: &mut Reader<'_>, name: &str) -> Option<KindFilter> {
        let name = format!("{name}/unit_kinds");
        let mut keys = |keys: &[String]| reader.keys(&name, keys, KindKey::new);
        Some(match self {
            Self::Every => KindFilter::Every,
            Self::Only { unit_kinds } => KindFilter::Only(keys(unit_kinds)?),
            Self::Except { unit_kinds } => KindFilter::Except(keys(unit_kinds)?),
        })
    }

    fn write(league: &KindFilter) -> Self {
        let keys = |kinds: &[KindKey]| kinds.iter().map(ToString::to_string).collect();
        match league {
            KindFilter::Every => Self::Every,
            KindFilter::Only(kinds) => Self::Only {
                unit_kinds: keys(kinds),
            },
            KindFilter::Except(kinds) => Self::Except {
                unit_kinds: keys(kinds),
            },
        }
    }
}

impl Member for CountedDocument {
    type League = Counted;

    fn read(&self, _: &mut Reader<'_>, _: &str) -> Option<Counted> {
        Some((*self).into())
    }

    fn write(league: &Counted) -> Self {
        (*league).into()
    }
}
