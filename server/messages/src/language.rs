//! A language that the texts are written in.

use icu_locale_core::{Locale, locale};
use unic_langid::LanguageIdentifier;

/// A language that the texts are written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Language {
    /// As in Great Britain.
    English,
    /// As in Germany.
    German,
    /// As in France.
    French,
}

impl Language {
    /// Every language.
    pub const ALL: [Self; 3] = [Self::English, Self::German, Self::French];

    /// The BCP 47 code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            Self::French => "fr",
        }
    }

    /// What its speakers call it.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
            Self::French => "Français",
        }
    }

    /// The language of a BCP 47 tag, such as `de-AT`.
    pub fn of_tag(tag: &str) -> Option<Self> {
        let asked: LanguageIdentifier = tag.parse().ok()?;
        let mut all = Self::ALL.into_iter();
        all.find(|language| language.code() == asked.language.as_str())
    }

    /// The one of ours that an `Accept-Language` header likes best.
    pub fn accepted(header: &str) -> Option<Self> {
        let mut ranges: Vec<(&str, f32)> = header.split(',').map(range).collect();
        ranges.retain(|(_, quality)| *quality > 0.0);
        // Stable: of two that are liked alike, the first comes first.
        ranges.sort_by(|(_, one), (_, other)| other.total_cmp(one));
        ranges.into_iter().find_map(|(tag, _)| Self::of_tag(tag))
    }

    /// The locale by which dates, numbers and lists are written, with clocks of 24 hours.
    pub(crate) const fn locale(self) -> Locale {
        match self {
            Self::English => locale!("en-GB-u-hc-h23"),
            Self::German => locale!("de-DE-u-hc-h23"),
            Self::French => locale!("fr-FR-u-hc-h23"),
        }
    }
}

/// The tag and the quality of one range of an `Accept-Language` header.
fn range(range: &str) -> (&str, f32) {
    let (tag, weight) = range.split_once(';').unwrap_or((range, "q=1"));
    let quality = weight
        .trim()
        .strip_prefix("q=")
        .and_then(|q| q.parse().ok());
    (tag.trim(), quality.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_browser_is_given_what_it_likes_best() {
        let cases = [
            ("de", Some(Language::German)),
            ("de-AT, en;q=0.5", Some(Language::German)),
            ("en;q=0.5,fr;q=0.9", Some(Language::French)),
            ("it, fr-CH; q=0.8, en; q=0.8", Some(Language::French)),
            ("FR", Some(Language::French)),
            ("de;q=0, en;q=0.1", Some(Language::English)),
            ("den, *;q=0.1", None),
            ("", None),
            ("de;q=much", None),
        ];
        for (header, language) in cases {
            assert_eq!(Language::accepted(header), language, "{header}");
        }
    }
}
