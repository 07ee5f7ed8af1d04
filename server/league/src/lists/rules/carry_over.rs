//! Carry-over: how much of last week's list must return, and how.

use crate::lists::army_list::EntryKey;
use crate::lists::facts::{Facts, Line};
use crate::lists::finding::{Finding, Measure};
use crate::share::Share;

/// "All of last week's points return; units may grow, not shrink; options may be added,
/// not dropped." Points are last week's prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CarryOver {
    /// Share of last week's points that must return, rounded up to whole points.
    pub returning: Share,
    /// Whether a returning unit may have fewer models.
    pub may_shrink: bool,
    /// Whether a returning unit may have fewer options.
    pub may_drop_options: bool,
}

impl CarryOver {
    pub(super) fn sentence(&self) -> String {
        let mut sentence = if self.returning == Share::ALL {
            String::from("All of last week's points return")
        } else {
            format!("At least {} of last week's points return", self.returning)
        };
        if !self.may_shrink {
            sentence.push_str("; units may grow, not shrink");
        }
        if !self.may_drop_options {
            sentence.push_str("; options may be added, not dropped");
        }
        sentence
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let (least, kept) = (
            self.returning.least_of(comparison.total_before),
            comparison.kept(),
        );
        if kept < least {
            let losses: Vec<Line<'_>> = comparison.losses().collect();
            let names: Vec<&str> = losses.iter().map(Line::name).collect();
            let sentence = format!(
                "{kept} of last week's {} points return; at least {least} must. Missing in whole or part: {}.",
                comparison.total_before,
                names.join(", ")
            );
            findings.push(
                Finding::new("list.carry-over", sentence)
                    .measured(Measure::Points, least.get(), kept.get())
                    .entries(losses.iter().map(|line| &line.entry.key)),
            );
        }
        for pair in &comparison.pairs {
            if let (Some(before), Some(now)) = (pair.before, pair.now) {
                if !self.may_shrink {
                    findings.extend(shrunk(&before, &now));
                }
                if !self.may_drop_options {
                    findings.extend(dropped_options(&before, &now));
                }
            }
        }
    }
}

fn shrunk(before: &Line<'_>, now: &Line<'_>) -> Option<Finding> {
    let (had, has) = (before.entry.models, now.entry.models);
    (has < had).then(|| {
        let sentence = format!(
            "{} had {had} models last week and has {has} now.",
            now.name()
        );
        Finding::new("list.shrunk", sentence)
            .measured(Measure::Models, had, has)
            .about(&now.entry.unit)
            .entries([&now.entry.key])
    })
}

fn dropped_options(before: &Line<'_>, now: &Line<'_>) -> Vec<Finding> {
    let key: &EntryKey = &now.entry.key;
    let dropped = before.entry.options.iter().filter_map(|(option, &had)| {
        let has = now.entry.options.get(option).copied().unwrap_or(0);
        (has < had).then(|| {
            let name = before
                .unit
                .and_then(|unit| unit.option(option))
                .map_or(option.as_str(), |option| option.name.as_str());
            let sentence = format!("{} had {name} last week and must keep it.", now.name());
            Finding::new("list.option-dropped", sentence)
                .measured(Measure::Takings, had, has)
                .about(option)
                .entries([key])
        })
    });
    dropped.collect()
}
