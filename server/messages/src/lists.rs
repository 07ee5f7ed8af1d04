//! Lists of one language, by CLDR: "a, b and c".

use icu_list::ListFormatter;
use icu_list::options::ListFormatterOptions;

use crate::Language;

/// The ways in which one language writes lists; the data is compiled in, so each is there.
pub struct Lists {
    all: Option<ListFormatter>,
    either: Option<ListFormatter>,
}

impl Lists {
    pub fn of(language: Language) -> Self {
        let (locale, options) = (language.locale(), ListFormatterOptions::default());
        Self {
            all: ListFormatter::try_new_and((&locale).into(), options).ok(),
            either: ListFormatter::try_new_or((&locale).into(), options).ok(),
        }
    }

    pub fn all(&self, items: &[String]) -> String {
        written(self.all.as_ref(), items)
    }

    pub fn either(&self, items: &[String]) -> String {
        written(self.either.as_ref(), items)
    }
}

fn written(formatter: Option<&ListFormatter>, items: &[String]) -> String {
    formatter.map_or_else(
        || items.join(", "),
        |list| list.format(items.iter()).to_string(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_of_a_list_comes_after_a_word() {
        let items = ["a", "b", "c"].map(str::to_owned);
        let written = Language::ALL.map(Lists::of);
        let written = written.map(|lists| [lists.all(&items), lists.either(&items)]);
        let expected = [
            ["a, b and c", "a, b or c"],
            ["a, b und c", "a, b oder c"],
            ["a, b et c", "a, b ou c"],
        ];
        assert_eq!(written, expected);
    }
}
