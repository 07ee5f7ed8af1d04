//! `tallyhost serve`: serves until it is asked to stop.

use std::io::{self, Write};
use std::net::SocketAddr;

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
    let database = OpenDatabase::open(&settings.database)?;
    let key = settings.signing_key.load()?;
    if settings.role.has_desk() {
        Runtime::new()?.block_on(store::migrate(database.url()))?;
    }
    // One thread for all that goes on in the background, connections included: two would wake each
    // other for every answer of the database. The database is stopped last, after the runtime.
    let background = Builder::new_current_thread().enable_all().build()?;
    background.block_on(async {
        let bound = BoundServer::bind(
            database.url(),
            &key,
            settings.listen,
            &settings,
            settings.change_limit(),
        )?;
        let signals = ShutdownSignals::listen()?;
        for address in &bound.addresses {
            announce(*address)?;
        }
        bound.run(signals, settings.drain).await
    })
}

/// The line on standard output that tells a person or a program where the server is.
pub(super) fn announce(address: SocketAddr) -> io::Result<()> {
    writeln!(io::stdout(), "listening on http://{address}")
}
