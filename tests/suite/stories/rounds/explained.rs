//! Everybody can read why a round is as it is.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::{PEOPLE, ShortSeason, meetings};
use crate::harness::{Orders, Player, Reason, SeasonBody, Stage};

fn by_score() -> Value {
    json!({ "kind": "by_score" })
}

#[test]
fn floats_have_a_direction_and_every_pair_a_price() {
    let season = ShortSeason::begin(2, by_score(), &PEOPLE);
    season.open(1);
    season.pair(1);
    season.decide(1);
    season.open(2);
    season.pair(2);
    let round = season.seen_rounds(2).remove(0);
    // Three winners: one of them floats down to one of three losers.
    let reasons = &round.proposal.reasons;
    let floats = reasons.iter().filter(|it| it.subject.kind == "float");
    let floats: Vec<&Reason> = floats.collect();
    assert_eq!(floats.len(), 1, "{reasons:?}");
    let float = &floats[0].subject;
    assert!(float.down_score > float.up_score);
    let said = round.words.sentences();
    let count = |part: &str| {
        let said = said.iter();
        said.filter(|sentence| sentence.contains(part)).count()
    };
    assert_eq!(count("floats down to meet"), 1, "{said:?}");
    assert_eq!(count("have the same score"), 2, "{said:?}");
    let priced = |it: &&Reason| ["worse", "nothing"].contains(&it.price.kind.as_str());
    assert_eq!(reasons.iter().filter(priced).count(), 3, "{reasons:?}");
    assert_eq!(
        count("Without it the best round has") + count("is as good") + count("is exactly as good"),
        3,
        "{said:?}"
    );

    let floater = float.down.as_ref().unwrap();
    let mut contenders = round.inputs.contenders.iter();
    let contender = contenders.find(|it| it.player == *floater).unwrap();
    assert_eq!(contender.floats, [None, None], "all were equal before");
}

#[test]
fn orders_of_the_organiser_are_read_by_everybody_and_traced() {
    let season = ShortSeason::begin(1, by_score(), &PEOPLE[..4]);
    season.open(1);
    let [a, b, c, d] = [0, 1, 2, 3].map(|at| season.players[at].id.as_str());
    let orders = Orders::none().pin(a, b).forbid(a, c).forbid(b, d);
    let round = season.week(1).propose_with(&orders).expect(201);
    season.publish(&round);
    let seen = season.seen_rounds(1).remove(0);
    assert_eq!(seen.inputs.pins.len(), 1);
    assert_eq!(seen.inputs.forbidden.len(), 2);
    let said = seen.words.sentences();
    assert!(said.contains(&"The organiser fixed this."));
    let trail = season.seen().trail().expect(200);
    let mut published = trail.iter().filter(|entry| entry.act == "publish_round");
    let published = published.next().unwrap();
    assert_eq!(published.fact("pins"), &json!(seen.inputs.pins));
    assert_eq!(published.fact("forbidden"), &json!(seen.inputs.forbidden));
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
        let join = |(handle, faction, nights)| stage.join_with(handle, faction, nights);
        people.map(join).into()
    };
    let one_table = |season: &mut SeasonBody| {
        season.set("/calendar/nights/0/tables", 1);
        season.set("/calendar/nights/1/tables", 1);
    };
    let season = ShortSeason::with(1, one_table, join);
    season.open(1);
    season.pair(1);
    let round = season.seen_rounds(1).remove(0);
    let factions = json!({ "kind": "wish", "wish": "factions_apart" });
    let proposal = &round.proposal;
    let amounts = [&proposal.cost, &proposal.cost_without_hall].map(|costs| {
        let cost = costs.iter().find(|it| it.level == factions);
        cost.unwrap().amount
    });
    assert_eq!(amounts, [1, 0]);
    assert_eq!(
        round.words.hall,
        "Because the tables are so few on each night, the round has 1 more in games within a faction."
    );
}

#[test]
fn a_rematch_that_the_numbers_force_is_explained_and_foreseen() {
    let season = ShortSeason::begin(4, by_score(), &PEOPLE[..4]);
    let mut foreseen = Vec::new();
    for week in 1..=4 {
        season.open(week);
        season.pair(week);
        let round = season.seen_rounds(week).remove(0);
        foreseen.push(round.words.looked_ahead);
        if week < 4 {
            assert_eq!(round.words.barrier, None);
        } else {
            let barrier = round.words.barrier.unwrap();
            assert!(
                barrier.starts_with("At least 2 games must be a rematch"),
                "{barrier}"
            );
            assert!(
                PEOPLE[..4].iter().all(|handle| barrier.contains(handle)),
                "{barrier}"
            );
            let sets = round.proposal.barrier.unwrap().odd_sets;
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
    let season = ShortSeason::begin(3, by_score(), &PEOPLE[..4]);
    let mut sat: BTreeMap<String, Vec<u64>> = BTreeMap::new();
    for week in 1..=3 {
        season.open(week);
        for game in meetings(&season.pair(week)) {
            for player in game.pair() {
                sat.entry(player).or_default().push(game.table.unwrap());
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
    let audit = season.seen().fairness().expect(200);
    assert_eq!((audit.tests, audit.seasons), (20, 9999));
    assert_eq!(audit.correction, "bonferroni");
    let state = season.seen().state().expect(200);
    assert_eq!(audit.seed, state.seed_commitment.unwrap()[..16]);
    assert_eq!(audit.findings.len(), 20);
    let tables = audit.findings.iter();
    for finding in tables.filter(|it| it.measure == "repeated_tables") {
        assert_eq!((&finding.value, finding.unusual), (&json!(0), false));
        assert!(finding.sentence.contains("played on before"));
    }
    assert_eq!(
        audit.findings,
        season.seen().fairness().expect(200).findings,
        "the same seed, the same audit"
    );
}
