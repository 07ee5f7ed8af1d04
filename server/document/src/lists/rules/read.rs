//! Validation of list rules: from JSON to the values of the league, with every fault.

use std::collections::BTreeSet;

use league::catalogue::key::{KeyFault, Keyword, KindKey};
use league::lists::amount::{Amount, CountLimit};
use league::lists::kind_filter::KindFilter;
use league::lists::rules::{
    ArmySize, BannedKeywords, CarryOver, Copies, Counted, FactionLock, KindCount, KindShare,
    LargestUnit, ListRule, MinimumSpend, NewPoints, NewUnits, PaintedShare, Rule, SwapAllowance,
};
use league::lists::week_set::WeekSet;
use league::points::{MAX_POINTS, Points};
use league::share::Share;
use league::week::WeekNo;
use messages::{Message, list_faults};

use super::{
    AmountDocument, CountDocument, CountedDocument, KindsDocument, ListRuleDocument, RuleDocument,
};
use crate::fault::{DocumentFault, ok_or_note};
use crate::share::ShareDocument;

const CODE: &str = "list-rule.value";

/// Notes faults under one rule's pointer.
struct Reader<'a> {
    at: &'a str,
    faults: Vec<DocumentFault>,
}

/// The rules of a season, with every fault of every rule below the pointer `at`.
///
/// # Errors
/// Every [`DocumentFault`], such as one at `{at}/2/rule/unit_kind`.
pub fn read_list_rules(
    documents: Vec<ListRuleDocument>,
    at: &str,
) -> Result<Vec<ListRule>, Vec<DocumentFault>> {
    let mut rules = Vec::with_capacity(documents.len());
    let mut all = Vec::new();
    for (i, document) in documents.into_iter().enumerate() {
        match ListRule::try_from(document) {
            Ok(rule) => rules.push(rule),
            Err(faults) => all.extend(faults.into_iter().map(|fault| DocumentFault {
                pointer: format!("{at}/{i}{}", fault.pointer),
                ..fault
            })),
        }
    }
    if all.is_empty() { Ok(rules) } else { Err(all) }
}

impl TryFrom<ListRuleDocument> for ListRule {
    type Error = Vec<DocumentFault>;

    fn try_from(document: ListRuleDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut reader = Reader {
            at: "",
            faults: Vec::new(),
        };
        let weeks = reader.weeks(document.weeks.as_deref());
        reader.at = "/rule";
        let rule = reader.rule(&document.rule);
        match (rule, weeks) {
            (Some(rule), Some(weeks)) if reader.faults.is_empty() => Ok(Self {
                rule,
                weeks,
                severity: document.severity.into(),
            }),
            _ => Err(reader.faults),
        }
    }
}

impl Reader<'_> {
    fn fault(&mut self, member: &str, message: Message) {
        let pointer = format!("{}/{member}", self.at);
        self.faults.push(DocumentFault::new(pointer, CODE, message));
    }

    fn rule(&mut self, document: &RuleDocument) -> Option<Rule> {
        Some(match document {
            RuleDocument::MinimumSpend { least } => Rule::MinimumSpend(MinimumSpend {
                least: self.amount("least", *least)?,
            }),
            RuleDocument::LargestUnit { most } => Rule::LargestUnit(LargestUnit {
                most: self.amount("most", *most)?,
            }),
            RuleDocument::KindCount {
                unit_kind,
                least,
                most,
            } => self.kind_count(unit_kind, *least, *most)?,
            RuleDocument::KindShare {
                unit_kind,
                least,
                most,
            } => self.kind_share(unit_kind, *least, *most)?,
            RuleDocument::Copies { most, of } => Rule::Copies(Copies {
                most: self.count("most", *most)?,
                of: self.kinds(of)?,
            }),
            RuleDocument::BannedKeywords { keywords } => Rule::BannedKeywords(BannedKeywords {
                keywords: self.keys("keywords", keywords, Keyword::new)?,
            }),
            RuleDocument::ArmySize {
                counted,
                least,
                most,
            } => self.army_size(*counted, *least, *most)?,
            RuleDocument::FactionLock {} => Rule::FactionLock(FactionLock),
            RuleDocument::CarryOver {
                returning,
                may_shrink,
                may_drop_options,
            } => Rule::CarryOver(CarryOver {
                returning: self.share_within_all("returning", *returning)?,
                may_shrink: *may_shrink,
                may_drop_options: *may_drop_options,
            }),
            RuleDocument::SwapAllowance { most } => Rule::SwapAllowance(SwapAllowance {
                most: self.amount("most", *most)?,
            }),
            RuleDocument::NewPoints { most } => Rule::NewPoints(NewPoints {
                most: self.amount("most", *most)?,
            }),
            RuleDocument::NewUnits { least } => Rule::NewUnits(NewUnits { least: *least }),
            RuleDocument::PaintedShare { least } => Rule::PaintedShare(PaintedShare {
                least: self.share_within_all("least", *least)?,
            }),
        })
    }

    fn kind_count(
        &mut self,
        kind: &str,
        least: Option<CountDocument>,
        most: Option<CountDocument>,
    ) -> Option<Rule> {
        let kind = self.kind(kind);
        let least = least.map(|least| self.count("least", least));
        let most = most.map(|most| self.count("most", most));
        self.some_bound(least.is_some() || most.is_some());
        Some(Rule::KindCount(KindCount {
            kind: kind?,
            least: least.flatten(),
            most: most.flatten(),
        }))
    }

    fn kind_share(
        &mut self,
        kind: &str,
        least: Option<ShareDocument>,
        most: Option<ShareDocument>,
    ) -> Option<Rule> {
        let kind = self.kind(kind);
        let least = least.map(|least| self.share_within_all("least", least));
        let most = most.map(|most| self.share_within_all("most", most));
        self.some_bound(least.is_some() || most.is_some());
        Some(Rule::KindShare(KindShare {
            kind: kind?,
            least: least.flatten(),
            most: most.flatten(),
        }))
    }

    fn army_size(
        &mut self,
        counted: CountedDocument,
        least: Option<u32>,
        most: Option<u32>,
    ) -> Option<Rule> {
        self.some_bound(least.is_some() || most.is_some());
        let counted = match counted {
            CountedDocument::Units => Counted::Units,
            CountedDocument::Models => Counted::Models,
        };
        Some(Rule::ArmySize(ArmySize {
            counted,
            least,
            most,
        }))
    }

    fn some_bound(&mut self, there: bool) {
        if !there {
            let message = list_faults::list_rule_fault_no_bound();
            self.faults.push(DocumentFault::new(self.at, CODE, message));
        }
    }

    fn kind(&mut self, text: &str) -> Option<KindKey> {
        let pointer = format!("{}/unit_kind", self.at);
        let kind = KindKey::new(text).map_err(|fault| fault.message());
        ok_or_note(&mut self.faults, pointer, CODE, kind)
    }

    fn keys<K>(
        &mut self,
        member: &str,
        texts: &[String],
        read: fn(&str) -> Result<K, KeyFault>,
    ) -> Option<Vec<K>> {
        if texts.is_empty() {
            self.fault(member, list_faults::list_rule_fault_nothing_named());
        }
        let mut keys = Vec::with_capacity(texts.len());
        for (i, text) in texts.iter().enumerate() {
            let pointer = format!("{}/{member}/{i}", self.at);
            let key = read(text).map_err(|fault| fault.message());
            keys.extend(ok_or_note(&mut self.faults, pointer, CODE, key));
        }
        (keys.len() == texts.len()).then_some(keys)
    }

    fn kinds(&mut self, document: &KindsDocument) -> Option<KindFilter> {
        let member = "of/unit_kinds";
        Some(match document {
            KindsDocument::Every => KindFilter::Every,
            KindsDocument::Only { unit_kinds } => {
                KindFilter::Only(self.keys(member, unit_kinds, KindKey::new)?)
            }
            KindsDocument::Except { unit_kinds } => {
                KindFilter::Except(self.keys(member, unit_kinds, KindKey::new)?)
            }
        })
    }

    fn amount(&mut self, member: &str, document: AmountDocument) -> Option<Amount> {
        match document {
            AmountDocument::Points { points } => self
                .points(&format!("{member}/points"), points, 0)
                .map(Amount::Points),
            AmountDocument::Share { part, whole } => self
                .share(member, ShareDocument { part, whole })
                .map(Amount::Share),
        }
    }

    fn count(&mut self, member: &str, document: CountDocument) -> Option<CountLimit> {
        match document {
            CountDocument::Fixed { count } => Some(CountLimit::Fixed(count)),
            CountDocument::PerPoints { points } => self
                .points(&format!("{member}/points"), points, 1)
                .map(CountLimit::Per),
        }
    }

    fn points(&mut self, member: &str, points: u32, least: u32) -> Option<Points> {
        let bounded = Points::new_checked(points).filter(|points| points.get() >= least);
        if bounded.is_none() {
            let message = list_faults::list_rule_fault_points(least, MAX_POINTS);
            let pointer = format!("{}/{member}", self.at);
            let fault = DocumentFault::new(pointer, CODE, message);
            self.faults
                .push(fault.with_limit(points.clamp(least, MAX_POINTS), points));
        }
        bounded
    }

    fn share(&mut self, member: &str, document: ShareDocument) -> Option<Share> {
        let pointer = format!("{}/{member}", self.at);
        ok_or_note(&mut self.faults, pointer, CODE, Share::try_from(document))
    }

    fn share_within_all(&mut self, member: &str, document: ShareDocument) -> Option<Share> {
        let share = self.share(member, document)?;
        if share > Share::ALL {
            self.fault(member, list_faults::list_rule_fault_more_than_all());
            return None;
        }
        Some(share)
    }

    fn weeks(&mut self, numbers: Option<&[u8]>) -> Option<WeekSet> {
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
}
