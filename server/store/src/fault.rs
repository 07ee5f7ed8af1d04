//! What can go wrong between the rules and the database.

use diesel::result::{DatabaseErrorKind, Error};

/// A fault of the store.
#[derive(Debug, thiserror::Error)]
pub enum Fault {
    /// No such row, or not within the club and season asked for.
    #[error("not found")]
    NotFound,
    /// Somebody was first: a uniqueness constraint, by its meaning.
    #[error("taken: {0:?}")]
    Taken(Taken),
    /// Transactions stood in each other's way; the same request may simply be sent again.
    #[error("transactions collided")]
    Collided,
    /// The database cannot be reached or has no connection left.
    #[error("the database cannot be reached: {0}")]
    Unavailable(String),
    /// A bug, or a database that is not ours.
    #[error("{0}")]
    Broken(String),
}

macro_rules! taken {
    ($($(#[$doc:meta])* $name:ident = $constraint:literal),+ $(,)?) => {
        /// What was taken already, one name for each uniqueness constraint of the schema.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Taken {$($(#[$doc])* $name),+}

        impl Taken {
            fn of(constraint: &str) -> Option<Self> {
                match constraint {$($constraint => Some(Self::$name),)+ _ => None}
            }
        }
    };
}

taken! {
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

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFound => Self::NotFound,
            Error::DatabaseError(DatabaseErrorKind::UniqueViolation, what) => what
                .constraint_name()
                .and_then(Taken::of)
                .map_or_else(|| Self::Broken(what.message().to_owned()), Self::Taken),
            Error::DatabaseError(DatabaseErrorKind::SerializationFailure, _) => Self::Collided,
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
                Self::Collided
            }
            Error::BrokenTransactionManager => {
                Self::Unavailable("the connection broke during a transaction".to_owned())
            }
            other => Self::Broken(other.to_string()),
        }
    }
}
