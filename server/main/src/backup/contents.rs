//! What a database holds: for each table the number of its rows and a sum of what stands in them.

use std::collections::BTreeMap;

use tokio_postgres::{Client, Error};

/// What a snapshot shows must read alike in any session.
const SETTINGS: &str =
    "set timezone = 'UTC'; set datestyle = 'ISO, YMD'; set intervalstyle = 'postgres';
    set bytea_output = 'hex'; set extra_float_digits = 1; set statement_timeout = 0";

const SNAPSHOT: &str = "begin isolation level repeatable read read only";

const TABLES: &str = "select format('%I.%I', schemaname, tablename) from pg_tables
    where schemaname = 'public' order by 1";

/// The rows of a database by table, as one snapshot shows them.
#[derive(Debug, PartialEq, Eq)]
pub struct Contents(BTreeMap<String, Rows>);

#[derive(Debug, PartialEq, Eq)]
struct Rows {
    count: i64,
    /// The same for the same rows in any order.
    sum: String,
}

impl Contents {
    /// Holds a snapshot open for as long as the client lives, and tells its name to pg_dump.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn hold_snapshot(client: &Client) -> Result<String, Error> {
        client.batch_execute(SETTINGS).await?;
        client.batch_execute(SNAPSHOT).await?;
        let name = client.query_one("select pg_export_snapshot()", &[]).await?;
        name.try_get(0)
    }

    /// Reads all of it, within the snapshot that the client holds.
    ///
    /// # Errors
    /// Those of the database.
    pub async fn read(client: &Client) -> Result<Self, Error> {
        let mut contents = BTreeMap::new();
        for row in client.query(TABLES, &[]).await? {
            let table: String = row.try_get(0)?;
            let rows = format!(
                "select count(*), coalesce(sum(hashtextextended(t::text, 0)), 0)::text from {table} t"
            );
            let rows = client.query_one(&rows, &[]).await?;
            let (count, sum) = (rows.try_get(0)?, rows.try_get(1)?);
            contents.insert(table, Rows { count, sum });
        }
        Ok(Self(contents))
    }

    /// The tables that do not hold the same.
    pub fn differences<'a>(&'a self, other: &'a Self) -> Vec<&'a str> {
        let tables = self.0.keys().chain(other.0.keys());
        let mut differing: Vec<&str> = tables
            .filter(|table| self.0.get(*table) != other.0.get(*table))
            .map(String::as_str)
            .collect();
        differing.sort_unstable();
        differing.dedup();
        differing
    }

    /// The number of tables, and of rows in all of them.
    pub fn size(&self) -> (usize, i64) {
        (self.0.len(), self.0.values().map(|rows| rows.count).sum())
    }
}
