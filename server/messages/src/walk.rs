//! A walk through every text in every language.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{NaiveDate, Weekday};

use crate::{Language, Message, TEXTS, Texts, Value, findings, values};

/// Each text of a language with this value for all its variables.
fn said(language: usize, value: &Value) -> Vec<(&'static str, String)> {
    let t = Texts::of(Language::ALL[language]);
    let texts = TEXTS[language].iter().map(|(_, id, variables)| {
        let values = variables
            .iter()
            .map(|name| (*name, value.clone()))
            .collect();
        let mut errors = Vec::new();
        let text = t.written(&Message::new(id, values), &mut errors);
        assert!(
            errors.is_empty(),
            "{} {id}: {errors:?}",
            t.language().code()
        );
        (*id, text)
    });
    texts.collect()
}

#[test]
fn every_text_can_be_said_with_every_value() {
    let numbers = [0, 1, 2, 5, 1000, 1_000_000, -1, i64::MAX].map(Value::Number);
    let nested = Message::new("sign-in", Vec::new());
    let mut all = numbers.to_vec();
    all.extend(["nights", "King of week 2", "one", ""].map(Value::from));
    all.extend([
        Value::list(["a", "b", "c"]),
        Value::either([1, 2]),
        Value::joined(["a", "b"], values::comma),
        Value::Tenths(9),
        Value::List(Vec::new()),
    ]);
    all.extend([
        Value::from(nested.clone()),
        Value::from(vec![nested.clone(), nested]),
        Value::from(NaiveDate::MIN),
        Value::from(Weekday::Mon),
    ]);
    for (language, _) in Language::ALL.iter().enumerate() {
        for value in &all {
            for (id, text) in said(language, value) {
                assert!(
                    !text.contains(['{', '}', '$']),
                    "{id} with {value:?}: {text}"
                );
                let nothing = [Value::from(""), Value::List(Vec::new())].contains(value);
                assert!(!text.trim().is_empty() || nothing, "{id} is empty");
            }
        }
    }
}

#[test]
fn every_language_has_the_same_texts_with_the_same_variables() {
    let variables_of = |language: usize| {
        let texts = TEXTS[language].iter().map(|(file, id, variables)| {
            let variables: BTreeSet<&str> = variables.iter().copied().collect();
            ((*file, *id), variables)
        });
        texts.collect::<BTreeMap<_, _>>()
    };
    let english = variables_of(0);
    let mut offences = Vec::new();
    for (index, language) in Language::ALL.iter().enumerate() {
        let texts = variables_of(index);
        let code = language.code();
        for (key, variables) in &english {
            match texts.get(key) {
                None => offences.push(format!("{code} lacks {key:?}")),
                Some(there) if there != variables => {
                    offences.push(format!("{code} {key:?} has {there:?}, not {variables:?}"));
                }
                Some(_) => {}
            }
        }
        let strange = texts.keys().filter(|key| !english.contains_key(*key));
        offences.extend(strange.map(|key| format!("{code} alone has {key:?}")));
    }
    assert!(offences.is_empty(), "\n{}\n", offences.join("\n"));
}

#[test]
fn a_persons_own_words_stay_as_they_are() {
    let marks = Value::from("\u{2603}");
    for words in [
        "nights",
        "King of week 2",
        "{ $week }",
        "{\"",
        "1",
        "one more",
        "<b>",
    ] {
        for (language, _) in Language::ALL.iter().enumerate() {
            let pairs = said(language, &marks)
                .into_iter()
                .zip(said(language, &words.into()));
            for ((id, marked), (_, text)) in pairs {
                assert_eq!(marked.replace('\u{2603}', words), text, "{id}");
            }
        }
    }
}

#[test]
fn things_stand_one_after_the_other_as_the_language_says() {
    let said = |items: &[&str], between| {
        let message = findings::reading_name(Value::joined(items, between));
        Language::ALL.map(|language| Texts::of(language).say(&message))
    };
    let then = said(&["a", "b", "c"], values::then);
    assert_eq!(
        then,
        [
            "a, then b, then c",
            "a, dann b, dann c",
            "a, puis b, puis c"
        ]
    );
    assert_eq!(said(&["a"], values::or), ["a"; 3]);
}

#[test]
fn a_number_keeps_every_digit() {
    for number in [
        1000,
        i64::MAX,
        i64::MIN,
        (1 << 53) - 1,
        1 << 53,
        (1 << 53) + 1,
    ] {
        let list = Value::List(vec![number.into()]);
        let message = Message::new(
            "password-too-short",
            vec![("length", list), ("shortest", number.into())],
        );
        let text = message.to_string();
        assert_eq!(text.matches(&number.to_string()).count(), 2, "{text}");
    }
}
