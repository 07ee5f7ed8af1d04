//! Army lists: a player's draft and sealed list for each week.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::lists::army_list::ArmyListDocument;
use league::ids::{AccountId, ListId, PlayerId};
use league::keys::{SeasonKey, WeekKey};
use league::time::Instant;
use league::week::WeekNo;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{of_season, of_week, pk_in_week, week_columns};
use crate::number::convert;
use crate::schema::{late_leaves, lists, players};
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// What a player has for one week.
#[derive(Clone, Debug)]
pub struct PlayerList {
    pub id: ListId,
    pub week: WeekNo,
    pub player: PlayerId,
    /// What is being written.
    pub draft: Option<ArmyListDocument>,
    /// Rises with every save of the draft.
    pub draft_revision: i32,
    /// What was handed in.
    pub sealed: Option<SealedListRow>,
}

/// A list that was handed in.
#[derive(Clone, Debug)]
pub struct SealedListRow {
    pub list: ArmyListDocument,
    pub points: u32,
    /// The version of the catalogue it is pinned to.
    pub catalogue_number: i32,
    /// Random bytes that keep its digest from being guessed.
    pub salt: Vec<u8>,
    /// The receipt.
    pub digest: Vec<u8>,
    pub sealed_at: Instant,
    /// Whole minutes after the end of the grace, when late.
    pub late_minutes: Option<u32>,
    /// Last week's list, put in because none came.
    pub stands_in: bool,
}

/// The list of a player's week: one that has a row already, or a new one.
#[derive(Clone, Copy, Debug)]
pub enum ListIdentity {
    /// The one that the player began.
    Existing(ListId),
    /// One that nobody began.
    New(ListId),
}

impl ListIdentity {
    #[must_use]
    pub fn id(self) -> ListId {
        match self {
            Self::Existing(id) | Self::New(id) => id,
        }
    }
}

impl From<Option<ListId>> for ListIdentity {
    fn from(begun: Option<ListId>) -> Self {
        begun.map_or_else(|| Self::New(ListId(Uuid::new_v4())), Self::Existing)
    }
}

/// Leave to hand in late.
#[derive(Clone, Debug)]
pub struct LateLeave {
    pub week: WeekNo,
    pub player: PlayerId,
    pub reason: String,
    pub granted_by: AccountId,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = lists)]
struct ListColumns {
    list_id: Uuid,
    week_no: i16,
    player_id: Uuid,
    draft: Option<JsonColumn<ArmyListDocument>>,
    draft_revision: i32,
    sealed: Option<JsonColumn<ArmyListDocument>>,
    sealed_points: Option<i32>,
    catalogue_number: Option<i32>,
    salt: Option<Vec<u8>>,
    digest: Option<Vec<u8>>,
    sealed_at: Option<Instant>,
    late_minutes: Option<i32>,
    stands_in: bool,
}

#[derive(Insertable, AsChangeset)]
#[diesel(table_name = lists, treat_none_as_null = true, treat_none_as_default_value = false)]
struct SealedColumns<'a> {
    sealed: JsonColumn<&'a ArmyListDocument>,
    sealed_points: i32,
    catalogue_number: i32,
    salt: &'a [u8],
    digest: &'a [u8],
    sealed_at: Instant,
    late_minutes: Option<i32>,
    stands_in: bool,
}

impl<'a> TryFrom<&'a SealedListRow> for SealedColumns<'a> {
    type Error = StoreError;

    fn try_from(sealed: &'a SealedListRow) -> Result<Self, StoreError> {
        let late = sealed
            .late_minutes
            .map(|late| convert("minutes late", late));
        Ok(Self {
            sealed: JsonColumn(&sealed.list),
            sealed_points: convert("points of a list", sealed.points)?,
            catalogue_number: sealed.catalogue_number,
            salt: &sealed.salt,
            digest: &sealed.digest,
            sealed_at: sealed.sealed_at,
            late_minutes: late.transpose()?,
            stands_in: sealed.stands_in,
        })
    }
}

impl TryFrom<ListColumns> for PlayerList {
    type Error = StoreError;

    fn try_from(row: ListColumns) -> Result<Self, StoreError> {
        let late = row.late_minutes.map(|late| convert("minutes late", late));
        let late_minutes = late.transpose()?;
        let rest = (row.sealed_points, row.catalogue_number, row.salt);
        let sealed = match (row.sealed, rest, row.digest, row.sealed_at) {
            (
                Some(list),
                (Some(points), Some(catalogue_number), Some(salt)),
                Some(digest),
                Some(sealed_at),
            ) => Some(SealedListRow {
                list: list.0,
                points: convert("points of a list", points)?,
                catalogue_number,
                salt,
                digest,
                sealed_at,
                late_minutes,
                stands_in: row.stands_in,
            }),
            (None, (None, None, None), None, None) => None,
            _ => {
                let cause = format!("list {} is sealed in part", row.list_id);
                return Err(StoreError::Internal(cause));
            }
        };
        Ok(Self {
            id: ListId(row.list_id),
            week: week_from_sql(row.week_no)?,
            player: PlayerId(row.player_id),
            draft: row.draft.map(|draft| draft.0),
            draft_revision: row.draft_revision,
            sealed,
        })
    }
}

/// The list of a player for a week, if the player began one.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find(
    conn: &mut Conn,
    week: WeekKey,
    player: PlayerId,
) -> Result<Option<PlayerList>, StoreError> {
    let row: Option<ListColumns> = lists::table
        .find(pk_in_week(week, player.0))
        .select(ListColumns::as_select())
        .first(conn)
        .await
        .optional()?;
    row.map(PlayerList::try_from).transpose()
}

/// The list of a player for a week, made if need be, its row locked until the transaction ends.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn lock(
    conn: &mut Conn,
    week: WeekKey,
    player: PlayerId,
) -> Result<PlayerList, StoreError> {
    diesel::insert_into(lists::table)
        .values((
            week_columns!(lists, week),
            lists::player_id.eq(player.0),
            lists::list_id.eq(Uuid::new_v4()),
        ))
        .on_conflict_do_nothing()
        .execute(conn)
        .await?;
    let row: ListColumns = lists::table
        .find(pk_in_week(week, player.0))
        .select(ListColumns::as_select())
        .for_update()
        .first(conn)
        .await?;
    row.try_into()
}

/// A list that a player began, locked until the transaction ends.
#[derive(Clone, Copy, Debug)]
pub struct LockedList {
    pub id: ListId,
    /// When what stands in it was handed in.
    pub sealed_at: Option<Instant>,
}

/// Locks the list that an account began for a week, if it did.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn lock_begun(
    mut conn: &Conn,
    week: WeekKey,
    account: AccountId,
) -> Result<Option<LockedList>, StoreError> {
    let player = players::table
        .filter(of_season!(players, week.season))
        .filter(players::account_id.eq(account.0))
        .select(players::player_id);
    let begun = lists::table
        .filter(of_week!(lists, week))
        .filter(lists::player_id.nullable().eq(player.single_value()))
        .select((lists::list_id, lists::sealed_at))
        .for_update();
    let begun: Option<(Uuid, Option<Instant>)> = begun.first(&mut conn).await.optional()?;
    Ok(begun.map(|(id, sealed_at)| LockedList {
        id: ListId(id),
        sealed_at,
    }))
}

/// Every list of a week that somebody began, in the order of the players' identities.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_by_week(conn: &mut Conn, week: WeekKey) -> Result<Vec<PlayerList>, StoreError> {
    let rows: Vec<ListColumns> = lists::table
        .filter(of_week!(lists, week))
        .order(lists::player_id)
        .select(ListColumns::as_select())
        .load(conn)
        .await?;
    rows.into_iter().map(PlayerList::try_from).collect()
}

/// A list that was handed in, as far as the table follows from it.
#[derive(Clone, Debug)]
pub struct SealedListFacts {
    pub player: PlayerId,
    pub list: ArmyListDocument,
    /// The version of the catalogue it is pinned to.
    pub catalogue_number: i32,
    pub sealed_at: Instant,
    /// Whether it came after the end of the grace.
    pub late: bool,
}

type SealedListFactsColumns = (
    Uuid,
    JsonColumn<ArmyListDocument>,
    i32,
    Instant,
    Option<i32>,
);

/// The lists of a week that were handed in, in the order of the players' identities. Reads nobody's
/// draft: a process that may not see drafts asks for this.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_sealed(
    mut conn: &Conn,
    week: WeekKey,
) -> Result<Vec<SealedListFacts>, StoreError> {
    let rows: Vec<SealedListFactsColumns> = lists::table
        .filter(of_week!(lists, week))
        .filter(lists::sealed.is_not_null())
        .order(lists::player_id)
        .select((
            lists::player_id,
            lists::sealed.assume_not_null(),
            lists::catalogue_number.assume_not_null(),
            lists::sealed_at.assume_not_null(),
            lists::late_minutes,
        ))
        .load(&mut conn)
        .await?;
    let handed_in = |(player, list, catalogue_number, sealed_at, late): SealedListFactsColumns| {
        SealedListFacts {
            player: PlayerId(player),
            list: list.0,
            catalogue_number,
            sealed_at,
            late: late.is_some(),
        }
    };
    Ok(rows.into_iter().map(handed_in).collect())
}

/// The list that a player sealed last before `week`, with that week.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_last_sealed(
    mut conn: &Conn,
    week: WeekKey,
    player: PlayerId,
) -> Result<Option<PlayerList>, StoreError> {
    let row: Option<ListColumns> = lists::table
        .filter(of_season!(lists, week.season))
        .filter(
            lists::week_no
                .lt(week_to_sql(week.week))
                .and(lists::player_id.eq(player.0)),
        )
        .filter(lists::sealed.is_not_null())
        .order(lists::week_no.desc())
        .select(ListColumns::as_select())
        .first(&mut conn)
        .await
        .optional()?;
    row.map(PlayerList::try_from).transpose()
}

/// Every list that a player began in a season, oldest week first.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_by_player(
    conn: &mut Conn,
    season: SeasonKey,
    player: PlayerId,
) -> Result<Vec<PlayerList>, StoreError> {
    let rows: Vec<ListColumns> = lists::table
        .filter(of_season!(lists, season))
        .filter(lists::player_id.eq(player.0))
        .order(lists::week_no)
        .select(ListColumns::as_select())
        .load(conn)
        .await?;
    rows.into_iter().map(PlayerList::try_from).collect()
}

/// Saves a draft; answers its new revision.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update_draft(
    conn: &mut Conn,
    season: SeasonKey,
    list: &PlayerList,
    draft: &ArmyListDocument,
) -> Result<i32, StoreError> {
    Ok(
        diesel::update(lists::table.find(pk_in_week(season.week(list.week), list.player.0)))
            .set((
                lists::draft.eq(JsonColumn(draft.clone())),
                lists::draft_revision.eq(lists::draft_revision + 1),
            ))
            .returning(lists::draft_revision)
            .get_result(conn)
            .await?,
    )
}

/// Saves a sealed list in the place of any sealed before. `false`, and nothing saved, where a list was
/// begun for the week that `identity` does not know of.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn seal(
    conn: &mut Conn,
    week: WeekKey,
    player: PlayerId,
    identity: ListIdentity,
    sealed: &SealedListRow,
) -> Result<bool, StoreError> {
    let row = SealedColumns::try_from(sealed)?;
    let saved = match identity {
        // Two statements instead of an upsert: diesel does not keep `on conflict do update` prepared, so it
        // would be parsed and planned each time.
        ListIdentity::New(id) => {
            diesel::insert_into(lists::table)
                .values((
                    week_columns!(lists, week),
                    lists::player_id.eq(player.0),
                    lists::list_id.eq(id.0),
                    &row,
                ))
                .on_conflict_do_nothing()
                .execute(conn)
                .await?
        }
        ListIdentity::Existing(id) => {
            diesel::update(lists::table.find(pk_in_week(week, player.0)))
                .filter(lists::list_id.eq(id.0))
                .set(&row)
                .execute(conn)
                .await?
        }
    };
    Ok(saved == 1)
}

/// Gives a player leave to hand in late.
///
/// # Errors
/// [`UniqueConstraint::LateLeave`](crate::UniqueConstraint::LateLeave) when given already.
pub async fn create_leave(
    conn: &mut Conn,
    season: SeasonKey,
    leave: &LateLeave,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(late_leaves::table)
        .values((
            week_columns!(late_leaves, season.week(leave.week)),
            late_leaves::player_id.eq(leave.player.0),
            late_leaves::reason.eq(&leave.reason),
            late_leaves::granted_by.eq(leave.granted_by.0),
            late_leaves::granted_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn has_leave(
    conn: &mut Conn,
    week: WeekKey,
    player: PlayerId,
) -> Result<bool, StoreError> {
    let leave = late_leaves::table.find(pk_in_week(week, player.0));
    Ok(diesel::select(diesel::dsl::exists(leave))
        .get_result(conn)
        .await?)
}
