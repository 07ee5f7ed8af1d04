//! What the clock does by itself: lists are opened when their deadline is over, silence confirms, and
//! what is revealed makes a version.

use std::time::{Duration, SystemTime, UNIX_EPOCH};

use app::{Desk, Refusal};
use prometheus::{Gauge, IntCounterVec, Opts};
use tokio::time::{MissedTickBehavior, interval};
use web::Metrics;

/// How often the server looks whether a moment has come. Nothing depends on it being exact: lists
/// that are not opened yet stay sealed, and readers count silence in by themselves.
const EVERY: Duration = Duration::from_millis(500);

/// What the clock has done, and when it was last up to date.
#[derive(Clone)]
pub struct Counts {
    acts: IntCounterVec,
    done: Gauge,
}

impl Counts {
    /// Adds them to the numbers of the process.
    ///
    /// # Errors
    /// A name that is used twice.
    pub fn add_to(metrics: &Metrics) -> Result<Self, prometheus::Error> {
        let help = "What this process did because its moment had come";
        let acts = IntCounterVec::new(Opts::new("calendar_acts_total", help), &["act"])?;
        let help =
            "When this process last found nothing due or did it, in seconds of the Unix epoch";
        let done = Gauge::with_opts(Opts::new("calendar_done_timestamp_seconds", help))?;
        metrics.add(acts.clone())?;
        metrics.add(done.clone())?;
        Ok(Self { acts, done })
    }

    fn note(&self, acts: [(&str, usize); 3]) {
        for (act, times) in acts {
            let times = u64::try_from(times).unwrap_or(u64::MAX);
            self.acts.with_label_values(&[act]).inc_by(times);
        }
        let now = SystemTime::now().duration_since(UNIX_EPOCH);
        self.done.set(now.unwrap_or_default().as_secs_f64());
    }
}

/// Looks for as long as the server runs.
pub async fn keep(desk: Desk, counts: Counts) {
    let mut beat = interval(EVERY);
    beat.set_missed_tick_behavior(MissedTickBehavior::Delay);
    loop {
        beat.tick().await;
        if let Err(refusal) = act(&desk, &counts).await {
            tracing::warn!(?refusal, "what was due could not be done; trying again");
        }
    }
}

async fn act(desk: &Desk, counts: &Counts) -> Result<(), Refusal> {
    let opened = app::lists::open_due_lists(desk).await?;
    let confirmed = app::results::settle_silent_results(desk).await?;
    let told = app::seasons::tell_moments(desk).await?;
    if opened + confirmed + told > 0 {
        tracing::info!(opened, confirmed, told, "moments that had come");
    }
    counts.note([
        ("open_lists", opened),
        ("confirm_result", confirmed),
        ("reveal", told),
    ]);
    Ok(())
}
