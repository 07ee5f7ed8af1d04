//! Idempotency keys: answers kept by the key a client sent, so that a request sent twice acts once
//! (IETF draft "The Idempotency-Key HTTP Header Field"; from memory).

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::AccountId;
use league::time::Instant;
use serde_json::Value;

use crate::schema::idempotency_keys;
use crate::{Conn, StoreError};

/// What is known of a key.
#[derive(Clone, Debug)]
pub enum KeyState {
    /// Never seen: act, then keep the answer.
    New,
    /// The same request was answered so.
    Answered(Value),
    /// The key was used for another request.
    OtherRequest,
}

/// Claims a key for a request. A second request with the same key waits here until the first has
/// ended, and then finds its answer.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn claim_key(
    conn: &mut Conn,
    account: AccountId,
    key: &str,
    request_digest: &[u8],
    now: Instant,
) -> Result<KeyState, StoreError> {
    let fresh = diesel::insert_into(idempotency_keys::table)
        .values((
            idempotency_keys::account_id.eq(account.0),
            idempotency_keys::key.eq(key),
            idempotency_keys::request_digest.eq(request_digest),
            idempotency_keys::answer.eq(Value::Null),
            idempotency_keys::created_at.eq(now),
        ))
        .on_conflict_do_nothing()
        .execute(conn)
        .await?;
    if fresh == 1 {
        return Ok(KeyState::New);
    }
    let (digest, answer): (Vec<u8>, Value) = idempotency_keys::table
        .find((account.0, key))
        .select((idempotency_keys::request_digest, idempotency_keys::answer))
        .first(conn)
        .await?;
    Ok(if digest == request_digest {
        KeyState::Answered(answer)
    } else {
        KeyState::OtherRequest
    })
}

/// Keeps the answer of a freshly claimed key.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn save_answer(
    conn: &mut Conn,
    account: AccountId,
    key: &str,
    answer: &Value,
) -> Result<(), StoreError> {
    diesel::update(idempotency_keys::table.find((account.0, key)))
        .set(idempotency_keys::answer.eq(answer))
        .execute(conn)
        .await?;
    Ok(())
}
