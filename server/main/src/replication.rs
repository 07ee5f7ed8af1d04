//! How far the database is behind its primary, and its notices behind it, for those who run the
//! server.

use std::time::Duration;

use app::Desk;
use prometheus::{Gauge, IntGauge, Opts};
use tokio::time::{MissedTickBehavior, interval};
use web::Metrics;

/// How often the database is asked.
const EVERY: Duration = Duration::from_secs(1);

/// What is known of the replica that a process reads.
#[derive(Clone)]
pub struct Gauges {
    connected: IntGauge,
    lag: Gauge,
    notices: Gauge,
}

impl Gauges {
    /// Adds them to the numbers of the process.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn add_to(metrics: &Metrics) -> Result<Self, prometheus::Error> {
        let help = "Whether the database hears from its primary, or is one";
        let connected = IntGauge::with_opts(Opts::new("replica_connected", help))?;
        let help = "How many seconds old what the database shows may be; 0 for a primary";
        let lag = Gauge::with_opts(Opts::new("replica_lag_seconds", help))?;
        let help = "How full the queue is of notices that somebody has not heard yet, from 0 to 1";
        let notices = Gauge::with_opts(Opts::new("notice_queue_share", help))?;
        metrics.add(connected.clone())?;
        metrics.add(lag.clone())?;
        metrics.add(notices.clone())?;
        Ok(Self {
            connected,
            lag,
            notices,
        })
    }

    /// Keeps them current for as long as the server runs. A database that does not answer counts as
    /// cut off, with the last known lag.
    pub async fn keep(self, desk: Desk) {
        let mut beat = interval(EVERY);
        beat.set_missed_tick_behavior(MissedTickBehavior::Delay);
        loop {
            beat.tick().await;
            let Ok(replica) = desk.find_replica().await else {
                self.connected.set(0);
                continue;
            };
            let connected = replica.is_none_or(|replica| replica.connected);
            self.connected.set(connected.into());
            let behind = replica.and_then(|replica| replica.behind);
            self.lag.set(behind.unwrap_or_default().as_secs_f64());
            if let Ok(share) = desk.find_notice_backlog().await {
                self.notices.set(share);
            }
        }
    }
}
