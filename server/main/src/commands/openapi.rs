//! `tallyhost openapi`: prints the OpenAPI document.

use std::io;

use crate::cli::CommandResult;

/// Prints the OpenAPI document, as it is kept in `openapi/`.
///
/// # Errors
/// Standard output that cannot be written.
pub fn openapi() -> CommandResult {
    let mut output = io::stdout().lock();
    serde_json::to_writer_pretty(&mut output, &web::openapi(read_service::openapi()))?;
    Ok(io::Write::write_all(&mut output, b"\n")?)
}
