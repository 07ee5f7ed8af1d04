//! Password policy and password hashing.
//!
//! Argon2id with 19 MiB, 2 passes, 1 lane (the OWASP floor; RFC 9106 section 4 describes the
//! parameters). A password is hashed exactly as typed, without normalisation (ASVS 5.0 6.2.8).

use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};

use crate::{App, Fault, Reason, Refusal};
use messages::{Message, accounts};

/// NIST SP 800-63B-4: a password that is the only factor.
const MIN_LENGTH: usize = 15;
const MAX_LENGTH: usize = 256;
/// Common long passwords, of which the most used lists are made. From memory, not a full list.
const COMMON_PASSWORDS: [&str; 8] = [
    "passwordpassword",
    "password12345678",
    "123456789012345",
    "1234567890123456",
    "qwertyuiopasdfgh",
    "aaaaaaaaaaaaaaa",
    "iloveyouiloveyou",
    "administrator123",
];

/// # Errors
/// [`Reason::PasswordTooShort`], [`Reason::PasswordCompromised`] or [`Reason::Validation`].
pub(super) fn must_be_acceptable(password: &str) -> Result<(), Refusal> {
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
    let plain = password.to_lowercase();
    if COMMON_PASSWORDS.contains(&plain.as_str()) {
        return Err(Refusal::fault(
            Reason::PasswordCompromised,
            "/password",
            accounts::password_too_common(),
        ));
    }
    Ok(())
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
