use std::io;

use crate::cli::Outcome;

/// Prints the OpenAPI document, as it is kept in `openapi/`.
///
/// # Errors
/// Standard output that cannot be written.
pub fn openapi() -> Outcome {
    let mut output = io::stdout().lock();
    serde_json::to_writer_pretty(&mut output, &web::openapi(standings::openapi()))?;
    Ok(io::Write::write_all(&mut output, b"\n")?)
}
