//! The kinds of problems: code, status and title of each. The one place where rules meet HTTP.

use actix_web::http::StatusCode;
use app::Reason;

/// Faults of HTTP, which no rule of the league knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HttpFault {
    /// 400
    MalformedJson,
    /// 400
    InvalidParameter,
    /// 401
    Unauthenticated,
    /// 403
    Csrf,
    /// 404
    NotFound,
    /// 405
    MethodNotAllowed,
    /// 406
    NotAcceptable,
    /// 408
    TooSlow,
    /// 413
    PayloadTooLarge,
    /// 415
    UnsupportedMediaType,
    /// 422
    UnknownField,
    /// 429
    TooManyRequests,
    /// 503
    Unavailable,
    /// 500
    Internal,
}

/// A type of problems.
#[derive(Clone, Copy, Debug)]
pub struct ProblemKind {
    /// Last part of the type's address.
    pub code: &'static str,
    /// Status.
    pub status: StatusCode,
    /// Title: the same for every problem of the kind.
    pub title: &'static str,
}

impl ProblemKind {
    /// Every kind there is.
    pub fn all() -> impl Iterator<Item = Self> {
        HTTP_FAULTS
            .into_iter()
            .map(Self::http)
            .chain(Reason::ALL.iter().copied().map(Self::rule))
    }

    /// The kind of a fault of HTTP.
    pub fn http(fault: HttpFault) -> Self {
        use HttpFault as F;
        use StatusCode as S;
        let (code, status, title) = match fault {
            F::MalformedJson => ("malformed-json", S::BAD_REQUEST, "The body is no JSON"),
            F::InvalidParameter => (
                "invalid-parameter",
                S::BAD_REQUEST,
                "A parameter is not valid",
            ),
            F::Unauthenticated => ("sign-in-needed", S::UNAUTHORIZED, "Sign in first"),
            F::Csrf => (
                "csrf",
                S::FORBIDDEN,
                "This form did not come from our own page",
            ),
            F::NotFound => ("not-found", S::NOT_FOUND, "There is nothing here for you"),
            F::MethodNotAllowed => (
                "method-not-allowed",
                S::METHOD_NOT_ALLOWED,
                "Not in this way",
            ),
            F::NotAcceptable => ("not-acceptable", S::NOT_ACCEPTABLE, "Not in this format"),
            F::TooSlow => (
                "too-slow",
                S::REQUEST_TIMEOUT,
                "The body did not come in time",
            ),
            F::PayloadTooLarge => (
                "payload-too-large",
                S::PAYLOAD_TOO_LARGE,
                "The body is too large",
            ),
            F::UnsupportedMediaType => (
                "unsupported-media-type",
                S::UNSUPPORTED_MEDIA_TYPE,
                "The body is of another type than this takes",
            ),
            F::UnknownField => (
                "unknown-field",
                S::UNPROCESSABLE_ENTITY,
                "A field is not known here",
            ),
            F::TooManyRequests => (
                "too-many-requests",
                S::TOO_MANY_REQUESTS,
                "Too many requests; wait a little",
            ),
            F::Unavailable => (
                "unavailable",
                S::SERVICE_UNAVAILABLE,
                "Not now; try again soon",
            ),
            F::Internal => (
                "internal",
                S::INTERNAL_SERVER_ERROR,
                "A fault of ours; it has been noted",
            ),
        };
        Self {
            code,
            status,
            title,
        }
    }

    /// The kind of a rule's reason.
    pub fn rule(reason: Reason) -> Self {
        Self {
            code: reason.code(),
            status: status(reason),
            title: title(reason),
        }
    }
}

const HTTP_FAULTS: [HttpFault; 14] = [
    HttpFault::MalformedJson,
    HttpFault::InvalidParameter,
    HttpFault::Unauthenticated,
    HttpFault::Csrf,
    HttpFault::NotFound,
    HttpFault::MethodNotAllowed,
    HttpFault::NotAcceptable,
    HttpFault::TooSlow,
    HttpFault::PayloadTooLarge,
    HttpFault::UnsupportedMediaType,
    HttpFault::UnknownField,
    HttpFault::TooManyRequests,
    HttpFault::Unavailable,
    HttpFault::Internal,
];

fn status(reason: Reason) -> StatusCode {
    use Reason as R;
    match reason {
        R::IdempotencyKeyRequired => StatusCode::BAD_REQUEST,
        R::InvalidCredentials | R::InvalidToken | R::TokenReuse => StatusCode::UNAUTHORIZED,
        R::Forbidden
        | R::ConflictOfInterest
        | R::ApprovalRequired
        | R::NotAParticipant
        | R::SelfConfirmation => StatusCode::FORBIDDEN,
        R::SlugTaken
        | R::AlreadyMember
        | R::LastOwner
        | R::CatalogueNameTaken
        | R::SeasonState
        | R::SeasonFixed
        | R::SeasonFull
        | R::AlreadyRegistered
        | R::HandleTaken
        | R::PlayerLeft
        | R::DeadlinePassed
        | R::DeadlineImmutable
        | R::DeadlineAhead
        | R::ListLocked
        | R::ListsSealed
        | R::RoundAlreadyPaired
        | R::NotEnoughPlayers
        | R::NoRoundPossible
        | R::CommitmentMismatch
        | R::WeekState
        | R::RoundNotOpen
        | R::ResultFinal
        | R::SlipStateChanged
        | R::TooOpen
        | R::PhotoAlreadyUsed
        | R::TooManyPhotos
        | R::ClaimStateChanged => StatusCode::CONFLICT,
        R::UnknownVersion => StatusCode::NOT_FOUND,
        R::VersionMismatch => StatusCode::PRECONDITION_FAILED,
        R::PreconditionRequired => StatusCode::PRECONDITION_REQUIRED,
        R::Validation
        | R::PasswordTooShort
        | R::PasswordCompromised
        | R::GuardianConsentRequired
        | R::InvalidName
        | R::InvalidText
        | R::UnknownZone
        | R::InvalidLocalTime
        | R::InvalidCatalogue
        | R::RulesUnsatisfiable
        | R::PointsCapExceeded
        | R::ListBreaksRules
        | R::ImpossibleScore
        | R::ImageTooLarge
        | R::InvalidImage
        | R::IdempotencyKeyReused => StatusCode::UNPROCESSABLE_ENTITY,
        R::TooManyAttempts | R::RemindedAlready => StatusCode::TOO_MANY_REQUESTS,
    }
}

fn title(reason: Reason) -> &'static str {
    use Reason as R;
    match reason {
        R::InvalidCredentials => "E-mail and password do not belong together",
        R::InvalidToken => "The token is not valid",
        R::TokenReuse => "A refresh token was used twice",
        R::TooManyAttempts => "Too many failed attempts to sign in",
        R::Forbidden => "Your role does not allow this",
        R::ConflictOfInterest => "Not in a matter of your own",
        R::ApprovalRequired => "Somebody else must approve it",
        R::NotAParticipant => "Only the two players of the game",
        R::SelfConfirmation => "Nobody confirms their own report",
        R::Validation => "One or more fields are not valid",
        R::PasswordTooShort => "The password is too short",
        R::PasswordCompromised => "The password is too common",
        R::GuardianConsentRequired => "A guardian must agree",
        R::InvalidName => "The name is not valid",
        R::InvalidText => "The text is not valid",
        R::UnknownZone => "No such time zone",
        R::InvalidLocalTime => "This civil time is skipped or repeated by a clock change",
        R::SlugTaken => "The short name is used",
        R::AlreadyMember => "Already a member",
        R::LastOwner => "A club keeps an owner",
        R::CatalogueNameTaken => "The club has a catalogue of this name",
        R::InvalidCatalogue => "The catalogue has faults",
        R::RulesUnsatisfiable => "No list can keep the rules",
        R::SeasonState => "The season is not at this point",
        R::SeasonFixed => "Fixed since the season started",
        R::SeasonFull => "No place is left",
        R::AlreadyRegistered => "Already in this season",
        R::HandleTaken => "The handle is used in this season",
        R::PlayerLeft => "The player has withdrawn",
        R::DeadlinePassed => "The deadline has passed",
        R::DeadlineImmutable => "This deadline can no longer move so",
        R::ListLocked => "The lists of this week have been opened",
        R::DeadlineAhead => "The deadline has not come yet",
        R::PointsCapExceeded => "The list costs more than the cap",
        R::ListBreaksRules => "The list breaks a rule",
        R::VersionMismatch => "It was changed in between",
        R::PreconditionRequired => "Say which version you change, by If-Match",
        R::ListsSealed => "The lists are still sealed",
        R::RoundAlreadyPaired => "The round is published",
        R::NotEnoughPlayers => "Too few players",
        R::NoRoundPossible => "No round keeps the hard limits",
        R::CommitmentMismatch => "The proposal does not follow from its inputs",
        R::WeekState => "The week is not at this point",
        R::RemindedAlready => "Reminded a short while ago",
        R::RoundNotOpen => "The game has not begun",
        R::ResultFinal => "The result stands",
        R::SlipStateChanged => "The slip was answered in between",
        R::ImpossibleScore => "Counts that cannot happen",
        R::PhotoAlreadyUsed => "The photo was used before",
        R::TooManyPhotos => "No more photos in this season",
        R::ImageTooLarge => "The picture is too large",
        R::InvalidImage => "The picture cannot be read",
        R::UnknownVersion => "There is no such version",
        R::TooOpen => "Too much is open for an exact answer",
        R::ClaimStateChanged => "The claim was decided in between",
        R::IdempotencyKeyRequired => "An Idempotency-Key is needed",
        R::IdempotencyKeyReused => "The Idempotency-Key was used for another request",
    }
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn every_code_is_kebab_case_and_stands_for_one_kind() {
        let mut seen = HashSet::new();
        for kind in ProblemKind::all() {
            assert!(seen.insert(kind.code), "{} twice", kind.code);
            assert!(
                kind.code
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b == b'-')
            );
        }
    }
}
