//! Updating a week's times, cap, nights or catalogue version, only where that harms no player.

use chrono_tz::Tz;
use document::season::calendar::week_fault_code;
use document::trail::{ChangedNight, TrailAct, WeekChanges};
use league::keys::WeekKey;
use league::points::{MAX_POINTS, Points};
use league::season::{
    NightPlan, WeekChange, WeekChangeFault, WeekFault, WeekPart, check_week_change,
    find_conflicting_cap,
};
use league::time::{CivilTime, Instant};
use messages::{refusals, seasons};
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;

use crate::access::authorize;
use crate::season_change::SeasonChange;
use crate::seasons::set_up::satisfiable::{must_be_satisfiable, pinned_week};
use crate::{Action, Actor, App, Fault, Reason, Refusal};

/// What to change; what is absent stays. Times are civil times in the season's zone.
#[derive(Clone, Debug, Default)]
pub struct UpdateWeek {
    pub cap: Option<u32>,
    /// When cap and scenario go out.
    pub announce: Option<CivilTime>,
    /// When lists are due.
    pub lists_due: Option<CivilTime>,
    /// When games must be played.
    pub play_until: Option<CivilTime>,
    /// All nights: name, beginning, tables.
    pub nights: Option<Vec<(String, CivilTime, u16)>>,
    /// Version of the catalogue.
    pub catalogue_number: Option<i32>,
}

/// A draft may change in any way. Afterwards a week that was announced stays so, its cap and its
/// catalogue are fixed, a deadline moves only to later and only before it has passed, and from the
/// pairing on the end of play moves only to later. Everybody reads what changed.
///
/// # Errors
/// [`Reason::SeasonFixed`], [`Reason::DeadlineImmutable`], [`Reason::Validation`],
/// [`Reason::InvalidLocalTime`], [`Reason::RulesUnsatisfiable`].
pub async fn update_week(
    app: &App,
    actor: Actor,
    week: WeekKey,
    command: UpdateWeek,
) -> Result<Week, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        let old = store::weeks::lock(&mut tx, week).await?;
        let now = store::clock::now(&tx).await?;
        let change = week_change(&command, season.zone)?;
        check_week_change(season.state, &old.facts, &change, now).map_err(refuse_change)?;
        let new = apply(&old, &command, season.zone)?;
        if let Some(number) = command.catalogue_number {
            pinned_version_exists(&mut tx, &season, number).await?;
        }
        let mut weeks = store::weeks::list(&tx, season.key()).await?;
        weeks.retain(|other| other.week != week.week);
        check_neighbours(&weeks, &new)?;
        if command.cap.is_some() || command.catalogue_number.is_some() {
            weeks.push(new.clone());
            must_be_satisfiable(
                &mut tx,
                &season,
                weeks.iter().map(pinned_week).collect(),
                None,
            )
            .await?;
        }
        store::weeks::update(&mut tx, season.key(), &new).await?;
        let act = TrailAct::UpdateWeek(find_changes(&old, &new));
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(new))
    })
    .await
}

fn week_change(command: &UpdateWeek, zone: Tz) -> Result<WeekChange, Refusal> {
    let at = |pointer, civil: Option<CivilTime>| {
        let instant = civil.map(|civil| instant(pointer, civil, zone));
        instant.transpose()
    };
    Ok(WeekChange {
        announced: command.announce.is_some()
            || command.cap.is_some()
            || command.catalogue_number.is_some(),
        lists_due: at("/lists_due", command.lists_due)?,
        play_until: at("/play_until", command.play_until)?,
        nights: command.nights.is_some(),
    })
}

fn refuse_change(fault: WeekChangeFault) -> Refusal {
    let reason = match fault {
        WeekChangeFault::Announced => Reason::SeasonFixed,
        WeekChangeFault::Deadline(_) => Reason::DeadlineImmutable,
        WeekChangeFault::Nights | WeekChangeFault::PlayUntil => Reason::WeekState,
    };
    let refusal = Refusal::rule(reason, fault.message());
    match fault {
        WeekChangeFault::Deadline(deadline) => refusal.fact("deadline", deadline.to_rfc3339()),
        _ => refusal,
    }
}

/// What the trail tells: the week, and the new value of all that is another now.
fn find_changes(old: &Week, new: &Week) -> WeekChanges {
    let nights = |week: &Week| -> Vec<ChangedNight> {
        let night = |night: &NightPlan| ChangedNight {
            key: night.key.clone(),
            begins: night.begins.1,
            tables: night.tables,
        };
        week.nights.iter().map(night).collect()
    };
    WeekChanges {
        week: new.week.number(),
        cap: changed(old.cap.get(), new.cap.get()),
        announce: changed(old.facts.announce_at, new.facts.announce_at),
        lists_due: changed(old.facts.lists_due_at, new.facts.lists_due_at),
        play_until: changed(old.facts.play_until_at, new.facts.play_until_at),
        nights: changed(nights(old), nights(new)),
        catalogue_number: changed(old.catalogue_number, new.catalogue_number),
    }
}

/// The new value, if it is another.
fn changed<T: PartialEq>(old: T, new: T) -> Option<T> {
    (old != new).then_some(new)
}

fn apply(old: &Week, command: &UpdateWeek, zone: Tz) -> Result<Week, Refusal> {
    let mut week = old.clone();
    if let Some(cap) = command.cap {
        week.cap = Points::new_checked(cap)
            .filter(|cap| cap.get() > 0)
            .ok_or_else(|| {
                let message = seasons::week_cap_range(MAX_POINTS);
                Refusal::fault(Reason::Validation, "/cap", message)
                    .with(cap.clamp(1, MAX_POINTS), cap)
            })?;
    }
    if let Some(civil) = command.announce {
        (week.announce, week.facts.announce_at) = (civil, instant("/announce", civil, zone)?);
    }
    if let Some(civil) = command.lists_due {
        (week.lists_due, week.facts.lists_due_at) = (civil, instant("/lists_due", civil, zone)?);
    }
    if let Some(civil) = command.play_until {
        (week.play_until, week.facts.play_until_at) = (civil, instant("/play_until", civil, zone)?);
    }
    if let Some(nights) = &command.nights {
        week.nights = nights
            .iter()
            .map(|(key, begins, tables)| {
                let begins = (*begins, instant("/nights", *begins, zone)?);
                Ok(NightPlan {
                    key: key.clone(),
                    begins,
                    tables: *tables,
                })
            })
            .collect::<Result<_, Refusal>>()?;
    }
    week.catalogue_number = command.catalogue_number.unwrap_or(week.catalogue_number);
    let faults = week.plan().check_change(&old.plan());
    if faults.is_empty() {
        Ok(week)
    } else {
        Err(Refusal::faults(
            Reason::Validation,
            seasons::week_faults(),
            faults.iter().map(|it| week_fault(it, command)).collect(),
        ))
    }
}

/// A fault of the new week, at what was sent of it.
fn week_fault(fault: &WeekFault, command: &UpdateWeek) -> Fault {
    let new = |pointer: String| {
        Fault::new(
            week_fault_code(fault),
            pointer,
            refusals::sentence(fault.message()),
        )
    };
    let found = match fault {
        WeekFault::Nights(_) => new("/nights".to_owned()),
        WeekFault::NightKey { night, .. } => new(format!("/nights/{night}/key")),
        WeekFault::Tables { night, .. } => new(format!("/nights/{night}/tables")),
        WeekFault::Order { earlier, later } => {
            let text = |civil: CivilTime| civil.0.format("%FT%T").to_string();
            // What comes too early, unless only the other one was sent.
            let (at, other) = match sent_at(later.0, command) {
                Some(_) => (later, earlier),
                None => (earlier, later),
            };
            // Where neither was sent, the fault is of the request as a whole.
            let pointer = sent_at(at.0, command).unwrap_or_default();
            new(pointer).with(text(other.1), text(at.1))
        }
    };
    match fault.limit_and_actual() {
        Some((limit, actual)) => found.with(limit, actual),
        None => found,
    }
}

/// Where in the request a time of the week is, if it was sent.
fn sent_at(part: WeekPart, command: &UpdateWeek) -> Option<String> {
    let (sent, pointer) = match part {
        WeekPart::Announce => (command.announce.is_some(), "/announce".to_owned()),
        WeekPart::ListsDue => (command.lists_due.is_some(), "/lists_due".to_owned()),
        WeekPart::PlayUntil => (command.play_until.is_some(), "/play_until".to_owned()),
        WeekPart::Night(night) => (command.nights.is_some(), format!("/nights/{night}/begins")),
        WeekPart::Reveal => return None,
    };
    sent.then_some(pointer)
}

fn instant(pointer: &str, civil: CivilTime, zone: Tz) -> Result<Instant, Refusal> {
    civil.to_instant(zone).map_err(|fault| {
        Refusal::fault(
            Reason::InvalidLocalTime,
            pointer,
            refusals::time_fault(fault.message()),
        )
    })
}

fn check_neighbours(others: &[Week], week: &Week) -> Result<(), Refusal> {
    let others = others.iter().map(|other| (other.week, other.cap));
    find_conflicting_cap(others, week.week, week.cap).map_or(Ok(()), |other| {
        let message = seasons::caps_fall();
        let refusal = Refusal::fault(Reason::Validation, "/cap", message);
        Err(refusal.with(other.get(), week.cap.get()))
    })
}

async fn pinned_version_exists(
    conn: &mut Conn,
    season: &Season,
    number: i32,
) -> Result<(), Refusal> {
    let newest = store::catalogues::find(conn, season.club, season.catalogue)
        .await?
        .newest;
    if (1..=newest).contains(&number) {
        return Ok(());
    }
    let fault = Fault::new(
        "validation",
        "/catalogue_number",
        seasons::version_missing(),
    )
    .with(newest, number);
    Err(Refusal::faults(
        Reason::Validation,
        seasons::catalogue_version_missing(),
        vec![fault],
    ))
}
