//! Limits that are set in the operating system: the number of open files, and how long a client may leave unread
//! what it was sent.

use std::any::Any;

use actix_web::rt::net::TcpStream;
use nix::sys::resource::{Resource, getrlimit, setrlimit};

/// After this the kernel ends a connection whose client reads nothing more (RFC 5482;
/// `tcp(7)`: it holds for a closed window, too). A client that follows the events of a season and
/// never reads would otherwise be kept for ever, with what waits for it.
#[cfg(target_os = "linux")]
const UNREAD_TIMEOUT_MILLIS: u32 = 20_000;

/// Raises the number of open files from what a shell gives a program to what the system allows: each
/// client that follows a season holds one.
pub fn raise_open_file_limit() {
    let raised = getrlimit(Resource::RLIMIT_NOFILE)
        .and_then(|(_, most)| setrlimit(Resource::RLIMIT_NOFILE, most, most));
    if let Err(cause) = raised {
        tracing::warn!(%cause, "the number of open files stays as it is");
    }
}

/// Has the system end the connection of a client that reads nothing.
pub fn set_unread_timeout(connection: &dyn Any) {
    #[cfg(target_os = "linux")]
    if let Some(stream) = connection.downcast_ref::<TcpStream>() {
        use nix::sys::socket::{setsockopt, sockopt::TcpUserTimeout};
        // Where it cannot be set, the connection is as good as any other.
        let _ = setsockopt(stream, TcpUserTimeout, &UNREAD_TIMEOUT_MILLIS);
    }
}
