use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::actor::Actor;
use super::clock::Clock;
use super::database::Database;
use super::server::Server;
use super::until::until;

/// The demo's club and season, set up over HTTP as its owner Wennable does it. Week 1 begins on
/// Thursday, 8 January 2026 in Berlin: announced at 18:00, lists due on Monday the 12th at 20:00 with
/// an hour of grace, games on Tuesday and Thursday.
pub struct Stage {
    pub server: Server,
    pub database: Database,
    pub wennable: Actor,
    /// Paths.
    pub club: String,
    pub season: String,
    pub catalogue: String,
    code: String,
}

/// Who plays in seasons that are about one player or none.
const BYSTANDERS: [&str; 2] = ["Juddeth", "Noorwin"];

/// Somebody who plays in the season.
#[derive(Clone)]
pub struct Player {
    pub actor: Actor,
    pub id: String,
}

impl Stage {
    /// With the season as a draft.
    pub fn draft() -> Self {
        Self::with(|_| {})
    }

    /// With another season than the demo's, as a draft.
    pub fn with(change: impl FnOnce(&mut Value)) -> Self {
        let database = Database::create();
        let server = Server::start(&database);
        Self::over(database, server, change)
    }

    /// Over a database and a server that there are.
    pub fn over(database: Database, server: Server, change: impl FnOnce(&mut Value)) -> Self {
        let wennable = server.register("Wennable");
        let body = json!({ "name": "Lamplit Ford gaming circle", "slug": "lamplit-ford" });
        let club = wennable.post("/api/v1/clubs", &body).location(201);
        let catalogues = format!("{club}/catalogues");
        let body = json!({ "name": "Quernlight Reckoning" });
        let catalogue = wennable.post(&catalogues, &body).location(201);
        let versions = format!("{catalogue}/versions");
        let import =
            |request: reqwest::blocking::RequestBuilder| request.json(&data::catalogue().unwrap());
        wennable.ask(Method::POST, &versions, import).expect(201);
        let catalogue = catalogue.rsplit('/').next().unwrap().to_owned();
        let mut body = season_body(&catalogue);
        change(&mut body);
        keep_to_its_weeks(&mut body);
        let season = wennable
            .post(&format!("{club}/seasons"), &body)
            .location(201);
        let body = json!({ "role": "player", "uses": 100, "days": 90 });
        let invitation = wennable
            .post(&format!("{club}/invitations"), &body)
            .expect(200);
        let code = invitation["code"].as_str().unwrap().to_owned();
        Self {
            server,
            database,
            wennable,
            club,
            season,
            catalogue,
            code,
        }
    }

    /// So many worlds that are this one until somebody acts in one of them, all reached under one
    /// name. Actors of this stage are led to each by its server.
    pub fn worlds<const N: usize>(self) -> [Self; N] {
        let Self {
            server,
            database,
            wennable,
            club,
            season,
            catalogue,
            code,
        } = self;
        drop(server);
        std::array::from_fn(|_| {
            let database = database.copy();
            let server = Server::launch(|command| {
                command
                    .env("DATABASE_URL", database.url())
                    .env("TALLYHOST_PUBLIC_URL", "https://league.example/")
            });
            Self {
                wennable: server.welcome(&wennable),
                server,
                database,
                club: club.clone(),
                season: season.clone(),
                catalogue: catalogue.clone(),
                code: code.clone(),
            }
        })
    }

    /// What the demo's season is created from.
    pub fn season_body(&self) -> Value {
        season_body(&self.catalogue)
    }

    pub fn clock(&self) -> Clock<'_> {
        self.database.clock()
    }

    /// The path of a week.
    pub fn week(&self, week: u8) -> String {
        format!("{}/weeks/{week}", self.season)
    }

    /// Somebody new in the club, who does not play yet.
    pub fn welcome(&self, handle: &str) -> Actor {
        let actor = self.server.register(handle);
        let body = json!({ "code": self.code });
        actor.post("/api/v1/invitations/accept", &body).expect(200);
        actor
    }

    /// Somebody new in the club, with a role in it.
    pub fn appoint(&self, handle: &str, role: &str) -> Actor {
        let actor = self.welcome(handle);
        let account = actor.get("/api/v1/accounts/me").expect(200)["id"].clone();
        let member = format!("{}/members/{}", self.club, account.as_str().unwrap());
        self.wennable
            .put(&member, &json!({ "role": role }))
            .expect(204);
        actor
    }

    /// A person of the demo takes part in the season.
    pub fn join(&self, handle: &str) -> Player {
        let actor = if handle == "Wennable" {
            self.wennable.clone()
        } else {
            self.welcome(handle)
        };
        let people = data::people().unwrap();
        let person = people
            .iter()
            .find(|person| person.handle == handle)
            .unwrap();
        let body = json!({ "handle": handle, "faction": person.faction, "nights": person.nights });
        let player = actor
            .post(&format!("{}/players", self.season), &body)
            .expect(201);
        let id = player["id"].as_str().unwrap().to_owned();
        Player { actor, id }
    }

    /// Starts the season, made up to the two players that it takes; week 1 is announced, and the clock
    /// has made its version of that.
    pub fn start(&self) {
        let players = self.wennable.get(&format!("{}/players", self.season));
        let there = players.expect(200).as_array().unwrap().len();
        for bystander in BYSTANDERS.iter().skip(there) {
            self.join(bystander);
        }
        self.wennable
            .post(&format!("{}/start", self.season), &json!({}))
            .expect(200);
        self.clock().show("2026-01-08T18:00:00+01:00");
        self.until_moments_are_told();
    }

    /// Waits until the clock has made versions of all moments that have come.
    pub fn until_moments_are_told(&self) {
        let id = self.season.rsplit('/').next().unwrap();
        let told = format!(
            "SELECT 'told' FROM seasons WHERE season_id = '{id}'
            AND coalesce(moments_told_at, started_at) >= coalesce(
                (SELECT max(announce_at) FROM weeks JOIN test_clock ON announce_at <= now
                WHERE weeks.season_id = seasons.season_id), '-infinity')"
        );
        until("the announcement has made a version", || {
            !self.database.texts(&told).is_empty()
        });
    }
}

fn season_body(catalogue: &str) -> Value {
    data::season(catalogue, "2026-01-08".parse().unwrap()).unwrap()
}

/// Rules for more weeks than the season has are refused: a shorter season has the demo's as far as it goes.
fn keep_to_its_weeks(season: &mut Value) {
    let caps = &season["caps"];
    let weeks = caps["weeks"].as_u64();
    let last = weeks.unwrap_or_else(|| caps["caps"].as_array().unwrap().len() as u64);
    let rules = season["policy"]["list_rules"].as_array_mut().unwrap();
    rules.retain_mut(|rule| {
        let Some(weeks) = rule["weeks"].as_array_mut() else {
            return true;
        };
        weeks.retain(|week| week.as_u64().unwrap() <= last);
        !weeks.is_empty()
    });
    let best = &mut season["policy"]["scoring"]["best_weeks"];
    if best.as_u64().is_some_and(|best| best > last) {
        *best = Value::Null;
    }
}

/// The list that the demo has for a player's week.
pub fn demo_list(handle: &str, week: u8) -> Value {
    data::lists().unwrap()[handle][usize::from(week) - 1].clone()
}
