//! Who may do what in a club: one table.

use league::ids::{AccountId, ClubId};
use league::role::Role;
use store::Conn;

use crate::{Actor, Reason, Refusal, Viewer};

/// Acts that need a role in the club.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// Make officers, change roles, remove members.
    RunClub,
    /// Invite players, take invitations back.
    Invite,
    /// Import catalogues, set up and run seasons, open lists, pair, close weeks.
    RunSeason,
    /// Rule on results, check painting, repair rounds.
    Judge,
    /// Take part: join, hand in lists, report.
    Play,
    /// Read what the club alone may see.
    Look,
}

impl Action {
    /// Whether somebody with this role may.
    pub(crate) fn allowed_to(self, role: Role) -> bool {
        match self {
            Self::RunClub => role == Role::Owner,
            Self::Invite | Self::RunSeason => matches!(role, Role::Owner | Role::Organiser),
            Self::Judge => matches!(role, Role::Owner | Role::Organiser | Role::Referee),
            Self::Play | Self::Look => true,
        }
    }
}

/// The role of `actor`, if it allows `action` in `club`.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside the club, [`Reason::Forbidden`] to a member whose role is
/// not enough.
pub(crate) async fn may(
    conn: &mut Conn,
    actor: Actor,
    club: ClubId,
    action: Action,
) -> Result<Role, Refusal> {
    let role = role_of(conn, Some(actor.account), club)
        .await?
        .ok_or(Refusal::NotFound)?;
    if action.allowed_to(role) {
        Ok(role)
    } else {
        Err(Refusal::rule(
            Reason::Forbidden,
            format!("The role {} does not allow this.", role.word()),
        ))
    }
}

/// What the viewer is in the club, if anything.
pub(crate) async fn standing(
    conn: &mut Conn,
    viewer: Viewer,
    club: ClubId,
) -> Result<Option<Role>, Refusal> {
    role_of(conn, viewer.map(|actor| actor.account), club).await
}

async fn role_of(
    conn: &mut Conn,
    account: Option<AccountId>,
    club: ClubId,
) -> Result<Option<Role>, Refusal> {
    match account {
        None => Ok(None),
        Some(account) => Ok(store::clubs::find_role(conn, club, account).await?),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_referee_judges_and_no_more() {
        assert!(Action::Judge.allowed_to(Role::Referee));
        for action in [Action::RunClub, Action::Invite, Action::RunSeason] {
            assert!(!action.allowed_to(Role::Referee));
        }
    }

    #[test]
    fn only_owners_run_the_club() {
        assert_eq!(
            Role::ALL.map(|role| Action::RunClub.allowed_to(role)),
            [true, false, false, false]
        );
    }
}
