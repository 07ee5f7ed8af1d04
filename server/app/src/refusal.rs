//! The error of a use case: why something was refused. Knows no HTTP: the web gives each reason its
//! status.

use std::fmt;

use messages::Message;
use serde_json::{Map, Value};
use store::{StoreError, TransactionError, UniqueConstraint};

macro_rules! reasons {
    ($($(#[$doc:meta])* $name:ident = $code:literal),+ $(,)?) => {
        /// Every reason for which the rules turn a request down, each with its stable code.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Reason {$($(#[$doc])* $name),+}

        impl Reason {
            /// All of them.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// The stable code: kebab case, never changed once published.
            pub fn code(self) -> &'static str {
                match self {$(Self::$name => $code),+}
            }
        }
    };
}

reasons! {
    /// E-mail and password do not belong together.
    InvalidCredentials = "invalid-credentials",
    /// The access token is missing its use: expired, forged or of an ended session.
    InvalidToken = "invalid-token",
    /// A refresh token was used twice; its whole family is ended.
    TokenReuse = "token-reuse",
    /// Too many failed attempts to sign in.
    TooManyAttempts = "too-many-attempts",
    /// The role does not allow it.
    Forbidden = "forbidden",
    /// Nobody rules on, repairs or edits a game of their own.
    ConflictOfInterest = "conflict-of-interest",
    /// A repair of one's own game is for somebody else to publish.
    ApprovalRequired = "approval-required",
    /// Only the two players of a game report it.
    NotAParticipant = "not-a-participant",
    /// Nobody confirms their own report.
    SelfConfirmation = "self-confirmation",
    /// One or more fields break a rule.
    Validation = "validation",
    /// A password that is the only factor has at least 15 characters.
    PasswordTooShort = "password-too-short",
    /// The password is too easy to guess.
    PasswordCompromised = "password-compromised",
    /// A minor needs a guardian's consent.
    GuardianConsentRequired = "guardian-consent-required",
    /// A name is empty, too long or hides something.
    InvalidName = "invalid-name",
    /// A text is too long or holds characters that hide something.
    InvalidText = "invalid-text",
    /// No such time zone in the IANA database.
    UnknownZone = "unknown-zone",
    /// A civil time that the clocks skip or repeat.
    InvalidLocalTime = "invalid-local-time",
    /// The short name of the club is used.
    SlugTaken = "slug-taken",
    /// The account is in already.
    AlreadyMember = "already-member",
    /// A club keeps at least one owner.
    LastOwner = "last-owner",
    /// The club has a catalogue of this name.
    CatalogueNameTaken = "catalogue-name-taken",
    /// The catalogue has faults.
    InvalidCatalogue = "invalid-catalogue",
    /// In some week no list of some faction can keep the rules of the season.
    RulesUnsatisfiable = "rules-unsatisfiable",
    /// The season is not in the state that this needs.
    SeasonState = "season-state",
    /// This part of a season is fixed once it has started.
    SeasonFixed = "season-fixed",
    /// No place is left.
    SeasonFull = "season-full",
    /// The account plays in this season already.
    AlreadyRegistered = "already-registered",
    /// The handle is used in this season.
    HandleTaken = "handle-taken",
    /// The player has withdrawn.
    PlayerLeft = "player-left",
    /// The deadline for lists has passed.
    DeadlinePassed = "deadline-passed",
    /// A deadline moves only before it has passed, and only to later.
    DeadlineImmutable = "deadline-immutable",
    /// The lists of the week have been opened.
    ListLocked = "list-locked",
    /// The deadline has not come yet.
    DeadlineAhead = "deadline-ahead",
    /// The list costs more than the cap.
    PointsCapExceeded = "points-cap-exceeded",
    /// The list breaks a rule of the season.
    ListBreaksRules = "list-breaks-rules",
    /// Somebody changed it in between.
    VersionMismatch = "version-mismatch",
    /// A change must say which version it changes.
    PreconditionRequired = "precondition-required",
    /// The lists must be opened first.
    ListsSealed = "lists-sealed",
    /// The round is published.
    RoundAlreadyPaired = "round-already-paired",
    /// Too few players to pair.
    NotEnoughPlayers = "not-enough-players",
    /// No round satisfies the hard limits.
    NoRoundPossible = "no-round-possible",
    /// The proposal does not follow from its inputs and the committed seed.
    CommitmentMismatch = "commitment-mismatch",
    /// The week is not at the point that this needs.
    WeekState = "week-state",
    /// People were reminded of this a short while ago.
    RemindedAlready = "reminded-already",
    /// The game has not begun yet.
    RoundNotOpen = "round-not-open",
    /// The result stands; only a ruling changes it.
    ResultFinal = "result-final",
    /// The slip was answered in between.
    SlipStateChanged = "slip-state-changed",
    /// Counts that cannot happen in this scenario.
    ImpossibleScore = "impossible-score",
    /// There is no such version of it.
    UnknownVersion = "unknown-version",
    /// The season has not come to this version.
    VersionAhead = "version-ahead",
    /// Too much is open for an exact answer.
    TooOpen = "too-open",
    /// The claim was decided in between.
    ClaimStateChanged = "claim-state-changed",
    /// The photo stands behind an earlier claim.
    PhotoAlreadyUsed = "photo-already-used",
    /// The player has as many photos in the season as one may have.
    TooManyPhotos = "too-many-photos",
    /// More pixels, or more pictures, than a photo may have.
    ImageTooLarge = "image-too-large",
    /// A picture that cannot be read.
    InvalidImage = "invalid-image",
    /// A request needs a key so that sending it twice acts once.
    IdempotencyKeyRequired = "idempotency-key-required",
    /// The key was used for another request.
    IdempotencyKeyReused = "idempotency-key-reused",
}

/// One thing wrong with a request.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Stable code of the fault.
    pub code: String,
    /// Where in the request body: a JSON Pointer (RFC 6901), empty for the whole.
    pub pointer: String,
    pub message: Message,
    /// What would have been allowed, where that is a value.
    pub limit: Option<Value>,
    /// What was given, where that helps.
    pub actual: Option<Value>,
    /// Where in a table: row and column, both counted from 1; column 0 means the whole row.
    pub cell: Option<(u64, usize)>,
}

impl Fault {
    /// A fault at a place.
    pub fn new(code: &str, pointer: impl Into<String>, message: Message) -> Self {
        Self {
            code: code.to_owned(),
            pointer: pointer.into(),
            message,
            limit: None,
            actual: None,
            cell: None,
        }
    }

    /// Adds the place in a table that was sent.
    #[must_use]
    pub fn at_cell(mut self, row: u64, column: usize) -> Self {
        self.cell = Some((row, column));
        self
    }

    /// Adds the limit and the actual value.
    #[must_use]
    pub fn with(mut self, limit: impl Into<Value>, actual: impl Into<Value>) -> Self {
        self.limit = Some(limit.into());
        self.actual = Some(actual.into());
        self
    }
}

impl Fault {
    /// The same fault of a part that lies below `pointer` in the body.
    #[must_use]
    pub fn below(mut self, pointer: &str) -> Self {
        self.pointer.insert_str(0, pointer);
        self
    }
}

impl From<document::fault::DocumentFault> for Fault {
    fn from(fault: document::fault::DocumentFault) -> Self {
        Self {
            code: fault.code,
            pointer: fault.pointer,
            message: fault.message,
            limit: fault.limit.map(Value::from),
            actual: fault.actual.map(Value::from),
            cell: None,
        }
    }
}

/// Why nothing was done.
#[derive(Clone, Debug)]
pub enum Refusal {
    /// Nobody is signed in, and somebody must be.
    SignInNeeded,
    /// Absent, or not to be known by this person: the two look alike.
    NotFound,
    /// A rule says no.
    Rule {
        /// Which.
        reason: Reason,
        /// About the whole.
        message: Message,
        /// Values that belong to it.
        facts: Map<String, Value>,
        /// Every single fault, where there are several.
        faults: Vec<Fault>,
    },
    /// Nothing wrong with the request; it may be sent again after so many seconds.
    Unavailable {
        /// Seconds to wait.
        retry_after: u64,
        /// For the log alone.
        cause: UnavailableCause,
    },
    /// A bug; the cause is for the log alone.
    Internal(String),
}

/// Why a request could not be served for the moment.
#[derive(Clone, Debug)]
pub enum UnavailableCause {
    /// The database could not serve it.
    Database(StoreError),
    /// This process could not.
    Process(String),
}

impl fmt::Display for UnavailableCause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Database(error) => error.fmt(f),
            Self::Process(cause) => cause.fmt(f),
        }
    }
}

impl Refusal {
    /// Nothing wrong with the request; it may be sent again after so many seconds.
    pub fn unavailable(retry_after: u64, cause: impl Into<String>) -> Self {
        Self::Unavailable {
            retry_after,
            cause: UnavailableCause::Process(cause.into()),
        }
    }

    /// A rule says no.
    pub fn rule(reason: Reason, message: Message) -> Self {
        Self::Rule {
            reason,
            message,
            facts: Map::new(),
            faults: Vec::new(),
        }
    }

    /// Several faults at once under one reason.
    pub fn faults(reason: Reason, message: Message, faults: Vec<Fault>) -> Self {
        Self::Rule {
            reason,
            message,
            facts: Map::new(),
            faults,
        }
    }

    /// One fault, which also names the reason.
    pub fn fault(reason: Reason, pointer: &str, message: Message) -> Self {
        Self::of_fault(reason, Fault::new(reason.code(), pointer, message))
    }

    /// One fault with a code of its own.
    pub fn of_fault(reason: Reason, fault: Fault) -> Self {
        Self::faults(reason, fault.message.clone(), vec![fault])
    }

    /// The same with limit and actual value of its one fault.
    #[must_use]
    pub fn with(mut self, limit: impl Into<Value>, actual: impl Into<Value>) -> Self {
        if let Self::Rule { faults, .. } = &mut self
            && let Some(fault) = faults.pop()
        {
            faults.push(fault.with(limit, actual));
        }
        self
    }

    /// The same with every fault below `pointer`.
    #[must_use]
    pub fn below(mut self, pointer: &str) -> Self {
        if let Self::Rule { faults, .. } = &mut self {
            *faults = std::mem::take(faults)
                .into_iter()
                .map(|fault| fault.below(pointer))
                .collect();
        }
        self
    }

    /// Adds a value to a rule's facts.
    #[must_use]
    pub fn fact(mut self, name: &str, value: impl Into<Value>) -> Self {
        if let Self::Rule { facts, .. } = &mut self {
            facts.insert(name.to_owned(), value.into());
        }
        self
    }
}

impl From<StoreError> for Refusal {
    fn from(error: StoreError) -> Self {
        let retry_after = match error {
            StoreError::NotFound => return Self::NotFound,
            StoreError::UniqueViolation(_) | StoreError::Internal(_) => {
                return Self::Internal(error.to_string());
            }
            StoreError::SerializationConflict => 1,
            StoreError::Unavailable(_) => 2,
            StoreError::NoResources(_) => 10,
        };
        Self::Unavailable {
            retry_after,
            cause: UnavailableCause::Database(error),
        }
    }
}

impl TransactionError for Refusal {
    fn store_error(&self) -> Option<&StoreError> {
        match self {
            Self::Unavailable {
                cause: UnavailableCause::Database(error),
                ..
            } => Some(error),
            _ => None,
        }
    }
}

/// Turns the violation of one uniqueness constraint into the refusal that it means here; any other error
/// stays what it is.
pub(crate) fn map_unique_violation<T>(
    result: Result<T, StoreError>,
    constraint: UniqueConstraint,
    refusal: impl FnOnce() -> Refusal,
) -> Result<T, Refusal> {
    result.map_err(|error| match error {
        StoreError::UniqueViolation(violated) if violated == constraint => refusal(),
        other => other.into(),
    })
}
