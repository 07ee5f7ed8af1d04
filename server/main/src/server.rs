//! The HTTP server over a database: assembled, bound to an address, run with its background tasks.

use std::net::SocketAddr;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use actix_web::HttpServer;
use actix_web::dev::Server;
use actix_web::web::{Data, ServiceConfig};
use app::App;
use read_service::{FastPath, PageCache};
use store::Store;
use tokio::task::LocalSet;
use web::{ChangeLimit, Draining, Metrics, OpenApiDocument, PublicUrl};

use crate::cli::{CommandError, CommandResult};
use crate::settings::{ProcessRole, Settings, SigningKey};
use crate::shutdown::{ShutdownSignals, run_until_stopped};
use crate::{due_tasks, metrics, os_limits, replication, scheduling};

/// How long a client may take to send the head of a request.
const REQUEST_HEAD_TIMEOUT: Duration = Duration::from_secs(10);

/// How long a connection without a request is kept: longer than common clients and proxies keep one, so that
/// none is closed under a request that is just being sent.
const IDLE_TIMEOUT: Duration = Duration::from_secs(120);

/// Bytes of a response that are handed to the kernel at once; a table of a hundred rows has fewer.
const WRITE_BUFFER_BYTES: usize = 128 * 1024;

/// A server that is bound to an address, and answers once it is run.
pub struct BoundServer {
    /// Where it is reached.
    pub addresses: Vec<SocketAddr>,
    /// Where its metrics are, once they are served.
    pub metrics_addresses: Vec<SocketAddr>,
    pub server: Server,
    metrics: Metrics,
    metrics_server: Option<Server>,
    app: App,
    page_cache: Option<Arc<PageCache>>,
    replica: replication::ReplicationMetrics,
    due_tasks: Option<due_tasks::DueTaskMetrics>,
    draining: Draining,
}

impl BoundServer {
    /// Binds a server over the database at `url`, which has the newest schema, to `listen`.
    ///
    /// # Errors
    /// A sentence about what kept it from being bound.
    pub fn bind(
        url: &str,
        key: &SigningKey,
        listen: SocketAddr,
        settings: &Settings,
        change_limit: ChangeLimit,
    ) -> Result<Self, CommandError> {
        os_limits::raise_open_file_limit();
        let workers = settings.workers.get();
        // One pool for the background, on this thread, and one for each worker.
        let mut stores = Store::connect(url, settings.pool.get(), 1 + workers)?;
        let store = stores.swap_remove(0);
        let metrics = metrics::process_metrics(store.clone())?;
        let start = Instant::now();
        let uptime = Box::new(move || start.elapsed());
        let app = App::new(store, key.bytes(), settings.stale_after, uptime)?;
        metrics::register_pairing(&metrics, &app)?;
        let draining = Draining::default();
        let role = settings.role;
        let page_cache = role.has_standings().then(|| PageCache::new(app.clone()));
        if let Some(page_cache) = &page_cache {
            metrics::register_page_cache(&metrics, page_cache)?;
        }
        let replica = replication::ReplicationMetrics::register(&metrics)?;
        let due_tasks = role
            .has_desk()
            .then(|| due_tasks::DueTaskMetrics::register(&metrics));
        let due_tasks = due_tasks.transpose()?;
        let document = OpenApiDocument::new(&web::openapi(read_service::openapi()))?;
        let routes = routes(role, page_cache.clone(), document);
        let public = PublicUrl(settings.public_url.clone());
        let apps: Vec<App> = stores
            .into_iter()
            .map(|store| app.with_store(store))
            .collect();
        let next_worker = Arc::new(AtomicUsize::new(0));
        let draining_state = draining.clone();
        let server_metrics = metrics.clone();
        let hit_metrics = metrics.clone();
        let hit_observer: read_service::ObserverFactory = Arc::new(move |route, status| {
            let counter = hit_metrics.request_counter("GET", route, status);
            let route = route.to_owned();
            Box::new(move |received_at| {
                let now = Instant::now();
                counter.record(now.saturating_duration_since(received_at));
                scheduling::yield_if_long(now);
                tracing::debug!(route, status = status.as_u16(), "answered by the fast path");
            })
        });
        let server = HttpServer::new(move || {
            scheduling::use_batch();
            let worker = next_worker.fetch_add(1, Ordering::Relaxed) % apps.len();
            let http_app = web::build_app(
                apps[worker].clone(),
                metrics.clone(),
                draining_state.clone(),
                change_limit.clone(),
                public.clone(),
                routes.clone(),
            );
            FastPath::new(http_app, Arc::clone(&hit_observer))
        })
        .workers(workers)
        .keep_alive(IDLE_TIMEOUT)
        .client_request_timeout(REQUEST_HEAD_TIMEOUT)
        .h1_write_buffer_size(WRITE_BUFFER_BYTES)
        .tcp_nodelay(true)
        .on_connect(|connection, _| os_limits::set_unread_timeout(connection))
        .shutdown_timeout(settings.grace.as_secs())
        .disable_signals()
        .bind(listen)
        .map_err(|cause| format!("cannot listen on {listen}: {cause}"))?;
        Ok(Self {
            addresses: server.addrs(),
            metrics_addresses: Vec::new(),
            server: server.run(),
            metrics: server_metrics,
            metrics_server: None,
            app,
            page_cache,
            replica,
            due_tasks,
            draining,
        })
    }

    /// Binds a listener for the metrics where one is wanted; it answers until the process ends.
    ///
    /// # Errors
    /// A sentence about what kept it from being bound.
    pub fn bind_metrics(&mut self, listen: Option<SocketAddr>) -> CommandResult {
        let Some(listen) = listen else {
            return Ok(());
        };
        let metrics = self.metrics.clone();
        let server = HttpServer::new(move || {
            actix_web::App::new()
                .app_data(Data::new(metrics.clone()))
                .service(web::list_metrics)
        })
        .workers(1)
        .client_request_timeout(REQUEST_HEAD_TIMEOUT)
        .disable_signals()
        .bind(listen)
        .map_err(|cause| format!("cannot listen on {listen} for metrics: {cause}"))?;
        self.metrics_addresses = server.addrs();
        self.metrics_server = Some(server.run());
        Ok(())
    }

    /// Serves until a signal. Meanwhile runs the tasks that are due and keeps the page cache current.
    ///
    /// # Errors
    /// The server cannot go on.
    pub async fn run(self, signals: ShutdownSignals, drain: Duration) -> CommandResult {
        let background = LocalSet::new();
        background.spawn_local(self.replica.run(self.app.clone()));
        if let Some(metrics) = self.metrics_server {
            background.spawn_local(metrics);
        }
        if let Some(metrics) = self.due_tasks {
            background.spawn_local(due_tasks::run(self.app, metrics));
        }
        if let Some(page_cache) = &self.page_cache {
            background.spawn_local(read_service::keep_current(Arc::clone(page_cache)));
        }
        let end_streams = || {
            if let Some(page_cache) = &self.page_cache {
                page_cache.close();
            }
        };
        let serving = run_until_stopped(self.server, signals, &self.draining, drain, end_streams);
        background.run_until(serving).await
    }
}

/// The routes of a role, tried in this order: most requests are for the read service.
fn routes(
    role: ProcessRole,
    page_cache: Option<Arc<PageCache>>,
    document: OpenApiDocument,
) -> impl FnOnce(&mut ServiceConfig) + Clone {
    move |config| {
        if let Some(page_cache) = page_cache {
            read_service::configure(config, page_cache);
        }
        if role.has_desk() {
            web::configure(config, document);
        }
    }
}
