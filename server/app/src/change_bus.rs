//! The bus for committed changes: one listener of this process hears of each before its writer is answered.

use std::fmt;
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, OnceLock};

use futures_util::future::BoxFuture;
use store::changes::Change;

use crate::App;
use crate::standings::Board;

/// A change of a season that this process has committed.
pub struct CommittedChange {
    pub change: Change,
    /// The season at that version, where everybody may see it and it is running: the change has read it
    /// already. Whoever keeps it looks at the clock once more before showing it.
    pub board: Option<Board>,
}

/// Does what a committed change asks for.
pub type ChangeListener = Box<dyn Fn(CommittedChange) -> BoxFuture<'static, ()> + Send + Sync>;

/// The listener, shared by all clones of an [`App`].
#[derive(Clone, Default)]
pub(crate) struct ChangeBus(Arc<OnceLock<ChangeListener>>);

/// The version that a request has made; 0 while it has made none.
#[derive(Clone, Debug, Default)]
pub(crate) struct RequestVersion(Arc<AtomicI64>);

impl App {
    /// Gives every change that this process commits to `listener`, which is run to its end before
    /// whoever made the change is answered. Only the first listener is kept.
    pub fn on_change(&self, listener: ChangeListener) {
        let _ = self.change_bus.0.set(listener);
    }

    /// The same application for one request, which remembers what that request commits.
    #[must_use]
    pub fn for_request(&self) -> Self {
        Self {
            request_version: RequestVersion::default(),
            ..self.clone()
        }
    }

    /// The last version of a season that was committed by way of this [`App::for_request`].
    #[must_use]
    pub fn committed_version(&self) -> Option<i64> {
        let version = self.request_version.0.load(Ordering::Relaxed);
        (version != 0).then_some(version)
    }

    pub(crate) async fn announce(&self, committed: CommittedChange) {
        let version = committed.change.version;
        self.request_version.0.store(version, Ordering::Relaxed);
        if let Some(listener) = self.change_bus.0.get() {
            listener(committed).await;
        }
    }
}

impl fmt::Debug for ChangeBus {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("ChangeBus")
    }
}
