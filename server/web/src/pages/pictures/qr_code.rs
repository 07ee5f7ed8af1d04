//! A QR code (ISO/IEC 18004) as one SVG path of squares.

use app::Refusal;
use qrcode::types::Color;

/// Modules of quiet zone around a code (ISO/IEC 18004 asks for four; from memory).
const QUIET: usize = 4;

/// A code to be drawn.
pub struct QrCode {
    pub text: String,
    /// Modules from edge to edge, the quiet zone among them.
    pub size: usize,
    /// Its dark modules as the path of an SVG.
    pub path: String,
}

impl QrCode {
    /// # Errors
    /// A text that is too long for any code.
    pub fn new(text: String) -> Result<Self, Refusal> {
        let code =
            qrcode::QrCode::new(&text).map_err(|fault| Refusal::Internal(fault.to_string()))?;
        let width = code.width();
        let dark = code.to_colors().into_iter().enumerate();
        let squares = dark
            .filter(|(_, color)| *color == Color::Dark)
            .map(|(at, _)| {
                let (x, y) = (at % width + QUIET, at / width + QUIET);
                format!("M{x} {y}h1v1h-1z")
            });
        Ok(Self {
            size: width + 2 * QUIET,
            path: squares.collect(),
            text,
        })
    }
}
