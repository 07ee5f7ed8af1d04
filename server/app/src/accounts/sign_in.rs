//! Signing in with address and password.

use chrono::Duration;
use league::ids::AccountId;
use league::time::Instant;
use messages::accounts;
use store::Conn;
use store::sessions::Session;
use uuid::Uuid;

use super::password;
use super::register_account::parse_email;
use super::token::{SESSION_LIFETIME, Tokens};
use crate::{App, Reason, Refusal, secret};

/// Failures within [`ATTEMPT_WINDOW`] after which an address has to wait, whoever asks.
const MAX_ATTEMPTS: i32 = 10;
const ATTEMPT_WINDOW: Duration = Duration::minutes(15);

/// What somebody types to sign in.
#[derive(Clone, Debug)]
pub struct SignIn {
    pub email: String,
    pub password: String,
}

/// Opens a session.
///
/// # Errors
/// [`Reason::InvalidCredentials`], the same for an unknown address and a wrong password;
/// [`Reason::TooManyAttempts`] after ten failures within a quarter of an hour, also for the right
/// password and for unknown addresses.
pub async fn sign_in(app: &App, command: SignIn) -> Result<Tokens, Refusal> {
    let account = verify_credentials(app, command).await?;
    app.write(async |mut tx| {
        let now = store::clock::now(&tx).await?;
        let session = new_session(account, now);
        store::sessions::create(&mut tx, session, now).await?;
        let tokens = app.token_key.issue(&mut tx, session, now).await?;
        Ok(tx.commit(tokens))
    })
    .await
}

/// The account whose address and password these are.
///
/// # Errors
/// As [`sign_in`].
pub(super) async fn verify_credentials(app: &App, command: SignIn) -> Result<AccountId, Refusal> {
    let email = parse_email(&command.email).map_err(|_| invalid_credentials())?;
    let email_digest = secret::digest(&email);
    let account = app
        .write(async |mut tx| {
            let now = store::clock::now(&tx).await?;
            count_attempt(&mut tx, &email_digest, now).await?;
            let account = store::accounts::find_by_email(&mut tx, &email).await?;
            Ok::<_, Refusal>(tx.commit(account))
        })
        .await?;
    let (id, hash) = account
        .map(|account| (account.id, account.password_hash))
        .unzip();
    if !password::verify(app, command.password, hash).await? {
        return Err(invalid_credentials());
    }
    app.write(async |mut tx| {
        store::accounts::clear_attempts(&mut tx, &email_digest).await?;
        Ok::<_, Refusal>(tx.commit(()))
    })
    .await?;
    id.ok_or_else(invalid_credentials)
}

/// A session that begins now.
pub(super) fn new_session(account: AccountId, now: Instant) -> Session {
    Session {
        id: Uuid::new_v4(),
        account,
        ends_at: now + SESSION_LIFETIME,
    }
}

/// Each attempt counts as failed before the password is looked at, so that many at once do not all
/// find the number of those before them. A success forgets them.
async fn count_attempt(conn: &mut Conn, digest: &[u8], now: Instant) -> Result<(), Refusal> {
    let (attempts, from) =
        store::accounts::count_attempt(conn, digest, now, ATTEMPT_WINDOW).await?;
    if attempts <= MAX_ATTEMPTS {
        return Ok(());
    }
    Err(
        Refusal::rule(Reason::TooManyAttempts, accounts::too_many_attempts())
            .fact("retry_after", (from + ATTEMPT_WINDOW - now).num_seconds()),
    )
}

fn invalid_credentials() -> Refusal {
    Refusal::rule(Reason::InvalidCredentials, accounts::wrong_credentials())
}
