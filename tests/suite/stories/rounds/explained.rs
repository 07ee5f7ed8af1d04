//! Everybody can read why a round is as it is.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::{PEOPLE, Short, meetings, pair};
use crate::harness::{Player, Stage};

fn by_score() -> Value {
    json!({ "kind": "by_score" })
}

/// The published rounds of a week as a visitor reads them.
fn read(season: &Short, week: u8) -> Value {
    season.get(&format!("weeks/{week}/rounds"))
}

fn sentences(round: &Value) -> Vec<String> {
    let reasons = round["words"]["reasons"].as_array().unwrap().iter();
    reasons
        .flat_map(|reason| reason.as_array().unwrap())
        .map(|sentence| sentence.as_str().unwrap().to_owned())
        .collect()
}

#[test]
fn floats_have_a_direction_and_every_pair_a_price() {
    let season = Short::begin(2, by_score(), &PEOPLE);
    season.open(1);
    season.pair(1);
    season.decide(1);
    season.open(2);
    season.pair(2);
    let round = &read(&season, 2)[0];
    // Three winners: one of them floats down to one of three losers.
    let reasons = round["proposal"]["reasons"].as_array().unwrap();
    let floats = reasons.iter().filter(|it| it["subject"]["kind"] == "float");
    let floats: Vec<_> = floats.collect();
    assert_eq!(floats.len(), 1, "{reasons:?}");
    let scores = ["down_score", "up_score"].map(|name| floats[0]["subject"][name].as_i64());
    assert!(scores[0] > scores[1]);
    let said = sentences(round);
    let count = |part: &str| {
        said.iter()
            .filter(|sentence| sentence.contains(part))
            .count()
    };
    assert_eq!(count("floats down to meet"), 1, "{said:?}");
    assert_eq!(count("have the same score"), 2, "{said:?}");
    let priced = |it: &&Value| matches!(it["price"]["kind"].as_str(), Some("worse" | "nothing"));
    assert_eq!(reasons.iter().filter(priced).count(), 3, "{reasons:?}");
    assert_eq!(
        count("Without it the best round has") + count("is as good") + count("is exactly as good"),
        3,
        "{said:?}"
    );

    let floater = floats[0]["subject"]["down"].clone();
    let contenders = &round["inputs"]["contenders"];
    let before = |id: &Value| {
        let mut all = contenders.as_array().unwrap().iter();
        all.find(|it| it["player"] == *id).unwrap()["floats"].clone()
    };
    assert_eq!(
        before(&floater),
        json!([null, null]),
        "all were equal before"
    );
}

#[test]
fn orders_of_the_organiser_are_read_by_everybody_and_traced() {
    let season = Short::begin(1, by_score(), &PEOPLE[..4]);
    season.open(1);
    let [a, b, c, d] = [0, 1, 2, 3].map(|at| season.players[at].id.clone());
    let orders = json!({ "pins": [[a, b]], "forbidden": [[a, c], [b, d]] });
    let round = season.act("weeks/1/rounds", &orders).expect(201);
    season.publish(&round);
    let seen = &read(&season, 1)[0];
    let sorted = |pairs: &Value| {
        let pairs = pairs.as_array().unwrap().iter();
        let mut pairs: Vec<String> = pairs.map(Value::to_string).collect();
        pairs.sort();
        pairs
    };
    assert_eq!(seen["inputs"]["pins"].as_array().unwrap().len(), 1);
    assert_eq!(sorted(&seen["inputs"]["forbidden"]).len(), 2);
    assert!(sentences(seen).contains(&"The organiser fixed this.".to_owned()));
    let trail = season.get("trail");
    let published = trail.as_array().unwrap().iter();
    let published = published
        .filter(|entry| entry["act"] == "publish_round")
        .collect::<Vec<_>>();
    assert_eq!(published[0]["facts"]["pins"], seen["inputs"]["pins"]);
    assert_eq!(
        published[0]["facts"]["forbidden"],
        seen["inputs"]["forbidden"]
    );
}

/// Two of one faction would rather not meet, but only two tables are free, one a night, and the other
/// two can come on the first night alone.
#[test]
fn the_hall_says_what_it_costs() {
    let join = |stage: &Stage| -> Vec<Player> {
        let both: &[&str] = &["first", "second"];
        let people = [
            ("Braewick", "sodwether-moot", both),
            ("Gorseley", "sodwether-moot", both),
            ("Joryth", "vesper-orrery", &["first"][..]),
            ("Merrowick", "ashloom-cantons", &["first"][..]),
        ];
        let join = |(handle, faction, nights): (&str, &str, &[&str])| {
            let actor = stage.welcome(handle);
            let body = json!({ "handle": handle, "faction": faction, "nights": nights });
            let player = actor
                .post(&format!("{}/players", stage.season), &body)
                .expect(201);
            let id = player["id"].as_str().unwrap().to_owned();
            Player { actor, id }
        };
        people.map(join).into()
    };
    let one_table = |season: &mut Value| {
        for night in season["calendar"]["nights"].as_array_mut().unwrap() {
            night["tables"] = json!(1);
        }
    };
    let season = Short::with(1, one_table, join);
    season.open(1);
    season.pair(1);
    let round = &read(&season, 1)[0];
    let amount = |cost: &str| {
        let levels = round["proposal"][cost].as_array().unwrap();
        let factions = json!({ "kind": "wish", "wish": "factions_apart" });
        let level = levels.iter().find(|it| it["level"] == factions);
        level.unwrap()["amount"].as_u64().unwrap()
    };
    assert_eq!((amount("cost"), amount("cost_without_hall")), (1, 0));
    assert_eq!(
        round["words"]["hall"],
        "Because the tables are so few on each night, the round has 1 more in games within a faction."
    );
}

#[test]
fn a_rematch_that_the_numbers_force_is_explained_and_foreseen() {
    let season = Short::begin(4, by_score(), &PEOPLE[..4]);
    let mut foreseen = Vec::new();
    for week in 1..=4 {
        season.open(week);
        season.pair(week);
        let round = &read(&season, week)[0];
        foreseen.push(round["words"]["looked_ahead"].as_str().unwrap().to_owned());
        if week < 4 {
            assert_eq!(round["words"]["barrier"], Value::Null);
        } else {
            let barrier = round["words"]["barrier"].as_str().unwrap();
            assert!(
                barrier.starts_with("At least 2 games must be a rematch"),
                "{barrier}"
            );
            assert!(
                PEOPLE[..4].iter().all(|handle| barrier.contains(handle)),
                "{barrier}"
            );
            let sets = round["proposal"]["barrier"]["odd_sets"].as_array().unwrap();
            assert_eq!(sets.len(), 4, "everybody is a set of their own");
        }
    }
    assert!(
        foreseen[0].contains("only 2 rounds more can be played"),
        "{foreseen:?}"
    );
    assert_eq!(foreseen[3], "This is the last round.");
}

/// Four players and eleven tables: in three rounds nobody needs to sit at a table again.
#[test]
fn nobody_sits_at_one_table_twice_while_another_is_free() {
    let season = Short::begin(3, by_score(), &PEOPLE[..4]);
    let mut sat: BTreeMap<String, Vec<u64>> = BTreeMap::new();
    for week in 1..=3 {
        season.open(week);
        for game in meetings(&season.pair(week)) {
            for player in pair(game) {
                sat.entry(player)
                    .or_default()
                    .push(game["table"].as_u64().unwrap());
            }
        }
    }
    let distinct = |tables: &Vec<u64>| {
        let mut tables = tables.clone();
        tables.sort_unstable();
        tables.dedup();
        tables.len()
    };
    assert!(sat.values().all(|tables| distinct(tables) == 3), "{sat:?}");

    // The audit of the same season, as a visitor reads it.
    let audit = season.get("fairness");
    assert_eq!(
        (&audit["tests"], &audit["seasons"]),
        (&json!(20), &json!(9999))
    );
    assert_eq!(audit["correction"], "bonferroni");
    let visitor = season.stage.server.visitor();
    let commitment = visitor.get(&season.stage.season).expect(200)["seed_commitment"].clone();
    assert_eq!(audit["seed"], commitment.as_str().unwrap()[..16]);
    let findings = audit["findings"].as_array().unwrap();
    assert_eq!(findings.len(), 20);
    let tables = findings
        .iter()
        .filter(|it| it["measure"] == "repeated_tables");
    for finding in tables {
        assert_eq!(
            (&finding["value"], &finding["unusual"]),
            (&json!(0), &json!(false))
        );
        assert!(
            finding["sentence"]
                .as_str()
                .unwrap()
                .contains("played on before")
        );
    }
    assert_eq!(
        audit["findings"],
        season.get("fairness")["findings"],
        "the same seed, the same audit"
    );
}
