//! A full season over HTTP: 17 players, 8 weeks, caps of 250 to 2,000 (common practice, no source),
//! with one who leaves, one who comes late, one who does not turn up and one who objects.

mod armies;
mod games;
pub mod offline;
mod rules;

use std::collections::{BTreeMap, BTreeSet};

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};
use tallyhost::demo::data;

use crate::harness::{Actor, Answer, Player, Stage};
use armies::Armoury;

const WEEKS: u8 = 8;
const LATE_JOINER: (&str, u8) = ("Vikkary", 3);
const LEAVER: (&str, u8) = ("Dunstow", 6);
const LATE_LIST: (&str, u8) = ("Pellamoor", 2);
const NO_SHOW: (&str, u8) = ("Gorseley", 4);
const DISPUTE: (&str, u8) = ("Merrowick", 5);

#[test]
fn seventeen_players_play_eight_weeks() {
    let mut season = Season::set();
    for week in 1..=WEEKS {
        season.begin(week);
        season.hand_in_lists(week);
        let games = season.pair(week);
        season.play(week, &games);
        season.close(week);
    }
    season.end();
}

struct Season {
    stage: Stage,
    referee: Actor,
    /// By handle, in a fixed order.
    players: BTreeMap<String, Player>,
    lists: BTreeMap<String, Value>,
    weeks: Value,
    met: BTreeSet<[String; 2]>,
    byes: BTreeSet<String>,
}

impl Season {
    fn set() -> Self {
        let stage = Stage::with(|season| {
            season["caps"] = json!({ "kind": "step", "first": 250, "step": 250, "weeks": WEEKS });
            season["policy"]["list_rules"] = rules::list_rules();
        });
        for (week, scenario) in (1..).zip(data::scenarios().unwrap()) {
            let path = format!("{}/scenario", stage.week(week));
            stage.wennable.put(&path, &scenario).expect(204);
        }
        let people = data::people().unwrap().into_iter();
        let names: Vec<String> = people
            .map(|person| person.handle)
            .filter(|handle| handle != LATE_JOINER.0)
            .collect();
        assert_eq!(names.len(), 17);
        let players = names
            .into_iter()
            .map(|handle| (handle.clone(), stage.join(&handle)))
            .collect();
        let referee = stage.appoint("Tillory", "referee");
        stage.start();
        let weeks = stage
            .wennable
            .get(&format!("{}/weeks", stage.season))
            .expect(200);
        Self {
            stage,
            referee,
            players,
            lists: BTreeMap::new(),
            weeks,
            met: BTreeSet::new(),
            byes: BTreeSet::new(),
        }
    }

    fn moment(&self, week: u8, name: &str) -> String {
        self.weeks[usize::from(week) - 1][name]
            .as_str()
            .unwrap()
            .to_owned()
    }

    fn cap(&self, week: u8) -> u64 {
        self.weeks[usize::from(week) - 1]["cap"].as_u64().unwrap()
    }

    fn act(&self, path: &str) -> Answer {
        self.stage
            .wennable
            .post(&format!("{}/{path}", self.stage.season), &json!({}))
    }

    /// Who plays in a week.
    fn active(&self, week: u8) -> impl Iterator<Item = (&String, &Player)> {
        self.players
            .iter()
            .filter(move |(handle, _)| *handle != LEAVER.0 || week < LEAVER.1)
    }

    fn handle(&self, id: &Value) -> String {
        let mut players = self.players.iter();
        players
            .find(|(_, player)| *id == player.id)
            .unwrap()
            .0
            .clone()
    }

    /// Some come and go between two weeks.
    fn begin(&mut self, week: u8) {
        if week > 1 {
            self.stage.clock().show(&self.moment(week, "lists_due_at"));
        }
        if week == LATE_JOINER.1 {
            self.players
                .insert(LATE_JOINER.0.to_owned(), self.stage.join(LATE_JOINER.0));
        }
        if week == LEAVER.1 {
            let leaver = &self.players[LEAVER.0];
            let path = format!("{}/players/{}/withdraw", self.stage.season, leaver.id);
            assert_eq!(
                leaver.actor.post(&path, &json!({})).expect(200)["left_after_week"],
                week - 1
            );
        }
    }

    /// Everybody first tries a list that breaks a rule, then hands in one that keeps them all.
    fn hand_in_lists(&mut self, week: u8) {
        let cap = self.cap(week);
        let factions = data::people().unwrap().into_iter();
        let factions: BTreeMap<_, _> = factions
            .map(|person| (person.handle, person.faction))
            .collect();
        let active: Vec<String> = self
            .active(week)
            .map(|(handle, _)| handle.clone())
            .collect();
        for (number, handle) in active.iter().enumerate() {
            let armoury = Armoury::of(&factions[handle]);
            let last = self.lists.get(handle);
            let list = armoury.grow(last, cap, number);
            let (bad, code, limit, actual) =
                armoury.broken(number + usize::from(week), &list, last, cap);
            self.must_refuse(week, handle, &bad, (code, limit, actual));
            let total = armoury.total(&list);
            if (handle.as_str(), week) != LATE_LIST {
                let receipt = self.seal(week, handle, &list).expect(201);
                assert_eq!(
                    (&receipt["report"]["total"], &receipt["report"]["left"]),
                    (&json!(total), &json!(cap - total))
                );
            }
            self.lists.insert(handle.clone(), list);
        }
        self.stage
            .clock()
            .show(&self.moment(week, "lists_accepted_until"));
        if week == LATE_LIST.1 {
            self.seal_late(week, LATE_LIST.0, &self.lists[LATE_LIST.0]);
        }
        self.act(&format!("weeks/{week}/lists/open")).expect(204);
        let opened = self
            .stage
            .server
            .visitor()
            .get(&format!("{}/lists", self.stage.week(week)))
            .expect(200);
        for list in opened["lists"].as_array().unwrap() {
            assert_eq!(
                list["sealed"]["list"],
                self.lists[&self.handle(&list["player"])]
            );
        }
        assert_eq!(opened["lists"].as_array().unwrap().len(), active.len());
    }

    fn seal(&self, week: u8, handle: &str, list: &Value) -> Answer {
        self.players[handle]
            .actor
            .post(&format!("{}/list/seal", self.stage.week(week)), list)
    }

    fn must_refuse(
        &self,
        week: u8,
        handle: &str,
        bad: &Value,
        (code, limit, actual): (&str, u64, u64),
    ) {
        let answer = self.seal(week, handle, bad);
        let problem = answer.with_status(422).json();
        let over = problem["type"] == "/problems/points-cap-exceeded";
        let errors = problem["errors"].as_array().unwrap();
        assert_eq!(
            over,
            errors.iter().any(|error| error["code"] == "list.over-cap"),
            "{problem}"
        );
        let expected = |error: &&Value| {
            error["code"] == code && error["limit"] == limit && error["actual"] == actual
        };
        assert!(
            errors.iter().any(|error| expected(&error)),
            "{handle}, week {week}: {code} {limit} {actual} not in {problem}"
        );
    }

    /// To the second too late, and then with leave.
    fn seal_late(&self, week: u8, handle: &str, list: &Value) {
        self.seal(week, handle, list)
            .refused(409, "deadline-passed");
        let leave = json!({ "player": self.players[handle].id, "reason": "The ferry was held up" });
        self.stage
            .wennable
            .post(&format!("{}/late-leaves", self.stage.week(week)), &leave)
            .expect(204);
        assert_eq!(self.seal(week, handle, list).expect(201)["late_minutes"], 0);
    }

    /// Proposes and publishes a round; nobody plays twice, meets again or sits out twice.
    fn pair(&mut self, week: u8) -> Vec<Value> {
        let round = self.act(&format!("weeks/{week}/rounds")).expect(201);
        let publish = format!("rounds/{}/publish", round["id"].as_str().unwrap());
        let games = self.act(&publish).expect(200);
        self.act(&publish).refused(409, "round-already-paired");
        let mut seated = Vec::new();
        for game in games.as_array().unwrap() {
            let first = self.handle(&game["first"]);
            if game["second"].is_null() {
                self.must_be_fair(week, &first);
                assert!(self.byes.insert(first.clone()), "{first} sits out twice");
            } else {
                let second = self.handle(&game["second"]);
                let mut pair = [first.clone(), second.clone()];
                pair.sort();
                seated.push(second);
                assert!(self.met.insert(pair.clone()), "{pair:?} meet twice");
            }
            seated.push(first);
        }
        seated.sort();
        let active: Vec<String> = self
            .active(week)
            .map(|(handle, _)| handle.clone())
            .collect();
        assert_eq!(seated, active, "everybody has one place");
        games
            .as_array()
            .unwrap()
            .iter()
            .filter(|game| !game["second"].is_null())
            .cloned()
            .collect()
    }

    /// The bye goes to the lower half of those who had none: to the very last of them, unless the
    /// rest could then not be paired.
    fn must_be_fair(&self, week: u8, out: &str) {
        let Some(last) = week.checked_sub(1).filter(|last| *last > 0) else {
            return;
        };
        let path = format!("{}/standings?week={last}", self.stage.season);
        let table = self.stage.server.visitor().get(&path).expect(200);
        let total = |row: &Value| (self.handle(&row["player"]), row["total"].as_i64().unwrap());
        let rows = table["rows"].as_array().unwrap().iter().map(total);
        let active: Vec<&String> = self.active(week).map(|(handle, _)| handle).collect();
        let mut without: Vec<(String, i64)> = rows
            .filter(|(handle, _)| active.contains(&handle) && !self.byes.contains(handle))
            .collect();
        without.sort_by_key(|(_, total)| *total);
        let place = without
            .iter()
            .position(|(handle, _)| handle == out)
            .unwrap();
        let half = without[without.len() / 2].1;
        assert!(
            without[place].1 <= half,
            "{out} in week {week}: {without:?}"
        );
    }

    fn play(&self, week: u8, games: &[Value]) {
        self.stage.clock().show(&self.moment(week, "play_until_at"));
        for game in games {
            let pair = [self.handle(&game["first"]), self.handle(&game["second"])];
            if week == NO_SHOW.1 && pair.iter().any(|handle| handle == NO_SHOW.0) {
                self.nobody_came(game, &pair);
            } else if week == DISPUTE.1 && pair.iter().any(|handle| handle == DISPUTE.0) {
                self.dispute(week, game, &pair);
            } else {
                let body = self.result(week, &pair, true);
                self.report(game, &pair[0], "night", &body).expect(200);
                let slip = self
                    .answer(game, &pair[1], "confirm", &json!({}))
                    .expect(200);
                assert_eq!(slip["kind"], "confirmed");
                let other = self.result(week, &pair, false);
                self.report(game, &pair[0], "later", &other)
                    .refused(409, "result-final");
                assert_eq!(
                    self.report(game, &pair[0], "night", &body).expect(200)["kind"],
                    "reported"
                );
            }
        }
    }

    /// Who comes first in the alphabet plays better, in most weeks.
    fn result(&self, week: u8, pair: &[String; 2], usual: bool) -> Value {
        let better = pair[0] < pair[1];
        let upset = (pair[0].len() + pair[1].len() + usize::from(week)).is_multiple_of(5);
        let factions: BTreeMap<_, _> = data::people()
            .unwrap()
            .into_iter()
            .map(|person| (person.handle, person.faction))
            .collect();
        let points = pair
            .each_ref()
            .map(|handle| Armoury::of(&factions[handle]).total(&self.lists[handle]));
        games::played(week, (better != upset) == usual, points)
    }

    fn report(&self, game: &Value, handle: &str, key: &str, body: &Value) -> Answer {
        let path = format!(
            "{}/games/{}/report",
            self.stage.season,
            game["id"].as_str().unwrap()
        );
        let key = format!("{key}-{}", game["id"].as_str().unwrap());
        let dress = |request: RequestBuilder| request.header("idempotency-key", &key).json(body);
        self.players[handle].actor.ask(Method::POST, &path, dress)
    }

    fn answer(&self, game: &Value, handle: &str, act: &str, body: &Value) -> Answer {
        let path = format!(
            "{}/games/{}/{act}",
            self.stage.season,
            game["id"].as_str().unwrap()
        );
        self.players[handle].actor.post(&path, body)
    }

    fn nobody_came(&self, game: &Value, pair: &[String; 2]) {
        let (there, absent) = if pair[0] == NO_SHOW.0 {
            (&pair[1], "first")
        } else {
            (&pair[0], "second")
        };
        let body = json!({ "kind": "no_show", "absent": absent, "notice": "not_given" });
        self.report(game, there, "night", &body).expect(200);
        self.answer(game, NO_SHOW.0, "confirm", &json!({}))
            .expect(200);
    }

    /// Nothing counts for either until a referee who does not play has ruled.
    fn dispute(&self, week: u8, game: &Value, pair: &[String; 2]) {
        let other = if pair[0] == DISPUTE.0 {
            &pair[1]
        } else {
            &pair[0]
        };
        self.report(game, other, "night", &self.result(week, pair, true))
            .expect(200);
        let counter = self.result(week, pair, false);
        let body = json!({ "reason": "The quarter by the mill was ours", "counter": counter });
        self.answer(game, DISPUTE.0, "dispute", &body).expect(200);
        let problem = self
            .act(&format!("weeks/{week}/close"))
            .refused(409, "week-state");
        assert!(problem["open_games"].as_u64().unwrap() >= 1, "{problem}");
        let no_game = self
            .lines(DISPUTE.0, week)
            .into_iter()
            .all(|line| line["week"] != week || line["kind"] != "game");
        assert!(no_game, "a disputed game counts for nobody");
        let path = format!(
            "{}/games/{}/rule",
            self.stage.season,
            game["id"].as_str().unwrap()
        );
        let ruling = json!({ "outcome": counter, "reason": "The photograph of turn six shows it" });
        // The draw may seat the organiser here, who else might rule.
        let why = if other == "Wennable" {
            "conflict-of-interest"
        } else {
            "forbidden"
        };
        self.players[other]
            .actor
            .post(&path, &ruling)
            .refused(403, why);
        assert_eq!(
            self.referee.post(&path, &ruling).expect(200)["kind"],
            "ruled"
        );
    }

    fn lines(&self, handle: &str, week: u8) -> Vec<Value> {
        self.ledger(handle, week)["lines"]
            .as_array()
            .unwrap()
            .clone()
    }

    fn ledger(&self, handle: &str, week: u8) -> Value {
        let player = &self.players[handle].id;
        let path = format!("{}/players/{player}/ledger?week={week}", self.stage.season);
        self.stage.server.visitor().get(&path).expect(200)
    }

    /// Closes the week; every row of its table is the sum of its ledger.
    fn close(&self, week: u8) {
        self.act(&format!("weeks/{week}/close")).expect(204);
        let path = format!("{}/standings?week={week}", self.stage.season);
        let table = self.stage.server.visitor().get(&path).expect(200);
        let rows = table["rows"].as_array().unwrap();
        assert_eq!(rows.len(), self.players.len());
        for row in rows {
            let handle = self.handle(&row["player"]);
            let ledger = self.ledger(&handle, week);
            let sum: i64 = ledger["lines"]
                .as_array()
                .unwrap()
                .iter()
                .map(|line| line["amount"].as_i64().unwrap())
                .sum();
            let weeks = row["weeks"]
                .as_array()
                .unwrap()
                .iter()
                .filter(|total| total["counts"] == true);
            let counted: i64 = weeks.map(|total| total["points"].as_i64().unwrap()).sum();
            let total = row["total"].as_i64().unwrap();
            assert_eq!(
                [sum, counted, ledger["total"].as_i64().unwrap()],
                [total; 3],
                "{handle} after week {week}"
            );
        }
        let totals: Vec<i64> = rows
            .iter()
            .map(|row| row["total"].as_i64().unwrap())
            .collect();
        assert!(totals.is_sorted_by(|a, b| a >= b), "{totals:?}");
    }

    /// What happened on the way stands in the ledgers, and the season ends.
    fn end(&self) {
        let amounts = |handle: &str, week: u8, kind: &str| -> Vec<i64> {
            let lines = self.lines(handle, WEEKS).into_iter();
            let meant = lines.filter(|line| line["week"] == week && line["kind"] == kind);
            meant.map(|line| line["amount"].as_i64().unwrap()).collect()
        };
        assert_eq!(amounts(LATE_LIST.0, LATE_LIST.1, "late_list"), [-1]);
        assert_eq!(amounts(NO_SHOW.0, NO_SHOW.1, "game"), [0]);
        assert_eq!(
            amounts(NO_SHOW.0, NO_SHOW.1, "attendance"),
            Vec::<i64>::new()
        );
        for week in 1..LATE_JOINER.1 {
            assert_eq!(amounts(LATE_JOINER.0, week, "catch_up").len(), 1);
        }
        for week in LEAVER.1..=WEEKS {
            assert_eq!(amounts(LEAVER.0, week, "game"), Vec::<i64>::new());
        }
        assert_eq!(self.met.len(), 8 + 8 + 9 + 9 + 9 + 8 + 8 + 8);
        assert_eq!(self.byes.len(), 5, "one in each odd week, never the same");
        let ended = self.act("end").expect(200);
        assert_eq!(ended["state"], "ended");
        offline::check(
            &self
                .referee
                .get(&format!("{}/export", self.stage.season))
                .expect(200),
        );
        let player = &self.players["Oskrel"].actor;
        let path = format!("{}/list/check", self.stage.week(WEEKS));
        player
            .post(&path, &self.lists["Oskrel"])
            .refused(409, "season-state");
    }
}
