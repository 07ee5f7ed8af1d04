//! The database of a command: one that others run, or the embedded one.

use crate::postgres::{Cluster, Durability, PostgresError};
use crate::settings::{Database, Secret};

/// A database that is running. The embedded one runs as long as this value lives.
#[derive(Debug)]
pub struct OpenDatabase {
    url: Secret,
    _cluster: Option<Cluster>,
}

impl OpenDatabase {
    /// Starts the embedded database, or takes the address of another.
    ///
    /// # Errors
    /// [`PostgresError`] of the embedded database.
    pub fn open(database: &Database) -> Result<Self, PostgresError> {
        match database {
            Database::At(url) => Ok(Self {
                url: url.clone(),
                _cluster: None,
            }),
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
