//! The weeks of a season and their nights.

use chrono::{Duration, NaiveDateTime};
use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::season::scenario::ScenarioSheetDocument;
use futures_util::future::try_join;
use league::keys::{SeasonKey, WeekKey};
use league::points::Points;
use league::season::{NightPlan, RevealTime, WeekFacts, WeekPlan};
use league::time::{CivilTime, Instant};
use league::week::WeekNo;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{of_season, of_week, season_from_pk, week_columns, week_pk};
use crate::number::convert;
use crate::schema::{nights, weeks};
use crate::week_limits::{WeekLimits, WeekLimitsColumns};
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// A week of a season.
#[derive(Clone, Debug)]
pub struct Week {
    pub week: WeekNo,
    pub cap: Points,
    /// Announcement, in civil time.
    pub announce: CivilTime,
    /// Deadline of the lists, in civil time.
    pub lists_due: CivilTime,
    /// End of the play window, in civil time.
    pub play_until: CivilTime,
    /// The instants, planned and happened.
    pub facts: WeekFacts,
    /// Version of the catalogue that the week is pinned to.
    pub catalogue_number: i32,
    /// The scenario sheet, if there is one yet.
    pub sheet: Option<ScenarioSheetDocument>,
    /// When its title is revealed.
    pub title_reveal: RevealTime,
    /// When all of it is revealed.
    pub full_reveal: RevealTime,
    /// The nights, as they begin.
    pub nights: Vec<NightPlan>,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = weeks)]
struct WeekColumns {
    #[diesel(embed)]
    limits: WeekLimitsColumns,
    announce: NaiveDateTime,
    lists_due: NaiveDateTime,
    play_until: NaiveDateTime,
    sheet: Option<JsonColumn<ScenarioSheetDocument>>,
    title_reveal: String,
    title_reveal_at: Option<Instant>,
    full_reveal: String,
    full_reveal_at: Option<Instant>,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = nights)]
struct NightColumns {
    week_no: i16,
    night: String,
    begins: NaiveDateTime,
    begins_at: Instant,
    tables: i16,
}

impl Week {
    fn new(row: WeekColumns, nights: &[NightColumns]) -> Result<Self, StoreError> {
        let limits = WeekLimits::try_from(row.limits)?;
        let number = week_to_sql(limits.week);
        Ok(Self {
            week: limits.week,
            cap: limits.cap,
            announce: CivilTime(row.announce),
            lists_due: CivilTime(row.lists_due),
            play_until: CivilTime(row.play_until),
            facts: limits.facts,
            catalogue_number: limits.catalogue_number,
            sheet: row.sheet.map(|sheet| sheet.0),
            title_reveal: parse_reveal(&row.title_reveal, row.title_reveal_at)?,
            full_reveal: parse_reveal(&row.full_reveal, row.full_reveal_at)?,
            nights: nights
                .iter()
                .filter(|night| night.week_no == number)
                .map(night_plan)
                .collect::<Result<_, _>>()?,
        })
    }
}

impl Week {
    /// What lists, claims and answers of the week are held against.
    pub fn limits(&self) -> WeekLimits {
        WeekLimits {
            week: self.week,
            cap: self.cap,
            catalogue_number: self.catalogue_number,
            facts: self.facts,
        }
    }

    /// The week as it was planned.
    pub fn plan(&self) -> WeekPlan {
        WeekPlan {
            week: self.week,
            cap: self.cap,
            announce: (self.announce, self.facts.announce_at),
            lists_due: (self.lists_due, self.facts.lists_due_at),
            play_until: (self.play_until, self.facts.play_until_at),
            nights: self.nights.clone(),
        }
    }
}

fn night_plan(night: &NightColumns) -> Result<NightPlan, StoreError> {
    Ok(NightPlan {
        key: night.night.clone(),
        begins: (CivilTime(night.begins), night.begins_at),
        tables: convert("tables of a night", night.tables)?,
    })
}

fn parse_reveal(word: &str, at: Option<Instant>) -> Result<RevealTime, StoreError> {
    match (word, at) {
        ("announcement", None) => Ok(RevealTime::Announcement),
        ("lists_opened", None) => Ok(RevealTime::ListsOpened),
        ("at", Some(at)) => Ok(RevealTime::At(at)),
        _ => Err(StoreError::Internal(format!("no reveal is called {word}"))),
    }
}

fn reveal_columns(reveal: RevealTime) -> (&'static str, Option<Instant>) {
    match reveal {
        RevealTime::Announcement => ("announcement", None),
        RevealTime::ListsOpened => ("lists_opened", None),
        RevealTime::At(at) => ("at", Some(at)),
    }
}

/// Saves a planned week with its nights.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    plan: &WeekPlan,
    grace_minutes: u16,
    catalogue_number: i32,
) -> Result<(), StoreError> {
    diesel::insert_into(weeks::table)
        .values((
            week_columns!(weeks, season.week(plan.week)),
            weeks::cap.eq(convert::<_, i32>("a cap", plan.cap.get())?),
            weeks::announce.eq(plan.announce.0.0),
            weeks::lists_due.eq(plan.lists_due.0.0),
            weeks::play_until.eq(plan.play_until.0.0),
            weeks::announce_at.eq(plan.announce.1),
            weeks::lists_due_at.eq(plan.lists_due.1),
            weeks::play_until_at.eq(plan.play_until.1),
            weeks::grace_minutes.eq(i32::from(grace_minutes)),
            weeks::catalogue_number.eq(catalogue_number),
        ))
        .execute(conn)
        .await?;
    create_nights(conn, season.week(plan.week), &plan.nights).await
}

async fn create_nights(
    conn: &mut Conn,
    week: WeekKey,
    plans: &[NightPlan],
) -> Result<(), StoreError> {
    let row = |night: &NightPlan| {
        Ok((
            week_columns!(nights, week),
            nights::night.eq(night.key.clone()),
            nights::begins.eq(night.begins.0.0),
            nights::begins_at.eq(night.begins.1),
            nights::tables.eq(convert::<_, i16>("tables of a night", night.tables)?),
        ))
    };
    let rows: Vec<_> = plans.iter().map(row).collect::<Result<_, StoreError>>()?;
    diesel::insert_into(nights::table)
        .values(rows)
        .execute(conn)
        .await?;
    Ok(())
}

/// The weeks of a season in order.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(conn: &Conn, season: SeasonKey) -> Result<Vec<Week>, StoreError> {
    let weeks = list_rows(conn, season);
    let nights = list_nights(conn, season);
    let (weeks, nights) = try_join(weeks, nights).await?;
    weeks
        .into_iter()
        .map(|row| Week::new(row, &nights))
        .collect()
}

async fn list_rows(mut conn: &Conn, season: SeasonKey) -> Result<Vec<WeekColumns>, StoreError> {
    let rows = weeks::table
        .filter(of_season!(weeks, season))
        .order(weeks::week_no)
        .select(WeekColumns::as_select())
        .load(&mut conn)
        .await?;
    Ok(rows)
}

async fn list_nights(mut conn: &Conn, season: SeasonKey) -> Result<Vec<NightColumns>, StoreError> {
    let nights = nights::table
        .filter(of_season!(nights, season))
        .order((nights::week_no, nights::begins_at, nights::night))
        .select(NightColumns::as_select())
        .load(&mut conn)
        .await?;
    Ok(nights)
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, week: WeekKey) -> Result<Week, StoreError> {
    let row: WeekColumns = weeks::table
        .find(week_pk(week))
        .select(WeekColumns::as_select())
        .first(conn)
        .await?;
    with_nights(conn, week.season, row).await
}

/// The week, locked exclusively for a change of its state: waits for every transaction that holds the
/// shared lock of [`week_limits`](crate::week_limits::lock_shared).
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock(conn: &mut Conn, week: WeekKey) -> Result<Week, StoreError> {
    let row: WeekColumns = weeks::table
        .find(week_pk(week))
        .select(WeekColumns::as_select())
        .for_update()
        .first(conn)
        .await?;
    with_nights(conn, week.season, row).await
}

async fn with_nights(
    conn: &mut Conn,
    season: SeasonKey,
    row: WeekColumns,
) -> Result<Week, StoreError> {
    let nights: Vec<NightColumns> = nights::table
        .filter(of_season!(nights, season))
        .filter(nights::week_no.eq(row.limits.week_no))
        .order((nights::begins_at, nights::night))
        .select(NightColumns::as_select())
        .load(conn)
        .await?;
    Week::new(row, &nights)
}

/// Saves cap, times, nights and catalogue version.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update(conn: &mut Conn, season: SeasonKey, week: &Week) -> Result<(), StoreError> {
    diesel::update(weeks::table.find(week_pk(season.week(week.week))))
        .set((
            weeks::cap.eq(convert::<_, i32>("a cap", week.cap.get())?),
            weeks::announce.eq(week.announce.0),
            weeks::lists_due.eq(week.lists_due.0),
            weeks::play_until.eq(week.play_until.0),
            weeks::announce_at.eq(week.facts.announce_at),
            weeks::lists_due_at.eq(week.facts.lists_due_at),
            weeks::play_until_at.eq(week.facts.play_until_at),
            weeks::catalogue_number.eq(week.catalogue_number),
        ))
        .execute(conn)
        .await?;
    diesel::delete(nights::table)
        .filter(of_week!(nights, season.week(week.week)))
        .execute(conn)
        .await?;
    create_nights(conn, season.week(week.week), &week.nights).await
}

/// Saves the scenario sheet and when it is revealed.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update_sheet(
    conn: &mut Conn,
    week: WeekKey,
    sheet: &ScenarioSheetDocument,
    (title, full): (RevealTime, RevealTime),
) -> Result<(), StoreError> {
    let (title, title_at) = reveal_columns(title);
    let (full, full_at) = reveal_columns(full);
    diesel::update(weeks::table.find(week_pk(week)))
        .set((
            weeks::sheet.eq(JsonColumn(sheet.clone())),
            weeks::title_reveal.eq(title),
            weeks::title_reveal_at.eq(title_at),
            weeks::full_reveal.eq(full),
            weeks::full_reveal_at.eq(full_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn mark_opened(conn: &mut Conn, week: WeekKey, now: Instant) -> Result<(), StoreError> {
    diesel::update(weeks::table.find(week_pk(week)))
        .set(weeks::lists_opened_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn mark_paired(conn: &mut Conn, week: WeekKey, now: Instant) -> Result<(), StoreError> {
    diesel::update(weeks::table.find(week_pk(week)))
        .filter(weeks::paired_at.is_null())
        .set(weeks::paired_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn mark_closed(conn: &mut Conn, week: WeekKey, now: Instant) -> Result<(), StoreError> {
    diesel::update(weeks::table.find(week_pk(week)))
        .set(weeks::closed_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}

/// Weeks of started seasons whose lists should be open at `now` and are not.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_due(conn: &mut Conn, now: Instant) -> Result<Vec<WeekKey>, StoreError> {
    use crate::schema::seasons;
    let rows: Vec<(Uuid, Uuid, i16, Instant, i32)> = weeks::table
        .inner_join(
            seasons::table.on(seasons::club_id
                .eq(weeks::club_id)
                .and(seasons::season_id.eq(weeks::season_id))),
        )
        .filter(
            weeks::lists_opened_at
                .is_null()
                .and(weeks::lists_due_at.le(now)),
        )
        .filter(seasons::state.eq("started"))
        .order(weeks::lists_due_at)
        .select((
            weeks::club_id,
            weeks::season_id,
            weeks::week_no,
            weeks::lists_due_at,
            weeks::grace_minutes,
        ))
        .load(conn)
        .await?;
    rows.into_iter()
        .filter(|(.., due, grace)| *due + Duration::minutes((*grace).into()) <= now)
        .map(|(club, season, week, ..)| {
            Ok(season_from_pk((club, season)).week(week_from_sql(week)?))
        })
        .collect()
}
