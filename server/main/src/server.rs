//! The server over a database, put together and bound to an address.

use std::net::SocketAddr;
use std::time::Duration;

use actix_web::HttpServer;
use actix_web::dev::Server;
use app::Desk;
use store::Store;
use tokio::task::LocalSet;
use web::Leaving;

use crate::cli::Outcome;
use crate::settings::{Settings, SigningKey};
use crate::stop::{Signals, run_until_stopped};
use crate::{calendar, metrics};

/// How long a client may take to send the head of a request.
const PATIENCE_WITH_CLIENTS: Duration = Duration::from_secs(10);

/// A server that is bound; it answers once it is run.
pub struct Bound {
    /// Where it is reached.
    pub addresses: Vec<SocketAddr>,
    /// The server itself.
    pub server: Server,
    desk: Desk,
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
    ) -> Result<Self, Box<dyn std::error::Error + Send + Sync>> {
        let store = Store::connect(url, settings.pool.get())?;
        let metrics = metrics::of_process(store.clone())?;
        let desk = Desk::new(store, key.bytes())?;
        let leaving = Leaving::default();
        let (served, told) = (desk.clone(), leaving.clone());
        let server = HttpServer::new(move || {
            web::server_parts(served.clone(), metrics.clone(), told.clone())
        })
        .workers(settings.workers.get())
        .client_request_timeout(PATIENCE_WITH_CLIENTS)
        .shutdown_timeout(settings.grace.as_secs())
        .disable_signals()
        .bind(listen)
        .map_err(|cause| format!("cannot listen on {listen}: {cause}"))?;
        Ok(Self {
            addresses: server.addrs(),
            server: server.run(),
            desk,
            leaving,
        })
    }

    /// Serves until a signal, and does what the clock asks for meanwhile.
    ///
    /// # Errors
    /// The server cannot go on.
    pub async fn run(self, signals: Signals, drain: Duration) -> Outcome {
        let calendar = LocalSet::new();
        calendar.spawn_local(calendar::keep(self.desk));
        let serving = run_until_stopped(self.server, signals, &self.leaving, drain);
        calendar.run_until(serving).await
    }
}
