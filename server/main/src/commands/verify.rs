//! `tallyhost verify`: checks a public export offline.

use std::fs;
use std::io::{self, Write};
use std::path::Path;

use document::export::{SeasonExportDocument, verify as check};

use crate::cli::CommandResult;

/// Checks a public export offline and says what holds, what does not and what is still open.
///
/// # Errors
/// A file that is no export, or the number of promises that it breaks.
pub fn verify(file: &Path) -> CommandResult {
    let text = fs::read_to_string(file).map_err(|cause| format!("{}: {cause}", file.display()))?;
    let export: SeasonExportDocument = serde_json::from_str(&text)
        .map_err(|cause| format!("{} is no export of a season: {cause}", file.display()))?;
    let checked = check(&export);
    let mut output = io::stdout().lock();
    for (mark, sentences) in [
        ("holds ", &checked.held),
        ("open  ", &checked.open),
        ("BROKEN", &checked.broken),
    ] {
        for sentence in sentences {
            writeln!(output, "{mark}  {sentence}")?;
        }
    }
    match checked.broken.len() {
        0 => Ok(writeln!(output, "All {} checks hold.", checked.held.len())?),
        broken => Err(format!("{broken} checks do not hold").into()),
    }
}
