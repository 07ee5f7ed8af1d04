//! The database of a command: one that others run, or the embedded one.

use crate::cli::CommandError;
use crate::postgres::{Cluster, Durability};
use crate::settings::{Database, Secret};

/// A database that is running. The embedded one runs as long as this value lives.
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
    pub fn open(database: &Database) -> Result<Self, CommandError> {
        match database {
            Database::At(url) => {
                if let Some(warning) = store::transport_warning(url.reveal())? {
                    tracing::warn!("{warning}");
                }
                Ok(Self {
                    url: url.clone(),
                    _cluster: None,
                })
            }
            Database::Embedded { data, postgres_bin } => {
                let cluster = Cluster::start(data, postgres_bin.as_deref(), Durability::Full)?;
                let url = Secret::from(cluster.url());
                Ok(Self {
                    url,
                    _cluster: Some(cluster),
                })
            }
        }
    }

    /// The address for clients of PostgreSQL.
    pub fn url(&self) -> &str {
        self.url.reveal()
    }
}
