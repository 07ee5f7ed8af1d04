//! A request sent twice acts once: the second is answered what the first was.

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use store::Conn;
use store::idempotency::{Claim, claim, keep_answer};

use crate::{Actor, Reason, Refusal, secret};

/// Acts, or answers what was answered to the same `request` under this key of the actor's. Ask before
/// whether the actor may know of what the request is about: an answer is given without a look.
///
/// # Errors
/// [`Reason::IdempotencyKeyReused`] for another request under the key, and whatever `act` answers.
pub(super) async fn once<T: Serialize + DeserializeOwned>(
    conn: &mut Conn,
    actor: Actor,
    key: &str,
    request: &Value,
    act: impl AsyncFnOnce(&mut Conn) -> Result<T, Refusal>,
) -> Result<T, Refusal> {
    let now = store::clock::now(conn).await?;
    let digest = secret::digest(&request.to_string());
    match claim(conn, actor.account, key, &digest, now).await? {
        Claim::Answered(answer) => serde_json::from_value(answer).map_err(broken),
        Claim::OtherRequest => Err(Refusal::rule(
            Reason::IdempotencyKeyReused,
            "This Idempotency-Key was used for another request; choose a new one.",
        )),
        Claim::Fresh => {
            let done = act(conn).await?;
            let answer = serde_json::to_value(&done).map_err(broken)?;
            keep_answer(conn, actor.account, key, &answer).await?;
            Ok(done)
        }
    }
}

fn broken(cause: serde_json::Error) -> Refusal {
    Refusal::Broken(cause.to_string())
}
