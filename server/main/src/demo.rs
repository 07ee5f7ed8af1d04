//! The invented season of the demo, loaded through the server's own interface.

mod client;
mod contents;
pub mod data;
mod guide;
mod held_clock;
mod league;
mod week;

pub use client::LoadError;
pub use contents::{DatabaseContents, inspect};
pub use guide::guide;
pub use held_clock::HeldClock;

use league::DemoLeague;
use week::LAST_PLAYED_WEEK;

/// Loads the demo into the empty server at `address`, whose clock is held: the season begins five
/// weeks ago, week 5 is being played, lists come in for week 6.
///
/// # Errors
/// [`LoadError`].
pub async fn load(address: &str, clock: &HeldClock) -> Result<(), LoadError> {
    eprintln!("Setting up the club and its season ...");
    let mut league = DemoLeague::create(address, clock).await?;
    for week in 1..=LAST_PLAYED_WEEK {
        eprintln!("Playing week {week} of {LAST_PLAYED_WEEK} ...");
        league.play(week).await?;
    }
    eprintln!("Handing in lists for the week after ...");
    league.begin(LAST_PLAYED_WEEK + 1).await
}
