//! Idempotency keys: a request sent twice acts once, and both are answered the same.

use league::ids::AccountId;
use league::time::Instant;
use messages::requests;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use store::Conn;
use store::idempotency::{KeyState, claim_key, save_answer};

use crate::{Actor, Reason, Refusal, secret};

/// What a key says of a request.
pub(super) enum Claim<T> {
    /// It was answered so.
    Answered(T),
    /// It is new: act, then save the answer.
    New(ClaimedKey),
}

/// A key whose request has no answer yet.
pub(super) struct ClaimedKey {
    account: AccountId,
    key: String,
}

/// Claims a key of the actor's for `request`. Ask before whether the actor may know of what the request is
/// about: a saved answer is given without asking again.
///
/// # Errors
/// [`Reason::IdempotencyKeyReused`] for another request under the key.
pub(super) async fn claim<T: DeserializeOwned>(
    conn: &mut Conn,
    actor: Actor,
    key: String,
    request: &Value,
    now: Instant,
) -> Result<Claim<T>, Refusal> {
    let digest = secret::digest(&request.to_string());
    match claim_key(conn, actor.account, &key, &digest, now).await? {
        KeyState::Answered(answer) => Ok(Claim::Answered(
            serde_json::from_value(answer).map_err(internal_error)?,
        )),
        KeyState::OtherRequest => Err(Refusal::rule(
            Reason::IdempotencyKeyReused,
            requests::idempotency_key_reused(),
        )),
        KeyState::New => Ok(Claim::New(ClaimedKey {
            account: actor.account,
            key,
        })),
    }
}

impl ClaimedKey {
    /// Saves the answer for whoever sends the request again.
    ///
    /// # Errors
    /// An error of the database.
    pub async fn save_answer(
        &self,
        conn: &mut Conn,
        answer: &impl Serialize,
    ) -> Result<(), Refusal> {
        let answer = serde_json::to_value(answer).map_err(internal_error)?;
        Ok(save_answer(conn, self.account, &self.key, &answer).await?)
    }
}

fn internal_error(cause: serde_json::Error) -> Refusal {
    Refusal::Internal(cause.to_string())
}
