//! Parsing of names and reasons that users type, with the same refusals everywhere.

use league::name::{Name, Text, TextFault};
use messages::{Message, refusals};

use crate::{Reason, Refusal};

/// The name at `pointer`. `refused` makes the message of what is wrong with it.
///
/// # Errors
/// [`Reason::InvalidName`].
pub(crate) fn parse_name(
    text: &str,
    pointer: &str,
    refused: impl FnOnce(Message) -> Message,
) -> Result<Name, Refusal> {
    Name::new(text).map_err(|fault| {
        let message = refused(fault.message());
        with_length(Refusal::fault(Reason::InvalidName, pointer, message), fault)
    })
}

/// The reason that an act is given, at `/reason`.
///
/// # Errors
/// [`Reason::InvalidText`].
pub(crate) fn parse_reason(text: &str) -> Result<Text, Refusal> {
    Text::new(text).map_err(|fault| {
        let message = refusals::reason_fault(fault.message());
        with_length(
            Refusal::fault(Reason::InvalidText, "/reason", message),
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
