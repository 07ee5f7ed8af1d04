//! Scheduled tasks: when their instant has come, lists are opened, silence confirms results, and reveals make a
//! new version.

use std::time::{Duration, SystemTime, UNIX_EPOCH};

use app::{App, Refusal};
use prometheus::{Gauge, IntCounterVec, Opts};
use tokio::time::{MissedTickBehavior, interval};
use web::Metrics;

/// How often the server asks what is due. Nothing depends on it being exact: lists that are not opened yet stay
/// sealed, and readers take silence into account by themselves.
const POLL_INTERVAL: Duration = Duration::from_millis(500);

/// Counts what was done, and when the tasks were last up to date.
#[derive(Clone)]
pub struct DueTaskMetrics {
    acts: IntCounterVec,
    done: Gauge,
}

impl DueTaskMetrics {
    /// Registers them, all at nought.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn register(metrics: &Metrics) -> Result<Self, prometheus::Error> {
        let help = "What this process did because its moment had come";
        let acts = IntCounterVec::new(Opts::new("calendar_acts_total", help), &["act"])?;
        let help =
            "When this process last found nothing due or did it, in seconds of the Unix epoch";
        let done = Gauge::with_opts(Opts::new("calendar_done_timestamp_seconds", help))?;
        metrics.register(acts.clone())?;
        metrics.register(done.clone())?;
        Ok(Self { acts, done })
    }

    fn record(&self, acts: [(&str, usize); 3]) {
        for (act, times) in acts {
            let times = u64::try_from(times).unwrap_or(u64::MAX);
            self.acts.with_label_values(&[act]).inc_by(times);
        }
        let now = SystemTime::now().duration_since(UNIX_EPOCH);
        self.done.set(now.unwrap_or_default().as_secs_f64());
    }
}

/// Runs what is due for as long as the server runs.
pub async fn run(app: App, metrics: DueTaskMetrics) {
    let mut ticks = interval(POLL_INTERVAL);
    ticks.set_missed_tick_behavior(MissedTickBehavior::Delay);
    loop {
        ticks.tick().await;
        if let Err(refusal) = run_due(&app, &metrics).await {
            tracing::warn!(?refusal, "what was due could not be done; trying again");
        }
    }
}

async fn run_due(app: &App, metrics: &DueTaskMetrics) -> Result<(), Refusal> {
    let opened = app::lists::open_due_lists(app).await?;
    let confirmed = app::results::settle_silent_results(app).await?;
    let told = app::seasons::publish_due_reveals(app).await?;
    if opened + confirmed + told > 0 {
        tracing::info!(opened, confirmed, told, "moments that had come");
    }
    metrics.record([
        ("open_lists", opened),
        ("confirm_result", confirmed),
        ("reveal", told),
    ]);
    Ok(())
}
