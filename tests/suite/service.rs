//! The shared read service: what everybody may see, never stale and never torn.

mod addresses;
mod bodies;
mod change_bus;
mod deadline;
mod directory;
mod events;
mod fleet;
mod fresh;
mod past;
mod processes;
mod records;
mod rights;

pub use bodies::RESOURCES;

use serde_json::Value;

use crate::harness::{Actor, Answer, Player, PublicSeason, PublicTable, Ruling, Server, Stage};

/// A started public season of two, and where everybody reads it.
struct OpenSeason {
    stage: Stage,
    oskrel: Player,
    public: PublicSeason,
}

impl OpenSeason {
    fn start() -> Self {
        Self::over(Stage::draft())
    }

    fn over(stage: Stage) -> Self {
        let [oskrel, _] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
        stage.start();
        let public = stage.season.by(stage.visitor()).for_everybody();
        Self {
            stage,
            oskrel,
            public,
        }
    }

    fn path(&self, of: &str) -> String {
        self.public.path(of)
    }

    /// Reads without an account.
    fn read(&self, of: &str) -> Answer {
        self.public.read(of)
    }

    /// The resource of Oskrel's ledger.
    fn ledger_of_oskrel(&self) -> String {
        format!("players/{}/ledger", self.oskrel.id)
    }

    fn standings(&self) -> PublicTable {
        self.public.standings().expect(200)
    }

    /// A point more for Oskrel, acknowledged when this returns.
    fn give_a_point(&self) {
        self.give_a_point_at(&self.stage.server);
    }

    /// The same at a desk; the version that it made.
    fn give_a_point_at(&self, desk: &Server) -> i64 {
        let answer = self.try_to_give_a_point_at(desk).with_status(200);
        answer.header("season-version").unwrap().parse().unwrap()
    }

    fn try_to_give_a_point_at(&self, desk: &Server) -> Answer<Ruling> {
        let season = self.stage.season.by(desk.welcome(&self.stage.owner));
        season.adjust(&self.oskrel.id, 1, 1, "Swept the hall")
    }
}

/// Oskrel's points in a table.
fn total(table: &PublicTable) -> i64 {
    table.total_of("Oskrel")
}

/// The season's version in any of its resources.
fn version(body: &Value) -> i64 {
    body.get("version").unwrap().as_i64().unwrap()
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
