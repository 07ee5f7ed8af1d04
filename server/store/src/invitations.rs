//! Invitations: a code lets its holder into a club. Only the digest of the code is kept.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};
use league::time::Instant;
use uuid::Uuid;

use crate::number::convert;
use crate::schema::invitations;
use crate::{Conn, StoreError, clubs};

/// An invitation to a club.
#[derive(Clone, Debug)]
pub struct Invitation {
    pub id: Uuid,
    pub club: ClubId,
    pub role: ClubRole,
    /// How many more people may use it.
    pub uses_left: u16,
    pub expires_at: Instant,
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    invitation: &Invitation,
    code_digest: &[u8],
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(invitations::table)
        .values((
            invitations::club_id.eq(invitation.club.0),
            invitations::invitation_id.eq(invitation.id),
            invitations::code_digest.eq(code_digest),
            invitations::role.eq(invitation.role.as_str()),
            invitations::uses_left.eq(i32::from(invitation.uses_left)),
            invitations::created_by.eq(by.0),
            invitations::created_at.eq(now),
            invitations::expires_at.eq(invitation.expires_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Uses up one place of the invitation with this code, if one is left at `now`.
///
/// # Errors
/// [`StoreError::NotFound`] when the code is unknown, used up or out of date: the three look alike.
pub async fn redeem(
    conn: &mut Conn,
    code_digest: &[u8],
    now: Instant,
) -> Result<(ClubId, ClubRole), StoreError> {
    let (club, word): (Uuid, String) = diesel::update(invitations::table)
        .filter(invitations::code_digest.eq(code_digest))
        .filter(
            invitations::uses_left
                .gt(0)
                .and(invitations::expires_at.gt(now)),
        )
        .set(invitations::uses_left.eq(invitations::uses_left - 1))
        .returning((invitations::club_id, invitations::role))
        .get_result(conn)
        .await?;
    Ok((ClubId(club), clubs::parse_role(&word)?))
}

/// The invitations of a club that still work at `now`, the one that ends first before the others.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_open(
    conn: &mut Conn,
    club: ClubId,
    now: Instant,
) -> Result<Vec<Invitation>, StoreError> {
    let rows: Vec<(Uuid, String, i32, Instant)> = invitations::table
        .filter(invitations::club_id.eq(club.0))
        .filter(
            invitations::uses_left
                .gt(0)
                .and(invitations::expires_at.gt(now)),
        )
        .order((invitations::expires_at, invitations::invitation_id))
        .select((
            invitations::invitation_id,
            invitations::role,
            invitations::uses_left,
            invitations::expires_at,
        ))
        .load(conn)
        .await?;
    rows.into_iter()
        .map(|(id, word, uses_left, expires_at)| {
            Ok(Invitation {
                id,
                club,
                role: clubs::parse_role(&word)?,
                uses_left: convert("uses of an invitation", uses_left)?,
                expires_at,
            })
        })
        .collect()
}

/// # Errors
/// [`StoreError::NotFound`] when the club has no such invitation.
pub async fn delete(conn: &mut Conn, club: ClubId, id: Uuid) -> Result<(), StoreError> {
    let gone = diesel::delete(invitations::table.find((club.0, id)))
        .execute(conn)
        .await?;
    if gone == 0 {
        Err(StoreError::NotFound)
    } else {
        Ok(())
    }
}

/// Takes all invitations of a club back.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn delete_all(conn: &mut Conn, club: ClubId) -> Result<(), StoreError> {
    diesel::delete(invitations::table)
        .filter(invitations::club_id.eq(club.0))
        .execute(conn)
        .await?;
    Ok(())
}
