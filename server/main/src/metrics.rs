//! Metrics of the process as a whole, beside those of HTTP requests.

use std::sync::Arc;

use app::App;
use app::rounds::PairingStep;
use prometheus::core::{Collector, Desc};
use prometheus::process_collector::ProcessCollector;
use prometheus::proto::MetricFamily;
use prometheus::{HistogramOpts, HistogramVec, IntGaugeVec, Opts};
use read_service::PageCache;
use store::Store;
use web::Metrics;

/// A registry with memory, files and processor time of this process, and its connections to the database.
///
/// # Errors
/// A name that is used twice.
pub fn process_metrics(store: Store) -> Result<Metrics, prometheus::Error> {
    let metrics = Metrics::new()?;
    metrics.register(ProcessCollector::for_self())?;
    metrics.register(ConnectionCollector::new(store)?)?;
    Ok(metrics)
}

/// Upper bounds in seconds: from the check of a small round to the limit of a request.
const PAIRING_SECONDS: [f64; 9] = [0.0002, 0.001, 0.005, 0.02, 0.1, 0.25, 0.5, 1.0, 4.0];

/// Registers how long pairings take: solving, and checking the proof.
///
/// # Errors
/// A name that is used twice.
pub fn register_pairing(metrics: &Metrics, app: &App) -> Result<(), prometheus::Error> {
    let help = "Time to find the best round (solve), and to check its proof (check)";
    let buckets = HistogramOpts::new("pairing_seconds", help).buckets(PAIRING_SECONDS.to_vec());
    let seconds = HistogramVec::new(buckets, &["step"])?;
    let [solve, check] = ["solve", "check"].map(|step| seconds.with_label_values(&[step]));
    app.set_pairing_stopwatch(Box::new(move |step| {
        Box::new(match step {
            PairingStep::Solve => solve.start_timer(),
            PairingStep::Check => check.start_timer(),
        })
    }));
    metrics.register(seconds)
}

/// Registers the counters of the page cache.
///
/// # Errors
/// A name that is used twice.
pub fn register_page_cache(
    metrics: &Metrics,
    page_cache: &Arc<PageCache>,
) -> Result<(), prometheus::Error> {
    let help = "Pages of the read service that were there (hit) or made (miss), and bodies encoded";
    let made = Opts::new("standings_pages", help);
    let help = "Seasons that the read service keeps, and clients that follow one";
    let kept = Opts::new("standings_kept", help);
    metrics.register(PageCacheCollector {
        page_cache: Arc::clone(page_cache),
        pages: IntGaugeVec::new(made, &["event"])?,
        kept: IntGaugeVec::new(kept, &["of"])?,
    })
}

/// Reads the pool whenever metrics are collected.
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
        let now = self.store.pool_status();
        for (state, number) in [
            ("busy", now.in_use),
            ("idle", now.idle),
            ("waiting", now.waiting),
        ] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.connections.with_label_values(&[state]).set(number);
        }
        self.connections.collect()
    }
}

/// Reads the page cache whenever metrics are collected.
struct PageCacheCollector {
    page_cache: Arc<PageCache>,
    pages: IntGaugeVec,
    kept: IntGaugeVec,
}

impl Collector for PageCacheCollector {
    fn desc(&self) -> Vec<&Desc> {
        [self.pages.desc(), self.kept.desc()].concat()
    }

    fn collect(&self) -> Vec<MetricFamily> {
        let counters = self.page_cache.counters();
        for (event, number) in [
            ("hit", counters.hits.get()),
            ("miss", counters.misses.get()),
            ("encode", counters.encodes.get()),
        ] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.pages.with_label_values(&[event]).set(number);
        }
        let (seasons, subscribers) = self.page_cache.size();
        for (of, number) in [("seasons", seasons), ("subscribers", subscribers)] {
            let number = i64::try_from(number).unwrap_or(i64::MAX);
            self.kept.with_label_values(&[of]).set(number);
        }
        [self.pages.collect(), self.kept.collect()].concat()
    }
}
