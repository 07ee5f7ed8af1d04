//! The shared read service: what everybody may see, never stale and never torn.

mod addresses;
mod bodies;
mod deadline;
mod directory;
mod events;
mod fleet;
mod fresh;
mod handed;
mod past;
mod processes;
mod records;
mod rights;

pub use bodies::RESOURCES;
use serde_json::{Value, json};

use crate::harness::{Actor, Answer, Player, Server, Stage};

/// A started public season of two, and the address at which everybody reads it.
struct Wall {
    stage: Stage,
    oskrel: Player,
    public: String,
}

impl Wall {
    fn hang() -> Self {
        Self::over(Stage::draft())
    }

    fn over(stage: Stage) -> Self {
        let [oskrel, _] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
        stage.start();
        let public = stage.season.replacen("/api/v1", "/public", 1);
        Self {
            stage,
            oskrel,
            public,
        }
    }

    fn path(&self, of: &str) -> String {
        format!("{}/{of}", self.public)
    }

    /// Reads without an account.
    fn read(&self, of: &str) -> Answer {
        self.stage.server.visitor().get(&self.path(of))
    }

    /// A point more for Oskrel, acknowledged when this returns.
    fn give_a_point(&self) {
        self.give_a_point_at(&self.stage.server);
    }

    /// The same at a desk; the version that it made.
    fn give_a_point_at(&self, desk: &Server) -> i64 {
        let body =
            json!({ "player": self.oskrel.id, "week": 1, "amount": 1, "reason": "Swept the hall" });
        let adjustments = format!("{}/adjustments", self.stage.season);
        let wennable = desk.welcome(&self.stage.wennable);
        let answer = wennable.post(&adjustments, &body).with_status(200);
        answer.header("season-version").unwrap().parse().unwrap()
    }
}

/// Oskrel's points in a table.
fn total(table: &Value) -> i64 {
    let rows = table["rows"].as_array().unwrap().iter();
    let row = rows.into_iter().find(|row| row["handle"] == "Oskrel");
    row.unwrap()["total"].as_i64().unwrap()
}

fn version(body: &Value) -> i64 {
    body["version"].as_i64().unwrap()
}

fn tag(answer: &Answer) -> String {
    answer.header("etag").unwrap().to_owned()
}

fn ask_with(actor: &Actor, path: &str, headers: &[(&str, &str)]) -> Answer {
    actor.ask(reqwest::Method::GET, path, |request| {
        headers.iter().fold(request, |request, (name, value)| {
            request.header(*name, *value)
        })
    })
}

/// A process of the standings alone, without a key.
fn standings_process(url: &str) -> Server {
    Server::launch(|command| {
        command
            .env("DATABASE_URL", url)
            .env_remove("TALLYHOST_SIGNING_KEY")
            .args(["--role", "standings"])
    })
}
