//! `tallyhost restore`: puts a backup into the database.

use std::path::Path;

use tokio::runtime::Runtime;

use crate::backup::{CREATE_READERS, Programs, VersionsAfter};
use crate::cli::CommandResult;
use crate::database::OpenDatabase;
use crate::demo::{DatabaseContents, inspect};
use crate::settings::{Database, Settings};

const HOLDS_SOMETHING: &str = "this database holds something, and a backup takes the place of all of it: \
    name another database, or say so with --replace";

/// Puts a backup into the database, all of it or nothing. No server may run on it.
///
/// # Errors
/// A sentence about a database that is not empty, or about what kept the backup from being restored.
pub fn restore(settings: &Settings, path: &Path, replace: bool) -> CommandResult {
    let database = OpenDatabase::open(settings)?;
    let url = database.url();
    Runtime::new()?.block_on(async {
        if !replace && inspect(url).await? != DatabaseContents::Nothing {
            return Err(HOLDS_SOMETHING.into());
        }
        let client = store::connect_client(url).await?;
        let programs = Programs::for_server(&client, url, settings.postgres_bin.as_deref()).await?;
        if matches!(settings.database, Database::Embedded { .. }) {
            client.batch_execute(CREATE_READERS).await?;
        }
        drop(client);
        programs.restore(path, VersionsAfter::Raised)?;
        tracing::info!("the backup is restored; the next start brings it to the newest schema");
        Ok(())
    })
}
