//! What a process serves: everything, or a part of it.

use std::fmt;

use clap::ValueEnum;
use serde::Deserialize;

/// What a process serves. One that serves all is enough for a club; many clubs have a few desks, and
/// as many readers of standings as their onlookers need.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, ValueEnum)]
#[serde(rename_all = "kebab-case")]
pub enum ProcessRole {
    /// Desk and standings in one.
    #[default]
    All,
    /// What people do, signed in; the clock's own acts; migrations.
    Desk,
    /// What everybody may read. Needs no signing key and writes nothing: a replica is enough.
    Standings,
}

impl ProcessRole {
    /// Whether it takes requests that change something.
    pub fn has_desk(self) -> bool {
        self != Self::Standings
    }

    /// Whether it runs the read service.
    pub fn has_standings(self) -> bool {
        self != Self::Desk
    }
}

impl fmt::Display for ProcessRole {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::All => "all",
            Self::Desk => "desk",
            Self::Standings => "standings",
        })
    }
}
