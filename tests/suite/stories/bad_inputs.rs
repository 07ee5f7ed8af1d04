//! Requests that must be refused: the right problem, the field, limit and actual value, and nothing
//! written.

mod fields;
mod lists;
mod requests;
mod set_ups;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::Value;

use crate::harness::{Actor, Answer, Player, Stage};

/// What one fault must say: code, pointer, limit, actual.
type Said<'a> = (&'a str, &'a str, Value, Value);

/// A started season with a player.
struct Scene {
    stage: Stage,
    oskrel: Player,
}

impl Scene {
    fn set() -> Self {
        let stage = Stage::draft();
        let oskrel = stage.join("Oskrel");
        stage.start();
        // Whose token has run out gets another, and that is written.
        for person in [&stage.wennable, &oskrel.actor] {
            person.get("/api/v1/accounts/me").expect(200);
        }
        Self { stage, oskrel }
    }

    /// The body of another season.
    fn season(&self, change: impl FnOnce(&mut Value)) -> Value {
        let mut body = self.stage.season_body();
        change(&mut body);
        body
    }

    /// The answer to a request that leaves every table as it was.
    #[track_caller]
    fn nothing_written(&self, name: &str, ask: impl FnOnce() -> Value) -> Value {
        let before = self.facts();
        let answer = ask();
        let after = self.facts();
        let changed: Vec<_> = after.iter().filter(|fact| !before.contains(fact)).collect();
        assert!(changed.is_empty(), "{name} wrote: {changed:?}");
        answer
    }

    /// A digest of every table.
    fn facts(&self) -> Vec<String> {
        let tables = self.stage.database.texts(
            "SELECT table_name::text FROM information_schema.tables
            WHERE table_schema = 'public' ORDER BY 1",
        );
        let digests: Vec<String> = tables
            .iter()
            .map(|table| format!("SELECT '{table} ' || coalesce(md5(string_agg(t::text, E'\\n' ORDER BY t::text)), '') FROM {table} t"))
            .collect();
        self.stage.database.texts(&digests.join(" UNION ALL "))
    }
}

fn json_text(who: &Actor, method: Method, path: &str, text: &str) -> Answer {
    let dress = |request: RequestBuilder| {
        request
            .header("content-type", "application/json")
            .body(text.to_owned())
    };
    who.ask(method, path, dress)
}

fn faults(problem: &Value) -> &[Value] {
    problem["errors"].as_array().map_or(&[], Vec::as_slice)
}

fn pointers(problem: &Value) -> Vec<&str> {
    faults(problem)
        .iter()
        .map(|fault| fault["pointer"].as_str().unwrap())
        .collect()
}

fn said(problem: &Value) -> Vec<Said<'_>> {
    faults(problem)
        .iter()
        .map(|fault| {
            (
                fault["code"].as_str().unwrap(),
                fault["pointer"].as_str().unwrap(),
                fault["limit"].clone(),
                fault["actual"].clone(),
            )
        })
        .collect()
}
