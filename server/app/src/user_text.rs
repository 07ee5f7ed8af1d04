//! Parsing of names and reasons that users type, with the same refusals everywhere.

use league::name::{Name, Text, TextFault};

use crate::{Reason, Refusal};

/// The name at `pointer`, which the refusal calls `what`.
///
/// # Errors
/// [`Reason::InvalidName`].
pub(crate) fn parse_name(text: &str, pointer: &str, what: &str) -> Result<Name, Refusal> {
    Name::new(text).map_err(|fault| {
        let detail = format!("The {what} {}.", fault.message());
        with_length(Refusal::fault(Reason::InvalidName, pointer, detail), fault)
    })
}

/// The reason that an act is given, at `/reason`.
///
/// # Errors
/// [`Reason::InvalidText`].
pub(crate) fn parse_reason(text: &str) -> Result<Text, Refusal> {
    Text::new(text).map_err(|fault| {
        let detail = format!("The reason {}.", fault.message());
        with_length(
            Refusal::fault(Reason::InvalidText, "/reason", detail),
            fault,
        )
    })
}

fn with_length(refusal: Refusal, fault: TextFault) -> Refusal {
    match fault {
        TextFault::TooLong { limit, actual } => refusal.with(limit, actual),
        TextFault::Empty | TextFault::Character(_) | TextFault::Marks => refusal,
    }
}
