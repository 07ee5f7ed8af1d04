//! The error of this crate: what can go wrong with the database, and what a broken uniqueness
//! constraint means.

use diesel::result::{DatabaseErrorKind, Error};

/// Why a query or a transaction failed.
#[derive(Debug, thiserror::Error)]
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
    /// A bug, or a database that is not ours.
    #[error("{0}")]
    Internal(String),
}

macro_rules! unique_constraints {
    ($($(#[$doc:meta])* $name:ident = $constraint:literal),+ $(,)?) => {
        /// The uniqueness constraints of the schema, each by its meaning.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum UniqueConstraint {$($(#[$doc])* $name),+}

        impl UniqueConstraint {
            fn from_name(constraint: &str) -> Option<Self> {
                match constraint {$($constraint => Some(Self::$name),)+ _ => None}
            }
        }
    };
}

unique_constraints! {
    /// An account with this e-mail exists.
    Email = "accounts_email_taken",
    /// A club with this short name exists.
    ClubSlug = "clubs_slug_taken",
    /// This account is a member of the club.
    Membership = "memberships_pkey",
    /// The club has a catalogue of this name.
    CatalogueName = "catalogues_name_taken",
    /// Another import made this version number at the same moment.
    CatalogueVersion = "catalogue_versions_pkey",
    /// This account plays in the season.
    PlayerAccount = "players_account_taken",
    /// The handle is used in the season.
    PlayerHandle = "players_handle_taken",
    /// The week has this version of this round.
    Round = "rounds_version_taken",
    /// The game has a slip.
    Slip = "slips_pkey",
    /// The player has leave already.
    LateLeave = "late_leaves_pkey",
}

impl From<Error> for StoreError {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFound => Self::NotFound,
            Error::DatabaseError(DatabaseErrorKind::UniqueViolation, what) => what
                .constraint_name()
                .and_then(UniqueConstraint::from_name)
                .map_or_else(
                    || Self::Internal(what.message().to_owned()),
                    Self::UniqueViolation,
                ),
            Error::DatabaseError(DatabaseErrorKind::SerializationFailure, _) => {
                Self::SerializationConflict
            }
            Error::DatabaseError(
                DatabaseErrorKind::ClosedConnection | DatabaseErrorKind::UnableToSendCommand,
                what,
            ) => Self::Unavailable(what.message().to_owned()),
            Error::DatabaseError(_, what)
                if what.message().starts_with("terminating connection") =>
            {
                Self::Unavailable(what.message().to_owned())
            }
            Error::DatabaseError(_, what) if what.message().contains("deadlock detected") => {
                Self::SerializationConflict
            }
            Error::BrokenTransactionManager => {
                Self::Unavailable("the connection broke during a transaction".to_owned())
            }
            other => Self::Internal(other.to_string()),
        }
    }
}
