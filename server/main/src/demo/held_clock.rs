//! The clock of the league while the demo is being loaded.
//!
//! Five weeks are played within seconds, so the one SQL function that tells the time is replaced and
//! put back. No other command can do that: a server that serves has only the real clock.

use chrono::{DateTime, NaiveDate, Utc};
use tokio_postgres::{Client, Error};

use crate::cli::CommandError;

/// Stands in the clock as long as it is held.
pub(super) const MARK: &str = "held while the demo is being loaded";

const REAL: &str = "select pg_get_functiondef('league_clock()'::regprocedure)";

/// A database whose clock is held. Call [`HeldClock::release`], whatever happens.
pub struct HeldClock {
    client: Client,
    real: String,
}

impl HeldClock {
    /// Replaces the SQL function that tells the time by one that stands at this moment.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn hold(url: &str) -> Result<Self, CommandError> {
        let client = store::connect_client(url).await?;
        let real = client.query_one(REAL, &[]).await?.try_get(0)?;
        let held = Self { client, real };
        let now = held.client.query_one("select league_clock()", &[]).await?;
        held.set(now.try_get(0)?).await?;
        Ok(held)
    }

    /// Sets the time.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn set(&self, time: DateTime<Utc>) -> Result<(), Error> {
        let function = format!(
            "create or replace function league_clock() returns timestamptz
            language sql volatile as $$select timestamptz '{}' /* {MARK} */$$",
            time.to_rfc3339()
        );
        self.client.batch_execute(&function).await
    }

    /// The day that it really is in a time zone.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn today(&self, zone: &str) -> Result<NaiveDate, Error> {
        let query = "select (clock_timestamp() at time zone $1)::date";
        self.client.query_one(query, &[&zone]).await?.try_get(0)
    }

    /// Puts the real function back.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn release(self) -> Result<(), Error> {
        self.client.batch_execute(&self.real).await
    }
}
