//! Messages to send, written in the transaction of the fact they tell.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use serde_json::Value;

use crate::schema::outbox;
use crate::{Conn, Fault};

/// Puts a message into the outbox.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn append(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    topic: &str,
    payload: Value,
    now: Instant,
) -> Result<(), Fault> {
    diesel::insert_into(outbox::table)
        .values((
            outbox::club_id.eq(club.0),
            outbox::season_id.eq(season.0),
            outbox::topic.eq(topic),
            outbox::payload.eq(payload),
            outbox::created_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}
