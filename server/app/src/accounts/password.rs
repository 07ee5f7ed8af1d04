//! Passwords: what is accepted, and how they are kept.
//!
//! Argon2id with 19 MiB, 2 passes, 1 lane (the OWASP floor; RFC 9106 section 4 describes the
//! parameters). A password is hashed exactly as typed, without normalisation (ASVS 5.0 6.2.8).

use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};

use crate::{Desk, Fault, Reason, Refusal};

/// NIST SP 800-63B-4: a password that is the only factor.
const SHORTEST: usize = 15;
const LONGEST: usize = 256;
/// Common long passwords, of which the most used lists are made. From memory, not a full list.
const COMMON: [&str; 8] = [
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
pub(super) fn accept(password: &str) -> Result<(), Refusal> {
    let length = password.chars().count();
    let fault = |reason: Reason, detail: String, limit: usize| {
        let fault = Fault::new(reason.code(), "/password", detail.clone()).with(limit, length);
        Err(Refusal::faults(reason, detail, vec![fault]))
    };
    if length < SHORTEST {
        let detail = format!("The password has {length} characters; it needs {SHORTEST}.");
        return fault(Reason::PasswordTooShort, detail, SHORTEST);
    }
    if length > LONGEST {
        let detail =
            format!("The password has {length} characters; at most {LONGEST} are allowed.");
        return fault(Reason::Validation, detail, LONGEST);
    }
    let plain = password.to_lowercase();
    if COMMON.contains(&plain.as_str()) {
        return Err(Refusal::fault(
            Reason::PasswordCompromised,
            "/password",
            "The password is one of the first that are tried.",
        ));
    }
    Ok(())
}

/// Hashes on a blocking thread; waits its turn so that memory stays bounded.
pub(super) async fn hash(desk: &Desk, password: String) -> Result<String, Refusal> {
    off_thread(desk, move || {
        let hash = hasher()?
            .hash_password(password.as_bytes())
            .map_err(broken)?;
        Ok(hash.to_string())
    })
    .await
}

/// Whether `password` is the one of `hash`. Without a hash the same work is done for nothing, so that
/// the time taken does not tell whether the account exists.
pub(super) async fn matches(
    desk: &Desk,
    password: String,
    hash: Option<String>,
) -> Result<bool, Refusal> {
    let Some(hash) = hash else {
        self::hash(desk, password).await?;
        return Ok(false);
    };
    off_thread(desk, move || {
        let hash = PasswordHash::new(&hash).map_err(broken)?;
        Ok(hasher()?
            .verify_password(password.as_bytes(), &hash)
            .is_ok())
    })
    .await
}

async fn off_thread<T: Send + 'static>(
    desk: &Desk,
    work: impl FnOnce() -> Result<T, Refusal> + Send + 'static,
) -> Result<T, Refusal> {
    desk.hashing.take().await?.aside(work).await?
}

fn hasher() -> Result<Argon2<'static>, Refusal> {
    let params = Params::new(19_456, 2, 1, None).map_err(broken)?;
    Ok(Argon2::new(Algorithm::Argon2id, Version::V0x13, params))
}

fn broken(cause: impl std::fmt::Display) -> Refusal {
    Refusal::Broken(cause.to_string())
}
