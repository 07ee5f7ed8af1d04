//! Bands of the margin table.

use crate::points::{LeaguePoints, Points};

/// What margins are measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarginUnit {
    /// Game points as they are.
    GamePoints,
    /// Game points in percent of the week's cap, so that early and late weeks weigh alike.
    PercentOfCap,
}

/// League points for a range of margins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band {
    /// Smallest margin of the band.
    pub from: u32,
    /// Largest margin of the band; `None` for the last, which is open.
    pub to: Option<u32>,
    /// For the side with more.
    pub winner: LeaguePoints,
    pub loser: LeaguePoints,
}

/// The band that holds `margin`: the last that it reaches, so that 19.5 % lies in "10 to 19".
pub(super) fn find_band(
    bands: &[Band],
    unit: MarginUnit,
    margin: u32,
    cap: Points,
) -> Option<&Band> {
    let reached = |band: &&Band| match unit {
        MarginUnit::GamePoints => margin >= band.from,
        MarginUnit::PercentOfCap => {
            u64::from(margin) * 100 >= u64::from(band.from) * u64::from(cap.get())
        }
    };
    bands.iter().rev().find(reached)
}
