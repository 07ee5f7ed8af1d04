//! `tallyhost demo`: loads the demo into an empty database and serves it.

use std::io::{self, Write};
use std::net::{Ipv4Addr, SocketAddr};
use std::num::NonZeroU32;

use tokio::runtime::Runtime;
use web::ChangeLimit;

use super::serve::announce;
use crate::cli::CommandResult;
use crate::database::OpenDatabase;
use crate::demo::{self, DatabaseContents, HeldClock};
use crate::server::BoundServer;
use crate::settings::{Settings, SigningKey};
use crate::shutdown::ShutdownSignals;

const NOT_THE_DEMO: &str = "this database holds something else than the demo: name an empty one, or use \
    `tallyhost serve`";
const INTERRUPTED: &str = "stopped while the demo was being loaded; the next start begins anew";

/// Everybody of the demo acts at once, from one address.
const UNLIMITED: NonZeroU32 = NonZeroU32::MIN.saturating_add(99_999);

/// Port 0: the system chooses a free one.
const ANY_LOOPBACK_PORT: SocketAddr = SocketAddr::new(std::net::IpAddr::V4(Ipv4Addr::LOCALHOST), 0);

/// Loads the demo into an empty database, or finds it there, and serves it.
///
/// # Errors
/// A sentence about what kept the demo from being loaded or the server from starting.
pub fn demo(settings: Settings) -> CommandResult {
    let database = OpenDatabase::open(&settings)?;
    let key = settings.signing_key.load()?;
    let url = database.url();
    Runtime::new()?.block_on(async {
        let mut signals = ShutdownSignals::listen()?;
        match demo::inspect(url).await? {
            DatabaseContents::Other => return Err(NOT_THE_DEMO.into()),
            DatabaseContents::Demo => store::migrate(url).await?,
            DatabaseContents::Nothing => load(url, &key, &settings, &mut signals).await?,
            DatabaseContents::PartOfDemo => {
                store::revert_migrations(url).await?;
                load(url, &key, &settings, &mut signals).await?;
            }
        }
        let mut bound = BoundServer::bind(
            url,
            &key,
            settings.listen,
            &settings,
            settings.change_limit(),
        )?;
        bound.bind_metrics(settings.metrics_listen)?;
        announce(&bound)?;
        let address = home(&settings, &bound)?;
        io::stdout().write_all(demo::guide(url, &address).await?.as_bytes())?;
        bound.run(signals, settings.drain).await
    })
}

/// Where a browser on this machine reaches the demo.
fn home(settings: &Settings, bound: &BoundServer) -> Result<String, &'static str> {
    if let Some(url) = &settings.public_url {
        return Ok(url.clone());
    }
    let mut address = *bound.addresses.first().ok_or("no address to listen on")?;
    if address.ip().is_unspecified() {
        address.set_ip(Ipv4Addr::LOCALHOST.into());
    }
    Ok(format!("http://{address}"))
}

/// All or nothing: what could not be loaded to its end is taken away again, and the clock goes as it
/// went before in any case.
async fn load(
    url: &str,
    key: &SigningKey,
    settings: &Settings,
    signals: &mut ShutdownSignals,
) -> CommandResult {
    eprintln!("Preparing the database ...");
    store::migrate(url).await?;
    let clock = HeldClock::hold(url).await?;
    let loaded = tokio::select! {
        loaded = load_over_http(url, key, settings, &clock) => loaded,
        () = signals.next() => Err(INTERRUPTED.into()),
    };
    clock.release().await?;
    if loaded.is_err() {
        store::revert_migrations(url).await?;
    }
    loaded
}

/// Loads through the API of a server of its own, so that the demo is checked like the acts of people.
async fn load_over_http(
    url: &str,
    key: &SigningKey,
    settings: &Settings,
    clock: &HeldClock,
) -> CommandResult {
    let BoundServer {
        addresses, server, ..
    } = BoundServer::bind(
        url,
        key,
        ANY_LOOPBACK_PORT,
        settings,
        ChangeLimit::new(UNLIMITED, false),
    )?;
    let address = addresses.first().ok_or("no address to load at")?;
    let address = format!("http://{address}");
    let handle = server.handle();
    let (served, loaded) = tokio::join!(server, async {
        let loaded = demo::load(&address, clock).await;
        handle.stop(true).await;
        loaded
    });
    served?;
    Ok(loaded?)
}
