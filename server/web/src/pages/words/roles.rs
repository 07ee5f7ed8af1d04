//! Roles in a club, in the reader's language.

use std::borrow::Cow;

use league::club_role::ClubRole;

use messages::Texts;

/// The name of a role.
pub fn role_label(t: Texts, role: ClubRole) -> Cow<'static, str> {
    match role {
        ClubRole::Owner => t.role_owner(),
        ClubRole::Organiser => t.role_organiser(),
        ClubRole::Referee => t.role_referee(),
        ClubRole::Player => t.role_player(),
    }
}

/// Whether the role rules on results and checks painting.
pub fn can_judge(role: Option<ClubRole>) -> bool {
    matches!(
        role,
        Some(ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee)
    )
}

/// Whether the role runs seasons.
pub fn can_run_seasons(role: Option<ClubRole>) -> bool {
    matches!(role, Some(ClubRole::Owner | ClubRole::Organiser))
}
