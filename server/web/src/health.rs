//! What watches the process: is it alive, and can it answer?

use std::time::Duration;

use actix_web::get;
use actix_web::web::Data;
use app::Desk;
use tokio::time::timeout;

use crate::problem::{Problem, WireFault};

/// How long the database may take to say what time it is.
const PATIENCE: Duration = Duration::from_secs(2);

/// Alive: the process answers at all. Restart it when this fails.
#[get("/health/live")]
pub async fn is_live() -> &'static str {
    "live\n"
}

/// Ready: the database answers too. Send requests elsewhere while this fails.
#[get("/health/ready")]
pub async fn is_ready(desk: Data<Desk>) -> Result<&'static str, Problem> {
    match timeout(PATIENCE, desk.now()).await {
        Ok(Ok(_)) => Ok("ready\n"),
        _ => Err(Problem::wire(WireFault::Unavailable)),
    }
}
