//! What the process as a whole counts, beside what the web counts.

use prometheus::core::{Collector, Desc};
use prometheus::process_collector::ProcessCollector;
use prometheus::proto::MetricFamily;
use prometheus::{IntGaugeVec, Opts};
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
