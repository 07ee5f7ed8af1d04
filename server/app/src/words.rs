//! Names and reasons as people type them, refused in one way wherever they are typed.

use league::name::{Name, Text, TextFault};

use crate::{Reason, Refusal};

/// The name at `pointer`, which the refusal calls `what`.
///
/// # Errors
/// [`Reason::InvalidName`].
pub(crate) fn name(text: &str, pointer: &str, what: &str) -> Result<Name, Refusal> {
    Name::new(text).map_err(|fault| {
        let detail = format!("The {what} {fault}.");
        measured(Refusal::fault(Reason::InvalidName, pointer, detail), fault)
    })
}

/// The reason that an act is given, at `/reason`.
///
/// # Errors
/// [`Reason::InvalidText`].
pub(crate) fn reason(text: &str) -> Result<Text, Refusal> {
    Text::new(text).map_err(|fault| {
        let detail = format!("The reason {fault}.");
        measured(
            Refusal::fault(Reason::InvalidText, "/reason", detail),
            fault,
        )
    })
}

fn measured(refusal: Refusal, fault: TextFault) -> Refusal {
    match fault {
        TextFault::TooLong { limit, actual } => refusal.with(limit, actual),
        TextFault::Empty | TextFault::Character(_) | TextFault::Marks => refusal,
    }
}
