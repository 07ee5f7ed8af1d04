//! A season whose first week is paired and whose second takes lists.

use std::collections::BTreeMap;
use std::process::Command;

use image::ImageFormat;
use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::{Draft, Running, Season, bodies};
use crate::harness::{Actor, Player, Stage, bytes_of, demo_list, picture};

pub struct Scene {
    pub stage: Stage,
    pub people: BTreeMap<&'static str, Actor>,
    pub operations: BTreeMap<String, (Method, String)>,
    /// The player whom others would change, of the season and of the club.
    pub corvanel: (String, String),
    draft: String,
    round: String,
    game: String,
    claim: String,
    photo: String,
    invitation: String,
}

impl Scene {
    pub fn set() -> Self {
        let stage = Stage::with(|season| season["visibility"] = json!("club"));
        let seasons = format!("{}/seasons", stage.club);
        let draft = stage
            .wennable
            .post(&seasons, &stage.season_body())
            .location(201);
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        let scenario = format!("{}/scenario", stage.week(1));
        stage.wennable.put(&scenario, &sheet).expect(204);
        let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
        let account = corvanel.actor.get("/api/v1/accounts/me").expect(200)["id"].clone();
        let referee = stage.appoint("Ilkamar", "referee");
        let organiser = stage.appoint("Kestanby", "organiser");
        stage.start();
        let (round, game) = play_first_week(&stage, &oskrel, &corvanel);
        let photo = send_photo(&stage, &corvanel.actor);
        let claim =
            json!({ "unit": "tally-novice-1", "stages": { "finished": 1 }, "photo": photo });
        let painting = format!("{}/painting", stage.week(1));
        let claim = corvanel.actor.post(&painting, &claim).expect(201);
        let invitations = format!("{}/invitations", stage.club);
        let body = json!({ "role": "player", "uses": 1, "days": 1 });
        let invitation = stage.wennable.post(&invitations, &body).expect(200)["id"].clone();
        let people = BTreeMap::from([
            ("visitor", stage.server.visitor()),
            ("stranger", stage.server.register("Stranger")),
            ("player", oskrel.actor),
            ("referee", referee),
            ("organiser", organiser),
            ("owner", stage.wennable.clone()),
        ]);
        let mut scene = Self {
            stage,
            people,
            operations: operations(),
            corvanel: (corvanel.id, text(&account)),
            draft,
            round,
            game,
            claim: text(&claim["id"]),
            photo,
            invitation: text(&invitation),
        };
        scene.corvanel_reports(&corvanel.actor);
        scene
    }

    fn corvanel_reports(&mut self, corvanel: &Actor) {
        let path = format!("{}/games/{}/report", self.stage.season, self.game);
        let body = bodies::played(self, "player");
        let dress = |request: reqwest::blocking::RequestBuilder| {
            request.header("idempotency-key", "first").json(&body)
        };
        corvanel.ask(Method::POST, &path, dress).expect(200);
    }

    /// A path of the document with the parts of this scene.
    pub fn fill(&self, path: &str, season: Season) -> String {
        let id = |path: &str| path.rsplit('/').next().unwrap().to_owned();
        let season = match season {
            Running => id(&self.stage.season),
            Draft => id(&self.draft),
        };
        let parts = [
            ("{club}", id(&self.stage.club)),
            ("{season}", season),
            ("{week}", "2".to_owned()),
            ("{player}", self.corvanel.0.clone()),
            ("{account}", self.corvanel.1.clone()),
            ("{catalogue}", self.stage.catalogue.clone()),
            ("{number}", "1".to_owned()),
            ("{round}", self.round.clone()),
            ("{game}", self.game.clone()),
            ("{claim}", self.claim.clone()),
            ("{photo}", self.photo.clone()),
            ("{invitation}", self.invitation.clone()),
            (
                "{record}",
                "00000000-0000-4000-8000-000000000000".to_owned(),
            ),
        ];
        let path = if path.ends_with("/versions/{number}/changes") {
            &format!("{path}?since=1")
        } else {
            path
        };
        let fill = |path: String, (name, part): &(&str, String)| path.replace(name, part);
        let filled = parts.iter().fold(path.to_owned(), fill);
        assert!(!filled.contains('{'), "{filled}");
        filled
    }
}

fn send_photo(stage: &Stage, of: &Actor) -> String {
    let bytes = bytes_of(&picture(3), ImageFormat::Png);
    let path = format!("{}/photos", stage.season);
    let sent = of.ask(Method::POST, &path, |request| request.body(bytes.clone()));
    text(&sent.expect(201)["photo"])
}

/// Round and game; the clock shows the first night of week 1, and then the second week's beginning.
fn play_first_week(stage: &Stage, oskrel: &Player, corvanel: &Player) -> (String, String) {
    for (player, handle) in [(oskrel, "Oskrel"), (corvanel, "Corvanel")] {
        let path = format!("{}/list/seal", stage.week(1));
        player.actor.post(&path, &demo_list(handle, 1)).expect(201);
    }
    stage.clock().show("2026-01-12T21:00:00+01:00");
    let act = |path: String| stage.wennable.post(&path, &json!({}));
    act(format!("{}/lists/open", stage.week(1))).expect(204);
    let round = act(format!("{}/rounds", stage.week(1))).expect(201)["id"].clone();
    let round = text(&round);
    let games = act(format!("{}/rounds/{round}/publish", stage.season)).expect(200);
    stage.clock().show("2026-01-15T18:00:00+01:00");
    (round, text(&games[0]["id"]))
}

fn text(value: &Value) -> String {
    value.as_str().unwrap().to_owned()
}

/// Method and path of every operation, by name.
pub fn operations() -> BTreeMap<String, (Method, String)> {
    let printed = Command::new(env!("CARGO_BIN_EXE_tallyhost"))
        .arg("openapi")
        .output()
        .unwrap();
    let document: Value = serde_json::from_slice(&printed.stdout).unwrap();
    let mut operations = BTreeMap::new();
    for (path, item) in document["paths"].as_object().unwrap() {
        for (method, operation) in item.as_object().unwrap() {
            let method = method.to_uppercase().parse().unwrap();
            operations.insert(text(&operation["operationId"]), (method, path.clone()));
        }
    }
    operations
}
