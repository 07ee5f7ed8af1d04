//! Access control: who may do what in a club, what they may see of a season, and under which rules.

mod authorize;
pub(crate) mod policy;
mod rules_cache;
mod view_season;

pub use authorize::Action;
pub(crate) use authorize::{authorize, must_allow, role_of};
pub(crate) use rules_cache::RulesCache;
pub(crate) use view_season::{
    RunningSeason, SeasonView, authorize_player, must_be_started, must_play, view_season,
};
