//! The invented season of the demo, loaded through the server's own interface.

mod client;
mod clock;
pub mod data;
mod found;
mod guide;
mod league;
mod week;

pub use client::LoadFault;
pub use clock::HeldClock;
pub use found::{Found, look};
pub use guide::guide;

use league::League;
use week::PLAYED;

/// Loads the demo into the empty server at `address`, whose clock is held: the season begins five
/// weeks ago, week 5 is being played, lists come in for week 6.
///
/// # Errors
/// [`LoadFault`].
pub async fn load(address: &str, clock: &HeldClock) -> Result<(), LoadFault> {
    let mut league = League::found(address, clock).await?;
    for week in 1..=PLAYED {
        league.play(week).await?;
    }
    league.begin(PLAYED + 1).await
}
