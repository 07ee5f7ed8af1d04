//! Clubs can be spread over several databases: every key carries its club, and every query names one.

use std::collections::{BTreeMap, BTreeSet};

use crate::harness::Database;
use crate::sources::{Source, files};

/// Tables of people, who may be in several clubs; they are spread by account.
const OF_ACCOUNTS: [&str; 5] = [
    "accounts",
    "idempotency_keys",
    "refresh_tokens",
    "sessions",
    "sign_in_failures",
];

/// Queries over tables of clubs that name no club, and why.
const CROSSING: [(&str, &str); 6] = [
    (
        "clubs::list_by_account",
        "an account's own clubs, looked up by account",
    ),
    ("directory::list", "the public directory"),
    (
        "games::list_confirmed_by_silence",
        "the clock's look over all clubs of one database; each act is in one",
    ),
    ("invitations::redeem", "a code is all that its holder knows"),
    (
        "scheduled_reveals::list_due",
        "the clock's look over all clubs of one database; each act is in one",
    ),
    (
        "weeks::list_due",
        "the clock's look over all clubs of one database; each act is in one",
    ),
];

/// What binds a key in a query: each takes a `SeasonKey`, `WeekKey` or `GameKey`, and so a club.
const BY_KEY: [&str; 11] = [
    "of_season!(",
    "of_season_or_player!(",
    "of_week!(",
    "season_columns!(",
    "week_columns!(",
    "season_pk(",
    "week_pk(",
    "game_pk(",
    "pk_in_season(",
    "pk_in_week(",
    // The row of a claim is made from the key of its season.
    "ClaimColumns::new(season,",
];

/// Queries that bind a season's id by itself, and why.
const APART_FROM_ITS_CLUB: [(&str, &str); 2] = [
    (
        "trail::append",
        "an entry belongs to a club and only perhaps to a season",
    ),
    (
        "trail::list",
        "officers also read the entries of the club as a whole",
    ),
];

const PRIMARY_KEYS: &str = "
    SELECT conrelid::regclass || ': ' || attname FROM pg_constraint
    JOIN pg_attribute ON attrelid = conrelid AND attnum = conkey[1]
    WHERE contype = 'p' AND connamespace = 'public'::regnamespace
    ORDER BY 1";

/// Foreign keys between tables that both have a club, without it on both sides.
const LOOSE_REFERENCES: &str = "
    SELECT conname::text FROM pg_constraint
    JOIN pg_attribute own ON own.attrelid = conrelid AND own.attname = 'club_id'
    JOIN pg_attribute other ON other.attrelid = confrelid AND other.attname = 'club_id'
    WHERE contype = 'f' AND NOT (own.attnum = conkey[1] AND other.attnum = confkey[1])";

#[test]
fn every_table_is_keyed_by_its_club_first() {
    let database = Database::create();
    let keys = database.texts(PRIMARY_KEYS);
    let others = keys.iter().filter_map(|key| {
        let (table, first) = key.split_once(": ").unwrap();
        (first != "club_id" && table != "__diesel_schema_migrations").then_some(table)
    });
    assert_eq!(others.collect::<Vec<_>>(), OF_ACCOUNTS);
    assert_eq!(database.texts(LOOSE_REFERENCES), Vec::<String>::new());
}

#[test]
fn no_query_crosses_clubs_but_those_that_have_to() {
    let sources = files("server/store/src", ".rs");
    let tables = club_tables(&sources);
    assert!(
        tables.contains("seasons") && !tables.contains("accounts"),
        "{tables:?}"
    );
    let mut crossing = BTreeSet::new();
    for source in sources.iter().filter(|source| source.stem() != "schema") {
        for (name, body) in functions(source) {
            if touches(&body, &tables) && !names_a_club(&body) {
                crossing.insert(format!("{}::{name}", source.stem()));
            }
        }
    }
    let allowed = CROSSING.map(|(query, _)| query.to_owned());
    assert_eq!(crossing, BTreeSet::from(allowed));
}

/// Only `keys.rs` takes a key apart, so that no query can pair a season with the club of another.
#[test]
fn a_seasons_id_is_bound_together_with_its_club() {
    let mut apart = BTreeSet::new();
    for source in files("server/store/src", ".rs") {
        if ["schema", "keys"].contains(&source.stem()) {
            continue;
        }
        for (name, body) in functions(&source) {
            let dense: String = body.chars().filter(|c| !c.is_whitespace()).collect();
            let mut bound = dense.split("season_id.eq(").skip(1);
            if bound.any(|rest| !rest.split(')').next().unwrap().ends_with("::season_id")) {
                apart.insert(format!("{}::{name}", source.stem()));
            }
        }
    }
    let allowed = APART_FROM_ITS_CLUB.map(|(query, _)| query.to_owned());
    assert_eq!(apart, BTreeSet::from(allowed));
}

/// The tables whose key begins with the club.
fn club_tables(sources: &[Source]) -> BTreeSet<String> {
    let schema = sources
        .iter()
        .find(|source| source.stem() == "schema")
        .unwrap();
    let heads = schema.text.lines().map(str::trim);
    let tables = heads.filter_map(|line| line.split_once(" (club_id"));
    tables.map(|(table, _)| table.to_owned()).collect()
}

/// Each function of a file with its text, and with that of the statements that it names.
fn functions(source: &Source) -> BTreeMap<String, String> {
    let text = source.text.split("#[cfg(test)]").next().unwrap();
    let statements: Vec<(&str, &str)> = text
        .split("\nconst ")
        .skip(1)
        .filter_map(|rest| Some((rest.split_once(':')?.0, rest.split_once("\";")?.0)))
        .collect();
    let mut functions = BTreeMap::new();
    for rest in text.split("fn ").skip(1) {
        let name: String = rest
            .chars()
            .take_while(|c| c.is_alphanumeric() || *c == '_')
            .collect();
        let mut body = rest.split("\n}\n").next().unwrap().to_owned();
        for (name, statement) in &statements {
            if body.contains(name) {
                body.push_str(statement);
            }
        }
        functions.insert(name, body);
    }
    functions
}

fn touches(body: &str, tables: &BTreeSet<String>) -> bool {
    let named = |table: &String| {
        let by_sql = ["from", "into", "update", "join"].iter().any(|word| {
            let named = format!("{word} {table}");
            let mut after = body.split(named.as_str()).skip(1);
            after.any(|rest| !rest.starts_with(|c: char| c.is_alphanumeric() || c == '_'))
        });
        by_sql || body.contains(&format!("{table}::table"))
    };
    tables.iter().any(named)
}

/// Whether a query is held to one club, or to some that it is given; a join of two tables by their
/// clubs alone is not.
fn names_a_club(body: &str) -> bool {
    let dense: String = body.chars().filter(|c| !c.is_whitespace()).collect();
    let mut compared = dense.split("club_id.eq(").skip(1);
    compared.any(|rest| !rest.split(')').next().unwrap().ends_with("::club_id"))
        || dense.contains("club_id.eq_any(")
        || dense.contains("club_id=$")
        || BY_KEY.iter().any(|key| dense.contains(key))
        || dense.contains("clubs::table.find(")
        || dense.split(".find((").skip(1).any(|rest| {
            let key = rest.split(',').next().unwrap();
            key.ends_with("club.0")
        })
}
