//! Sessions and the refresh tokens that keep them alive.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::AccountId;
use league::time::Instant;
use uuid::Uuid;

use crate::clock::league_clock;
use crate::schema::{refresh_tokens, sessions};
use crate::{Conn, StoreError};

/// A session that has neither ended nor run out.
#[derive(Clone, Copy, Debug)]
pub struct Session {
    pub id: Uuid,
    pub account: AccountId,
    /// When it runs out whatever happens.
    pub ends_at: Instant,
}

/// A refresh token as it was issued.
#[derive(Clone, Copy, Debug)]
pub struct RefreshToken {
    /// The session it belongs to.
    pub session: Session,
    /// Whether it was used before.
    pub spent: bool,
    pub expires_at: Instant,
    /// Whether its session was ended.
    pub session_ended: bool,
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(conn: &mut Conn, session: Session, now: Instant) -> Result<(), StoreError> {
    diesel::insert_into(sessions::table)
        .values((
            sessions::session_id.eq(session.id),
            sessions::account_id.eq(session.account.0),
            sessions::started_at.eq(now),
            sessions::ends_at.eq(session.ends_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Opens a browser's session, known again by the digest of its cookie's secret.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create_for_pages(
    conn: &mut Conn,
    session: Session,
    page_digest: &[u8],
    now: Instant,
) -> Result<(), StoreError> {
    create(conn, session, now).await?;
    diesel::update(sessions::table.find(session.id))
        .set(sessions::page_digest.eq(page_digest))
        .execute(conn)
        .await?;
    Ok(())
}

/// The browser's session with this digest, if it is alive at this instant.
///
/// # Errors
/// [`StoreError::NotFound`] when there is none, or it ended or ran out.
pub async fn find_live_by_page_digest(
    conn: &mut Conn,
    page_digest: &[u8],
) -> Result<Session, StoreError> {
    let (id, account, ends_at): (Uuid, Uuid, Instant) = sessions::table
        .filter(sessions::page_digest.eq(page_digest))
        .filter(sessions::ended_at.is_null())
        .filter(sessions::ends_at.gt(league_clock()))
        .select((
            sessions::session_id,
            sessions::account_id,
            sessions::ends_at,
        ))
        .first(conn)
        .await?;
    Ok(Session {
        id,
        account: AccountId(account),
        ends_at,
    })
}

/// The account of a session that is alive at this instant, and the instant.
///
/// # Errors
/// [`StoreError::NotFound`] when it ended or ran out.
pub async fn find_live(mut conn: &Conn, id: Uuid) -> Result<(AccountId, Instant), StoreError> {
    let (account, now): (Uuid, Instant) = sessions::table
        .find(id)
        .filter(sessions::ended_at.is_null())
        .filter(sessions::ends_at.gt(league_clock()))
        .select((sessions::account_id, league_clock()))
        .first(&mut conn)
        .await?;
    Ok((AccountId(account), now))
}

/// Ends a session and with it every refresh token of its family.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn end(conn: &mut Conn, id: Uuid, now: Instant) -> Result<(), StoreError> {
    diesel::update(sessions::table.find(id))
        .filter(sessions::ended_at.is_null())
        .set(sessions::ended_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create_token(
    conn: &mut Conn,
    digest: &[u8],
    session: Uuid,
    now: Instant,
    expires_at: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(refresh_tokens::table)
        .values((
            refresh_tokens::token_digest.eq(digest),
            refresh_tokens::session_id.eq(session),
            refresh_tokens::issued_at.eq(now),
            refresh_tokens::expires_at.eq(expires_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// The token with this digest, its row locked until the transaction ends, so that of two uses at
/// once exactly one is the first.
///
/// # Errors
/// [`StoreError::NotFound`] for a digest never issued.
pub async fn lock_token(conn: &mut Conn, digest: &[u8]) -> Result<RefreshToken, StoreError> {
    let (session_id, spent_at, expires_at): (Uuid, Option<Instant>, Instant) =
        refresh_tokens::table
            .find(digest)
            .select((
                refresh_tokens::session_id,
                refresh_tokens::spent_at,
                refresh_tokens::expires_at,
            ))
            .for_update()
            .first(conn)
            .await?;
    let (account, ends_at, ended_at): (Uuid, Instant, Option<Instant>) = sessions::table
        .find(session_id)
        .select((sessions::account_id, sessions::ends_at, sessions::ended_at))
        .first(conn)
        .await?;
    Ok(RefreshToken {
        session: Session {
            id: session_id,
            account: AccountId(account),
            ends_at,
        },
        spent: spent_at.is_some(),
        expires_at,
        session_ended: ended_at.is_some(),
    })
}

/// # Errors
/// A [`StoreError`] of the database.
pub async fn spend_token(conn: &mut Conn, digest: &[u8], now: Instant) -> Result<(), StoreError> {
    diesel::update(refresh_tokens::table.find(digest))
        .set(refresh_tokens::spent_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}
