//! Pairing rounds: the proposal with its locked inputs, and the games once it is published.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::rounds::proposal::ProposalDocument;
use document::rounds::repair::RepairDocument;
use document::rounds::task::TaskDocument;
use league::ids::{AccountId, RoundId};
use league::keys::SeasonKey;
use league::time::Instant;
use league::week::WeekNo;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{of_season, of_week, pk_in_season, week_columns};
use crate::number::convert;
use crate::schema::rounds;
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// A round of a week.
#[derive(Clone, Debug)]
pub struct RoundRow {
    pub id: RoundId,
    pub week: WeekNo,
    /// Which of the week's rounds, from 1.
    pub number: u8,
    /// 1 as it was drawn; each repair is one more. The last that is published stands.
    pub version: u8,
    /// What it repairs, and why.
    pub repair: Option<RepairDocument>,
    /// The locked inputs.
    pub task: TaskDocument,
    /// What followed from them.
    pub proposal: ProposalDocument,
    pub draw: Vec<u8>,
    pub proposed_at: Instant,
    /// When it was published; fixed from then on.
    pub published_at: Option<Instant>,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = rounds)]
struct RoundColumns {
    round_id: Uuid,
    week_no: i16,
    round_no: i16,
    task: JsonColumn<TaskDocument>,
    proposal: JsonColumn<ProposalDocument>,
    draw: Vec<u8>,
    proposed_at: Instant,
    published_at: Option<Instant>,
    version: i16,
    repair: Option<JsonColumn<RepairDocument>>,
}

impl TryFrom<RoundColumns> for RoundRow {
    type Error = StoreError;

    fn try_from(row: RoundColumns) -> Result<Self, StoreError> {
        Ok(Self {
            id: RoundId(row.round_id),
            week: week_from_sql(row.week_no)?,
            number: convert("a round of a week", row.round_no)?,
            version: convert("the version of a round", row.version)?,
            repair: row.repair.map(|repair| repair.0),
            task: row.task.0,
            proposal: row.proposal.0,
            draw: row.draw,
            proposed_at: row.proposed_at,
            published_at: row.published_at,
        })
    }
}

/// Saves a proposal in the place of an earlier, unpublished one of the same week, number and version.
///
/// # Errors
/// [`UniqueConstraint::Round`](crate::UniqueConstraint::Round) when that version is published.
pub async fn save_proposal(
    conn: &mut Conn,
    season: SeasonKey,
    round: &RoundRow,
    by: AccountId,
) -> Result<(), StoreError> {
    diesel::delete(rounds::table)
        .filter(of_week!(rounds, season.week(round.week)))
        .filter(rounds::round_no.eq(i16::from(round.number)))
        .filter(rounds::version.eq(i16::from(round.version)))
        .filter(rounds::state.eq("proposed"))
        .execute(conn)
        .await?;
    diesel::insert_into(rounds::table)
        .values((
            week_columns!(rounds, season.week(round.week)),
            rounds::round_id.eq(round.id.0),
            rounds::round_no.eq(i16::from(round.number)),
            rounds::state.eq("proposed"),
            rounds::task.eq(JsonColumn(round.task.clone())),
            rounds::proposal.eq(JsonColumn(round.proposal.clone())),
            rounds::draw.eq(&round.draw),
            rounds::version.eq(i16::from(round.version)),
            rounds::repair.eq(round.repair.clone().map(JsonColumn)),
            rounds::proposed_by.eq(by.0),
            rounds::proposed_at.eq(round.proposed_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, season: SeasonKey, id: RoundId) -> Result<RoundRow, StoreError> {
    let row: RoundColumns = rounds::table
        .find(pk_in_season(season, id.0))
        .select(RoundColumns::as_select())
        .first(conn)
        .await?;
    row.try_into()
}

/// The rounds of a season, or of one week of it, every version in order.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(
    conn: &mut Conn,
    season: SeasonKey,
    week: Option<WeekNo>,
) -> Result<Vec<RoundRow>, StoreError> {
    let mut query = rounds::table
        .filter(of_season!(rounds, season))
        .into_boxed();
    if let Some(week) = week {
        query = query.filter(rounds::week_no.eq(week_to_sql(week)));
    }
    let rows: Vec<RoundColumns> = query
        .order((rounds::week_no, rounds::round_no, rounds::version))
        .select(RoundColumns::as_select())
        .load(conn)
        .await?;
    rows.into_iter().map(RoundRow::try_from).collect()
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn mark_published(
    conn: &mut Conn,
    season: SeasonKey,
    id: RoundId,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::update(rounds::table.find(pk_in_season(season, id.0)))
        .set((
            rounds::state.eq("published"),
            rounds::published_by.eq(by.0),
            rounds::published_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}
