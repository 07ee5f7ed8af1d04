//! Rules that no list can satisfy are found when the season is saved, not by its players.

use std::collections::BTreeMap;

use document::unsatisfiable::fault;
use league::catalogue::Catalogue;
use league::lists::rules::ListRule;
use league::lists::satisfiable::{Unsatisfiable, unsatisfiable};
use league::points::Points;
use league::week::WeekNo;
use serde_json::json;
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;

use super::policy;
use crate::aside::aside;
use crate::{Fault, Reason, Refusal, catalogues};

/// A week's cap, and the version of the catalogue that it is pinned to.
pub(super) type Pinned = (WeekNo, Points, i32);

pub(super) fn pinned(week: &Week) -> Pinned {
    (week.week, week.cap, week.catalogue_number)
}

/// # Errors
/// [`Reason::RulesUnsatisfiable`] with everything that was found: as faults, and as the fact
/// `impossible` with each week and faction. `rules_at` is where the request has the list rules, if it
/// has them.
pub(super) async fn must_be_satisfiable(
    conn: &mut Conn,
    season: &Season,
    weeks: Vec<Pinned>,
    rules_at: Option<&str>,
) -> Result<(), Refusal> {
    let rules = policy::read(season)?.list_rules;
    let mut versions: BTreeMap<i32, Vec<(WeekNo, Points)>> = BTreeMap::new();
    for (week, cap, number) in weeks {
        versions.entry(number).or_default().push((week, cap));
    }
    let mut held = Vec::new();
    for (number, mut caps) in versions {
        caps.sort();
        let catalogue = catalogues::load(conn, season.club, season.catalogue, number).await?;
        held.push((catalogue, caps));
    }
    let found = aside(move || search(&rules, &held)).await?;
    if found.is_empty() {
        Ok(())
    } else {
        Err(refuse(&found, rules_at))
    }
}

/// Each version is searched with its own weeks. Rules from week to week are not followed across a
/// change of version.
fn search(rules: &[ListRule], held: &[(Catalogue, Vec<(WeekNo, Points)>)]) -> Vec<Unsatisfiable> {
    let mut found = Vec::new();
    for (catalogue, caps) in held {
        for new in unsatisfiable(rules, caps, catalogue) {
            if !found.contains(&new) {
                found.push(new);
            }
        }
    }
    found
}

fn refuse(found: &[Unsatisfiable], rules_at: Option<&str>) -> Refusal {
    let faults = found.iter().map(|one| {
        let fault = Fault::from(fault(one));
        match rules_at {
            Some(pointer) => fault.below(pointer),
            None => Fault {
                pointer: String::new(),
                ..fault
            },
        }
    });
    let places = found.iter().filter_map(Unsatisfiable::place);
    let places: Vec<_> = places
        .map(|(week, faction)| json!({"week": week.number(), "faction": faction.as_str()}))
        .collect();
    let detail: Vec<String> = found.iter().map(ToString::to_string).collect();
    Refusal::faults(
        Reason::RulesUnsatisfiable,
        detail.join(" "),
        faults.collect(),
    )
    .fact("impossible", places)
}
