//! Reminders to whoever owes a list or a result, shown on their own page and nowhere else.

mod find_reminders;
mod owing;
mod send_reminders;

pub use find_reminders::{PendingReminder, find_own_reminders, find_reminders};
pub use owing::ReminderKind;
pub use send_reminders::{SentReminder, send_reminders};
