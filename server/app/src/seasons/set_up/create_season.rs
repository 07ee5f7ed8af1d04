//! Creating a season as a draft: caps, calendar and rules.

use document::trail::TrailAct;
use messages::{refusals, seasons};
use std::ops::RangeInclusive;

use chrono_tz::Tz;
use document::season::calendar::{CalendarDocument, CapsDocument, plan};
use document::season::policy::{PolicyDocument, SeasonSize};
use league::ids::{CatalogueId, ClubId, SeasonId};
use league::season::{SeasonState, Visibility};
use store::Conn;
use store::seasons::Season;
use uuid::Uuid;

use super::first_day::{find_today, must_be_near};
use super::satisfiable::must_be_satisfiable;
use crate::access::{authorize, policy};
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Fault, Reason, Refusal, user_text};

/// Longest grace after the deadline of the lists.
pub const MAX_GRACE_MINUTES: u16 = 1440;
const PLACES_RANGE: RangeInclusive<u16> = 2..=10_000;

/// What it takes to set up a season.
#[derive(Clone, Debug)]
pub struct CreateSeason {
    pub name: String,
    /// Who may look once it has started.
    pub visibility: Visibility,
    /// IANA name of the zone of its civil times.
    pub zone: String,
    /// The catalogue, which needs a version by now.
    pub catalogue: CatalogueId,
    pub caps: CapsDocument,
    pub calendar: CalendarDocument,
    /// Minutes after the deadline in which a list still counts as in time.
    pub grace_minutes: u16,
    /// Most players, if limited.
    pub places: Option<u16>,
    pub policy: PolicyDocument,
}

/// # Errors
/// [`Reason::InvalidName`], [`Reason::UnknownZone`], [`Reason::Validation`] with every fault of
/// caps, calendar and rules, and for a first day years away, [`Reason::RulesUnsatisfiable`],
/// [`Reason::Forbidden`].
pub async fn create_season(
    app: &App,
    actor: Actor,
    club: ClubId,
    command: CreateSeason,
) -> Result<Season, Refusal> {
    let name = user_text::parse_name(&command.name, "/name", refusals::name_fault)?;
    let zone = parse_zone(&command.zone)?;
    let today = find_today(app, zone).await?;
    must_be_near(command.calendar.first_day, today, "/calendar/first_day")?;
    let weeks = plan(&command.caps, &command.calendar, zone)
        .map_err(|faults| invalid(faults.into_iter().map(Fault::from).collect()))?;
    check_limits(&command)?;
    let frame = SeasonSize {
        weeks: weeks.len(),
        nights: command.calendar.nights.len(),
        places: command.places,
    };
    policy::check(&command.policy, frame)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::RunSeason).await?;
        let catalogue_number = find_newest_version(&mut tx, club, command.catalogue).await?;
        let now = store::clock::now(&tx).await?;
        let season = Season {
            id: SeasonId(Uuid::now_v7()),
            club,
            name: name.to_string(),
            visibility: command.visibility,
            zone,
            state: SeasonState::Draft,
            catalogue: command.catalogue,
            policy: command.policy.clone(),
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
        must_be_satisfiable(
            &mut tx,
            &season,
            pinned.collect(),
            Some("/policy/list_rules"),
        )
        .await?;
        store::seasons::create(&mut tx, &season, now).await?;
        for week in &weeks {
            let grace = command.grace_minutes;
            store::weeks::create(&mut tx, season.key(), week, grace, catalogue_number).await?;
        }
        let act = TrailAct::CreateSeason {
            name: season.name.clone(),
        };
        Ok(tx
            .record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await?
            .with(season))
    })
    .await
}

fn parse_zone(name: &str) -> Result<Tz, Refusal> {
    name.parse()
        .map_err(|_| Refusal::fault(Reason::UnknownZone, "/zone", seasons::zone_unknown()))
}

fn check_limits(command: &CreateSeason) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    if command.grace_minutes > MAX_GRACE_MINUTES {
        faults.push(
            Fault::new("validation", "/grace_minutes", seasons::grace_too_long())
                .with(MAX_GRACE_MINUTES, command.grace_minutes),
        );
    }
    faults.extend(command.places.and_then(places_fault));
    if faults.is_empty() {
        Ok(())
    } else {
        Err(invalid(faults))
    }
}

/// What is wrong with so many places, if anything.
pub(super) fn places_fault(places: u16) -> Option<Fault> {
    let (min, max) = PLACES_RANGE.into_inner();
    let limit = places.clamp(min, max);
    let fault = Fault::new("validation", "/places", seasons::season_places(min, max));
    (limit != places).then(|| fault.with(limit, places))
}

fn invalid(faults: Vec<Fault>) -> Refusal {
    let only_clock = faults
        .iter()
        .all(|fault| fault.code == Reason::InvalidLocalTime.code());
    let reason = if only_clock {
        Reason::InvalidLocalTime
    } else {
        Reason::Validation
    };
    Refusal::faults(reason, seasons::season_faults(), faults)
}

pub(super) async fn find_newest_version(
    conn: &mut Conn,
    club: ClubId,
    id: CatalogueId,
) -> Result<i32, Refusal> {
    let newest = match store::catalogues::find(conn, club, id).await {
        Ok(catalogue) => catalogue.newest,
        Err(store::StoreError::NotFound) => 0,
        Err(fault) => return Err(fault.into()),
    };
    if newest == 0 {
        return Err(Refusal::fault(
            Reason::Validation,
            "/catalogue",
            seasons::catalogue_without_version(),
        ));
    }
    Ok(newest)
}
