//! The database transaction that a use case writes through.
//!
//! It ends in [`Tx::publish`], [`Tx::record`] or [`Tx::commit`]. Each consumes it: nothing can be written
//! after the trail entry, which locks its club's chain until the transaction is over.

use std::ops::{Deref, DerefMut};

use document::trail::TrailAct;
use futures_util::TryFutureExt;
use futures_util::future::try_join3;
use store::changes::Change;
use store::seasons::Season;
use store::trail::{TrailAudience, TrailEvent};
use store::{Conn, TransactionError};

use crate::access::SeasonView;
use crate::change_bus::CommittedChange;
use crate::season_change::{OfficersEntry, SeasonChange};
use crate::standings::Board;
use crate::standings::freeze::freeze;
use crate::{App, Refusal};

/// A running transaction. Functions of the store take it as the connection it is.
pub(crate) struct Tx<'a> {
    app: &'a App,
    conn: &'a mut Conn,
}

impl Deref for Tx<'_> {
    type Target = Conn;

    fn deref(&self) -> &Conn {
        self.conn
    }
}

impl DerefMut for Tx<'_> {
    fn deref_mut(&mut self) -> &mut Conn {
        self.conn
    }
}

/// The answer of a transaction that has nothing more to write, and the change to announce once it is
/// committed.
#[must_use]
pub(crate) struct Committed<R> {
    answer: R,
    change: Option<CommittedChange>,
}

impl<R> Committed<R> {
    /// The same with another answer.
    pub fn map<S>(self, answer: impl FnOnce(R) -> S) -> Committed<S> {
        Committed {
            answer: answer(self.answer),
            change: self.change,
        }
    }

    /// The same with this answer.
    pub fn with<S>(self, answer: S) -> Committed<S> {
        self.map(|_| answer)
    }
}

impl App {
    /// Runs `act` in one transaction: all of it happens, or nothing. It may run several times, see
    /// [`Store::write`](store::Store::write). Once this answers, this process serves nothing older than the
    /// change.
    ///
    /// # Errors
    /// Whatever `act` answers (then nothing was written), or a [`StoreError`](store::StoreError) of the database.
    pub(crate) async fn write<R, E, F>(&self, act: F) -> Result<R, E>
    where
        E: TransactionError,
        F: AsyncFn(Tx<'_>) -> Result<Committed<R>, E>,
    {
        self.write_after(async |_| Ok(()), async |tx, ()| act(tx).await)
            .await
    }

    /// As [`App::write`], for what begins with reads: `look` is pipelined with `begin`, which saves a round
    /// trip. It must write nothing.
    ///
    /// # Errors
    /// As [`App::write`], and whatever `look` answers.
    pub(crate) async fn write_after<L, R, E>(
        &self,
        look: impl AsyncFn(&Conn) -> Result<L, E>,
        act: impl AsyncFn(Tx<'_>, L) -> Result<Committed<R>, E>,
    ) -> Result<R, E>
    where
        E: TransactionError,
    {
        let run = async |conn: &mut Conn, seen| act(Tx { app: self, conn }, seen).await;
        let Committed { answer, change } = self.store.write(look, run).await?;
        if let Some(change) = change {
            self.announce(change).await;
        }
        Ok(answer)
    }
}

impl Tx<'_> {
    /// Ends a transaction that changes no season and leaves nothing in a trail.
    pub fn commit<R>(self, answer: R) -> Committed<R> {
        Committed {
            answer,
            change: None,
        }
    }

    /// Ends it with a trail entry that officers alone may read. No reader of the season sees a
    /// difference.
    ///
    /// # Errors
    /// An error of the database.
    pub async fn record(self, entry: OfficersEntry) -> Result<Committed<()>, Refusal> {
        let event = TrailEvent {
            club: entry.club,
            season: entry.season,
            at: entry.at,
            actor: Some(entry.actor.account),
            act: entry.act,
            open_to: TrailAudience::Officers,
        };
        store::trail::append(&self, event).await?;
        Ok(self.commit(()))
    }

    /// Ends it with a change of a season: freezes the tables that differ, raises the version, notifies
    /// other processes of it, and appends to the trail. Answers the version.
    ///
    /// # Errors
    /// [`Refusal::Internal`] when what was stored cannot be read, or an error of the database.
    pub async fn publish(self, mut change: SeasonChange) -> Result<Committed<i64>, Refusal> {
        let Self { app, conn } = self;
        let season = change.season;
        let running = freeze(app, conn, &mut change).await?;
        let (version, frozen, ()) = try_join3(
            store::seasons::raise_version(conn, season, change.at, app.store.process()).err_into(),
            store::frozen_tables::list(conn, season).err_into(),
            append_all(conn, &change),
        )
        .await?;
        let board = running.and_then(|(row, loaded)| {
            let row = Season {
                version,
                changed_at: change.at,
                ..row
            };
            // A season that not everybody may see has no board.
            let view = SeasonView::public(row).ok()?;
            Some(Board::new(view, loaded, frozen))
        });
        let change = Change { season, version };
        Ok(Committed {
            answer: version,
            change: Some(CommittedChange { change, board }),
        })
    }
}

async fn append_all(conn: &Conn, change: &SeasonChange) -> Result<(), Refusal> {
    let event = |act: &TrailAct, open_to| TrailEvent {
        club: change.season.club,
        season: Some(change.season.season),
        at: change.at,
        actor: change.actor.map(|actor| actor.account),
        act: act.clone(),
        open_to,
    };
    store::trail::append(conn, event(&change.act, change.audience)).await?;
    if let Some(act) = &change.officers_act {
        store::trail::append(conn, event(act, TrailAudience::Officers)).await?;
    }
    Ok(())
}
