//! The settings as they are given: by flag, by environment, or in a TOML file.

use std::net::SocketAddr;
use std::num::{NonZeroU32, NonZeroUsize};
use std::path::PathBuf;

use clap::{Args, ValueEnum};
use serde::Deserialize;

use super::role::ProcessRole;
use super::secret::Secret;

/// Every setting, as far as it is given. A flag wins over the environment, and that over the file, whose keys
/// are the flags' names.
#[derive(Args, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Options {
    /// What this process serves [default: all]
    #[arg(long, env = "TALLYHOST_ROLE", value_name = "ROLE")]
    pub role: Option<ProcessRole>,
    /// Address and port to listen on [default: 127.0.0.1:8080]
    #[arg(long, env = "TALLYHOST_LISTEN", value_name = "ADDRESS:PORT")]
    pub listen: Option<SocketAddr>,
    /// Address and port that /metrics is served at, and nothing else; port 0 takes a free one
    /// [default: not served]
    #[arg(long, env = "TALLYHOST_METRICS_LISTEN", value_name = "ADDRESS:PORT")]
    pub metrics_listen: Option<SocketAddr>,
    /// How people reach the server, for links in messages, feeds and codes
    #[arg(long, env = "TALLYHOST_PUBLIC_URL", value_name = "URL")]
    pub public_url: Option<String>,
    /// Folder of the embedded database and the signing key
    #[arg(long, env = "TALLYHOST_DATA", value_name = "FOLDER")]
    pub data: Option<PathBuf>,
    /// PostgreSQL to use instead of the embedded one
    #[arg(long, env = "DATABASE_URL", hide_env_values = true, value_name = "URL")]
    pub database_url: Option<Secret>,
    /// Folder that holds initdb, postgres, pg_dump, pg_restore and psql
    #[arg(long, env = "TALLYHOST_POSTGRES_BIN", value_name = "FOLDER")]
    pub postgres_bin: Option<PathBuf>,
    /// Connections to the database, shared out among the workers and the background, one each at
    /// least [default: four for each of them, 96 at most]
    #[arg(long, env = "TALLYHOST_POOL", value_name = "NUMBER")]
    pub pool: Option<NonZeroUsize>,
    /// Seconds that a replica may be cut off from its primary, or behind it, and still be read from
    /// [default: 10]
    #[arg(long, env = "TALLYHOST_STALE_AFTER", value_name = "SECONDS")]
    pub stale_after: Option<u64>,
    /// Threads that answer requests [default: one for each core]
    #[arg(long, env = "TALLYHOST_WORKERS", value_name = "NUMBER")]
    pub workers: Option<NonZeroUsize>,
    /// Changing requests a second from one address; ten times as many at once [default: 20]
    #[arg(long, env = "TALLYHOST_CHANGES_PER_SECOND", value_name = "NUMBER")]
    pub changes_per_second: Option<NonZeroU32>,
    /// Whether a proxy in front writes the address of each client into X-Forwarded-For
    /// [default: false]
    #[arg(long, env = "TALLYHOST_BEHIND_PROXY", value_name = "TRUE|FALSE")]
    pub behind_proxy: Option<bool>,
    /// Key that signs access tokens, 64 or more hexadecimal digits [default: made once, in a file]
    #[arg(
        long,
        env = "TALLYHOST_SIGNING_KEY",
        hide_env_values = true,
        value_name = "HEX"
    )]
    pub signing_key: Option<Secret>,
    /// Seconds to serve on after the signal to stop, no longer ready, so that a proxy turns elsewhere
    /// [default: 0]
    #[arg(long, env = "TALLYHOST_DRAIN", value_name = "SECONDS")]
    pub drain: Option<u64>,
    /// Seconds for requests that are being answered when the server stops [default: 30]
    #[arg(long, env = "TALLYHOST_GRACE", value_name = "SECONDS")]
    pub grace: Option<u64>,
}

/// How log lines are written.
#[derive(Clone, Copy, Debug, Default, ValueEnum)]
pub enum LogFormat {
    /// For people.
    #[default]
    Text,
    /// One JSON object a line, for programs.
    Json,
}

impl Options {
    /// These, and where they say nothing, the others.
    pub(super) fn or(self, other: Self) -> Self {
        Self {
            role: self.role.or(other.role),
            listen: self.listen.or(other.listen),
            metrics_listen: self.metrics_listen.or(other.metrics_listen),
            public_url: self.public_url.or(other.public_url),
            data: self.data.or(other.data),
            database_url: self.database_url.or(other.database_url),
            postgres_bin: self.postgres_bin.or(other.postgres_bin),
            pool: self.pool.or(other.pool),
            stale_after: self.stale_after.or(other.stale_after),
            workers: self.workers.or(other.workers),
            changes_per_second: self.changes_per_second.or(other.changes_per_second),
            behind_proxy: self.behind_proxy.or(other.behind_proxy),
            signing_key: self.signing_key.or(other.signing_key),
            drain: self.drain.or(other.drain),
            grace: self.grace.or(other.grace),
        }
    }
}
