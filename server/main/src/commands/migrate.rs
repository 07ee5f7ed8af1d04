//! `tallyhost migrate`: brings the database to the newest schema.

use tokio::runtime::Runtime;

use crate::cli::CommandResult;
use crate::database::OpenDatabase;
use crate::settings::Settings;

/// Brings the database to the newest schema.
///
/// # Errors
/// A sentence about the database that cannot be reached or changed.
pub fn migrate(settings: Settings) -> CommandResult {
    let database = OpenDatabase::open(&settings)?;
    Runtime::new()?.block_on(store::migrate(database.url()))?;
    tracing::info!("the database has the newest schema");
    Ok(())
}
