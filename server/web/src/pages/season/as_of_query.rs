//! Query of pages that show a season as of some week.

use league::week::WeekNo;
use serde::Deserialize;

#[derive(Deserialize)]
pub struct AsOfQuery {
    week: Option<u8>,
}

impl AsOfQuery {
    /// The week, if a season can have it; what it cannot have is passed over.
    pub fn week(&self) -> Option<WeekNo> {
        self.week.and_then(WeekNo::new)
    }
}
