//! The league's API as a client that knows its words: what people do are methods, what they read are
//! types. A method returns the answer, so that a story says which status it expects.

mod account;
mod catalogue;
mod catalogue_body;
mod club;
mod game;
mod list;
mod list_aids;
mod outlook;
mod painting;
mod player;
mod points;
mod public;
mod resource;
mod result;
mod round;
mod season;
mod season_body;
mod trail;
mod week;

pub use account::Tokens;
pub use catalogue::{CatalogueChanges, CatalogueClient, TouchedEntry};
pub use catalogue_body::{Catalogue, Unit};
pub use club::Club;
pub use game::{Game, GameClient, Slip};
pub use list::{CollectedUnit, Entry, List, ListClient, Receipt, WeekLists};
pub use list_aids::{Cut, Upgrade};
pub use painting::{Claim, TakenIn};
pub use player::{Joined, Player};
pub use points::{Ledger, Line, Ruling};
pub use public::{Directory, PublicSeason, PublicTable, Record};
pub use result::{double_loss, no_show, void};
pub use round::{Orders, Reason, Repair, Round, RoundClient};
pub use season::{NextSeason, Season};
pub use season_body::SeasonBody;
pub use week::{Week, WeekTimes};
