//! Something befalls a published round: somebody is ill at noon, a night is lost.

use std::collections::BTreeSet;
use std::thread;

use serde_json::{Value, json};

use super::results::week::{FirstWeek, LAST_NIGHT, played};
use super::season::offline::verify;
use crate::harness::{Answer, Game, Repair, Round, RoundClient};

/// The five of a week whose round is published; one of them sits out.
const FIVE: [&str; 5] = ["Braewick", "Gorseley", "Joryth", "Merrowick", "Tamselle"];

struct PublishedRound {
    week: FirstWeek,
    round: Round,
}

impl PublishedRound {
    fn of(handles: &[&str]) -> Self {
        let week = FirstWeek::sealed(handles);
        let round = week.propose();
        week.publish(&round);
        Self { week, round }
    }

    fn round(&self) -> RoundClient {
        self.week.season().round(&self.round.id)
    }

    /// The organiser asks what a repair would change.
    fn repair(&self, repair: &Repair) -> Answer<Round> {
        self.round().repair(repair)
    }

    fn publish(&self, repair: &Round) -> Answer<Vec<Game>> {
        self.week.season().round(&repair.id).publish()
    }

    fn meetings(&self) -> Vec<Game> {
        self.week.meetings()
    }

    /// Who sits out.
    fn bye(&self) -> String {
        let games = self.week.games();
        let bye = games.into_iter().find(Game::is_bye).unwrap();
        bye.first
    }

    /// The published rounds as a visitor reads them.
    fn seen_rounds(&self) -> Vec<Round> {
        let visitor = self.week.stage.visitor();
        self.week.week().by(visitor).rounds().expect(200)
    }

    fn export(&self) -> Value {
        self.week.season().export().expect(200)
    }
}

fn without(player: &str) -> Repair {
    Repair::because("One player less tonight").without(player)
}

fn sorted<const N: usize>(mut players: [&str; N]) -> [&str; N] {
    players.sort_unstable();
    players
}

#[test]
fn the_opponent_of_somebody_ill_meets_who_sat_out_and_the_other_game_stays() {
    let published = PublishedRound::of(&FIVE);
    let (meetings, bye) = (published.meetings(), published.bye());
    let [ill, left] = meetings[0].sides();
    let repair = published.repair(&without(ill)).expect(201);
    assert_eq!((repair.version, repair.number), (2, 1));
    let repaired = repair.repair.as_ref().unwrap();
    assert_eq!(repaired.of, published.round.id);
    assert_eq!(repaired.reason, "One player less tonight");
    let mut changed: Vec<&str> = repair.changes.iter().map(|it| it.player.as_str()).collect();
    changed.sort_unstable();
    let befallen = sorted([ill, left, &bye]);
    assert_eq!(changed, befallen, "{:?}", repair.changes);
    assert_eq!(published.meetings(), meetings, "a preview changes nothing");
    assert_eq!(published.seen_rounds().len(), 1, "nor is it seen");

    published.publish(&repair).expect(200);
    let after = published.meetings();
    assert!(
        after.contains(&meetings[1]),
        "the very same game: {after:?}"
    );
    let new = after.iter().find(|game| **game != meetings[1]).unwrap();
    assert_eq!(new.pair(), sorted([left, &bye]));
    assert_eq!(published.week.games().len(), 2, "nobody sits out");
    assert_eq!(
        published.week.lines(published.week.player(ill)),
        [("absence".to_owned(), 2)],
        "away with notice"
    );
    let rounds = published.seen_rounds();
    assert_eq!(
        rounds[0].id, published.round.id,
        "what was drawn stays to be read"
    );
    assert_eq!(rounds[1].changes, repair.changes);
    assert_eq!(published.week.acts()[0], "publish_repair");
    published
        .publish(&repair)
        .refused(409, "round-already-paired");
    let late = without(&meetings[1].first);
    published.repair(&late).refused(409, "round-already-paired");
}

#[test]
fn a_repair_is_verified_offline_and_each_forgery_is_named() {
    let published = PublishedRound::of(&FIVE);
    let ill = &published.meetings()[0].first;
    let repair = published.repair(&without(ill)).expect(201);
    published.publish(&repair).expect(200);
    let export = published.export();
    let (content, said) = verify(&export);
    assert!(content, "{said}");
    assert!(said.contains("it repairs the version before"), "{said}");

    let at = "/weeks/0/rounds/1";
    let score = export.pointer(&format!("{at}/inputs/contenders/0/score"));
    let score = score.unwrap().as_i64().unwrap();
    let repaired = "it repairs the version before";
    let cheats: [(&str, Value, &str); 5] = [
        ("/repair/of", json!(repair.id), repaired),
        ("/inputs/contenders/0/score", json!(score + 9), repaired),
        ("/inputs/published/0/table", json!(17), repaired),
        ("/version", json!(3), "it is the first version of its round"),
        ("/proposal/games/0/table", json!(17), "gives the same games"),
    ];
    for (place, forged, promise) in cheats {
        let mut export = export.clone();
        *export.pointer_mut(&format!("{at}{place}")).unwrap() = forged;
        let (content, said) = verify(&export);
        assert!(!content, "{place} was forged unnoticed");
        let mut lines = said.lines();
        let named = lines.any(|line| line.starts_with("BROKEN") && line.contains(promise));
        assert!(named, "{place}: {said}");
    }
    let mut without = export.clone();
    let rounds = without.pointer_mut("/weeks/0/rounds").unwrap();
    rounds.as_array_mut().unwrap().pop();
    assert!(!verify(&without).0, "a repair that is left out is missed");
}

#[test]
fn what_is_reported_stays_and_a_report_in_between_stops_the_repair() {
    let published = PublishedRound::of(&FIVE);
    let week = &published.week;
    week.stage.clock().show(LAST_NIGHT);
    let [one, other] = &published.meetings()[..] else {
        panic!("two games and a bye");
    };
    let result = played((4, 120), (2, 90));
    let report = |game: &Game, player: &str, key: &str| {
        let game = week.season().game(&game.id).by(week.player(player));
        game.report(key, &result).expect(200);
    };
    report(one, &one.first, "first");
    let problem = published
        .repair(&without(one.second()))
        .refused(422, "validation");
    assert_eq!(problem.faults[0].pointer, "/availabilities/0");

    let repair = published.repair(&without(&other.first)).expect(201);
    assert_eq!(repair.inputs.fixed.len(), 1);
    report(other, other.second(), "second");
    published
        .publish(&repair)
        .refused(409, "slip-state-changed");
    assert_eq!(published.meetings().len(), 2);
}

#[test]
fn a_lost_night_moves_its_games_and_nobody_meets_somebody_else() {
    let published = PublishedRound::of(&FIVE);
    let meetings = published.meetings();
    let lost = meetings[0].night.as_deref().unwrap();
    let kept = if lost == "first" { "second" } else { "first" };
    let mut flood = Repair::because("The hall is flooded").tables_left(lost, 0);
    // Everybody can come on the night that is left.
    for player in &published.week.players {
        flood = flood.can_come(&player.id, &[kept]);
    }
    let repair = published.repair(&flood).expect(201);
    published.publish(&repair).expect(200);
    let after = published.meetings();
    let who_meets = |games: &[Game]| -> BTreeSet<(String, [String; 2])> {
        let games = games.iter();
        let games = games.map(|game| (game.id.clone(), game.sides().map(str::to_owned)));
        games.collect()
    };
    assert_eq!(who_meets(&after), who_meets(&meetings));
    assert_eq!(after.len(), meetings.len());
    let moved = |game: &Game| game.night.as_deref() == Some(kept);
    assert!(after.iter().all(moved), "{after:?}");
}

#[test]
fn nobody_takes_their_own_opponent_out_and_a_repair_changes_something() {
    let published = PublishedRound::of(&["Wennable", "Gorseley", "Joryth", "Merrowick"]);
    let own = &published.week.players[0].id;
    let meetings = published.meetings();
    let (ours, theirs): (Vec<&Game>, Vec<&Game>) =
        meetings.iter().partition(|game| game.is_of(own));
    for player in ours[0].sides() {
        published
            .repair(&without(player))
            .refused(403, "conflict-of-interest");
    }
    let kestanby = published.week.stage.appoint("Kestanby", "organiser");
    published
        .round()
        .by(&kestanby)
        .repair(&without(&ours[0].first))
        .expect(201);
    published.repair(&without(&theirs[0].first)).expect(201);
    published
        .repair(&Repair::because("Just so"))
        .refused(422, "validation");
    let unknown = Repair::because("Just so").tables_left("never", 1);
    let problem = published.repair(&unknown).refused(422, "validation");
    assert_eq!(problem.faults[0].pointer, "/nights/0");
}

#[test]
fn somebody_who_turns_up_after_all_meets_who_sat_out() {
    let week = FirstWeek::sealed(&FIVE[..4]);
    week.tell(&week.players[3], &[]).expect(204);
    let round = week.propose();
    week.publish(&round);
    let published = PublishedRound { week, round };
    let (late, bye) = (&published.week.players[3].id, published.bye());
    let turned_up = Repair::because("Somebody more tonight").can_come(late, &["first", "second"]);
    let repair = published.repair(&turned_up).expect(201);
    published.publish(&repair).expect(200);
    let meets = |game: &Game| game.is_of(late) && game.is_of(&bye);
    assert!(published.meetings().iter().any(meets));
    assert!(verify(&published.export()).0);
}

/// Whichever comes first: the report stands and the repair is refused, or the game is gone and its
/// report with it. Never both.
#[test]
fn a_report_and_the_repair_that_takes_its_game_away_never_both_succeed() {
    let published = PublishedRound::of(&FIVE);
    let week = &published.week;
    week.stage.clock().show(LAST_NIGHT);
    let game = published.meetings().remove(0);
    let repair = published.repair(&without(&game.first)).expect(201);
    let there = week.player(game.second());
    let result = played((4, 120), (2, 90));
    let report = || {
        let slip = week.season().game(&game.id).by(there);
        slip.report("late", &result).status
    };
    let (publication, reported) = thread::scope(|threads| {
        let publication = threads.spawn(|| published.publish(&repair).status);
        let reported = threads.spawn(report);
        (publication.join().unwrap(), reported.join().unwrap())
    });
    let is_left = published.meetings().iter().any(|left| left.id == game.id);
    match (publication, reported) {
        (200, 404) => assert!(!is_left),
        (409, 200) => assert!(is_left),
        other => panic!("{other:?}"),
    }
}
