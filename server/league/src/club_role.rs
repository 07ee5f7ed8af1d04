//! Club roles: what a person is in a club.

/// A role in a club, from the most rights to the fewest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ClubRole {
    /// Runs the club: people, roles and everything an organiser may.
    Owner,
    /// Runs seasons.
    Organiser,
    /// Rules on disputes and checks painting.
    Referee,
    Player,
}

impl ClubRole {
    /// Every role, from the most rights to the fewest.
    pub const ALL: [Self; 4] = [Self::Owner, Self::Organiser, Self::Referee, Self::Player];

    /// The word used in data.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Owner => "owner",
            Self::Organiser => "organiser",
            Self::Referee => "referee",
            Self::Player => "player",
        }
    }

    /// The role of that word.
    pub fn parse(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|role| role.as_str() == word)
    }
}
