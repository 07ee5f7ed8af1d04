//! Carrying players over into the next season: who comes along, and when collections may.

use messages::{Message, seasons};

use super::SeasonState;

/// Who comes along, and with what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carry {
    /// Everybody joins for themselves.
    Nobody,
    /// Everybody who plays to the end has a place, with handle, faction, nights and household.
    Players,
    /// They also bring their units; a painted unit stays painted.
    PlayersWithCollections,
}

/// Collections of a season that is not over: paint of its last weeks would be lost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CollectionsTooEarly;

impl CollectionsTooEarly {
    pub fn message(self) -> Message {
        seasons::collections_too_early()
    }
}

impl Carry {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Nobody => "nobody",
            Self::Players => "players",
            Self::PlayersWithCollections => "players_with_collections",
        }
    }

    /// Whether it can be carried over from a season in this state.
    ///
    /// # Errors
    /// [`CollectionsTooEarly`].
    pub fn check(self, old: SeasonState) -> Result<(), CollectionsTooEarly> {
        match (self, old) {
            (Self::Nobody | Self::Players, _)
            | (Self::PlayersWithCollections, SeasonState::Ended) => Ok(()),
            (Self::PlayersWithCollections, SeasonState::Draft | SeasonState::Started) => {
                Err(CollectionsTooEarly)
            }
        }
    }
}

/// Why somebody does not come along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftOut {
    /// Withdrew from the old season.
    Withdrew,
    /// Is no member of the club any more.
    LeftTheClub,
    /// The newest version of the catalogue does not have the faction.
    FactionGone,
}

impl LeftOut {
    /// `None` for somebody who comes along.
    pub fn find(has_withdrawn: bool, is_member: bool, has_faction: bool) -> Option<Self> {
        if has_withdrawn {
            Some(Self::Withdrew)
        } else if !is_member {
            Some(Self::LeftTheClub)
        } else if !has_faction {
            Some(Self::FactionGone)
        } else {
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_played_to_the_end_is_in_the_club_and_has_a_faction_comes_along() {
        assert_eq!(LeftOut::find(false, true, true), None);
        assert_eq!(LeftOut::find(true, false, false), Some(LeftOut::Withdrew));
        let left = LeftOut::find(false, false, false);
        assert_eq!(left, Some(LeftOut::LeftTheClub));
        let gone = LeftOut::find(false, true, false);
        assert_eq!(gone, Some(LeftOut::FactionGone));
    }

    #[test]
    fn collections_come_along_once_the_season_is_over() {
        use SeasonState::{Draft, Ended, Started};
        let check = |carry: Carry| [Draft, Started, Ended].map(|old| carry.check(old).is_ok());
        assert_eq!(check(Carry::Players), [true; 3]);
        assert_eq!(check(Carry::Nobody), [true; 3]);
        let collections = check(Carry::PlayersWithCollections);
        assert_eq!(collections, [false, false, true]);
    }
}
