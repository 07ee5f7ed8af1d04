//! Check that the list rules can be satisfied at all: found when the season is saved, not by its players.

use std::collections::BTreeMap;

use document::lists::unsatisfiable::unsatisfiable_fault;
use league::catalogue::Catalogue;
use league::lists::rules::ListRule;
use league::lists::satisfiable::{Unsatisfiable, find_unsatisfiable};
use league::points::Points;
use league::week::WeekNo;
use messages::{Message, refusals};
use serde_json::json;
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;

use crate::access::policy;
use crate::run_blocking::run_blocking;
use crate::{Fault, Reason, Refusal, catalogues};

/// A week's cap, and the version of the catalogue that it is pinned to.
pub(crate) type PinnedWeek = (WeekNo, Points, i32);

pub(crate) fn pinned_week(week: &Week) -> PinnedWeek {
    (week.week, week.cap, week.catalogue_number)
}

/// # Errors
/// [`Reason::RulesUnsatisfiable`] with everything that was found: as faults, and as the fact
/// `impossible` with each week and faction. `rules_at` is where the request has the list rules, if it
/// has them.
pub(crate) async fn must_be_satisfiable(
    conn: &mut Conn,
    season: &Season,
    weeks: Vec<PinnedWeek>,
    rules_at: Option<&str>,
) -> Result<(), Refusal> {
    let rules = policy::parse(season)?.list_rules;
    let mut versions: BTreeMap<i32, Vec<(WeekNo, Points)>> = BTreeMap::new();
    for (week, cap, number) in weeks {
        versions.entry(number).or_default().push((week, cap));
    }
    let mut held = Vec::new();
    for (number, mut caps) in versions {
        caps.sort();
        let catalogue =
            catalogues::load_catalogue(conn, season.club, season.catalogue, number).await?;
        held.push((catalogue, caps));
    }
    let found = run_blocking(move || find_unsatisfiable_rules(&rules, &held)).await?;
    if found.is_empty() {
        Ok(())
    } else {
        Err(unsatisfiable_refusal(&found, rules_at))
    }
}

/// Each version is searched with its own weeks. Rules from week to week are not followed across a
/// change of version.
fn find_unsatisfiable_rules(
    rules: &[ListRule],
    held: &[(Catalogue, Vec<(WeekNo, Points)>)],
) -> Vec<Unsatisfiable> {
    let mut found = Vec::new();
    for (catalogue, caps) in held {
        for new in find_unsatisfiable(rules, caps, catalogue) {
            if !found.contains(&new) {
                found.push(new);
            }
        }
    }
    found
}

fn unsatisfiable_refusal(found: &[Unsatisfiable], rules_at: Option<&str>) -> Refusal {
    let faults = found.iter().map(|one| {
        let fault = Fault::from(unsatisfiable_fault(one));
        match rules_at {
            Some(pointer) => fault.below(pointer),
            None => Fault {
                pointer: String::new(),
                ..fault
            },
        }
    });
    let places = found.iter().filter_map(Unsatisfiable::week_and_faction);
    let places: Vec<_> = places
        .map(|(week, faction)| json!({"week": week.number(), "faction": faction.as_str()}))
        .collect();
    let found: Vec<Message> = found.iter().map(|it| it.message()).collect();
    Refusal::faults(
        Reason::RulesUnsatisfiable,
        refusals::sentences(found),
        faults.collect(),
    )
    .fact("impossible", places)
}
