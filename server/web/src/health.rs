//! Health checks: is the process alive, and is it ready?

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use actix_web::get;
use actix_web::web::Data;
use app::{App, Refusal, ReplicaStatus};
use tokio::time::timeout;

use crate::problem::{HttpFault, Problem};

/// How long the database may take to answer.
const READY_TIMEOUT: Duration = Duration::from_secs(2);

/// Whether the process is draining: asked to stop, not ready for new clients, still answering.
#[derive(Clone, Debug, Default)]
pub struct Draining(Arc<AtomicBool>);

impl Draining {
    /// From now on the process is not ready.
    pub fn begin(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    fn is_draining(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

/// Alive: the process answers at all. Restart it when this fails.
#[get("/health/live")]
pub async fn is_live() -> &'static str {
    "live\n"
}

/// Ready: the database answers too, is current and has room for what is written, and the process is not
/// about to stop. Send requests elsewhere while this fails. Over a replica it says how far that is behind.
#[get("/health/ready")]
pub async fn is_ready(app: Data<App>, draining: Data<Draining>) -> Result<String, Problem> {
    if draining.is_draining() {
        return Err(Problem::http(HttpFault::Unavailable));
    }
    let check = async {
        let replica = app.find_replica_status().await?;
        Ok::<_, Refusal>((replica, app.is_current().await? && app.has_room().await?))
    };
    match timeout(READY_TIMEOUT, check).await {
        Ok(Ok((replica, true))) => Ok(format!(
            "ready{}\n",
            replica.map(describe_replica).unwrap_or_default()
        )),
        _ => Err(Problem::http(HttpFault::Unavailable)),
    }
}

fn describe_replica(replica: ReplicaStatus) -> String {
    let state = match replica.connected {
        true => "following the primary",
        false => "cut off from the primary",
    };
    match replica.lag {
        Some(behind) => format!(", {state}, {:.1} s behind", behind.as_secs_f64()),
        None => format!(", {state}"),
    }
}
