//! Fuzzy index of names: finds them in spite of plurals, abbreviations and small typing errors.

use strsim::damerau_levenshtein;

use super::tokens::{normalized_text, tokenize};

/// Alternatives that are shown beside a guess.
const MAX_ALTERNATIVES: usize = 3;

/// Names that can be found, each with what it stands for.
#[derive(Clone, Debug)]
pub struct NameIndex<T> {
    names: Vec<IndexedName<T>>,
}

#[derive(Clone, Debug)]
struct IndexedName<T> {
    form: String,
    letters: [u8; 36],
    value: T,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NameMatch<T> {
    /// What it stands for.
    pub value: T,
    /// How well it fits; [`EXACT`] when it is the name itself.
    pub score: usize,
    /// What else it could be.
    pub alternatives: Vec<T>,
}

impl<T> NameMatch<T> {
    fn exact(value: T) -> Self {
        Self {
            value,
            score: EXACT,
            alternatives: Vec::new(),
        }
    }

    /// Whether it is the name itself or the name with small typing errors.
    pub fn is_close(&self) -> bool {
        self.score > PARTIAL
    }
}

/// The score of the name itself.
pub const EXACT: usize = 1_000;
/// The score of a name typed with errors, less for each of them.
const MISTYPED: usize = 900;
/// The score of some words of a name, at most.
const PARTIAL: usize = 700;

impl<T: Copy + PartialEq> NameIndex<T> {
    pub fn new<'n>(names: impl IntoIterator<Item = (&'n str, T)>) -> Self {
        let known = names.into_iter().map(|(name, what)| {
            let form = normalize_name(name);
            IndexedName {
                letters: count_letters(&form),
                form,
                value: what,
            }
        });
        Self {
            names: known.collect(),
        }
    }

    /// What a text in comparable form is the very name of.
    pub fn find_exact(&self, typed: &str) -> Option<T> {
        let known = self.names.iter().find(|known| known.form == typed);
        known.map(|known| known.value)
    }

    /// What a text in comparable form stands for: exactly, or as a guess with alternatives.
    pub fn find(&self, typed: &str) -> Option<NameMatch<T>> {
        if typed.is_empty() {
            return None;
        }
        if let Some(what) = self.find_exact(typed) {
            return Some(NameMatch::exact(what));
        }
        let bag = count_letters(typed);
        let mut scored: Vec<(usize, T)> = self
            .names
            .iter()
            .filter_map(|known| Some((score(known, typed, &bag)?, known.value)))
            .collect();
        scored.sort_by_key(|&(score, _)| std::cmp::Reverse(score));
        let &(score, what) = scored.first()?;
        let mut alternatives: Vec<T> = Vec::new();
        for &(_, other) in scored.iter().skip(1) {
            if other != what && !alternatives.contains(&other) {
                alternatives.push(other);
            }
        }
        alternatives.truncate(MAX_ALTERNATIVES);
        Some(NameMatch {
            value: what,
            score,
            alternatives,
        })
    }
}

/// A name in comparable form.
pub fn normalize_name(name: &str) -> String {
    normalized_text(&tokenize(name))
}

fn score<T>(known: &IndexedName<T>, typed: &str, bag: &[u8; 36]) -> Option<usize> {
    let allowed = match known.form.len().min(typed.len()) {
        0..4 => 0,
        4..8 => 1,
        8..14 => 2,
        _ => 3,
    };
    // Letters that only one side has bound the number of typing errors from below, much faster
    // than counting the errors.
    let bound = surplus_letters(&known.letters, bag).max(surplus_letters(bag, &known.letters));
    if bound <= allowed {
        let errors = damerau_levenshtein(&known.form, typed);
        if errors <= allowed {
            return Some(MISTYPED - 50 * errors);
        }
    }
    // Words beyond those of the name would be lost, so they are never part of it.
    (typed.len() >= 4 && abbreviates(typed, &known.form))
        .then(|| PARTIAL.saturating_sub(known.form.len().saturating_sub(typed.len())))
}

/// How many letters the first bag has beyond the second.
fn surplus_letters(first: &[u8; 36], second: &[u8; 36]) -> usize {
    let spare = first.iter().zip(second).map(|(&a, &b)| a.saturating_sub(b));
    spare.map(usize::from).sum()
}

fn count_letters(form: &str) -> [u8; 36] {
    let mut bag = [0_u8; 36];
    for byte in form.bytes() {
        let place = match byte {
            b'a'..=b'z' => byte - b'a',
            b'0'..=b'9' => byte - b'0' + 26,
            _ => continue,
        };
        if let Some(count) = bag.get_mut(usize::from(place)) {
            *count = count.saturating_add(1);
        }
    }
    bag
}

/// Whether every word of `fewer` begins a word of `more`, in the same order.
fn abbreviates(fewer: &str, more: &str) -> bool {
    let mut words = more.split(' ');
    fewer
        .split(' ')
        .all(|short| words.any(|word| word.starts_with(short)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(typed: &str) -> Option<(&'static str, bool, Vec<&'static str>)> {
        let all = [
            "Turf Cutters",
            "Rushlight Kin",
            "Bog-Oak Hulks",
            "Bog Turtle",
            "The Long Pump",
        ];
        let names = NameIndex::new(all.map(|name| (name, name)));
        names
            .find(&normalize_name(typed))
            .map(|found| (found.value, found.score == EXACT, found.alternatives))
    }

    #[test]
    fn a_name_is_found_whatever_its_case_plural_and_article() {
        for typed in ["turf cutters", "TURF CUTTER", "Turf-Cutters"] {
            assert_eq!(
                found(typed),
                Some(("Turf Cutters", true, vec![])),
                "{typed}"
            );
        }
        assert_eq!(found("long pump"), Some(("The Long Pump", true, vec![])));
    }

    #[test]
    fn typing_errors_and_abbreviations_are_guesses() {
        assert_eq!(found("trf cuters"), Some(("Turf Cutters", false, vec![])));
        assert_eq!(
            found("rushlihgt kin"),
            Some(("Rushlight Kin", false, vec![]))
        );
        assert_eq!(found("hulks"), Some(("Bog-Oak Hulks", false, vec![])));
    }

    #[test]
    fn a_name_takes_no_further_words_with_it() {
        assert_eq!(found("Turf Cutters of the Ford"), None);
    }

    #[test]
    fn a_guess_names_its_alternatives() {
        let names = ["Turf Cutters", "Turf Diggers", "Bog Turtle"].map(|name| (name, name));
        let found = NameIndex::new(names).find("turf").unwrap();
        assert_eq!(
            (found.value, found.alternatives),
            ("Turf Cutters", vec!["Turf Diggers"])
        );
    }

    #[test]
    fn what_resembles_nothing_is_not_found() {
        for typed in ["", "xyzzy", "pole hands", "kin"] {
            assert_eq!(found(typed), None, "{typed}");
        }
    }
}
