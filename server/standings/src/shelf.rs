//! All seasons that somebody looks at.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use actix_web::http::header::{AGE, HeaderMap, HeaderValue};
use app::standings::find_board;
use app::{Change, Desk, Refusal, Versions};
use arc_swap::ArcSwap;
use league::ids::{ClubId, SeasonId};
use tokio::sync::Mutex;
use tokio::sync::mpsc::{UnboundedReceiver, UnboundedSender, unbounded_channel};
use tokio::sync::oneshot;
use tokio::time::timeout;

use crate::counts::Counts;
use crate::kept::Kept;
use crate::league_clock::LeagueClock;
use crate::page::Page;
use crate::resource::Wanted;
use crate::turn::Turn;

/// The address of a season.
pub type Key = (ClubId, SeasonId);

/// How long a version is trusted without a look at the database.
const LEASE: Duration = Duration::from_secs(2);

/// How long whoever changed something waits for the new pages; then the old ones are withdrawn, and
/// the next reader has them made.
const PATIENCE: Duration = Duration::from_secs(1);

/// A season that nobody asks for is forgotten after this.
const IDLE: Duration = Duration::from_secs(600);

/// The cache of one process, shared by its threads.
pub struct Shelf {
    desk: Desk,
    clock: LeagueClock,
    seasons: ArcSwap<HashMap<Key, Arc<Kept>>>,
    counts: Counts,
    closed: AtomicBool,
    /// Seconds; 0 where there is nothing to tell.
    age: AtomicU64,
    asked_turns: UnboundedSender<Turn>,
    turns: Mutex<UnboundedReceiver<Turn>>,
}

impl Shelf {
    /// An empty shelf that hears at once of what this process writes.
    pub fn new(desk: Desk) -> Arc<Self> {
        let (asked_turns, turns) = unbounded_channel();
        let shelf = Arc::new(Self {
            desk,
            clock: LeagueClock::new(),
            seasons: ArcSwap::default(),
            counts: Counts::default(),
            closed: AtomicBool::new(false),
            age: AtomicU64::new(0),
            asked_turns,
            turns: Mutex::new(turns),
        });
        let told = Arc::downgrade(&shelf);
        shelf.desk.on_change(Box::new(move |change| {
            let told = told.upgrade();
            Box::pin(async move {
                if let Some(shelf) = told {
                    shelf.change(change).await;
                }
            })
        }));
        shelf
    }

    /// What it counted so far.
    pub fn counts(&self) -> &Counts {
        &self.counts
    }

    /// How many seasons it holds and how many clients wait for their changes.
    pub fn size(&self) -> (usize, usize) {
        let seasons = self.seasons.load();
        let subscribers = seasons.values().map(|kept| kept.subscribers()).sum();
        (seasons.len(), subscribers)
    }

    /// Ends every stream of events, and starts no more: the server is about to stop.
    pub fn close(&self) {
        self.closed.store(true, Ordering::Release);
        self.seasons.store(Arc::default());
    }

    /// A page of the newest version.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for what not everybody may see, [`Refusal::Unavailable`] when the
    /// database cannot be reached or has fallen behind.
    pub(crate) async fn page(
        &self,
        key: Key,
        wanted: Wanted,
    ) -> Result<(Arc<Kept>, Arc<Page>), Refusal> {
        let kept = self.season(key).await?;
        if let Some(page) = self.page_at_once(&kept, wanted) {
            return Ok((kept, page));
        }
        let page = {
            let _turn = kept.making.lock().await;
            match kept.page(wanted, &self.clock) {
                Some(page) => {
                    self.counts.hits.add_one();
                    page
                }
                None => {
                    self.counts.misses.add_one();
                    self.make(key, wanted, &kept).await?
                }
            }
        };
        Ok((kept, page))
    }

    /// A page of the newest version, if there is one and the version is confirmed.
    pub(crate) fn page_at_once(&self, kept: &Kept, wanted: Wanted) -> Option<Arc<Page>> {
        let now = self.clock.running();
        kept.note_asked(now);
        if !kept.is_confirmed(now, LEASE) {
            return None;
        }
        let page = kept.page(wanted, &self.clock)?;
        self.counts.hits.add_one();
        Some(page)
    }

    /// Makes a page from a snapshot that is taken now. Should somebody write meanwhile, whoever asked
    /// before that still gets it, and nobody else.
    async fn make(&self, key: Key, wanted: Wanted, kept: &Kept) -> Result<Arc<Page>, Refusal> {
        let known = kept.version();
        let board = match find_board(&self.desk, key.0, key.1).await {
            Err(Refusal::NotFound) => {
                self.forget(key);
                return Err(Refusal::NotFound);
            }
            found => found?,
        };
        kept.raise(board.season.version);
        if board.season.version < known {
            return Err(Refusal::Unavailable {
                retry_after: 1,
                cause: "the database is behind what is known already".to_owned(),
            });
        }
        let body = wanted.resource.write(&board, wanted.format)?;
        let page = Arc::new(Page::new(&board, wanted.format, body));
        kept.keep(wanted, &page);
        Ok(page)
    }

    /// A season's place, its version confirmed.
    ///
    /// # Errors
    /// As [`Shelf::page`].
    pub(crate) async fn season(&self, key: Key) -> Result<Arc<Kept>, Refusal> {
        if let Some(kept) = self.trusted(key) {
            return Ok(kept);
        }
        self.must_be_current().await?;
        // First the place, then the question: what is committed meanwhile is noted on it.
        let kept = self.place(key);
        kept.note_asked(self.clock.running());
        let asked = self.clock.running();
        let versions = self.desk.find_versions(&[key]).await?;
        self.clock.set(asked, versions.now);
        match versions.seasons.first() {
            Some(change) => {
                kept.confirm(change.version, asked);
                Ok(kept)
            }
            None => {
                self.forget(key);
                Err(Refusal::NotFound)
            }
        }
    }

    /// # Errors
    /// [`Refusal::Unavailable`] over a replica that is cut off from its primary, or behind it, for
    /// longer than this process was told to serve.
    pub(crate) async fn must_be_current(&self) -> Result<(), Refusal> {
        match self.desk.is_current().await? {
            true => Ok(()),
            false => Err(Refusal::Unavailable {
                retry_after: 1,
                cause: "the replica does not know what its primary has".to_owned(),
            }),
        }
    }

    /// Tells a reader how old a page may be, in seconds, where its version was last confirmed by a
    /// replica that has lost sight of its primary (`Age`, RFC 9111, section 5.1).
    pub(crate) fn tell_age(&self, headers: &mut HeaderMap) {
        let age = self.age.load(Ordering::Relaxed);
        if age > 0 {
            headers.insert(AGE, HeaderValue::from(age));
        }
    }

    /// Whether streams of events may begin.
    pub(crate) fn is_open(&self) -> bool {
        !self.closed.load(Ordering::Acquire)
    }

    /// Looks what all seasons' versions are. Forgets those that nobody asks for and those that are no
    /// longer for everybody.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub(crate) async fn confirm_all(&self) -> Result<(), Refusal> {
        let asked = self.clock.running();
        let held: Vec<(Key, Arc<Kept>)> = self
            .seasons
            .load()
            .iter()
            .map(|(key, kept)| (*key, Arc::clone(kept)))
            .collect();
        let (wanted, idle): (Vec<_>, Vec<_>) = held
            .into_iter()
            .partition(|(_, kept)| kept.is_wanted(asked, IDLE));
        idle.into_iter().for_each(|(key, _)| self.forget(key));
        if wanted.is_empty() {
            return Ok(());
        }
        if let Err(refusal) = self.must_be_current().await {
            // Whoever follows a season comes again, and is sent to a process that knows more.
            wanted.iter().for_each(|(key, _)| self.forget(*key));
            return Err(refusal);
        }
        let age = self.desk.age().filter(|&age| age > LEASE);
        let age = age.map_or(0, |age| age.as_secs());
        self.age.store(age, Ordering::Relaxed);
        let keys: Vec<Key> = wanted.iter().map(|(key, _)| *key).collect();
        let Versions { now, seasons } = self.desk.find_versions(&keys).await?;
        self.clock.set(asked, now);
        let mut found: HashMap<Key, i64> = HashMap::new();
        found.extend(
            seasons
                .into_iter()
                .map(|it| ((it.club, it.season), it.version)),
        );
        for (key, kept) in wanted {
            match found.get(&key) {
                Some(&version) => {
                    let (club, season) = key;
                    self.hear(Change {
                        club,
                        season,
                        version,
                    });
                    // Else pages in use are being made anew, and their snapshot will confirm it.
                    if kept.version() >= version {
                        kept.confirm(version, asked);
                    }
                }
                None => self.forget(key),
            }
        }
        Ok(())
    }

    /// This process changed something. When this returns, nothing older is served; until then what
    /// is in use goes on being served.
    async fn change(&self, change: Change) {
        let (done, told) = oneshot::channel();
        let Some(kept) = self.ask_turn(change, Some(done)) else {
            return;
        };
        // Whatever became of it: what is older than the change is over.
        let _ = timeout(PATIENCE, told).await;
        kept.raise(change.version);
    }

    /// Another process changed something, perhaps.
    pub(crate) fn hear(&self, change: Change) {
        self.ask_turn(change, None);
    }

    /// Has a season's pages made anew where some are in use; elsewhere it suffices to note its
    /// version. The season, if there is something to wait for.
    fn ask_turn(&self, change: Change, done: Option<oneshot::Sender<()>>) -> Option<Arc<Kept>> {
        let key = (change.club, change.season);
        let kept = Arc::clone(self.seasons.load().get(&key)?);
        if kept.version() >= change.version {
            return None;
        }
        let turn = Turn {
            key,
            kept: Arc::clone(&kept),
            version: change.version,
            done,
        };
        if kept.pages_in_use().is_empty() || self.asked_turns.send(turn).is_err() {
            kept.raise(change.version);
            return None;
        }
        Some(kept)
    }

    /// The next turn that was asked for.
    pub(crate) async fn next_turn(&self) -> Option<Turn> {
        self.turns.lock().await.recv().await
    }

    pub(crate) fn clock(&self) -> &LeagueClock {
        &self.clock
    }

    pub(crate) fn desk(&self) -> &Desk {
        &self.desk
    }

    fn trusted(&self, key: Key) -> Option<Arc<Kept>> {
        let seasons = self.seasons.load();
        let kept = seasons.get(&key)?;
        let now = self.clock.running();
        kept.note_asked(now);
        kept.is_confirmed(now, LEASE).then(|| Arc::clone(kept))
    }

    fn place(&self, key: Key) -> Arc<Kept> {
        let fresh = Arc::new(Kept::new());
        self.seasons.rcu(|seasons| {
            let mut seasons = HashMap::clone(seasons);
            seasons.entry(key).or_insert_with(|| Arc::clone(&fresh));
            seasons
        });
        self.seasons.load().get(&key).map_or(fresh, Arc::clone)
    }

    /// The season is gone, or no longer for everybody, or nobody asks for it.
    pub(crate) fn forget(&self, key: Key) {
        let before = self.seasons.rcu(|seasons| {
            let mut seasons = HashMap::clone(seasons);
            seasons.remove(&key);
            seasons
        });
        if let Some(kept) = before.get(&key) {
            kept.end();
        }
    }
}
