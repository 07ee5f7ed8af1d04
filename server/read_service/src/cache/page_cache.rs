//! The page cache: the pages of every public season that somebody reads, each of the newest version.
//!
//! Readers never lock: seasons and pages lie behind `ArcSwap`. A version is trusted for [`LEASE`] after the
//! database confirmed it.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use actix_web::http::header::{AGE, HeaderMap, HeaderValue};
use app::standings::{Board, find_board};
use app::{App, Change, CommittedChange, Refusal, SeasonVersions};
use arc_swap::ArcSwap;
use league::keys::SeasonKey;
use tokio::sync::Mutex;
use tokio::sync::mpsc::{UnboundedReceiver, UnboundedSender, unbounded_channel};
use tokio::sync::oneshot;
use tokio::time::timeout;

use crate::cache::cached_page::CachedPage;
use crate::cache::counters::CacheCounters;
use crate::cache::league_clock::LeagueClock;
use crate::cache::rebuild::RebuildJob;
use crate::cache::season_entry::SeasonEntry;
use crate::resources::PageKey;

/// How long a version is trusted without asking the database again.
const LEASE: Duration = Duration::from_secs(2);

/// How long a writer waits for the rebuilt pages. Afterwards the old ones are withdrawn, and the next
/// reader has them rendered.
const REBUILD_TIMEOUT: Duration = Duration::from_secs(1);

/// A season that nobody reads is evicted after this.
const IDLE_TIMEOUT: Duration = Duration::from_secs(600);

/// The page cache of one process, shared by its threads.
pub struct PageCache {
    app: App,
    clock: LeagueClock,
    seasons: ArcSwap<HashMap<SeasonKey, Arc<SeasonEntry>>>,
    counters: CacheCounters,
    closed: AtomicBool,
    /// Seconds to send as `Age`; 0 where the database is current.
    age: AtomicU64,
    rebuild_sender: UnboundedSender<RebuildJob>,
    rebuild_jobs: Mutex<UnboundedReceiver<RebuildJob>>,
}

impl PageCache {
    /// An empty cache that listens to the changes of this process.
    pub fn new(app: App) -> Arc<Self> {
        let (rebuild_sender, rebuild_jobs) = unbounded_channel();
        let cache = Arc::new(Self {
            app,
            clock: LeagueClock::new(),
            seasons: ArcSwap::default(),
            counters: CacheCounters::default(),
            closed: AtomicBool::new(false),
            age: AtomicU64::new(0),
            rebuild_sender,
            rebuild_jobs: Mutex::new(rebuild_jobs),
        });
        // Weak: the app owns the listener, and the cache owns the app.
        let listener = Arc::downgrade(&cache);
        cache.app.on_change(Box::new(move |committed| {
            let listener = listener.upgrade();
            Box::pin(async move {
                if let Some(cache) = listener {
                    cache.on_local_change(committed).await;
                }
            })
        }));
        cache
    }

    pub fn counters(&self) -> &CacheCounters {
        &self.counters
    }

    /// Number of seasons that it holds, and of clients that follow one.
    pub fn size(&self) -> (usize, usize) {
        let seasons = self.seasons.load();
        let subscribers = seasons.values().map(|entry| entry.subscribers()).sum();
        (seasons.len(), subscribers)
    }

    /// Ends every event stream and accepts no more: the server is about to stop.
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
        key: SeasonKey,
        page_key: PageKey,
    ) -> Result<(Arc<SeasonEntry>, Arc<CachedPage>), Refusal> {
        let entry = self.confirmed_entry(key).await?;
        if let Some(page) = self.cached_page(&entry, page_key) {
            return Ok((entry, page));
        }
        let page = {
            // Of many who miss the same page one renders it, the others find it here.
            let _building = entry.build_lock.lock().await;
            match entry.page(page_key, &self.clock) {
                Some(page) => {
                    self.counters.hits.add_one();
                    page
                }
                None => {
                    self.counters.misses.add_one();
                    self.render_page(key, page_key, &entry).await?
                }
            }
        };
        Ok((entry, page))
    }

    /// A page of the newest version, if it is cached and the version confirmed: nothing is awaited.
    pub(crate) fn cached_page(
        &self,
        entry: &SeasonEntry,
        page_key: PageKey,
    ) -> Option<Arc<CachedPage>> {
        let now = self.clock.elapsed();
        entry.touch(now);
        if !entry.is_confirmed(now, LEASE) {
            return None;
        }
        let page = entry.page(page_key, &self.clock)?;
        self.counters.hits.add_one();
        Some(page)
    }

    /// Renders a page from a snapshot that is taken now. Should somebody write meanwhile, whoever asked
    /// before that still gets it, and nobody else.
    async fn render_page(
        &self,
        key: SeasonKey,
        page_key: PageKey,
        entry: &SeasonEntry,
    ) -> Result<Arc<CachedPage>, Refusal> {
        let known_version = entry.version();
        let board = match find_board(&self.app, key).await {
            Err(Refusal::NotFound) => {
                self.evict(key);
                return Err(Refusal::NotFound);
            }
            found => found?,
        };
        entry.raise_version(board.season.version);
        if board.season.version < known_version {
            let cause = "the database is behind what is known already";
            return Err(Refusal::unavailable(1, cause));
        }
        let body = page_key.resource.render(&board, page_key.format)?;
        let page = Arc::new(CachedPage::new(&board, page_key.format, body));
        entry.insert_page(page_key, &page);
        Ok(page)
    }

    /// A season's entry, its version confirmed within [`LEASE`].
    ///
    /// # Errors
    /// As [`PageCache::page`].
    pub(crate) async fn confirmed_entry(
        &self,
        key: SeasonKey,
    ) -> Result<Arc<SeasonEntry>, Refusal> {
        if let Some(entry) = self.leased_entry(key) {
            return Ok(entry);
        }
        self.ensure_current().await?;
        // The entry is made before the query: what is committed meanwhile then reaches it.
        let entry = self.entry(key);
        entry.touch(self.clock.elapsed());
        let queried_at = self.clock.elapsed();
        let versions = self.app.find_versions(&[key]).await?;
        self.clock.set(queried_at, versions.now);
        match versions.seasons.first() {
            Some(change) => {
                entry.confirm(change.version, queried_at);
                Ok(entry)
            }
            None => {
                self.evict(key);
                Err(Refusal::NotFound)
            }
        }
    }

    /// # Errors
    /// [`Refusal::Unavailable`] over a replica that is cut off from its primary, or behind it, for
    /// longer than this process was told to serve.
    pub(crate) async fn ensure_current(&self) -> Result<(), Refusal> {
        match self.app.is_current().await? {
            true => Ok(()),
            false => Err(Refusal::unavailable(
                1,
                "the replica does not know what its primary has",
            )),
        }
    }

    /// Adds `Age` in seconds (RFC 9111, section 5.1) where versions were last confirmed by a replica that
    /// has lost its primary.
    pub(crate) fn add_age_header(&self, headers: &mut HeaderMap) {
        let age = self.age.load(Ordering::Relaxed);
        if age > 0 {
            headers.insert(AGE, HeaderValue::from(age));
        }
    }

    /// Whether event streams may begin.
    pub(crate) fn accepts_streams(&self) -> bool {
        !self.closed.load(Ordering::Acquire)
    }

    /// Asks the database for the versions of all seasons in use. Evicts idle seasons and those that are
    /// no longer public.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the database cannot be reached.
    pub(crate) async fn confirm_all(&self) -> Result<(), Refusal> {
        let queried_at = self.clock.elapsed();
        let entries: Vec<(SeasonKey, Arc<SeasonEntry>)> = self
            .seasons
            .load()
            .iter()
            .map(|(key, entry)| (*key, Arc::clone(entry)))
            .collect();
        let (in_use, idle): (Vec<_>, Vec<_>) = entries
            .into_iter()
            .partition(|(_, entry)| entry.is_in_use(queried_at, IDLE_TIMEOUT));
        idle.into_iter().for_each(|(key, _)| self.evict(key));
        if in_use.is_empty() {
            return Ok(());
        }
        if let Err(refusal) = self.ensure_current().await {
            // Clients that follow a season reconnect, and a proxy sends them to a process that is current.
            in_use.iter().for_each(|(key, _)| self.evict(*key));
            return Err(refusal);
        }
        let age = self.app.data_age().filter(|&age| age > LEASE);
        let age = age.map_or(0, |age| age.as_secs());
        self.age.store(age, Ordering::Relaxed);
        let keys: Vec<SeasonKey> = in_use.iter().map(|(key, _)| *key).collect();
        let SeasonVersions { now, seasons } = self.app.find_versions(&keys).await?;
        self.clock.set(queried_at, now);
        let mut found: HashMap<SeasonKey, i64> = HashMap::new();
        found.extend(seasons.into_iter().map(|it| (it.season, it.version)));
        for (key, entry) in in_use {
            match found.get(&key) {
                Some(&version) => {
                    let season = key;
                    self.on_remote_change(Change { season, version });
                    // Else a rebuild is under way, and its snapshot will confirm the version.
                    if entry.version() >= version {
                        entry.confirm(version, queried_at);
                    }
                }
                None => self.evict(key),
            }
        }
        Ok(())
    }

    /// This process committed a change. When this returns, nothing older is served; until then the old
    /// pages go on being served.
    async fn on_local_change(&self, CommittedChange { change, board }: CommittedChange) {
        let (done, rebuilt) = oneshot::channel();
        let Some(entry) = self.request_rebuild(change, board, Some(done)) else {
            return;
        };
        // Rebuilt, failed or late: what is older than the change must not be served any more.
        let _ = timeout(REBUILD_TIMEOUT, rebuilt).await;
        entry.raise_version(change.version);
    }

    /// Another process committed a change, or this one whose rebuild is already done.
    pub(crate) fn on_remote_change(&self, change: Change) {
        self.request_rebuild(change, None, None);
    }

    /// Queues a rebuild where pages of the season are in use; elsewhere it suffices to raise its version.
    /// The entry, if there is a rebuild to wait for.
    fn request_rebuild(
        &self,
        change: Change,
        board: Option<Board>,
        done: Option<oneshot::Sender<()>>,
    ) -> Option<Arc<SeasonEntry>> {
        let key = change.season;
        let entry = Arc::clone(self.seasons.load().get(&key)?);
        if entry.version() >= change.version {
            return None;
        }
        let job = RebuildJob {
            key,
            entry: Arc::clone(&entry),
            version: change.version,
            board,
            done,
        };
        if entry.requested_pages().is_empty() || self.rebuild_sender.send(job).is_err() {
            entry.raise_version(change.version);
            return None;
        }
        Some(entry)
    }

    /// The next rebuild that was requested.
    pub(crate) async fn next_rebuild(&self) -> Option<RebuildJob> {
        self.rebuild_jobs.lock().await.recv().await
    }

    pub(crate) fn clock(&self) -> &LeagueClock {
        &self.clock
    }

    pub(crate) fn app(&self) -> &App {
        &self.app
    }

    fn leased_entry(&self, key: SeasonKey) -> Option<Arc<SeasonEntry>> {
        let seasons = self.seasons.load();
        let entry = seasons.get(&key)?;
        let now = self.clock.elapsed();
        entry.touch(now);
        entry.is_confirmed(now, LEASE).then(|| Arc::clone(entry))
    }

    fn entry(&self, key: SeasonKey) -> Arc<SeasonEntry> {
        let fresh = Arc::new(SeasonEntry::new());
        self.seasons.rcu(|seasons| {
            let mut seasons = HashMap::clone(seasons);
            seasons.entry(key).or_insert_with(|| Arc::clone(&fresh));
            seasons
        });
        self.seasons.load().get(&key).map_or(fresh, Arc::clone)
    }

    /// Drops a season that is gone, no longer public, or idle.
    pub(crate) fn evict(&self, key: SeasonKey) {
        let before = self.seasons.rcu(|seasons| {
            let mut seasons = HashMap::clone(seasons);
            seasons.remove(&key);
            seasons
        });
        if let Some(entry) = before.get(&key) {
            entry.retire();
        }
    }
}
