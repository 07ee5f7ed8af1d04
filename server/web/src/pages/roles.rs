//! Roles in a club as people say them.

use league::role::Role;

use super::texts::{Phrase, Texts};

/// What somebody with this role does.
pub fn role_word(t: &Texts, role: Role) -> Phrase {
    match role {
        Role::Owner => t.role_owner,
        Role::Organiser => t.role_organiser,
        Role::Referee => t.role_referee,
        Role::Player => t.role_player,
    }
}

/// Whether the role rules on results and checks painting.
pub fn judges(role: Option<Role>) -> bool {
    matches!(role, Some(Role::Owner | Role::Organiser | Role::Referee))
}

/// Whether the role runs seasons.
pub fn runs_seasons(role: Option<Role>) -> bool {
    matches!(role, Some(Role::Owner | Role::Organiser))
}
