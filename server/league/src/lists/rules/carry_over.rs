//! Carry-over: how much of last week's list must return, and how.

use messages::{Message, Value, findings, list_rules, values};

use crate::lists::carry_over::EntryPair;
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;
use crate::share::Share;

/// "All of last week's points return; units may grow, not shrink; options may be added,
/// not dropped." Points are last week's prices; [`carry_over`](crate::lists::carry_over) says what
/// is counted where the catalogue has changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CarryOver {
    /// Share of last week's points that could return which must, rounded up to whole points.
    pub returning: Share,
    /// Whether a returning unit may have fewer models.
    pub may_shrink: bool,
    /// Whether a returning unit may have fewer options.
    pub may_drop_options: bool,
}

impl CarryOver {
    pub(super) fn message(&self) -> Message {
        let returning = if self.returning == Share::ALL {
            list_rules::list_rule_all_returns()
        } else {
            list_rules::list_rule_returning(self.returning)
        };
        list_rules::list_rule_carry_over(returning, self.may_shrink, self.may_drop_options)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let (least, kept) = (
            self.returning.ceil_of(comparison.returnable_points()),
            comparison.kept_points(),
        );
        if kept < least {
            let losses: Vec<ListLine<'_>> = comparison.losses().collect();
            let units = Value::joined(losses.iter().map(ListLine::name), values::comma);
            let message = findings::finding_carry_over(kept, comparison.counted(), least, units);
            findings.push(
                Finding::new("list.carry-over", message)
                    .measured(Measure::Points, least.get(), kept.get())
                    .entries(losses.iter().map(|line| &line.entry.key)),
            );
        }
        for pair in &comparison.pairs {
            if let (Some(before), Some(now)) = (pair.before, pair.now) {
                if !self.may_shrink {
                    findings.extend(shrunk(pair, &before, &now));
                }
                if !self.may_drop_options {
                    findings.extend(dropped_options(pair, &before, &now));
                }
            }
        }
    }
}

fn shrunk(pair: &EntryPair<'_>, before: &ListLine<'_>, now: &ListLine<'_>) -> Option<Finding> {
    let (due, has) = (pair.models_due(), now.entry.models);
    (has < due).then(|| {
        let (name, had) = (now.name(), before.entry.models);
        let message = if due == had {
            findings::finding_shrunk(name, had, has)
        } else {
            findings::finding_shrunk_below(name, had, due, has)
        };
        Finding::new("list.shrunk", message)
            .measured(Measure::Models, due, has)
            .about(&now.entry.unit)
            .entries([&now.entry.key])
    })
}

fn dropped_options(
    pair: &EntryPair<'_>,
    before: &ListLine<'_>,
    now: &ListLine<'_>,
) -> Vec<Finding> {
    let dropped = before.entry.options.keys().filter_map(|option| {
        let (due, has) = (pair.takings_due(option), now.entry.takings(option));
        (has < due).then(|| {
            let name = before
                .unit
                .and_then(|unit| unit.option(option))
                .map_or(option.as_str(), |option| option.name.as_str());
            let message = findings::finding_option_dropped(now.name(), name);
            Finding::new("list.option-dropped", message)
                .measured(Measure::Takings, due, has)
                .about(option)
                .entries([&now.entry.key])
        })
    });
    dropped.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{after, entries, numbers};

    fn carry_over(percent: u32, may: bool) -> Rule {
        Rule::CarryOver(CarryOver {
            returning: Share::percent(percent),
            may_shrink: may,
            may_drop_options: may,
        })
    }

    const BEFORE: &str = "a mire-speaker 1, b turf-cutters 10 mud-sledges, c stilt-waders 4";

    #[test]
    fn growing_and_adding_is_fine() {
        let now = "a mire-speaker 1 reed-mask, b turf-cutters 12 mud-sledges, c stilt-waders 4, \
                   d rushlight-kin 6";
        assert_eq!(after(BEFORE, carry_over(100, false), 500, now), []);
    }

    #[test]
    fn shrinking_and_dropping_options_is_told_beside_the_points() {
        let now = "a mire-speaker 1, b turf-cutters 9, c stilt-waders 4";
        let findings = after(BEFORE, carry_over(100, false), 500, now);
        assert_eq!(
            numbers(&findings),
            [
                ("list.carry-over", 213, 198),
                ("list.shrunk", 10, 9),
                ("list.option-dropped", 1, 0),
            ]
        );
        assert!(findings.iter().all(|finding| entries(finding) == ["b"]));
    }

    #[test]
    fn a_share_that_returns_is_exact_to_the_point() {
        let now = "a mire-speaker 1, b turf-cutters 9, d rushlight-kin 6";
        assert_eq!(after(BEFORE, carry_over(64, true), 500, now), []);
        let findings = after(BEFORE, carry_over(65, true), 500, now);
        assert_eq!(numbers(&findings), [("list.carry-over", 139, 138)]);
        assert_eq!(entries(&findings[0]), ["b", "c"]);
    }

    #[test]
    fn identity_is_the_key_and_not_the_name() {
        let swapped = "c mire-speaker 1, a stilt-waders 4, b turf-cutters 10 mud-sledges";
        let findings = after(BEFORE, carry_over(100, true), 500, swapped);
        assert_eq!(numbers(&findings), [("list.carry-over", 213, 78)]);
        let reordered = "b turf-cutters 10 mud-sledges, c stilt-waders 4, a mire-speaker 1";
        assert_eq!(after(BEFORE, carry_over(100, false), 500, reordered), []);
    }
}
