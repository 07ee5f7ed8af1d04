//! Metrics of replication: whether a replica is connected, how far it lags, how full its notice queue is.

use std::time::Duration;

use app::App;
use prometheus::{Gauge, IntGauge, Opts};
use tokio::time::{MissedTickBehavior, interval};
use web::Metrics;

/// How often the database is asked.
const POLL_INTERVAL: Duration = Duration::from_secs(1);

/// The gauges of the replica that a process reads.
#[derive(Clone)]
pub struct ReplicationMetrics {
    connected: IntGauge,
    lag: Gauge,
    notices: Gauge,
}

impl ReplicationMetrics {
    /// Registers them, all at nought.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn register(metrics: &Metrics) -> Result<Self, prometheus::Error> {
        let help = "Whether the database hears from its primary, or is one";
        let connected = IntGauge::with_opts(Opts::new("replica_connected", help))?;
        let help = "How many seconds old what the database shows may be; 0 for a primary";
        let lag = Gauge::with_opts(Opts::new("replica_lag_seconds", help))?;
        let help = "How full the queue is of notices that somebody has not heard yet, from 0 to 1";
        let notices = Gauge::with_opts(Opts::new("notice_queue_share", help))?;
        metrics.register(connected.clone())?;
        metrics.register(lag.clone())?;
        metrics.register(notices.clone())?;
        Ok(Self {
            connected,
            lag,
            notices,
        })
    }

    /// Keeps them current for as long as the server runs. A database that does not answer counts as
    /// cut off, with the last known lag.
    pub async fn run(self, app: App) {
        let mut ticks = interval(POLL_INTERVAL);
        ticks.set_missed_tick_behavior(MissedTickBehavior::Delay);
        loop {
            ticks.tick().await;
            let Ok(replica) = app.find_replica_status().await else {
                self.connected.set(0);
                continue;
            };
            let connected = replica.is_none_or(|replica| replica.connected);
            self.connected.set(connected.into());
            let behind = replica.and_then(|replica| replica.lag);
            self.lag.set(behind.unwrap_or_default().as_secs_f64());
            if let Ok(share) = app.find_notice_backlog().await {
                self.notices.set(share);
            }
        }
    }
}
