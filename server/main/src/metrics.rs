//! What the process as a whole counts, beside what the web counts.

use std::sync::Arc;

use app::Desk;
use app::rounds::Step;
use prometheus::core::{Collector, Desc};
use prometheus::process_collector::ProcessCollector;
use prometheus::proto::MetricFamily;
use prometheus::{HistogramOpts, HistogramVec, IntGaugeVec, Opts};
use standings::Shelf;
use store::Store;
use web::Metrics;

/// Memory, files and processor time of this process, and its connections to the database.
///
/// # Errors
/// A name that is used twice.
pub fn of_process(store: Store) -> Result<Metrics, prometheus::Error> {
    let metrics = Metrics::new()?;
    metrics.add(ProcessCollector::for_self())?;
    metrics.add(ConnectionCollector::new(store)?)?;
    Ok(metrics)
}

/// Upper bounds in seconds: from the check of a small round to the limit of a request.
const PAIRING_SECONDS: [f64; 9] = [0.0002, 0.001, 0.005, 0.02, 0.1, 0.25, 0.5, 1.0, 4.0];

/// Adds how long pairings take: solving, and checking the proof.
///
/// # Errors
/// A name that is used twice.
pub fn add_pairing(metrics: &Metrics, desk: &Desk) -> Result<(), prometheus::Error> {
    let help = "Time to find the best round (solve), and to check its proof (check)";
    let buckets = HistogramOpts::new("pairing_seconds", help).buckets(PAIRING_SECONDS.to_vec());
    let seconds = HistogramVec::new(buckets, &["step"])?;
    let [solve, check] = ["solve", "check"].map(|step| seconds.with_label_values(&[step]));
    desk.on_pairing(Box::new(move |step| {
        Box::new(match step {
            Step::Solve => solve.start_timer(),
            Step::Check => check.start_timer(),
        })
    }));
    metrics.add(seconds)
}

/// Adds what the read service counts.
///
/// # Errors
/// A name that is used twice.
pub fn add_shelf(metrics: &Metrics, shelf: &Arc<Shelf>) -> Result<(), prometheus::Error> {
    let help = "Pages of the read service that were there (hit) or made (miss), and bodies encoded";
    let made = Opts::new("standings_pages", help);
    let help = "Seasons that the read service keeps, and clients that follow one";
    let kept = Opts::new("standings_kept", help);
    metrics.add(ShelfCollector {
        shelf: Arc::clone(shelf),
        pages: IntGaugeVec::new(made, &["event"])?,
        kept: IntGaugeVec::new(kept, &["of"])?,
    })
}

/// Looks at the pool whenever the numbers are asked for.
struct ConnectionCollector {
    store: Store,
    connections: IntGaugeVec,
}

impl ConnectionCollector {
    fn new(store: Store) -> Result<Self, prometheus::Error> {
        let help = "Connections to the database, and requests that wait for one";
        let connections = IntGaugeVec::new(Opts::new("database_connections", help), &["state"])?;
        Ok(Self { store, connections })
    }
}

impl Collector for ConnectionCollector {
    fn desc(&self) -> Vec<&Desc> {
        self.connections.desc()
    }

    fn collect(&self) -> Vec<MetricFamily> {
        let now = self.store.connections();
        for (state, number) in [
            ("busy", now.busy),
            ("idle", now.idle),
            ("waiting", now.waiting),
        ] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.connections.with_label_values(&[state]).set(number);
        }
        self.connections.collect()
    }
}

/// Looks at the shelf whenever the numbers are asked for.
struct ShelfCollector {
    shelf: Arc<Shelf>,
    pages: IntGaugeVec,
    kept: IntGaugeVec,
}

impl Collector for ShelfCollector {
    fn desc(&self) -> Vec<&Desc> {
        [self.pages.desc(), self.kept.desc()].concat()
    }

    fn collect(&self) -> Vec<MetricFamily> {
        let counts = self.shelf.counts();
        for (event, number) in [
            ("hit", counts.hits.get()),
            ("miss", counts.misses.get()),
            ("encode", counts.encodes.get()),
        ] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.pages.with_label_values(&[event]).set(number);
        }
        let (seasons, subscribers) = self.shelf.size();
        for (of, number) in [("seasons", seasons), ("subscribers", subscribers)] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.kept.with_label_values(&[of]).set(number);
        }
        [self.pages.collect(), self.kept.collect()].concat()
    }
}
