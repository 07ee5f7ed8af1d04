//! Requests that must be refused: the right problem, the field, limit and actual value, and nothing
//! written.

mod fields;
mod lists;
mod requests;
mod set_ups;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;

use crate::harness::{Actor, Answer, Player, Problem, SeasonBody, Stage};

/// A started season with a player.
struct Started {
    stage: Stage,
    oskrel: Player,
}

impl Started {
    fn start() -> Self {
        let stage = Stage::draft();
        let oskrel = stage.join("Oskrel");
        stage.start();
        // Whose token has run out gets another, and that is written.
        for person in [&stage.owner, &oskrel.actor] {
            person.me().expect(200);
        }
        Self { stage, oskrel }
    }

    /// The body of another season.
    fn season(&self, change: impl FnOnce(&mut SeasonBody)) -> SeasonBody {
        let mut body = self.stage.season_body();
        change(&mut body);
        body
    }

    /// The refusal of a request that leaves every table as it was.
    #[track_caller]
    fn nothing_written(&self, name: &str, ask: impl FnOnce() -> Problem) -> Problem {
        let before = self.facts();
        let problem = ask();
        let after = self.facts();
        let changed: Vec<_> = after.iter().filter(|fact| !before.contains(fact)).collect();
        assert!(changed.is_empty(), "{name} wrote: {changed:?}");
        problem
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
    let build = |request: RequestBuilder| {
        request
            .header("content-type", "application/json")
            .body(text.to_owned())
    };
    who.ask(method, path, build)
}
