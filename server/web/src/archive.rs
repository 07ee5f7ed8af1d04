//! Files in one archive (PKWARE APPNOTE 6.3, section 4): the same files make the same bytes.

use std::io::{Cursor, Write};

use zip::result::ZipResult;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

/// The archive of these files, each with its name.
///
/// # Errors
/// More than an archive can hold.
pub fn zip(files: impl IntoIterator<Item = (String, Vec<u8>)>) -> ZipResult<Vec<u8>> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default());
    for (name, bytes) in files {
        archive.start_file(name, options)?;
        archive.write_all(&bytes)?;
    }
    Ok(archive.finish()?.into_inner())
}
