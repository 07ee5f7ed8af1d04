//! The server over a database, put together and bound to an address.

use std::net::SocketAddr;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use actix_web::HttpServer;
use actix_web::dev::Server;
use actix_web::web::ServiceConfig;
use app::Desk;
use standings::{Front, Shelf};
use store::Store;
use tokio::task::LocalSet;
use web::{Document, Leaving, Limits, PublicAddress};

use crate::cli::Outcome;
use crate::settings::{Role, Settings, SigningKey};
use crate::stop::{Signals, run_until_stopped};
use crate::{calendar, connections, metrics, replication, turns};

/// How long a client may take to send the head of a request.
const PATIENCE_WITH_CLIENTS: Duration = Duration::from_secs(10);

/// Bytes of an answer that are handed to the system at once; a table of a hundred rows has fewer.
const LARGE_ANSWER: usize = 128 * 1024;

/// A server that is bound; it answers once it is run.
pub struct Bound {
    /// Where it is reached.
    pub addresses: Vec<SocketAddr>,
    /// The server itself.
    pub server: Server,
    desk: Desk,
    shelf: Option<Arc<Shelf>>,
    replica: replication::Gauges,
    calendar: Option<calendar::Counts>,
    leaving: Leaving,
}

impl Bound {
    /// Binds a server over the database at `url`, which has the newest schema, to `listen`.
    ///
    /// # Errors
    /// A sentence about what kept it from being bound.
    pub fn bind(
        url: &str,
        key: &SigningKey,
        listen: SocketAddr,
        settings: &Settings,
        limits: Limits,
    ) -> Result<Self, Box<dyn std::error::Error + Send + Sync>> {
        connections::allow_many();
        let workers = settings.workers.get();
        // One for the background, on this thread, and one for each worker.
        let mut stores = Store::connect(url, settings.pool.get(), 1 + workers)?;
        let store = stores.swap_remove(0);
        let metrics = metrics::of_process(store.clone())?;
        let start = Instant::now();
        let uptime = Box::new(move || start.elapsed());
        let desk = Desk::new(store, key.bytes(), settings.stale_after, uptime)?;
        metrics::add_pairing(&metrics, &desk)?;
        let leaving = Leaving::default();
        let role = settings.role;
        let shelf = role.has_standings().then(|| Shelf::new(desk.clone()));
        if let Some(shelf) = &shelf {
            metrics::add_shelf(&metrics, shelf)?;
        }
        let replica = replication::Gauges::add_to(&metrics)?;
        let calendar = role.has_desk().then(|| calendar::Counts::add_to(&metrics));
        let calendar = calendar.transpose()?;
        let document = Document::new(&web::openapi(standings::openapi()))?;
        let routes = routes(role, shelf.clone(), document);
        let public = PublicAddress(settings.public_url.clone());
        let desks: Vec<Desk> = stores.into_iter().map(|near| desk.over(near)).collect();
        let (begun, told) = (Arc::new(AtomicUsize::new(0)), leaving.clone());
        let counted = metrics.clone();
        let at_front: standings::Tell = Arc::new(move |route, status| {
            let counting = counted.counting("GET", route, status);
            let route = route.to_owned();
            Box::new(move |asked| {
                let now = Instant::now();
                counting.note(now.saturating_duration_since(asked));
                turns::give_back_if_long(now);
                tracing::debug!(route, status = status.as_u16(), "answered at the front");
            })
        });
        let server = HttpServer::new(move || {
            turns::take_fewer();
            let worker = begun.fetch_add(1, Ordering::Relaxed) % desks.len();
            let app = web::server_parts(
                desks[worker].clone(),
                metrics.clone(),
                told.clone(),
                limits.clone(),
                public.clone(),
                routes.clone(),
            );
            Front::new(app, Arc::clone(&at_front))
        })
        .workers(workers)
        .client_request_timeout(PATIENCE_WITH_CLIENTS)
        .h1_write_buffer_size(LARGE_ANSWER)
        .tcp_nodelay(true)
        .on_connect(|connection, _| connections::drop_when_unread(connection))
        .shutdown_timeout(settings.grace.as_secs())
        .disable_signals()
        .bind(listen)
        .map_err(|cause| format!("cannot listen on {listen}: {cause}"))?;
        Ok(Self {
            addresses: server.addrs(),
            server: server.run(),
            desk,
            shelf,
            replica,
            calendar,
            leaving,
        })
    }

    /// Serves until a signal. Meanwhile does what the clock asks for, and keeps the standings current.
    ///
    /// # Errors
    /// The server cannot go on.
    pub async fn run(self, signals: Signals, drain: Duration) -> Outcome {
        let background = LocalSet::new();
        background.spawn_local(self.replica.keep(self.desk.clone()));
        if let Some(counts) = self.calendar {
            background.spawn_local(calendar::keep(self.desk, counts));
        }
        if let Some(shelf) = &self.shelf {
            background.spawn_local(standings::keep_current(Arc::clone(shelf)));
        }
        let end_streams = || {
            if let Some(shelf) = &self.shelf {
                shelf.close();
            }
        };
        let serving = run_until_stopped(self.server, signals, &self.leaving, drain, end_streams);
        background.run_until(serving).await
    }
}

/// The routes of a role. Addresses are tried in this order, and most who come look at the standings.
fn routes(
    role: Role,
    shelf: Option<Arc<Shelf>>,
    document: Document,
) -> impl FnOnce(&mut ServiceConfig) + Clone {
    move |config| {
        if let Some(shelf) = shelf {
            standings::configure(config, shelf);
        }
        if role.has_desk() {
            web::desk(config, document);
        }
    }
}
