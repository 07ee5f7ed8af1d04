//! An organiser who plays and would like to choose whom they meet.

use serde_json::Value;

use super::super::results::week::{FirstWeek, LISTS_DUE};
use super::super::season::offline::verify;
use super::told;
use crate::harness::{Actor, Answer, Joined, Orders, Repair, Round, RoundClient, Week};

const PEOPLE: [&str; 5] = ["Wennable", "Braewick", "Gorseley", "Joryth", "Merrowick"];

/// The lists are opened. Wennable plays; Kestanby runs the season, too, and does not.
struct OpenedWeek {
    week: FirstWeek,
    kestanby: Actor,
}

impl OpenedWeek {
    fn with(handles: &[&str]) -> Self {
        let week = FirstWeek::sealed(handles);
        week.stage.clock().show(LISTS_DUE);
        week.week().open_lists().expect(204);
        let kestanby = week.stage.appoint("Kestanby", "organiser");
        Self { week, kestanby }
    }

    fn id(&self, place: usize) -> &str {
        &self.week.players[place].id
    }

    /// As Wennable acts in it.
    fn own(&self) -> Week {
        self.week.week()
    }

    /// As Kestanby acts in it, who is neutral.
    fn neutral(&self) -> Week {
        self.week.week().by(&self.kestanby)
    }

    fn round(&self, round: &Round) -> RoundClient {
        self.week.season().round(&round.id)
    }

    fn live_at(&self, place: usize, household: &str) -> Answer<Joined> {
        self.week.season().player(self.id(place)).live_at(household)
    }

    /// Wennable sits out; then the first of the others falls ill.
    fn sits_out(&self) -> Round {
        let [one, two, three, four] = [1, 2, 3, 4].map(|place| self.id(place));
        let orders = Orders::none().pin(one, two).pin(three, four);
        let round = self.neutral().propose_with(&orders).expect(201);
        self.week.publish(&round);
        let ill = Repair::because("One player less tonight").without(one);
        self.round(&round).repair(&ill).expect(201)
    }
}

#[test]
fn whoever_plays_chooses_no_opponent_by_orders_about_the_others() {
    let opened = OpenedWeek::with(&PEOPLE[..4]);
    let [own, one, two] = [0, 1, 2].map(|place| opened.id(place));
    for orders in [
        Orders::none().pin(one, two),
        Orders::none().forbid(one, two),
    ] {
        opened
            .own()
            .propose_with(&orders)
            .refused(403, "conflict-of-interest");
        opened.neutral().propose_with(&orders).expect(201);
    }
    let round = opened.neutral().propose().expect(201);
    opened.week.publish(&round);
    let games = opened.week.games();
    let theirs = games.iter().find(|game| !game.is_of(own)).unwrap();
    let [one, other] = theirs.sides();
    let apart = Repair::because("They met last night").forbid(one, other);
    let round = opened.round(&round);
    round.repair(&apart).refused(403, "conflict-of-interest");
    round.by(&opened.kestanby).repair(&apart).expect(201);
}

#[test]
fn whoever_plays_draws_a_round_once_and_everybody_reads_of_every_draw() {
    let opened = OpenedWeek::with(&PEOPLE[..4]);
    let first = opened.own().propose().expect(201);
    let same = opened.own().propose().expect(201);
    assert_eq!(first.proposal.games, same.proposal.games);
    let last = &opened.week.players[3];
    opened.week.tell(last, &[]).expect(204);
    opened.own().propose().refused(403, "conflict-of-interest");
    opened.neutral().propose().expect(201);
    let facts = told(&opened.week.stage, "propose_round");
    let draws: Vec<&Value> = facts.iter().map(|facts| &facts["draw"]).collect();
    assert_eq!(draws.len(), 3);
    assert_eq!(draws[1], draws[2], "the same inputs, the same draw");
    assert_ne!(draws[0], draws[1]);
}

#[test]
fn who_lives_together_is_kept_apart_unnumbered_and_not_after_the_draw() {
    let opened = OpenedWeek::with(&PEOPLE[..4]);
    opened
        .live_at(0, "kiln-yard")
        .refused(403, "conflict-of-interest");
    for place in [1, 2] {
        opened.live_at(place, "mill-lane").expect(200);
    }
    let round = opened.own().propose().expect(201);
    let mut pair = [opened.id(1), opened.id(2)];
    pair.sort_unstable();
    assert_eq!(round.inputs.forbidden, [pair]);
    let contenders = &round.inputs.contenders;
    assert!(contenders.iter().all(|it| it.household.is_none()));
    opened.live_at(3, "mill-lane").refused(409, "week-state");
    let again = Orders::none().forbid(pair[0], pair[1]);
    opened.own().propose_with(&again).expect(201);
}

#[test]
fn a_repair_of_ones_own_game_waits_for_somebody_neutral() {
    let opened = OpenedWeek::with(&PEOPLE);
    let ilkamar = opened.week.stage.appoint("Ilkamar", "referee");
    let [own, opponent] = [0, 2].map(|place| opened.id(place));
    let repair = opened.sits_out();
    let mut changed = repair.changes.iter();
    assert!(
        changed.any(|change| change.player == own),
        "{:?}",
        repair.changes
    );
    let round = opened.round(&repair);
    round.publish().refused(403, "approval-required");
    round.by(&ilkamar).publish().expect(200);

    // Now Wennable has a game, and their opponent falls ill: the referee repairs the round.
    let ill = Repair::because("Another player less tonight").without(opponent);
    round.repair(&ill).refused(403, "conflict-of-interest");
    let repair = round.by(&ilkamar).repair(&ill).expect(201);
    let published = opened.round(&repair).by(&ilkamar).publish();
    published.expect(200);
    let games = opened.week.games();
    let alone = games.iter().find(|game| game.is_bye()).unwrap();
    assert_eq!(alone.first, own);
    let export = opened.week.season().export().expect(200);
    let (content, said) = verify(&export);
    assert!(content, "{said}");
}

#[test]
fn where_nobody_else_may_the_one_organiser_publishes_the_repair_that_an_illness_forces() {
    let opened = OpenedWeek::with(&PEOPLE);
    let repair = opened.sits_out();
    let stage = &opened.week.stage;
    let appointed = stage.club.appoint(&opened.kestanby, "player");
    appointed.expect(204);
    opened.round(&repair).publish().expect(200);
    assert_eq!(told(stage, "publish_repair").len(), 1);
}
