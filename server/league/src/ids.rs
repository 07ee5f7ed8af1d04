//! Ids: a type for each kind of thing, so that two kinds cannot be mixed up.

use std::fmt;
use std::str::FromStr;

use messages::Value;
use uuid::Uuid;

macro_rules! identity {
    ($($(#[$doc:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub Uuid);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = uuid::Error;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                Uuid::parse_str(text).map(Self)
            }
        }
    )+};
}

identity! {
    /// A person who can sign in.
    AccountId,
    /// A club: the owner of seasons, catalogues and memberships.
    ClubId,
    /// A catalogue of a club, across its versions.
    CatalogueId,
    /// One season of one club.
    SeasonId,
    /// One person's place in one season.
    PlayerId,
    /// One pairing round of a week.
    RoundId,
    /// One game (or bye) of a published round.
    GameId,
    /// One army list as a player hands it in for a week.
    ListId,
    /// One claim that models were painted.
    ClaimId,
    /// One ruling of a referee.
    RulingId,
}

impl From<PlayerId> for Value {
    fn from(player: PlayerId) -> Self {
        player.to_string().into()
    }
}
