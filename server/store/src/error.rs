//! The error of this crate: what can go wrong with the database, and what a broken uniqueness
//! constraint means.

mod condition;
mod constraint;

use condition::Condition;
pub use constraint::UniqueConstraint;
use diesel::result::{DatabaseErrorKind, Error};

/// Why a query or a transaction failed.
#[derive(Clone, Debug, thiserror::Error)]
pub enum StoreError {
    /// No such row, or not within the club and season asked for.
    #[error("not found")]
    NotFound,
    /// Somebody was first: a uniqueness constraint, by its meaning.
    #[error("taken: {0:?}")]
    UniqueViolation(UniqueConstraint),
    /// Two transactions stood in each other's way, or in a deadlock; the same request may be sent again.
    #[error("transactions collided")]
    SerializationConflict,
    /// The database cannot be reached or has no connection left.
    #[error("the database cannot be reached: {0}")]
    Unavailable(String),
    /// The database has no room on its disk, no memory, or a file that it cannot use.
    #[error("the database has no resources left: {0}")]
    NoResources(String),
    /// A bug, or a database that is not ours.
    #[error("{0}")]
    Internal(String),
}

/// The error of whatever is done in a transaction.
pub trait TransactionError: From<StoreError> {
    /// The error of the database behind it, unless that was given another meaning.
    fn store_error(&self) -> Option<&StoreError>;
}

impl TransactionError for StoreError {
    fn store_error(&self) -> Option<&StoreError> {
        Some(self)
    }
}

impl From<Error> for StoreError {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFound => Self::NotFound,
            Error::DatabaseError(DatabaseErrorKind::UniqueViolation, what) => {
                UniqueConstraint::of_error(what.constraint_name(), what.message()).map_or_else(
                    || Self::Internal(what.message().to_owned()),
                    Self::UniqueViolation,
                )
            }
            Error::DatabaseError(DatabaseErrorKind::SerializationFailure, _) => {
                Self::SerializationConflict
            }
            Error::DatabaseError(
                DatabaseErrorKind::ClosedConnection | DatabaseErrorKind::UnableToSendCommand,
                what,
            ) => Self::Unavailable(what.message().to_owned()),
            Error::DatabaseError(_, what) => {
                let message = what.message().to_owned();
                match Condition::of_message(&message) {
                    Some(Condition::Deadlock) => Self::SerializationConflict,
                    Some(Condition::NoResources) => Self::NoResources(message),
                    Some(Condition::Unavailable) => Self::Unavailable(message),
                    None => Self::Internal(message),
                }
            }
            Error::BrokenTransactionManager => {
                Self::Unavailable("the connection broke during a transaction".to_owned())
            }
            other => Self::Internal(other.to_string()),
        }
    }
}
