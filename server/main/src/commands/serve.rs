use std::io::{self, Write};
use std::net::SocketAddr;
use std::time::Duration;

use actix_web::HttpServer;
use app::Desk;
use store::Store;
use tokio::runtime::Runtime;
use tokio::task::LocalSet;
use web::Leaving;

use crate::calendar;
use crate::cli::Outcome;
use crate::database::Opened;
use crate::metrics;
use crate::settings::Settings;
use crate::stop::{Signals, run_until_stopped};

/// How long a client may take to send the head of a request.
const PATIENCE_WITH_CLIENTS: Duration = Duration::from_secs(10);

/// Serves until it is asked to stop.
///
/// # Errors
/// A sentence about what kept the server from starting.
pub fn serve(settings: Settings) -> Outcome {
    let database = Opened::open(settings.database)?;
    let key = settings.signing_key.load()?;
    // The database is stopped last, after the runtime and every connection.
    Runtime::new()?.block_on(async {
        store::migrate(database.url()).await?;
        let store = Store::connect(database.url(), settings.pool.get())?;
        let metrics = metrics::of_process(store.clone())?;
        let desk = Desk::new(store, key.bytes())?;
        let leaving = Leaving::default();
        let told = leaving.clone();
        let calendar = LocalSet::new();
        calendar.spawn_local(calendar::keep(desk.clone()));
        let server =
            HttpServer::new(move || web::server_parts(desk.clone(), metrics.clone(), told.clone()))
                .workers(settings.workers.get())
                .client_request_timeout(PATIENCE_WITH_CLIENTS)
                .shutdown_timeout(settings.grace.as_secs())
                .disable_signals()
                .bind(settings.listen)
                .map_err(|cause| format!("cannot listen on {}: {cause}", settings.listen))?;
        let signals = Signals::listen()?;
        for address in server.addrs() {
            announce(address)?;
        }
        let serving = run_until_stopped(server.run(), signals, &leaving, settings.drain);
        calendar.run_until(serving).await
    })
}

/// The line on standard output that tells a person or a program where the server is.
fn announce(address: SocketAddr) -> io::Result<()> {
    writeln!(io::stdout(), "listening on http://{address}")
}
