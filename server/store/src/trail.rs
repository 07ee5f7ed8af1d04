//! The trail: an append-only audit log for each club, hash-chained: each entry holds the digest of the
//! one before.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::trail::TrailAct;
use futures_util::future::try_join;
use league::ids::{AccountId, ClubId, SeasonId};
use league::keys::SeasonKey;
use league::time::Instant;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use uuid::Uuid;

use crate::keys::season_pk;
use crate::schema::{trail, trail_heads};
use crate::{Conn, StoreError};

/// Who may read an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrailAudience {
    /// Everybody who may see the season.
    Everyone,
    /// Owners, organisers and referees.
    Officers,
}

impl TrailAudience {
    fn word(self) -> &'static str {
        match self {
            Self::Everyone => "everyone",
            Self::Officers => "officers",
        }
    }
}

#[derive(Clone, Debug)]
pub struct TrailEvent {
    pub club: ClubId,
    /// In which season, unless it concerns the club as a whole.
    pub season: Option<SeasonId>,
    pub at: Instant,
    /// Who; nobody when the clock did it.
    pub actor: Option<AccountId>,
    pub act: TrailAct,
    /// Who may read it.
    pub open_to: TrailAudience,
}

/// An entry as it stands in the trail.
#[derive(Clone, Debug, Queryable)]
pub struct TrailEntry {
    /// Its place in the club's chain, from 1.
    pub entry_no: i64,
    /// The season, if any.
    pub season_id: Option<Uuid>,
    pub happened_at: Instant,
    /// Who, if a person.
    pub actor: Option<Uuid>,
    pub act: String,
    pub facts: Value,
    /// `everyone` or `officers`.
    pub open_to: String,
    /// Digest of the entry before.
    pub previous: Vec<u8>,
    /// Digest of this entry.
    pub digest: Vec<u8>,
}

/// Adds an event to the end of its club's chain. Call it last: it locks the chain's head until the
/// transaction ends.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn append(conn: &Conn, event: TrailEvent) -> Result<(), StoreError> {
    let (act, facts) = event.act.to_parts().map_err(internal)?;
    let (last, previous) = lock_head(conn, event.club).await?;
    let entry_no = last + 1;
    let digest = digest(&event, (&act, &facts), entry_no, &previous)?;
    let (mut first, mut second) = (conn, conn);
    let entry = diesel::insert_into(trail::table)
        .values((
            trail::club_id.eq(event.club.0),
            trail::entry_no.eq(entry_no),
            trail::season_id.eq(event.season.map(|season| season.0)),
            trail::happened_at.eq(event.at),
            trail::actor.eq(event.actor.map(|account| account.0)),
            trail::act.eq(&act),
            trail::facts.eq(&facts),
            trail::open_to.eq(event.open_to.word()),
            trail::previous.eq(&previous),
            trail::digest.eq(&digest),
        ))
        .execute(&mut first);
    let head = diesel::update(trail_heads::table.find(event.club.0))
        .set((
            trail_heads::entry_no.eq(entry_no),
            trail_heads::digest.eq(&digest),
        ))
        .execute(&mut second);
    try_join(entry, head).await?;
    Ok(())
}

/// Entries of a season, newest first; `limit` of them before entry `before`. Officers also read those of
/// the club as a whole: who came in as what, and by whom.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(
    conn: &mut Conn,
    season: SeasonKey,
    officers: bool,
    before: Option<i64>,
    limit: i64,
) -> Result<Vec<TrailEntry>, StoreError> {
    let (club, season) = season_pk(season);
    let mut query = trail::table
        .filter(trail::club_id.eq(club))
        // No entry has the largest number: without a limit every entry lies before it.
        .filter(trail::entry_no.lt(before.unwrap_or(i64::MAX)))
        .into_boxed();
    let of_season = trail::season_id.eq(season);
    query = if officers {
        query.filter(of_season.or(trail::season_id.is_null()))
    } else {
        let everyone = trail::open_to.eq(TrailAudience::Everyone.word());
        query.filter(of_season.and(everyone))
    };
    Ok(query
        .order(trail::entry_no.desc())
        .limit(limit)
        .select((
            trail::entry_no,
            trail::season_id,
            trail::happened_at,
            trail::actor,
            trail::act,
            trail::facts,
            trail::open_to,
            trail::previous,
            trail::digest,
        ))
        .load(conn)
        .await?)
}

type Head = (i64, Vec<u8>);

/// The head of a club's chain, before the first entry, too, locked until the transaction ends.
async fn lock_head(mut conn: &Conn, club: ClubId) -> Result<Head, StoreError> {
    if let Some(head) = lock_old_head(conn, club).await.optional()? {
        return Ok(head);
    }
    diesel::insert_into(trail_heads::table)
        .values((
            trail_heads::club_id.eq(club.0),
            trail_heads::entry_no.eq(0),
            trail_heads::digest.eq(vec![0; 32]),
        ))
        .on_conflict_do_nothing()
        .execute(&mut conn)
        .await?;
    Ok(lock_old_head(conn, club).await?)
}

async fn lock_old_head(mut conn: &Conn, club: ClubId) -> QueryResult<Head> {
    trail_heads::table
        .filter(trail_heads::club_id.eq(club.0))
        .select((trail_heads::entry_no, trail_heads::digest))
        .for_update()
        .first(&mut conn)
        .await
}

/// SHA-256 of the entry's canonical JSON (RFC 8785), which holds the digest of the entry before.
fn digest(
    event: &TrailEvent,
    (act, facts): (&str, &Value),
    entry_no: i64,
    previous: &[u8],
) -> Result<Vec<u8>, StoreError> {
    let entry = json!({
        "entry_no": entry_no.to_string(),
        "season": event.season.map(|season| season.0),
        "at": event.at.timestamp_micros().to_string(),
        "actor": event.actor.map(|account| account.0),
        "act": act,
        "facts": facts,
        "open_to": event.open_to.word(),
        "previous": hex::encode(previous),
    });
    let bytes = serde_json_canonicalizer::to_vec(&entry).map_err(internal)?;
    Ok(Sha256::digest(bytes).to_vec())
}

fn internal(cause: serde_json::Error) -> StoreError {
    StoreError::Internal(cause.to_string())
}
