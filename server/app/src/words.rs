//! Names and reasons as people type them, refused in one way wherever they are typed.

use league::name::{Name, Text};

use crate::{Reason, Refusal};

/// The name at `pointer`, which the refusal calls `what`.
///
/// # Errors
/// [`Reason::InvalidName`].
pub(crate) fn name(text: &str, pointer: &str, what: &str) -> Result<Name, Refusal> {
    Name::new(text).map_err(|fault| {
        Refusal::fault(Reason::InvalidName, pointer, format!("The {what} {fault}."))
    })
}

/// The reason that an act is given, at `/reason`.
///
/// # Errors
/// [`Reason::InvalidText`].
pub(crate) fn reason(text: &str) -> Result<Text, Refusal> {
    Text::new(text).map_err(|fault| {
        Refusal::fault(
            Reason::InvalidText,
            "/reason",
            format!("The reason {fault}."),
        )
    })
}
