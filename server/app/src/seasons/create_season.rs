//! Setting up a season: its caps, its rhythm and its rules. A draft until it is started.

use std::ops::RangeInclusive;

use chrono_tz::Tz;
use document::policy::{Frame, PolicyDocument};
use document::season::{CalendarDocument, CapsDocument, plan};
use league::ids::{CatalogueId, ClubId, SeasonId};
use league::season::{SeasonState, Visibility};
use serde_json::json;
use store::Conn;
use store::seasons::Season;
use uuid::Uuid;

use super::first_day::{find_today, must_be_near};
use super::policy;
use super::satisfiable::must_be_satisfiable;
use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Fault, Reason, Refusal, words};

const LONGEST_GRACE: u16 = 1440;
const PLACES: RangeInclusive<u16> = 2..=10_000;

/// What it takes to set up a season.
#[derive(Clone, Debug)]
pub struct CreateSeason {
    /// Name.
    pub name: String,
    /// Who may look once it has started.
    pub visibility: Visibility,
    /// IANA name of the zone of its civil times.
    pub zone: String,
    /// The catalogue, which needs a version by now.
    pub catalogue: CatalogueId,
    /// The caps.
    pub caps: CapsDocument,
    /// The rhythm.
    pub calendar: CalendarDocument,
    /// Minutes after the deadline in which a list still counts as in time.
    pub grace_minutes: u16,
    /// Most players, if limited.
    pub places: Option<u16>,
    /// The rules.
    pub policy: PolicyDocument,
}

/// # Errors
/// [`Reason::InvalidName`], [`Reason::UnknownZone`], [`Reason::Validation`] with every fault of
/// caps, calendar and rules, and for a first day years away, [`Reason::RulesUnsatisfiable`],
/// [`Reason::Forbidden`].
pub async fn create_season(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    command: CreateSeason,
) -> Result<Season, Refusal> {
    let name = words::name(&command.name, "/name", "name")?;
    let zone = zone(&command.zone)?;
    let today = find_today(desk, zone).await?;
    must_be_near(command.calendar.first_day, today, "/calendar/first_day")?;
    let weeks = plan(&command.caps, &command.calendar, zone)
        .map_err(|faults| not_valid(faults.into_iter().map(Fault::from).collect()))?;
    check_limits(&command)?;
    let frame = Frame {
        weeks: weeks.len(),
        nights: command.calendar.nights.len(),
        places: command.places,
    };
    policy::check(&command.policy, frame)?;
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunSeason).await?;
            let catalogue_number = newest_version(conn, club, command.catalogue).await?;
            let now = store::clock::now(conn).await?;
            let season = Season {
                id: SeasonId(Uuid::now_v7()),
                club,
                name: name.to_string(),
                visibility: command.visibility,
                zone,
                state: SeasonState::Draft,
                catalogue: command.catalogue,
                policy: command.policy,
                places: command.places,
                version: 1,
                changed_at: now,
                seed_commitment: None,
                started_at: None,
                ended_at: None,
            };
            let pinned = weeks
                .iter()
                .map(|week| (week.week, week.cap, catalogue_number));
            must_be_satisfiable(conn, &season, pinned.collect(), Some("/policy/list_rules"))
                .await?;
            store::seasons::create(conn, &season, now).await?;
            for week in &weeks {
                let grace = command.grace_minutes;
                store::weeks::create(conn, club, season.id, week, grace, catalogue_number).await?;
            }
            Scene::in_season(season.key(), actor, now)
                .tell_officers(conn, "create_season", json!({"name": season.name}))
                .await?;
            Ok(season)
        })
        .await
}

fn zone(name: &str) -> Result<Tz, Refusal> {
    name.parse().map_err(|_| {
        Refusal::fault(
            Reason::UnknownZone,
            "/zone",
            "This is no time zone of the IANA database; one is Europe/Berlin.",
        )
    })
}

fn check_limits(command: &CreateSeason) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    if command.grace_minutes > LONGEST_GRACE {
        faults.push(
            Fault::new(
                "validation",
                "/grace_minutes",
                "A grace lasts a day at the most.",
            )
            .with(LONGEST_GRACE, command.grace_minutes),
        );
    }
    faults.extend(command.places.and_then(wrong_places));
    if faults.is_empty() {
        Ok(())
    } else {
        Err(not_valid(faults))
    }
}

/// What is wrong with so many places, if anything.
pub(super) fn wrong_places(places: u16) -> Option<Fault> {
    let limit = places.clamp(*PLACES.start(), *PLACES.end());
    let fault = Fault::new("validation", "/places", "A season has 2 to 10000 places.");
    (limit != places).then(|| fault.with(limit, places))
}

fn not_valid(faults: Vec<Fault>) -> Refusal {
    let only_clock = faults
        .iter()
        .all(|fault| fault.code == Reason::InvalidLocalTime.code());
    let reason = if only_clock {
        Reason::InvalidLocalTime
    } else {
        Reason::Validation
    };
    Refusal::faults(reason, "The season has faults.", faults)
}

pub(super) async fn newest_version(
    conn: &mut Conn,
    club: ClubId,
    id: CatalogueId,
) -> Result<i32, Refusal> {
    let newest = match store::catalogues::find(conn, club, id).await {
        Ok(catalogue) => catalogue.newest,
        Err(store::Fault::NotFound) => 0,
        Err(fault) => return Err(fault.into()),
    };
    if newest == 0 {
        return Err(Refusal::fault(
            Reason::Validation,
            "/catalogue",
            "The club has no catalogue with this id that has a version.",
        ));
    }
    Ok(newest)
}
