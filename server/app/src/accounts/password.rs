//! Password policy and password hashing.
//!
//! How hard a password is to guess is rated by zxcvbn (Wheeler, USENIX Security 2016).
//!
//! Argon2id with 19 MiB, 2 passes, 1 lane (the OWASP floor; RFC 9106 section 4 describes the
//! parameters). A password is hashed exactly as typed, without normalisation (ASVS 5.0 6.2.8).

use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};

use zxcvbn::feedback::Warning;
use zxcvbn::{Score, zxcvbn};

use crate::{App, Fault, Reason, Refusal};
use messages::{Message, accounts};

/// NIST SP 800-63B-4: a password that is the only factor.
const MIN_LENGTH: usize = 15;
const MAX_LENGTH: usize = 256;
/// Characters that are rated. A whole password is no easier to guess than its beginning, and one of
/// nothing but substitutes for letters (`4@8(`) takes time that grows steeply with what is rated.
const MAX_RATED: usize = 32;
/// "Safely unguessable" on zxcvbn's scale from 0 to 4.
const MIN_SCORE: Score = Score::Three;

/// Checks a new password; `own` is what others know of its owner.
///
/// # Errors
/// [`Reason::PasswordTooShort`], [`Reason::PasswordCompromised`] or [`Reason::Validation`];
/// [`Refusal::Unavailable`] when too many are rated at once.
pub(super) async fn must_be_acceptable(
    app: &App,
    password: &str,
    own: Vec<String>,
) -> Result<(), Refusal> {
    must_be_of_length(password)?;
    let rated: String = password.chars().take(MAX_RATED).collect();
    match run_queued(app, move || Ok(find_weakness(&rated, &own))).await? {
        None => Ok(()),
        Some(weakness) => Err(Refusal::fault(
            Reason::PasswordCompromised,
            "/password",
            weakness,
        )),
    }
}

fn must_be_of_length(password: &str) -> Result<(), Refusal> {
    let length = password.chars().count();
    let fault = |reason: Reason, message: Message, limit: usize| {
        let fault = Fault::new(reason.code(), "/password", message).with(limit, length);
        Err(Refusal::of_fault(reason, fault))
    };
    if length < MIN_LENGTH {
        let message = accounts::password_too_short(length, MIN_LENGTH);
        return fault(Reason::PasswordTooShort, message, MIN_LENGTH);
    }
    if length > MAX_LENGTH {
        let message = accounts::password_too_long(length, MAX_LENGTH);
        return fault(Reason::Validation, message, MAX_LENGTH);
    }
    Ok(())
}

/// Why a password is too easy to guess, where it is.
fn find_weakness(password: &str, own: &[String]) -> Option<Message> {
    let own: Vec<&str> = own.iter().map(String::as_str).collect();
    let rating = zxcvbn(password, &own);
    if rating.score() >= MIN_SCORE {
        return None;
    }
    let warning = rating.feedback().and_then(|feedback| feedback.warning());
    let Some(warning) = warning else {
        return Some(accounts::password_guessable());
    };
    Some(match warning {
        Warning::ThisIsATop10Password
        | Warning::ThisIsATop100Password
        | Warning::ThisIsACommonPassword
        | Warning::ThisIsSimilarToACommonlyUsedPassword => accounts::password_too_common(),
        Warning::StraightRowsOfKeysAreEasyToGuess
        | Warning::ShortKeyboardPatternsAreEasyToGuess => accounts::password_of_keys(),
        Warning::RepeatsLikeAaaAreEasyToGuess
        | Warning::RepeatsLikeAbcAbcAreOnlySlightlyHarderToGuess => accounts::password_of_repeats(),
        Warning::SequencesLikeAbcAreEasyToGuess => accounts::password_of_sequences(),
        Warning::RecentYearsAreEasyToGuess | Warning::DatesAreOftenEasyToGuess => {
            accounts::password_of_dates()
        }
        Warning::NamesAndSurnamesByThemselvesAreEasyToGuess
        | Warning::CommonNamesAndSurnamesAreEasyToGuess => accounts::password_of_names(),
        Warning::AWordByItselfIsEasyToGuess => accounts::password_guessable(),
    })
}

/// Hashes on a blocking thread; waits its turn so that memory stays bounded.
pub(super) async fn hash(app: &App, password: String) -> Result<String, Refusal> {
    run_queued(app, move || {
        let hash = hasher()?
            .hash_password(password.as_bytes())
            .map_err(internal_error)?;
        Ok(hash.to_string())
    })
    .await
}

/// Whether `password` is the one of `hash`. Without a hash the same work is done for nothing, so that
/// the time taken does not tell whether the account exists.
pub(super) async fn verify(
    app: &App,
    password: String,
    hash: Option<String>,
) -> Result<bool, Refusal> {
    let Some(hash) = hash else {
        self::hash(app, password).await?;
        return Ok(false);
    };
    run_queued(app, move || {
        let hash = PasswordHash::new(&hash).map_err(internal_error)?;
        Ok(hasher()?
            .verify_password(password.as_bytes(), &hash)
            .is_ok())
    })
    .await
}

async fn run_queued<T: Send + 'static>(
    app: &App,
    work: impl FnOnce() -> Result<T, Refusal> + Send + 'static,
) -> Result<T, Refusal> {
    app.password_queue
        .acquire()
        .await?
        .run_blocking(work)
        .await?
}

fn hasher() -> Result<Argon2<'static>, Refusal> {
    let params = Params::new(19_456, 2, 1, None).map_err(internal_error)?;
    Ok(Argon2::new(Algorithm::Argon2id, Version::V0x13, params))
}

fn internal_error(cause: impl std::fmt::Display) -> Refusal {
    Refusal::Internal(cause.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_guessed_early_is_named_and_a_sentence_passes() {
        let own = ["Oskrel", "oskrel@example.org"].map(str::to_owned);
        let weakness = |password| find_weakness(password, &own);
        for (password, expected) in [
            ("passwordpassword", Some(accounts::password_of_repeats())),
            ("abcdefghijklmnop", Some(accounts::password_of_sequences())),
            ("aaaaaaaaaaaaaaa", Some(accounts::password_of_repeats())),
            ("administrator123", Some(accounts::password_guessable())),
            ("oskrel@example.org", Some(accounts::password_guessable())),
            ("six lanterns on the ford", None),
        ] {
            assert_eq!(weakness(password), expected, "{password}");
        }
    }
}
