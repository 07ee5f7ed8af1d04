//! The database a command works with: one that others run, or the embedded one.

use crate::postgres::{Cluster, Durability, Fault};
use crate::settings::{Database, Secret};

/// A database that can be reached. The embedded one runs as long as this value lives.
#[derive(Debug)]
pub struct Opened {
    url: Secret,
    _cluster: Option<Cluster>,
}

impl Opened {
    /// Starts the embedded database, or takes the address of another.
    ///
    /// # Errors
    /// [`Fault`] of the embedded database.
    pub fn open(database: &Database) -> Result<Self, Fault> {
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
