//! `tallyhost serve`: serves until it is asked to stop.

use std::io::{self, Write};

use tokio::runtime::{Builder, Runtime};

use crate::cli::CommandResult;
use crate::database::OpenDatabase;
use crate::server::BoundServer;
use crate::settings::Settings;
use crate::shutdown::ShutdownSignals;

/// Serves until it is asked to stop.
///
/// # Errors
/// A sentence about what kept the server from starting.
pub fn serve(settings: Settings) -> CommandResult {
    let database = OpenDatabase::open(&settings)?;
    let key = settings.signing_key.load()?;
    if settings.role.has_desk() {
        Runtime::new()?.block_on(store::migrate(database.url()))?;
    }
    // One thread for all that goes on in the background, connections included: two would wake each
    // other for every answer of the database. The database is stopped last, after the runtime.
    let background = Builder::new_current_thread().enable_all().build()?;
    background.block_on(async {
        let mut bound = BoundServer::bind(
            database.url(),
            &key,
            settings.listen,
            &settings,
            settings.change_limit(),
        )?;
        let signals = ShutdownSignals::listen()?;
        bound.bind_metrics(settings.metrics_listen)?;
        announce(&bound)?;
        bound.run(signals, settings.drain).await
    })
}

/// The lines on standard output that tell a person or a program where the server is.
pub(super) fn announce(bound: &BoundServer) -> io::Result<()> {
    let mut output = io::stdout().lock();
    for address in &bound.addresses {
        writeln!(output, "listening on http://{address}")?;
    }
    for address in &bound.metrics_addresses {
        writeln!(output, "metrics on http://{address}/metrics")?;
    }
    Ok(())
}
