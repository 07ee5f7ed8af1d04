//! `tallyhost backup`: writes the database into a file, and tries that it can be restored.

use std::io::{self, Write};
use std::path::Path;

use tokio::runtime::Runtime;

use crate::backup::{BackupFile, Contents, Programs, restore_on_trial};
use crate::cli::CommandResult;
use crate::database::OpenDatabase;
use crate::demo::{DatabaseContents, inspect};
use crate::settings::Settings;

/// Writes the database into a file; servers may go on meanwhile. The file is only there once a trial has
/// restored all of it.
///
/// # Errors
/// A sentence about what kept it from being written or restored.
pub fn backup(settings: &Settings, path: &Path) -> CommandResult {
    let database = OpenDatabase::open_beside_server(settings)?;
    let url = database.url();
    Runtime::new()?.block_on(async {
        if inspect(url).await? == DatabaseContents::Nothing {
            return Err("this database holds nothing: no backup was written".into());
        }
        let client = store::connect_client(url).await?;
        let programs = Programs::for_server(&client, url, settings.postgres_bin.as_deref()).await?;
        let error = |cause: io::Error| format!("{}: {cause}", path.display());
        let (file, draft) = BackupFile::begin(path).map_err(error)?;
        let snapshot = Contents::hold_snapshot(&client).await?;
        programs.dump(&snapshot, draft)?;
        let kept = Contents::read(&client).await?;
        drop(client);
        let restored = restore_on_trial(&programs, file.draft()).await?;
        let differing = kept.differences(&restored);
        if !differing.is_empty() {
            let tables = differing.join(", ");
            return Err(
                format!("no backup was written: restored on trial, {tables} differ").into(),
            );
        }
        file.finish().map_err(error)?;
        let (tables, rows) = kept.size();
        let path = path.display();
        Ok(writeln!(
            io::stdout(),
            "{path}: {tables} tables, {rows} rows; restored on trial, all the same"
        )?)
    })
}
