//! Addresses of what a request made, for `Location`.

use league::keys::{SeasonKey, WeekKey};

pub fn season(key: SeasonKey) -> String {
    let SeasonKey { club, season } = key;
    format!("/api/v1/clubs/{club}/seasons/{season}")
}

pub fn week(key: WeekKey) -> String {
    format!("{}/weeks/{}", season(key.season), key.week)
}
