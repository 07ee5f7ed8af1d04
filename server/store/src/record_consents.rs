//! Consents of members to a public record over the seasons of a club.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, ClubId, PlayerId, SeasonId};
use league::keys::SeasonKey;
use league::time::Instant;
use uuid::Uuid;

use crate::schema::{open_records, players, seasons};
use crate::{Conn, StoreError};

/// A member's agreement.
#[derive(Clone, Copy, Debug)]
pub struct RecordConsent {
    /// What the record is read under; no other identity of the person leads to it.
    pub record: Uuid,
    pub agreed_at: Instant,
}

/// The agreement of a member, if there is one.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
) -> Result<Option<RecordConsent>, StoreError> {
    let row: Option<(Uuid, Instant)> = open_records::table
        .find((club.0, account.0))
        .select((open_records::record_id, open_records::agreed_at))
        .first(conn)
        .await
        .optional()?;
    Ok(row.map(|(record, agreed_at)| RecordConsent { record, agreed_at }))
}

/// Keeps an agreement; one that is there stays as it is.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
    open: RecordConsent,
) -> Result<(), StoreError> {
    diesel::insert_into(open_records::table)
        .values((
            open_records::club_id.eq(club.0),
            open_records::account_id.eq(account.0),
            open_records::record_id.eq(open.record),
            open_records::agreed_at.eq(open.agreed_at),
        ))
        .on_conflict_do_nothing()
        .execute(conn)
        .await?;
    Ok(())
}

/// Takes an agreement back, and its address with it; says whether there was one.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn delete(conn: &mut Conn, club: ClubId, account: AccountId) -> Result<bool, StoreError> {
    let gone = diesel::delete(open_records::table.find((club.0, account.0)))
        .execute(conn)
        .await?;
    Ok(gone > 0)
}

/// The public seasons of the club that the person behind a record played in, newest first, and as
/// whom.
///
/// # Errors
/// [`StoreError::NotFound`] for a record that is not open.
pub async fn list_appearances(
    conn: &mut Conn,
    club: ClubId,
    record: Uuid,
) -> Result<Vec<(SeasonKey, PlayerId)>, StoreError> {
    let account: Uuid = open_records::table
        .filter(open_records::club_id.eq(club.0))
        .filter(open_records::record_id.eq(record))
        .select(open_records::account_id)
        .first(conn)
        .await?;
    let rows: Vec<(Uuid, Uuid)> = players::table
        .inner_join(
            seasons::table.on(seasons::club_id
                .eq(players::club_id)
                .and(seasons::season_id.eq(players::season_id))),
        )
        .filter(players::club_id.eq(club.0))
        .filter(players::account_id.eq(account))
        .filter(seasons::visibility.eq("public"))
        .filter(seasons::state.ne("draft"))
        .order((seasons::started_at.desc(), seasons::season_id.desc()))
        .select((players::season_id, players::player_id))
        .load(conn)
        .await?;
    let key = |season| SeasonKey {
        club,
        season: SeasonId(season),
    };
    let place = |(season, player)| (key(season), PlayerId(player));
    Ok(rows.into_iter().map(place).collect())
}
