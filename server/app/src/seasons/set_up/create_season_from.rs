//! Creating the next season from an earlier one: the same rules, calendar, nights and, if wanted,
//! scenarios and players, on new days. A draft like any other; its seed is drawn when it starts.

use chrono::NaiveDate;
use document::season::policy::PolicyDocument;
use document::trail::TrailAct;
use league::ids::SeasonId;
use league::keys::SeasonKey;
use league::season::{CalendarFault, Carry, RevealTime, SeasonShift, SeasonState, WeekPlan};
use league::time::Instant;
use messages::{refusals, seasons};
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;
use uuid::Uuid;

use super::carry::{CarriedPlayers, carry_players};
use super::create_season::find_newest_version;
use super::first_day::must_be_near;
use super::satisfiable::must_be_satisfiable;
use crate::access::{authorize, policy};
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Fault, Reason, Refusal, user_text};

/// What it takes to start the next season from one.
#[derive(Clone, Debug)]
pub struct CreateSeasonFrom {
    /// Name of the new season.
    pub name: String,
    /// The day on which its first week is announced.
    pub first_day: NaiveDate,
    /// Whether the whole rhythm may move to other days of the week.
    pub other_weekdays: bool,
    /// Its rules; absent, those of the old season.
    pub policy: Option<PolicyDocument>,
    /// Whether the scenario sheets come along, with their reveals.
    pub scenarios: bool,
    /// Who comes along, and with what.
    pub carry: Carry,
}

/// A new draft, and who came along.
#[derive(Clone, Debug)]
pub struct NextSeason {
    pub season: Season,
    /// Who came along and who did not.
    pub people: CarriedPlayers,
}

/// Zone, caps, pauses, nights, graces and places stay as they are; every week is pinned to the newest
/// version of the catalogue.
///
/// # Errors
/// [`Reason::InvalidName`]; [`Reason::Validation`] for a first day of another weekday or rules with
/// faults; [`Reason::InvalidLocalTime`]; [`Reason::RulesUnsatisfiable`]; [`Reason::SeasonState`] for
/// collections of a season that is not over; [`Reason::Forbidden`].
pub async fn create_season_from(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    command: CreateSeasonFrom,
) -> Result<NextSeason, Refusal> {
    let name = user_text::parse_name(&command.name, "/name", refusals::name_fault)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::RunSeason).await?;
        let old = store::seasons::find(&mut tx, season).await?;
        let carriable = command.carry.check(old.state);
        carriable.map_err(|fault| Refusal::rule(Reason::SeasonState, fault.message()))?;
        let now = store::clock::now(&tx).await?;
        let season = new_draft(&old, name.as_str(), &command, now);
        let weeks = store::weeks::list(&tx, old.key()).await?;
        if let Some(rules) = &command.policy {
            policy::check(rules, policy::season_size(&weeks, old.places))?;
        }
        let today = now.with_timezone(&old.zone).date_naive();
        must_be_near(command.first_day, today, "/first_day")?;
        let shifted = shift_weeks(&weeks, &season, &command)?;
        create(&mut tx, &season, &weeks, &shifted, &command).await?;
        let people = carry_players(&mut tx, &old, &season, command.carry, now).await?;
        let act = TrailAct::CreateSeasonFrom {
            name: season.name.clone(),
            from: old.id.0,
            carry: command.carry.word().to_owned(),
            players: people.players.len(),
        };
        Ok(tx
            .record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await?
            .with(NextSeason { season, people }))
    })
    .await
}

fn new_draft(old: &Season, name: &str, command: &CreateSeasonFrom, now: Instant) -> Season {
    let policy = command.policy.as_ref().unwrap_or(&old.policy);
    Season {
        id: SeasonId(Uuid::now_v7()),
        name: name.to_owned(),
        state: SeasonState::Draft,
        policy: policy.clone(),
        version: 1,
        changed_at: now,
        seed_commitment: None,
        started_at: None,
        ended_at: None,
        ..old.clone()
    }
}

/// A week of the new season, with the reveals of its scenario where that comes along.
struct ShiftedWeek {
    plan: WeekPlan,
    reveals: Option<(RevealTime, RevealTime)>,
}

fn shift_weeks(
    weeks: &[Week],
    season: &Season,
    command: &CreateSeasonFrom,
) -> Result<Vec<ShiftedWeek>, Refusal> {
    let Some(first) = weeks.first().map(|week| week.announce.0.date()) else {
        return Ok(Vec::new());
    };
    must_keep_weekdays(first, command)?;
    let shift = SeasonShift::between(first, command.first_day, season.zone);
    let plans: Vec<WeekPlan> = weeks.iter().map(Week::plan).collect();
    let shifted = shift.weeks(&plans).map_err(invalid)?;
    let with_reveals = weeks
        .iter()
        .zip(&plans)
        .zip(shifted)
        .map(|((old, before), plan)| {
            let reveals = match command.scenarios && old.sheet.is_some() {
                false => None,
                true => Some((
                    shift.reveal(before, old.title_reveal)?,
                    shift.reveal(before, old.full_reveal)?,
                )),
            };
            Ok(ShiftedWeek { plan, reveals })
        });
    with_reveals
        .collect::<Result<_, CalendarFault>>()
        .map_err(|fault| invalid(vec![fault]))
}

fn must_keep_weekdays(first: NaiveDate, command: &CreateSeasonFrom) -> Result<(), Refusal> {
    let found = SeasonShift::find_other_weekday(first, command.first_day);
    let found = found.map_err(|fault| invalid(vec![fault]))?;
    let Some(other) = found.filter(|_| !command.other_weekdays) else {
        return Ok(());
    };
    let fault = Fault::new("season.weekday", "/first_day", other.message());
    let fault = fault.with(other.before.to_string(), other.day.to_string());
    Err(Refusal::of_fault(Reason::Validation, fault))
}

fn invalid(faults: Vec<CalendarFault>) -> Refusal {
    let only_clock = faults
        .iter()
        .all(|fault| matches!(fault, CalendarFault::Clock { .. }));
    let reason = match only_clock {
        true => Reason::InvalidLocalTime,
        false => Reason::Validation,
    };
    let faults = faults.iter().map(|fault| {
        let message = refusals::sentence(fault.message());
        Fault::new(reason.code(), "/first_day", message)
    });
    Refusal::faults(reason, seasons::new_days_faults(), faults.collect())
}

/// Saves the season and its weeks, if some list can keep its rules with the newest catalogue.
async fn create(
    conn: &mut Conn,
    season: &Season,
    weeks: &[Week],
    shifted: &[ShiftedWeek],
    command: &CreateSeasonFrom,
) -> Result<(), Refusal> {
    let key = season.key();
    let number = find_newest_version(conn, season.club, season.catalogue).await?;
    let pinned = shifted
        .iter()
        .map(|new| (new.plan.week, new.plan.cap, number));
    let rules_at = command.policy.as_ref().map(|_| "/policy/list_rules");
    must_be_satisfiable(conn, season, pinned.collect(), rules_at).await?;
    store::seasons::create(conn, season, season.changed_at).await?;
    for (old, new) in weeks.iter().zip(shifted) {
        let grace = u16::try_from(old.facts.grace.num_minutes())
            .map_err(|_| Refusal::Internal(format!("the grace of week {}", old.week)))?;
        store::weeks::create(conn, key, &new.plan, grace, number).await?;
        if let (Some(sheet), Some(reveals)) = (&old.sheet, new.reveals) {
            store::weeks::update_sheet(conn, key.week(old.week), sheet, reveals).await?;
        }
    }
    Ok(())
}
