//! Signing in with address and password.

use chrono::Duration;
use league::ids::AccountId;
use league::time::Instant;
use store::Conn;
use store::sessions::Session;
use uuid::Uuid;

use super::password;
use super::register_account::address;
use super::token::{SESSION_FOR, Tokens};
use crate::{Desk, Reason, Refusal, secret};

/// Failures within [`WINDOW`] after which an address has to wait, whoever asks.
const MOST_FAILURES: i32 = 10;
const WINDOW: Duration = Duration::minutes(15);

/// What somebody types to sign in.
#[derive(Clone, Debug)]
pub struct SignIn {
    /// E-mail address.
    pub email: String,
    /// Password.
    pub password: String,
}

/// Opens a session.
///
/// # Errors
/// [`Reason::InvalidCredentials`], the same for an unknown address and a wrong password;
/// [`Reason::TooManyAttempts`] after ten failures within a quarter of an hour, also for the right
/// password and for unknown addresses.
pub async fn sign_in(desk: &Desk, command: SignIn) -> Result<Tokens, Refusal> {
    let account = recognise(desk, command).await?;
    desk.store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            let session = new_session(account, now);
            store::sessions::create(conn, session, now).await?;
            desk.key.issue(conn, session, now).await
        })
        .await
}

/// The account whose address and password these are.
///
/// # Errors
/// As [`sign_in`].
pub(super) async fn recognise(desk: &Desk, command: SignIn) -> Result<AccountId, Refusal> {
    let email = address(&command.email).map_err(|_| unknown())?;
    let email_digest = secret::digest(&email);
    let account = desk
        .store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            count_attempt(conn, &email_digest, now).await?;
            Ok::<_, Refusal>(store::accounts::find_by_email(conn, &email).await?)
        })
        .await?;
    let (id, hash) = account
        .map(|account| (account.id, account.password_hash))
        .unzip();
    if !password::matches(desk, command.password, hash).await? {
        return Err(unknown());
    }
    desk.store
        .write(async |conn| store::accounts::forget_attempts(conn, &email_digest).await)
        .await?;
    id.ok_or_else(unknown)
}

/// A session that begins now.
pub(super) fn new_session(account: AccountId, now: Instant) -> Session {
    Session {
        id: Uuid::new_v4(),
        account,
        ends_at: now + SESSION_FOR,
    }
}

/// Each attempt counts as failed before the password is looked at, so that many at once do not all
/// find the number of those before them. A success forgets them.
async fn count_attempt(conn: &mut Conn, digest: &[u8], now: Instant) -> Result<(), Refusal> {
    let (attempts, from) = store::accounts::count_attempt(conn, digest, now, WINDOW).await?;
    if attempts <= MOST_FAILURES {
        return Ok(());
    }
    Err(Refusal::rule(
        Reason::TooManyAttempts,
        "Too many failed attempts; wait a little.",
    )
    .fact("retry_after", (from + WINDOW - now).num_seconds()))
}

fn unknown() -> Refusal {
    Refusal::rule(
        Reason::InvalidCredentials,
        "E-mail and password do not belong together.",
    )
}
