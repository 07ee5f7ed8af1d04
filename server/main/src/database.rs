//! The database of a command: one that others run, or the embedded one.

use std::path::Path;

use crate::cli::CommandError;
use crate::postgres::{Cluster, Durability, PostgresError};
use crate::settings::{Database, Secret, Settings};

/// A database that is running. The embedded one runs as long as this value lives, unless a server runs it.
#[derive(Debug)]
pub struct OpenDatabase {
    url: Secret,
    _cluster: Option<Cluster>,
}

impl OpenDatabase {
    /// Starts the embedded database, or takes the address of another. Warns of one that somebody on the way
    /// could read or stand in for.
    ///
    /// # Errors
    /// A sentence about the embedded database, or about the address.
    pub fn open(settings: &Settings) -> Result<Self, CommandError> {
        match &settings.database {
            Database::At(url) => Self::at(url),
            Database::Embedded { data } => Ok(Self::start(data, settings)?),
        }
    }

    /// The same, but an embedded database that a server runs is reached through its socket.
    ///
    /// # Errors
    /// As [`OpenDatabase::open`].
    pub fn open_beside_server(settings: &Settings) -> Result<Self, CommandError> {
        match &settings.database {
            Database::At(url) => Self::at(url),
            Database::Embedded { data } => match Self::start(data, settings) {
                Err(PostgresError::InUse { folder, .. }) => Ok(Self {
                    url: Secret::from(Cluster::url_in(&folder)),
                    _cluster: None,
                }),
                started => Ok(started?),
            },
        }
    }

    /// The address for clients of PostgreSQL.
    pub fn url(&self) -> &str {
        self.url.reveal()
    }

    fn at(url: &Secret) -> Result<Self, CommandError> {
        if let Some(warning) = store::transport_warning(url.reveal())? {
            tracing::warn!("{warning}");
        }
        Ok(Self {
            url: url.clone(),
            _cluster: None,
        })
    }

    fn start(data: &Path, settings: &Settings) -> Result<Self, PostgresError> {
        let postgres_bin = settings.postgres_bin.as_deref();
        let cluster = Cluster::start(data, postgres_bin, Durability::Full)?;
        Ok(Self {
            url: Secret::from(cluster.url()),
            _cluster: Some(cluster),
        })
    }
}
