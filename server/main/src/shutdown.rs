//! Graceful shutdown: no request that was accepted is dropped.

use std::io;
use std::time::Duration;

use actix_web::dev::Server;
use tokio::signal::unix::{Signal, SignalKind, signal};
use tokio::time::sleep;
use web::Draining;

use crate::cli::CommandResult;

/// What an operator, a terminal or a container sends to end a process.
#[derive(Debug)]
pub struct ShutdownSignals {
    terminate: Signal,
    interrupt: Signal,
}

impl ShutdownSignals {
    /// From now on a signal does not end the process by itself.
    ///
    /// # Errors
    /// The system takes no more listeners.
    pub fn listen() -> io::Result<Self> {
        Ok(Self {
            terminate: signal(SignalKind::terminate())?,
            interrupt: signal(SignalKind::interrupt())?,
        })
    }

    /// Waits for one.
    pub async fn next(&mut self) {
        tokio::select! {
            _ = self.terminate.recv() => {}
            _ = self.interrupt.recv() => {}
        }
    }
}

/// Serves until a signal, reports for the time of `drain` that it is not ready while it serves on, then finishes
/// the requests in flight: `end_streams` ends the answers that have no end of their own. A
/// further signal cuts each of these short.
///
/// # Errors
/// The server cannot go on.
pub async fn run_until_stopped(
    mut server: Server,
    mut signals: ShutdownSignals,
    draining: &Draining,
    drain: Duration,
    end_streams: impl FnOnce(),
) -> CommandResult {
    let handle = server.handle();
    tokio::select! {
        ended = &mut server => return Ok(ended?),
        () = signals.next() => {}
    }
    draining.begin();
    tracing::info!(?drain, "draining: no longer ready for new clients");
    tokio::select! {
        ended = &mut server => return Ok(ended?),
        () = sleep(drain) => {}
        () = signals.next() => {}
    }
    end_streams();
    tracing::info!("stopping: requests that are being answered may finish");
    tokio::select! {
        (ended, ()) = async { tokio::join!(&mut server, handle.stop(true)) } => return Ok(ended?),
        () = signals.next() => {}
    }
    tracing::warn!("stopping at once");
    let (ended, ()) = tokio::join!(server, handle.stop(false));
    Ok(ended?)
}
