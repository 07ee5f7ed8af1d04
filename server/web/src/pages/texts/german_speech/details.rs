//! What a refusal says in full, in German.
//!
//! A refusal carries its sentence in English. Each is known here with `{}` where a value stands; the
//! German says by number which value goes where. A value may itself be a sentence that is known.

mod games;
mod people;
mod seasons;

/// The sentence in German; `None` for one that is not known here.
pub fn sentence(english: &str) -> Option<String> {
    // First without the full stop: a last value would take it along.
    let bare = || Some(format!("{}.", translated(english.strip_suffix('.')?)?));
    let german = bare().or_else(|| translated(english))?;
    Some(capitalised(&german))
}

fn translated(english: &str) -> Option<String> {
    let tables = [people::SAID, seasons::SAID, games::SAID];
    let mut known = tables.into_iter().flatten();
    known.find_map(|(pattern, german)| {
        let values = values(english, pattern)?;
        let values = values
            .into_iter()
            .map(|value| translated(value).unwrap_or_else(|| value.to_owned()));
        filled(german, &values.collect::<Vec<_>>())
    })
}

/// What stands in the places of the pattern, if the text is made by it.
fn values<'t>(text: &'t str, pattern: &str) -> Option<Vec<&'t str>> {
    let mut parts = pattern.split("{}");
    let mut rest = text.strip_prefix(parts.next()?)?;
    let mut values = Vec::new();
    for part in parts {
        let (value, after) = match part {
            "" => (rest, ""),
            _ => rest.split_once(part)?,
        };
        values.push(value);
        rest = after;
    }
    rest.is_empty().then_some(values)
}

fn filled(german: &str, values: &[String]) -> Option<String> {
    let mut parts = german.split('{');
    let mut text = parts.next()?.to_owned();
    for part in parts {
        let (place, after) = part.split_once('}')?;
        text.push_str(values.get(place.parse::<usize>().ok()?)?);
        text.push_str(after);
    }
    Some(text)
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_go_where_german_wants_them() {
        assert_eq!(
            sentence("the cap falls from 500 to 450 in week 2.").as_deref(),
            Some("Die Grenze fällt in Woche 2 von 500 auf 450.")
        );
    }

    #[test]
    fn a_fault_within_a_sentence_is_translated_with_it() {
        assert_eq!(
            sentence("The name has 70 characters; at most 60 are allowed.").as_deref(),
            Some("Der Name hat 70 Zeichen; höchstens 60 sind erlaubt.")
        );
    }

    #[test]
    fn what_is_not_known_is_left_to_english() {
        assert_eq!(sentence("Nobody ever said this."), None);
    }

    #[test]
    fn every_german_sentence_asks_only_for_values_that_there_are() {
        let tables = [people::SAID, seasons::SAID, games::SAID];
        for (english, german) in tables.into_iter().flatten() {
            let values = vec!["7".to_owned(); english.matches("{}").count()];
            assert!(filled(german, &values).is_some(), "{german}");
        }
    }
}
