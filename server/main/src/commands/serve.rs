use std::io::{self, Write};
use std::net::SocketAddr;

use tokio::runtime::{Builder, Runtime};

use crate::cli::Outcome;
use crate::database::Opened;
use crate::server::Bound;
use crate::settings::Settings;
use crate::stop::Signals;

/// Serves until it is asked to stop.
///
/// # Errors
/// A sentence about what kept the server from starting.
pub fn serve(settings: Settings) -> Outcome {
    let database = Opened::open(&settings.database)?;
    let key = settings.signing_key.load()?;
    if settings.role.has_desk() {
        Runtime::new()?.block_on(store::migrate(database.url()))?;
    }
    // One thread for all that goes on in the background, connections included: two would wake each
    // other for every answer of the database. The database is stopped last, after the runtime.
    let background = Builder::new_current_thread().enable_all().build()?;
    background.block_on(async {
        let bound = Bound::bind(
            database.url(),
            &key,
            settings.listen,
            &settings,
            settings.limits(),
        )?;
        let signals = Signals::listen()?;
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
