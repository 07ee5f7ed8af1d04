//! What watches the process: is it alive, and can it answer?

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use actix_web::get;
use actix_web::web::Data;
use app::{Desk, Refusal, Replica};
use tokio::time::timeout;

use crate::problem::{Problem, WireFault};

/// How long the database may take to say what time it is.
const PATIENCE: Duration = Duration::from_secs(2);

/// Whether the process has been asked to stop. What is asked of it meanwhile is still answered.
#[derive(Clone, Debug, Default)]
pub struct Leaving(Arc<AtomicBool>);

impl Leaving {
    /// From now on the process is not ready.
    pub fn announce(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    fn is_announced(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

/// Alive: the process answers at all. Restart it when this fails.
#[get("/health/live")]
pub async fn is_live() -> &'static str {
    "live\n"
}

/// Ready: the database answers too and is current, and the process is not about to stop. Send requests
/// elsewhere while this fails. Over a replica it says how far that is behind.
#[get("/health/ready")]
pub async fn is_ready(desk: Data<Desk>, leaving: Data<Leaving>) -> Result<String, Problem> {
    if leaving.is_announced() {
        return Err(Problem::wire(WireFault::Unavailable));
    }
    let look = async { Ok::<_, Refusal>((desk.find_replica().await?, desk.is_current().await?)) };
    match timeout(PATIENCE, look).await {
        Ok(Ok((replica, true))) => Ok(format!("ready{}\n", replica.map(words).unwrap_or_default())),
        _ => Err(Problem::wire(WireFault::Unavailable)),
    }
}

fn words(replica: Replica) -> String {
    let way = match replica.connected {
        true => "following the primary",
        false => "cut off from the primary",
    };
    match replica.behind {
        Some(behind) => format!(", {way}, {:.1} s behind", behind.as_secs_f64()),
        None => format!(", {way}"),
    }
}
