//! Accounts, and the count of failed attempts to sign in.

use chrono::{DateTime, Duration, Utc};
use diesel::dsl::case_when;
use diesel::prelude::*;
use diesel::sql_types::{Integer, Timestamptz};
use diesel::upsert::excluded;
use diesel_async::RunQueryDsl;
use league::ids::AccountId;
use league::time::Instant;
use uuid::Uuid;

use crate::schema::{accounts, sign_in_failures};
use crate::{Conn, StoreError};

/// A person who can sign in.
#[derive(Clone, Debug)]
pub struct Account {
    pub id: AccountId,
    /// Address in lower case.
    pub email: String,
    /// Name shown to clubs.
    pub name: String,
    /// Argon2id in PHC string format.
    pub password_hash: String,
    /// Under the age of consent where the person lives.
    pub minor: bool,
    /// A guardian agreed; always so for a minor.
    pub guardian_consent: bool,
    /// When the account was made.
    pub registered_at: Instant,
}

#[derive(Queryable, Selectable, Insertable)]
#[diesel(table_name = accounts)]
struct AccountColumns {
    account_id: Uuid,
    email: String,
    name: String,
    password_hash: String,
    minor: bool,
    guardian_consent: bool,
    registered_at: DateTime<Utc>,
}

impl From<AccountColumns> for Account {
    fn from(row: AccountColumns) -> Self {
        Self {
            id: AccountId(row.account_id),
            email: row.email,
            name: row.name,
            password_hash: row.password_hash,
            minor: row.minor,
            guardian_consent: row.guardian_consent,
            registered_at: row.registered_at,
        }
    }
}

/// Makes an account, or leaves the one with this address as it is. Either writes a row, so that the commit
/// waits for the disk in both cases: how long it takes tells nobody which it was.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create_unless_known(conn: &mut Conn, account: Account) -> Result<(), StoreError> {
    let row = AccountColumns {
        account_id: account.id.0,
        email: account.email,
        name: account.name,
        password_hash: account.password_hash,
        minor: account.minor,
        guardian_consent: account.guardian_consent,
        registered_at: account.registered_at,
    };
    diesel::insert_into(accounts::table)
        .values(row)
        .on_conflict(accounts::email)
        .do_update()
        .set(accounts::email.eq(excluded(accounts::email)))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, id: AccountId) -> Result<Account, StoreError> {
    let row: AccountColumns = accounts::table
        .find(id.0)
        .select(AccountColumns::as_select())
        .first(conn)
        .await?;
    Ok(row.into())
}

/// # Errors
/// A [`StoreError`] of the database; an unknown address is `None`.
pub async fn find_by_email(conn: &mut Conn, email: &str) -> Result<Option<Account>, StoreError> {
    let row: Option<AccountColumns> = accounts::table
        .filter(accounts::email.eq(email))
        .select(AccountColumns::as_select())
        .first(conn)
        .await
        .optional()?;
    Ok(row.map(Account::from))
}

/// Counts one more attempt to sign in to an address; answers how many there are and since when. A
/// window older than `window` begins anew at `now`. Attempts at once count one after the other.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn count_attempt(
    conn: &mut Conn,
    email_digest: &[u8],
    now: Instant,
    window: Duration,
) -> Result<(i32, Instant), StoreError> {
    use sign_in_failures::dsl;
    let stale = dsl::window_from.le(now - window);
    Ok(diesel::insert_into(dsl::sign_in_failures)
        .values((
            dsl::email_digest.eq(email_digest),
            dsl::failures.eq(1),
            dsl::window_from.eq(now),
        ))
        .on_conflict(dsl::email_digest)
        .do_update()
        .set((
            dsl::failures
                .eq(case_when(stale, 1.into_sql::<Integer>()).otherwise(dsl::failures + 1)),
            dsl::window_from
                .eq(case_when(stale, now.into_sql::<Timestamptz>()).otherwise(dsl::window_from)),
        ))
        .returning((dsl::failures, dsl::window_from))
        .get_result(conn)
        .await?)
}

/// Forgets the attempts of an address, after it signed in.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn clear_attempts(conn: &mut Conn, email_digest: &[u8]) -> Result<(), StoreError> {
    diesel::delete(sign_in_failures::table.find(email_digest))
        .execute(conn)
        .await?;
    Ok(())
}
