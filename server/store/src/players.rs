//! The players of a season, and which nights they can come.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, PlayerId};
use league::keys::{SeasonKey, WeekKey};
use league::standings::PlayerFact;
use league::time::Instant;
use league::week::WeekNo;
use uuid::Uuid;

use crate::keys::{of_season, of_week, pk_in_season, season_columns, week_columns};
use crate::number::convert;
use crate::schema::{availabilities, players};
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// One person's place in a season.
#[derive(Clone, Debug)]
pub struct Player {
    pub id: PlayerId,
    pub account: AccountId,
    /// The name shown in this season.
    pub handle: String,
    pub faction: String,
    /// People of one household are not paired in early rounds; only officers see it.
    pub household: Option<String>,
    /// Nights the player can usually come.
    pub nights: Vec<String>,
    /// First week played.
    pub joined_week: WeekNo,
    /// Last week played, once withdrawn.
    pub left_after: Option<LeftAfter>,
    /// When, once withdrawn.
    pub left_at: Option<Instant>,
    /// Number in the table of a round robin, once it is drawn.
    pub seat: Option<u8>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftAfter {
    /// Before the first week.
    NoWeek,
    /// After this week.
    Week(WeekNo),
}

impl Player {
    /// The player's time in the season; `None` for who left before the first week.
    pub fn fact(&self) -> Option<PlayerFact> {
        let left = match self.left_after {
            None => None,
            Some(LeftAfter::NoWeek) => return None,
            Some(LeftAfter::Week(last)) => last.next(),
        };
        Some(PlayerFact {
            player: self.id,
            joined: self.joined_week,
            left,
        })
    }

    /// Whether the player takes part in `week`.
    pub fn plays_in(&self, week: WeekNo) -> bool {
        self.fact().is_some_and(|fact| fact.takes_part_in(week))
    }
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = players)]
pub(crate) struct PlayerColumns {
    player_id: Uuid,
    account_id: Uuid,
    handle: String,
    faction: String,
    household: Option<String>,
    nights: Vec<String>,
    joined_week: i16,
    left_after_week: Option<i16>,
    left_at: Option<Instant>,
    seat: Option<i16>,
}

impl TryFrom<PlayerColumns> for Player {
    type Error = StoreError;

    fn try_from(row: PlayerColumns) -> Result<Self, StoreError> {
        let seat = row.seat.map(|seat| convert("a seat", seat));
        let left_after = match row.left_after_week {
            None => None,
            Some(0) => Some(LeftAfter::NoWeek),
            Some(last) => Some(LeftAfter::Week(week_from_sql(last)?)),
        };
        Ok(Self {
            id: PlayerId(row.player_id),
            account: AccountId(row.account_id),
            handle: row.handle,
            faction: row.faction,
            household: row.household,
            nights: row.nights,
            joined_week: week_from_sql(row.joined_week)?,
            left_after,
            left_at: row.left_at,
            seat: seat.transpose()?,
        })
    }
}

/// # Errors
/// [`UniqueConstraint::PlayerAccount`](crate::UniqueConstraint::PlayerAccount),
/// [`UniqueConstraint::PlayerHandle`](crate::UniqueConstraint::PlayerHandle), or an error of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    player: &Player,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(players::table)
        .values((
            season_columns!(players, season),
            players::player_id.eq(player.id.0),
            players::account_id.eq(player.account.0),
            players::handle.eq(&player.handle),
            players::faction.eq(&player.faction),
            players::household.eq(&player.household),
            players::nights.eq(&player.nights),
            players::joined_week.eq(week_to_sql(player.joined_week)),
            players::joined_at.eq(now),
            players::seat.eq(player.seat.map(i16::from)),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Everybody who ever joined the season, by handle.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(mut conn: &Conn, season: SeasonKey) -> Result<Vec<Player>, StoreError> {
    let rows: Vec<PlayerColumns> = players::table
        .filter(of_season!(players, season))
        .order((players::handle, players::player_id))
        .select(PlayerColumns::as_select())
        .load(&mut conn)
        .await?;
    rows.into_iter().map(Player::try_from).collect()
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(mut conn: &Conn, season: SeasonKey, id: PlayerId) -> Result<Player, StoreError> {
    let row: PlayerColumns = players::table
        .find(pk_in_season(season, id.0))
        .select(PlayerColumns::as_select())
        .first(&mut conn)
        .await?;
    row.try_into()
}

/// Locks the player's row until the transaction ends.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock(conn: &mut Conn, season: SeasonKey, id: PlayerId) -> Result<(), StoreError> {
    players::table
        .find(pk_in_season(season, id.0))
        .select(players::player_id)
        .for_update()
        .first::<Uuid>(conn)
        .await?;
    Ok(())
}

/// The place of an account in a season, if it has one.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_by_account(
    conn: &mut Conn,
    season: SeasonKey,
    account: AccountId,
) -> Result<Option<Player>, StoreError> {
    let row: Option<PlayerColumns> = players::table
        .filter(of_season!(players, season))
        .filter(players::account_id.eq(account.0))
        .select(PlayerColumns::as_select())
        .first(conn)
        .await
        .optional()?;
    row.map(Player::try_from).transpose()
}

/// Saves faction, household, usual nights, leaving and seat.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn update(conn: &mut Conn, season: SeasonKey, player: &Player) -> Result<(), StoreError> {
    let left_after = player.left_after.map(|left| match left {
        LeftAfter::NoWeek => 0,
        LeftAfter::Week(last) => week_to_sql(last),
    });
    diesel::update(players::table.find(pk_in_season(season, player.id.0)))
        .set((
            players::faction.eq(&player.faction),
            players::household.eq(&player.household),
            players::nights.eq(&player.nights),
            players::left_after_week.eq(left_after),
            players::left_at.eq(player.left_at),
            players::seat.eq(player.seat.map(i16::from)),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Says which nights of one week a player can come; none means absent with notice.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn save_availability(
    conn: &mut Conn,
    week: WeekKey,
    player: PlayerId,
    nights: &[String],
    now: Instant,
) -> Result<(), StoreError> {
    let told = (
        availabilities::nights.eq(nights),
        availabilities::told_at.eq(now),
    );
    diesel::insert_into(availabilities::table)
        .values((
            week_columns!(availabilities, week),
            availabilities::player_id.eq(player.0),
            told,
        ))
        .on_conflict((
            availabilities::club_id,
            availabilities::season_id,
            availabilities::week_no,
            availabilities::player_id,
        ))
        .do_update()
        .set(told)
        .execute(conn)
        .await?;
    Ok(())
}

/// Who said of which weeks that they can come on no night.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_absences(
    mut conn: &Conn,
    season: SeasonKey,
) -> Result<Vec<(PlayerId, WeekNo)>, StoreError> {
    let rows: Vec<(Uuid, i16)> = availabilities::table
        .filter(of_season!(availabilities, season))
        .filter(availabilities::nights.eq(Vec::<String>::new()))
        .order((availabilities::week_no, availabilities::player_id))
        .select((availabilities::player_id, availabilities::week_no))
        .load(&mut conn)
        .await?;
    rows.into_iter()
        .map(|(player, week)| Ok((PlayerId(player), week_from_sql(week)?)))
        .collect()
}

/// What was told of one week, by player.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_availabilities(
    conn: &mut Conn,
    week: WeekKey,
) -> Result<Vec<(PlayerId, Vec<String>)>, StoreError> {
    let rows: Vec<(Uuid, Vec<String>)> = availabilities::table
        .filter(of_week!(availabilities, week))
        .order(availabilities::player_id)
        .select((availabilities::player_id, availabilities::nights))
        .load(conn)
        .await?;
    Ok(rows
        .into_iter()
        .map(|(player, nights)| (PlayerId(player), nights))
        .collect())
}
