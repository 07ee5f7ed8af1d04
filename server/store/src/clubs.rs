//! Clubs and their memberships.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};
use league::time::Instant;
use uuid::Uuid;

use crate::schema::{accounts, clubs, memberships};
use crate::{Conn, StoreError};

#[derive(Clone, Debug)]
pub struct Club {
    pub id: ClubId,
    /// Short name in addresses.
    pub slug: String,
    pub name: String,
    /// When it was made here.
    pub founded_at: Instant,
}

/// One person of a club.
#[derive(Clone, Debug)]
pub struct Member {
    pub account: AccountId,
    /// Name shown to the club.
    pub name: String,
    pub role: ClubRole,
    pub since: Instant,
}

type ClubColumns = (Uuid, String, String, Instant);

fn club((id, slug, name, founded_at): ClubColumns) -> Club {
    Club {
        id: ClubId(id),
        slug,
        name,
        founded_at,
    }
}

/// # Errors
/// [`UniqueConstraint::ClubSlug`](crate::UniqueConstraint::ClubSlug), or an error of the database.
pub async fn create(conn: &mut Conn, club: &Club) -> Result<(), StoreError> {
    diesel::insert_into(clubs::table)
        .values((
            clubs::club_id.eq(club.id.0),
            clubs::slug.eq(&club.slug),
            clubs::name.eq(&club.name),
            clubs::founded_at.eq(club.founded_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(conn: &mut Conn, id: ClubId) -> Result<Club, StoreError> {
    Ok(club(
        clubs::table.find(id.0).first::<ClubColumns>(conn).await?,
    ))
}

/// The clubs of an account with its role in each, by name.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_by_account(
    conn: &mut Conn,
    account: AccountId,
) -> Result<Vec<(Club, ClubRole)>, StoreError> {
    let rows: Vec<(ClubColumns, String)> = clubs::table
        .inner_join(memberships::table.on(memberships::club_id.eq(clubs::club_id)))
        .filter(memberships::account_id.eq(account.0))
        .order((clubs::name, clubs::club_id))
        .select((clubs::all_columns, memberships::role))
        .load(conn)
        .await?;
    rows.into_iter()
        .map(|(row, text)| Ok((club(row), parse_role(&text)?)))
        .collect()
}

/// # Errors
/// [`UniqueConstraint::Membership`](crate::UniqueConstraint::Membership), or an error of the database.
pub async fn create_member(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
    role: ClubRole,
    since: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(memberships::table)
        .values((
            memberships::club_id.eq(club.0),
            memberships::account_id.eq(account.0),
            memberships::role.eq(role.as_str()),
            memberships::since.eq(since),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// The role of an account in a club, if it has one.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_role(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
) -> Result<Option<ClubRole>, StoreError> {
    let text: Option<String> = memberships::table
        .find((club.0, account.0))
        .select(memberships::role)
        .first(conn)
        .await
        .optional()?;
    text.map(|text| parse_role(&text)).transpose()
}

/// Everybody of a club, by name.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_members(conn: &mut Conn, club: ClubId) -> Result<Vec<Member>, StoreError> {
    let rows: Vec<(Uuid, String, String, Instant)> = memberships::table
        .inner_join(accounts::table.on(accounts::account_id.eq(memberships::account_id)))
        .filter(memberships::club_id.eq(club.0))
        .order((accounts::name, accounts::account_id))
        .select((
            memberships::account_id,
            accounts::name,
            memberships::role,
            memberships::since,
        ))
        .load(conn)
        .await?;
    rows.into_iter()
        .map(|(id, name, text, since)| {
            Ok(Member {
                account: AccountId(id),
                name,
                role: parse_role(&text)?,
                since,
            })
        })
        .collect()
}

/// The roles of a club's owners are locked until the transaction ends, so that two changes at once
/// cannot leave a club without an owner.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn lock_owners(conn: &mut Conn, club: ClubId) -> Result<Vec<AccountId>, StoreError> {
    let owners: Vec<Uuid> = memberships::table
        .filter(
            memberships::club_id
                .eq(club.0)
                .and(memberships::role.eq(ClubRole::Owner.as_str())),
        )
        .select(memberships::account_id)
        .for_update()
        .load(conn)
        .await?;
    Ok(owners.into_iter().map(AccountId).collect())
}

/// # Errors
/// [`StoreError::NotFound`] when the account is no member.
pub async fn update_role(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
    role: ClubRole,
) -> Result<(), StoreError> {
    let changed = diesel::update(memberships::table.find((club.0, account.0)))
        .set(memberships::role.eq(role.as_str()))
        .execute(conn)
        .await?;
    if changed == 0 {
        Err(StoreError::NotFound)
    } else {
        Ok(())
    }
}

/// # Errors
/// [`StoreError::NotFound`] when the account is no member.
pub async fn delete_member(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
) -> Result<(), StoreError> {
    let gone = diesel::delete(memberships::table.find((club.0, account.0)))
        .execute(conn)
        .await?;
    if gone == 0 {
        Err(StoreError::NotFound)
    } else {
        Ok(())
    }
}

pub(crate) fn parse_role(text: &str) -> Result<ClubRole, StoreError> {
    ClubRole::parse(text).ok_or_else(|| StoreError::Internal(format!("no role is called {text}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kept_word_that_is_no_role_is_a_fault_of_ours_and_not_an_absence() {
        for known in [
            ClubRole::Owner,
            ClubRole::Organiser,
            ClubRole::Referee,
            ClubRole::Player,
        ] {
            assert_eq!(parse_role(known.as_str()).unwrap(), known);
        }
        assert!(matches!(parse_role("guest"), Err(StoreError::Internal(_))));
    }
}
