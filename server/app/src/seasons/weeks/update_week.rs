//! Updating a week's times, cap, nights or catalogue version, only where that harms no player.

use chrono_tz::Tz;
use document::trail::{ChangedNight, TrailAct, WeekChanges};
use league::keys::WeekKey;
use league::points::{MAX_POINTS, Points};
use league::season::{NightPlan, SeasonState, WeekPhase, is_night_key};
use league::time::{CivilTime, Instant};
use messages::{refusals, seasons};
use store::Conn;
use store::seasons::Season;
use store::weeks::Week;

use crate::access::authorize;
use crate::season_change::SeasonChange;
use crate::seasons::set_up::satisfiable::{must_be_satisfiable, pinned_week};
use crate::{Action, Actor, App, Fault, Reason, Refusal};

const MAX_NIGHTS: usize = 14;
const MAX_TABLES: u16 = 500;

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
        if season.state != SeasonState::Draft {
            check_announced_week(&old, &command, season.zone, now)?;
        }
        let new = apply(old.clone(), &command, season.zone)?;
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

fn check_announced_week(
    old: &Week,
    command: &UpdateWeek,
    zone: Tz,
    now: Instant,
) -> Result<(), Refusal> {
    let announced = old.facts.phase(now) >= WeekPhase::Announced;
    let fixed = [
        command.announce.is_some(),
        command.cap.is_some(),
        command.catalogue_number.is_some(),
    ];
    if announced && fixed.contains(&true) {
        return Err(Refusal::rule(
            Reason::SeasonFixed,
            seasons::week_announced(),
        ));
    }
    if let Some(due) = command.lists_due {
        let due = instant("/lists_due", due, zone)?;
        if now >= old.facts.accepted_until() || due < old.facts.lists_due_at {
            return Err(
                Refusal::rule(Reason::DeadlineImmutable, seasons::deadline_immutable())
                    .fact("deadline", old.facts.lists_due_at.to_rfc3339()),
            );
        }
    }
    if old.facts.paired_at.is_none() {
        return Ok(());
    }
    if command.nights.is_some() {
        return Err(Refusal::rule(Reason::WeekState, seasons::nights_fixed()));
    }
    if let Some(until) = command.play_until
        && (old.facts.closed_at.is_some()
            || instant("/play_until", until, zone)? < old.facts.play_until_at)
    {
        return Err(Refusal::rule(
            Reason::WeekState,
            seasons::play_until_fixed(),
        ));
    }
    Ok(())
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

fn apply(mut week: Week, command: &UpdateWeek, zone: Tz) -> Result<Week, Refusal> {
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
    let faults = faults(&week);
    if faults.is_empty() {
        Ok(week)
    } else {
        Err(Refusal::faults(
            Reason::Validation,
            seasons::week_faults(),
            faults,
        ))
    }
}

fn civil(of: CivilTime) -> String {
    of.0.format("%FT%T").to_string()
}

fn faults(week: &Week) -> Vec<Fault> {
    let mut faults = Vec::new();
    if week.facts.lists_due_at <= week.facts.announce_at {
        let fault = Fault::new("season.order", "/lists_due", seasons::after_announcement());
        faults.push(fault.with(civil(week.announce), civil(week.lists_due)));
    }
    if week.facts.play_until_at <= week.facts.lists_due_at {
        let fault = Fault::new("season.order", "/play_until", seasons::after_deadline());
        faults.push(fault.with(civil(week.lists_due), civil(week.play_until)));
    }
    let nights = week.nights.len();
    if !(1..=MAX_NIGHTS).contains(&nights) {
        let fault = Fault::new("season.nights", "/nights", seasons::week_nights(MAX_NIGHTS));
        faults.push(fault.with(nights.clamp(1, MAX_NIGHTS), nights));
    }
    for (index, night) in week.nights.iter().enumerate() {
        let twice = week
            .nights
            .iter()
            .take(index)
            .any(|other| other.key == night.key);
        if twice || !is_night_key(&night.key) {
            let message = seasons::night_name();
            faults.push(Fault::new(
                "season.nights",
                format!("/nights/{index}/key"),
                message,
            ));
        }
        if !(1..=MAX_TABLES).contains(&night.tables) {
            faults.push(
                Fault::new(
                    "season.nights",
                    format!("/nights/{index}/tables"),
                    seasons::night_tables(MAX_TABLES),
                )
                .with(night.tables.clamp(1, MAX_TABLES), night.tables),
            );
        }
    }
    faults
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
    let falls = others.iter().find(|other| {
        (other.week < week.week && other.cap > week.cap)
            || (other.week > week.week && other.cap < week.cap)
    });
    falls.map_or(Ok(()), |other| {
        let message = seasons::caps_fall();
        let refusal = Refusal::fault(Reason::Validation, "/cap", message);
        Err(refusal.with(other.cap.get(), week.cap.get()))
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
