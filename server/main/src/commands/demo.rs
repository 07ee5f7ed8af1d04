use std::io::{self, Write};
use std::net::{Ipv4Addr, SocketAddr};
use std::num::NonZeroU32;

use tokio::runtime::Runtime;
use web::Limits;

use super::serve::announce;
use crate::cli::Outcome;
use crate::database::Opened;
use crate::demo::{self, Found, HeldClock};
use crate::server::Bound;
use crate::settings::{Settings, SigningKey};
use crate::stop::Signals;

const OTHERS: &str = "this database holds something else than the demo: name an empty one, or use \
    `tallyhost serve`";
const INTERRUPTED: &str = "stopped while the demo was being loaded; the next start begins anew";

/// Everybody of the demo types at once, from one address.
const AT_ONCE: NonZeroU32 = NonZeroU32::MIN.saturating_add(99_999);

/// A free port of the loopback.
const SOMEWHERE: SocketAddr = SocketAddr::new(std::net::IpAddr::V4(Ipv4Addr::LOCALHOST), 0);

/// Loads the demo into an empty database, or finds it there, and serves it.
///
/// # Errors
/// A sentence about what kept the demo from being loaded or the server from starting.
pub fn demo(settings: Settings) -> Outcome {
    let database = Opened::open(&settings.database)?;
    let key = settings.signing_key.load()?;
    let url = database.url();
    Runtime::new()?.block_on(async {
        let mut signals = Signals::listen()?;
        match demo::look(url).await? {
            Found::Others => return Err(OTHERS.into()),
            Found::Demo => store::migrate(url).await?,
            Found::Nothing => load(url, &key, &settings, &mut signals).await?,
            Found::Half => {
                store::unmigrate(url).await?;
                load(url, &key, &settings, &mut signals).await?;
            }
        }
        let bound = Bound::bind(url, &key, settings.listen, &settings, settings.limits())?;
        for address in &bound.addresses {
            announce(*address)?;
        }
        io::stdout().write_all(demo::guide(url).await?.as_bytes())?;
        bound.run(signals, settings.drain).await
    })
}

/// All or nothing: what could not be loaded to its end is taken away again, and the clock goes as it
/// went before in any case.
async fn load(url: &str, key: &SigningKey, settings: &Settings, signals: &mut Signals) -> Outcome {
    tracing::info!("loading the demo");
    store::migrate(url).await?;
    let clock = HeldClock::take(url).await?;
    let loaded = tokio::select! {
        loaded = load_over_http(url, key, settings, &clock) => loaded,
        () = signals.next() => Err(INTERRUPTED.into()),
    };
    clock.give_back().await?;
    if loaded.is_err() {
        store::unmigrate(url).await?;
    }
    loaded
}

/// Through a server of its own, as the people of the demo would.
async fn load_over_http(
    url: &str,
    key: &SigningKey,
    settings: &Settings,
    clock: &HeldClock,
) -> Outcome {
    let Bound {
        addresses, server, ..
    } = Bound::bind(url, key, SOMEWHERE, settings, Limits::new(AT_ONCE, false))?;
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
