//! A season whose first week is paired and whose second takes lists.

use std::collections::BTreeMap;
use std::process::Command;

use image::ImageFormat;
use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::{Draft, Running, Which, bodies};
use crate::harness::{Actor, ClosedStage, List, Player, SeasonBody, Stage, bytes_of, picture};

/// It is opened anew for whoever changes something.
pub struct Scene {
    stage: ClosedStage,
    pub season_body: SeasonBody,
    pub people: BTreeMap<&'static str, Actor>,
    pub operations: BTreeMap<String, (Method, String)>,
    /// The player whom others would change, of the season and of the club.
    pub corvanel: (String, String),
    /// Ids.
    club: String,
    season: String,
    draft: String,
    catalogue: String,
    round: String,
    game: String,
    claim: String,
    photo: String,
    invitation: String,
}

impl Scene {
    pub fn new() -> Self {
        let stage = Stage::with(|season| season.visibility("club"));
        let draft = stage.club.new_season(&stage.season_body());
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        stage.week(1).set_scenario(&sheet).expect(204);
        let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
        let account = corvanel.actor.account().id;
        let referee = stage.appoint("Ilkamar", "referee");
        let organiser = stage.appoint("Kestanby", "organiser");
        stage.start();
        let (round, game) = play_first_week(&stage, &oskrel, &corvanel);
        let png = bytes_of(&picture(3), ImageFormat::Png);
        let photo = stage
            .season
            .by(&corvanel)
            .send_photo(&png)
            .expect(201)
            .photo;
        let week = stage.week(1).by(&corvanel);
        let claim = week.claim_with_photo("tally-novice-1", 1, &photo);
        let invitation = stage.club.invite("player", 1, 1).expect(200);
        let game_of_corvanel = stage.season.game(&game).by(&corvanel);
        let report = game_of_corvanel.report("first", &bodies::result());
        report.expect(200);
        for handle in ["Corvanel", "Juddeth"] {
            let player = match handle {
                "Corvanel" => corvanel.actor.clone(),
                _ => stage.welcome(handle),
            };
            let joined = draft.by(&player).join(handle, "sodwether-moot", &["first"]);
            joined.expect(201);
        }
        draft.week(2).set_scenario(&sheet).expect(204);
        let own = stage.week(2).list_of(&oskrel);
        own.seal(&List::demo("Oskrel", 2)).expect(201);
        for member in [&oskrel.actor, &referee, &organiser, &stage.owner] {
            stage.club.by(member).open_record().expect(200);
        }
        let people = BTreeMap::from([
            ("visitor", stage.visitor()),
            ("stranger", stage.server.register("Stranger")),
            ("player", oskrel.actor),
            ("referee", referee),
            ("organiser", organiser),
            ("owner", stage.owner.clone()),
        ]);
        for person in people.values().filter(|person| person.has_account()) {
            // With a token that holds whenever the scene is opened.
            person.me().expect(200);
        }
        stage.until_reveals_are_published();
        Self {
            people,
            operations: operations(),
            corvanel: (corvanel.id, account),
            club: stage.club.id().to_owned(),
            season: stage.season.id().to_owned(),
            draft: draft.id().to_owned(),
            catalogue: stage.catalogue.id().to_owned(),
            round,
            game,
            claim: claim.expect(201).id,
            photo,
            invitation: invitation.id,
            season_body: stage.season_body(),
            stage: stage.close(),
        }
    }

    pub fn open(&self) -> Stage {
        self.stage.open()
    }

    /// A path of the document with the parts of this scene.
    pub fn fill(&self, path: &str, season: Which) -> String {
        let season = match season {
            Running => &self.season,
            Draft => &self.draft,
        };
        let parts = [
            ("{club}", self.club.clone()),
            ("{season}", season.clone()),
            ("{week}", "2".to_owned()),
            ("{player}", self.corvanel.0.clone()),
            ("{account}", self.corvanel.1.clone()),
            ("{catalogue}", self.catalogue.clone()),
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

/// Round and game; the clock shows the first night of week 1, and then the second week's beginning.
fn play_first_week(stage: &Stage, oskrel: &Player, corvanel: &Player) -> (String, String) {
    let week = stage.week(1);
    for (player, handle) in [(oskrel, "Oskrel"), (corvanel, "Corvanel")] {
        let list = List::demo(handle, 1);
        week.list_of(player).seal(&list).expect(201);
    }
    stage.clock().show("2026-01-12T21:00:00+01:00");
    week.open_lists().expect(204);
    let round = week.propose().expect(201).id;
    let games = stage.season.round(&round).publish().expect(200);
    stage.clock().show("2026-01-15T18:00:00+01:00");
    (round, games[0].id.clone())
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
            let name = operation["operationId"].as_str().unwrap().to_owned();
            operations.insert(name, (method, path.clone()));
        }
    }
    operations
}
