//! The kinds of problems: code, status and title of each. The one place where rules meet HTTP.

use actix_web::http::StatusCode;
use app::Reason;
use messages::{Message, problems};

/// Faults of HTTP, which no rule of the league knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HttpFault {
    /// 400
    MalformedJson,
    /// 400
    BrokenBody,
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
    pub title: fn() -> Message,
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
        let (code, status, title): (_, _, fn() -> Message) = match fault {
            F::MalformedJson => (
                "malformed-json",
                S::BAD_REQUEST,
                problems::problem_malformed_json,
            ),
            F::BrokenBody => ("broken-body", S::BAD_REQUEST, problems::problem_broken_body),
            F::InvalidParameter => (
                "invalid-parameter",
                S::BAD_REQUEST,
                problems::problem_invalid_parameter,
            ),
            F::Unauthenticated => (
                "sign-in-needed",
                S::UNAUTHORIZED,
                problems::problem_sign_in_needed,
            ),
            F::Csrf => ("csrf", S::FORBIDDEN, problems::problem_csrf),
            F::NotFound => ("not-found", S::NOT_FOUND, problems::problem_not_found),
            F::MethodNotAllowed => (
                "method-not-allowed",
                S::METHOD_NOT_ALLOWED,
                problems::problem_method_not_allowed,
            ),
            F::NotAcceptable => (
                "not-acceptable",
                S::NOT_ACCEPTABLE,
                problems::problem_not_acceptable,
            ),
            F::TooSlow => ("too-slow", S::REQUEST_TIMEOUT, problems::problem_too_slow),
            F::PayloadTooLarge => (
                "payload-too-large",
                S::PAYLOAD_TOO_LARGE,
                problems::problem_payload_too_large,
            ),
            F::UnsupportedMediaType => (
                "unsupported-media-type",
                S::UNSUPPORTED_MEDIA_TYPE,
                problems::problem_unsupported_media_type,
            ),
            F::UnknownField => (
                "unknown-field",
                S::UNPROCESSABLE_ENTITY,
                problems::problem_unknown_field,
            ),
            F::TooManyRequests => (
                "too-many-requests",
                S::TOO_MANY_REQUESTS,
                problems::problem_too_many_requests,
            ),
            F::Unavailable => (
                "unavailable",
                S::SERVICE_UNAVAILABLE,
                problems::problem_unavailable,
            ),
            F::Internal => (
                "internal",
                S::INTERNAL_SERVER_ERROR,
                problems::problem_internal,
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

const HTTP_FAULTS: [HttpFault; 15] = [
    HttpFault::MalformedJson,
    HttpFault::BrokenBody,
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
        | R::VersionAhead
        | R::ImageTooLarge
        | R::InvalidImage
        | R::IdempotencyKeyReused => StatusCode::UNPROCESSABLE_ENTITY,
        R::TooManyAttempts | R::RemindedAlready => StatusCode::TOO_MANY_REQUESTS,
    }
}

fn title(reason: Reason) -> fn() -> Message {
    use Reason as R;
    match reason {
        R::InvalidCredentials => problems::problem_invalid_credentials,
        R::InvalidToken => problems::problem_invalid_token,
        R::TokenReuse => problems::problem_token_reuse,
        R::TooManyAttempts => problems::problem_too_many_attempts,
        R::Forbidden => problems::problem_forbidden,
        R::ConflictOfInterest => problems::problem_conflict_of_interest,
        R::ApprovalRequired => problems::problem_approval_required,
        R::NotAParticipant => problems::problem_not_a_participant,
        R::SelfConfirmation => problems::problem_self_confirmation,
        R::Validation => problems::problem_validation,
        R::PasswordTooShort => problems::problem_password_too_short,
        R::PasswordCompromised => problems::problem_password_compromised,
        R::GuardianConsentRequired => problems::problem_guardian_consent_required,
        R::InvalidName => problems::problem_invalid_name,
        R::InvalidText => problems::problem_invalid_text,
        R::UnknownZone => problems::problem_unknown_zone,
        R::InvalidLocalTime => problems::problem_invalid_local_time,
        R::SlugTaken => problems::problem_slug_taken,
        R::AlreadyMember => problems::problem_already_member,
        R::LastOwner => problems::problem_last_owner,
        R::CatalogueNameTaken => problems::problem_catalogue_name_taken,
        R::InvalidCatalogue => problems::problem_invalid_catalogue,
        R::RulesUnsatisfiable => problems::problem_rules_unsatisfiable,
        R::SeasonState => problems::problem_season_state,
        R::SeasonFixed => problems::problem_season_fixed,
        R::SeasonFull => problems::problem_season_full,
        R::AlreadyRegistered => problems::problem_already_registered,
        R::HandleTaken => problems::problem_handle_taken,
        R::PlayerLeft => problems::problem_player_left,
        R::DeadlinePassed => problems::problem_deadline_passed,
        R::DeadlineImmutable => problems::problem_deadline_immutable,
        R::ListLocked => problems::problem_list_locked,
        R::DeadlineAhead => problems::problem_deadline_ahead,
        R::PointsCapExceeded => problems::problem_points_cap_exceeded,
        R::ListBreaksRules => problems::problem_list_breaks_rules,
        R::VersionMismatch => problems::problem_version_mismatch,
        R::PreconditionRequired => problems::problem_precondition_required,
        R::ListsSealed => problems::problem_lists_sealed,
        R::RoundAlreadyPaired => problems::problem_round_already_paired,
        R::NotEnoughPlayers => problems::problem_not_enough_players,
        R::NoRoundPossible => problems::problem_no_round_possible,
        R::CommitmentMismatch => problems::problem_commitment_mismatch,
        R::WeekState => problems::problem_week_state,
        R::RemindedAlready => problems::problem_reminded_already,
        R::RoundNotOpen => problems::problem_round_not_open,
        R::ResultFinal => problems::problem_result_final,
        R::SlipStateChanged => problems::problem_slip_state_changed,
        R::ImpossibleScore => problems::problem_impossible_score,
        R::PhotoAlreadyUsed => problems::problem_photo_already_used,
        R::TooManyPhotos => problems::problem_too_many_photos,
        R::ImageTooLarge => problems::problem_image_too_large,
        R::InvalidImage => problems::problem_invalid_image,
        R::UnknownVersion => problems::problem_unknown_version,
        R::VersionAhead => problems::problem_version_ahead,
        R::TooOpen => problems::problem_too_open,
        R::ClaimStateChanged => problems::problem_claim_state_changed,
        R::IdempotencyKeyRequired => problems::problem_idempotency_key_required,
        R::IdempotencyKeyReused => problems::problem_idempotency_key_reused,
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
