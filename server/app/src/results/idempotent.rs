//! Idempotency keys: a request sent twice acts once, and both are answered the same.

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use store::Conn;
use store::idempotency::{KeyState, claim_key, save_answer};

use crate::{Actor, Reason, Refusal, secret};

/// Acts, or answers what was answered to the same `request` under this key of the actor's. Ask before
/// whether the actor may know of what the request is about: a kept answer is given without asking again.
///
/// # Errors
/// [`Reason::IdempotencyKeyReused`] for another request under the key, and whatever `act` answers.
pub(super) async fn run_once<T: Serialize + DeserializeOwned>(
    conn: &mut Conn,
    actor: Actor,
    key: &str,
    request: &Value,
    act: impl AsyncFnOnce(&mut Conn) -> Result<T, Refusal>,
) -> Result<T, Refusal> {
    let now = store::clock::now(conn).await?;
    let digest = secret::digest(&request.to_string());
    match claim_key(conn, actor.account, key, &digest, now).await? {
        KeyState::Answered(answer) => serde_json::from_value(answer).map_err(internal_error),
        KeyState::OtherRequest => Err(Refusal::rule(
            Reason::IdempotencyKeyReused,
            "This Idempotency-Key was used for another request; choose a new one.",
        )),
        KeyState::New => {
            let done = act(conn).await?;
            let answer = serde_json::to_value(&done).map_err(internal_error)?;
            save_answer(conn, actor.account, key, &answer).await?;
            Ok(done)
        }
    }
}

fn internal_error(cause: serde_json::Error) -> Refusal {
    Refusal::Internal(cause.to_string())
}
