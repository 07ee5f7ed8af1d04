use tokio::runtime::Runtime;

use crate::cli::Outcome;
use crate::database::Opened;
use crate::settings::Settings;

/// Brings the database to the newest schema.
///
/// # Errors
/// A sentence about the database that cannot be reached or changed.
pub fn migrate(settings: Settings) -> Outcome {
    let database = Opened::open(&settings.database)?;
    Runtime::new()?.block_on(store::migrate(database.url()))?;
    tracing::info!("the database has the newest schema");
    Ok(())
}
