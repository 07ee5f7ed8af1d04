//! Texts that are never logged.

use std::convert::Infallible;
use std::fmt;
use std::str::FromStr;

use serde::Deserialize;

/// A text that no log and no message shows.
#[derive(Clone, Deserialize)]
pub struct Secret(String);

impl Secret {
    /// The text itself, for the one who needs it.
    pub fn reveal(&self) -> &str {
        &self.0
    }
}

impl FromStr for Secret {
    type Err = Infallible;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Ok(Self(text.to_owned()))
    }
}

impl From<String> for Secret {
    fn from(text: String) -> Self {
        Self(text)
    }
}

impl fmt::Debug for Secret {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("(not shown)")
    }
}
