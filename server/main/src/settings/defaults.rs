//! The default values of the settings.

use std::env;
use std::net::{Ipv4Addr, SocketAddr, SocketAddrV4};
use std::num::{NonZeroU32, NonZeroUsize};
use std::path::PathBuf;
use std::thread;

use nix::unistd::Uid;

/// Loopback only: the way to the world is a reverse proxy with TLS.
pub(super) const LISTEN: SocketAddr = SocketAddr::V4(SocketAddrV4::new(Ipv4Addr::LOCALHOST, 8080));

/// Four connections for each worker and for the background: one alone would make all that a worker has
/// under way wait for the slowest. PostgreSQL takes a hundred by itself.
pub(super) fn pool(workers: NonZeroUsize) -> NonZeroUsize {
    let each = NonZeroUsize::MIN.saturating_add(3);
    let max = NonZeroUsize::MIN.saturating_add(95);
    workers.saturating_add(1).saturating_mul(each).min(max)
}

/// Long enough for a primary to be started anew, short enough that nobody misses a round.
pub(super) const STALE_SECONDS: u64 = 10;

/// A person types far less; a club of twenty behind one address does too.
pub(super) const CHANGES_PER_SECOND: NonZeroU32 = NonZeroU32::MIN.saturating_add(19);

/// Seconds for requests that are being answered when the server stops.
pub(super) const GRACE_SECONDS: u64 = 30;

/// One thread for each core.
pub(super) fn workers() -> NonZeroUsize {
    thread::available_parallelism().unwrap_or(NonZeroUsize::MIN)
}

/// Where data goes by the XDG Base Directory Specification 0.8; for root the system's own place,
/// since the database's user cannot pass through root's home.
pub(super) fn data_folder(name: &str) -> Option<PathBuf> {
    if Uid::effective().is_root() {
        return Some(PathBuf::from("/var/lib").join(name));
    }
    let from = |variable| {
        env::var_os(variable)
            .map(PathBuf::from)
            .filter(|path| path.is_absolute())
    };
    from("XDG_DATA_HOME")
        .or_else(|| from("HOME").map(|home| home.join(".local/share")))
        .map(|base| base.join(name))
}
