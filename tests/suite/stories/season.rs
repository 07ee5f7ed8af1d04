//! A full season over HTTP: 17 players, 8 weeks, caps of 250 to 2,000 (common practice, no source),
//! with one who leaves, one who comes late, one who does not turn up and one who objects.

mod armies;
mod games;
pub mod offline;
mod rules;

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;
use tallyhost::demo::data;

use crate::harness::{
    Actor, Answer, Game, GameClient, Ledger, Line, List, Player, Receipt, Season, Stage, WeekTimes,
    no_show,
};
use armies::{Armoury, Broken};

const WEEKS: u8 = 8;
const LATE_JOINER: (&str, u8) = ("Vikkary", 3);
const LEAVER: (&str, u8) = ("Dunstow", 6);
const LATE_LIST: (&str, u8) = ("Pellamoor", 2);
const NO_SHOW: (&str, u8) = ("Gorseley", 4);
const DISPUTE: (&str, u8) = ("Merrowick", 5);

#[test]
fn seventeen_players_play_eight_weeks() {
    let mut season = FullSeason::begin();
    for week in 1..=WEEKS {
        season.begin_week(week);
        season.hand_in_lists(week);
        let games = season.pair(week);
        season.play(week, &games);
        season.close(week);
    }
    season.end();
}

struct FullSeason {
    stage: Stage,
    referee: Actor,
    /// By handle, in a fixed order.
    players: BTreeMap<String, Player>,
    factions: BTreeMap<String, String>,
    lists: BTreeMap<String, List>,
    weeks: Vec<WeekTimes>,
    met: BTreeSet<[String; 2]>,
    byes: BTreeSet<String>,
}

impl FullSeason {
    fn begin() -> Self {
        let stage = Stage::with(|season| {
            season.rising_caps(250, 250, WEEKS);
            season.list_rules(rules::list_rules());
        });
        for (week, scenario) in (1..).zip(data::scenarios().unwrap()) {
            stage.week(week).set_scenario(&scenario).expect(204);
        }
        let people = data::people().unwrap().into_iter();
        let factions: BTreeMap<String, String> = people
            .map(|person| (person.handle, person.faction))
            .collect();
        let players: BTreeMap<String, Player> = data::people()
            .unwrap()
            .into_iter()
            .map(|person| person.handle)
            .filter(|handle| handle != LATE_JOINER.0)
            .map(|handle| (handle.clone(), stage.join(&handle)))
            .collect();
        assert_eq!(players.len(), 17);
        let referee = stage.appoint("Tillory", "referee");
        stage.start();
        let weeks = stage.season.weeks().expect(200);
        Self {
            stage,
            referee,
            players,
            factions,
            lists: BTreeMap::new(),
            weeks,
            met: BTreeSet::new(),
            byes: BTreeSet::new(),
        }
    }

    fn times(&self, week: u8) -> &WeekTimes {
        &self.weeks[usize::from(week) - 1]
    }

    /// As the owner acts in it.
    fn season(&self) -> &Season {
        &self.stage.season
    }

    /// As everybody sees it.
    fn seen(&self) -> Season {
        self.stage.season.by(self.stage.visitor())
    }

    fn game(&self, game: &Game) -> GameClient {
        self.season().game(&game.id)
    }

    fn armoury(&self, handle: &str) -> Armoury {
        Armoury::of(&self.factions[handle])
    }

    /// Who plays in a week.
    fn active(&self, week: u8) -> Vec<String> {
        let handles = self.players.keys();
        let here = handles.filter(|handle| *handle != LEAVER.0 || week < LEAVER.1);
        here.cloned().collect()
    }

    fn handle(&self, id: &str) -> String {
        let mut players = self.players.iter();
        let found = players.find(|(_, player)| player.id == id);
        found.unwrap().0.clone()
    }

    /// Some come and go between two weeks.
    fn begin_week(&mut self, week: u8) {
        if week > 1 {
            self.stage.clock().show(&self.times(week).lists_due_at);
        }
        if week == LATE_JOINER.1 {
            self.players
                .insert(LATE_JOINER.0.to_owned(), self.stage.join(LATE_JOINER.0));
        }
        if week == LEAVER.1 {
            let leaver = &self.players[LEAVER.0];
            let left = self.season().player(&leaver.id).by(leaver).withdraw();
            assert_eq!(left.expect(200).left_after_week, Some(week - 1));
        }
    }

    /// Everybody first tries a list that breaks a rule, then hands in one that keeps them all.
    fn hand_in_lists(&mut self, week: u8) {
        let cap = self.times(week).cap;
        let active = self.active(week);
        for (number, handle) in active.iter().enumerate() {
            let armoury = self.armoury(handle);
            let last = self.lists.get(handle);
            let list = armoury.grow(last, cap, number);
            let broken = armoury.broken(number + usize::from(week), &list, last, cap);
            self.must_refuse(week, handle, &broken);
            let total = armoury.total(&list);
            if (handle.as_str(), week) != LATE_LIST {
                let report = self.seal(week, handle, &list).expect(201).report;
                let left = i64::try_from(cap - total).unwrap();
                assert_eq!((report.total, report.left), (total, left));
            }
            self.lists.insert(handle.clone(), list);
        }
        let due = &self.times(week).lists_accepted_until;
        self.stage.clock().show(due);
        if week == LATE_LIST.1 {
            self.seal_late(week, LATE_LIST.0, &self.lists[LATE_LIST.0]);
        }
        self.season().week(week).open_lists().expect(204);
        let opened = self.seen().week(week).lists().expect(200);
        for list in &opened.lists {
            let handed_in = &self.lists[&self.handle(&list.player)];
            assert_eq!(list.sealed().list, *handed_in);
        }
        assert_eq!(opened.lists.len(), active.len());
    }

    fn seal(&self, week: u8, handle: &str, list: &List) -> Answer<Receipt> {
        let week = self.season().week(week);
        week.list_of(&self.players[handle]).seal(list)
    }

    fn must_refuse(&self, week: u8, handle: &str, broken: &Broken) {
        let over = "points-cap-exceeded";
        let answer = self.seal(week, handle, &broken.list).with_status(422);
        let is_over = answer.json()["type"] == format!("/problems/{over}");
        let code = if is_over { over } else { "list-breaks-rules" };
        let problem = answer.refused(422, code);
        let mut faults = problem.faults.iter();
        assert_eq!(
            is_over,
            faults.any(|fault| fault.code == "list.over-cap"),
            "{problem}"
        );
        let Broken {
            code,
            limit,
            actual,
            ..
        } = *broken;
        let mut faults = problem.faults.iter();
        let expected = faults
            .any(|fault| fault.code == code && fault.limit == limit && fault.actual == actual);
        assert!(
            expected,
            "{handle}, week {week}: {code} {limit} {actual} not in {problem}"
        );
    }

    /// To the second too late, and then with leave.
    fn seal_late(&self, week: u8, handle: &str, list: &List) {
        self.seal(week, handle, list)
            .refused(409, "deadline-passed");
        let week_of = self.season().week(week);
        let leave = week_of.grant_late_leave(&self.players[handle], "The ferry was held up");
        leave.expect(204);
        let sealed = self.seal(week, handle, list).expect(201);
        assert_eq!(sealed.late_minutes, Some(0));
    }

    /// Proposes and publishes a round; nobody plays twice, meets again or sits out twice.
    fn pair(&mut self, week: u8) -> Vec<Game> {
        let round = self.season().week(week).propose().expect(201);
        let round = self.season().round(&round.id);
        let games = round.publish().expect(200);
        round.publish().refused(409, "round-already-paired");
        let mut seated = Vec::new();
        for game in &games {
            let first = self.handle(&game.first);
            if game.is_bye() {
                self.must_be_fair(week, &first);
                assert!(self.byes.insert(first.clone()), "{first} sits out twice");
            } else {
                let second = self.handle(game.second());
                let mut pair = [first.clone(), second.clone()];
                pair.sort();
                seated.push(second);
                assert!(self.met.insert(pair.clone()), "{pair:?} meet twice");
            }
            seated.push(first);
        }
        seated.sort();
        assert_eq!(seated, self.active(week), "everybody has one place");
        games.into_iter().filter(|game| !game.is_bye()).collect()
    }

    /// The bye goes to the lower half of those who had none: to the very last of them, unless the
    /// rest could then not be paired.
    fn must_be_fair(&self, week: u8, out: &str) {
        let Some(last) = week.checked_sub(1).filter(|last| *last > 0) else {
            return;
        };
        let table = self.seen().standings_after(last).expect(200);
        let rows = table.rows.iter();
        let rows = rows.map(|row| (self.handle(&row.player), row.total));
        let active = self.active(week);
        let mut without: Vec<(String, i64)> = rows
            .filter(|(handle, _)| active.contains(handle) && !self.byes.contains(handle))
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

    fn play(&self, week: u8, games: &[Game]) {
        self.stage.clock().show(&self.times(week).play_until_at);
        for game in games {
            let pair = game.sides().map(|id| self.handle(id));
            if week == NO_SHOW.1 && pair.iter().any(|handle| handle == NO_SHOW.0) {
                self.nobody_came(game, &pair);
            } else if week == DISPUTE.1 && pair.iter().any(|handle| handle == DISPUTE.0) {
                self.dispute(week, game, &pair);
            } else {
                let [reporter, other] = [&pair[0], &pair[1]].map(|handle| &self.players[handle]);
                let (by_reporter, by_other) =
                    (self.game(game).by(reporter), self.game(game).by(other));
                let key = |word: &str| format!("{word}-{}", game.id);
                let result = self.result(week, &pair, true);
                by_reporter.report(&key("night"), &result).expect(200);
                assert_eq!(by_other.confirm().expect(200).kind, "confirmed");
                let another = self.result(week, &pair, false);
                by_reporter
                    .report(&key("later"), &another)
                    .refused(409, "result-final");
                let repeated = by_reporter.report(&key("night"), &result).expect(200);
                assert_eq!(repeated.kind, "reported");
            }
        }
    }

    /// Who comes first in the alphabet plays better, in most weeks.
    fn result(&self, week: u8, pair: &[String; 2], usual: bool) -> Value {
        let better = pair[0] < pair[1];
        let upset = (pair[0].len() + pair[1].len() + usize::from(week)).is_multiple_of(5);
        let points = pair
            .each_ref()
            .map(|handle| self.armoury(handle).total(&self.lists[handle]));
        games::played(week, (better != upset) == usual, points)
    }

    fn nobody_came(&self, game: &Game, pair: &[String; 2]) {
        let (there, absent) = if pair[0] == NO_SHOW.0 {
            (&pair[1], "first")
        } else {
            (&pair[0], "second")
        };
        let key = format!("night-{}", game.id);
        let game = self.game(game);
        let reporter = game.by(&self.players[there]);
        reporter.report(&key, &no_show(absent)).expect(200);
        game.by(&self.players[NO_SHOW.0]).confirm().expect(200);
    }

    /// Nothing counts for either until a referee who does not play has ruled.
    fn dispute(&self, week: u8, game: &Game, pair: &[String; 2]) {
        let other = if pair[0] == DISPUTE.0 {
            &pair[1]
        } else {
            &pair[0]
        };
        let key = format!("night-{}", game.id);
        let game = self.game(game);
        let (objector, other_player) = (&self.players[DISPUTE.0], &self.players[other]);
        let result = self.result(week, pair, true);
        game.by(other_player).report(&key, &result).expect(200);
        let counter = self.result(week, pair, false);
        game.by(objector)
            .dispute_with("The quarter by the mill was ours", &counter)
            .expect(200);
        let problem = self.season().week(week).close().refused(409, "week-state");
        let open = problem.member("open_games").as_u64().unwrap();
        assert!(open >= 1, "{problem}");
        let no_game = self
            .lines(DISPUTE.0, week)
            .iter()
            .all(|line| line.week != week || line.kind != "game");
        assert!(no_game, "a disputed game counts for nobody");
        let reason = "The photograph of turn six shows it";
        // The draw may seat the organiser here, who else might rule.
        let why = if other == "Wennable" {
            "conflict-of-interest"
        } else {
            "forbidden"
        };
        game.by(other_player)
            .rule(&counter, reason)
            .refused(403, why);
        let ruled = game.by(&self.referee).rule(&counter, reason).expect(200);
        assert_eq!(ruled.kind, "ruled");
    }

    fn lines(&self, handle: &str, week: u8) -> Vec<Line> {
        self.ledger(handle, week).lines
    }

    fn ledger(&self, handle: &str, week: u8) -> Ledger {
        let player = &self.players[handle].id;
        self.seen().ledger_after(week, player).expect(200)
    }

    /// Closes the week; every row of its table is the sum of its ledger.
    fn close(&self, week: u8) {
        self.season().week(week).close().expect(204);
        let table = self.seen().standings_after(week).expect(200);
        assert_eq!(table.rows.len(), self.players.len());
        for row in &table.rows {
            let handle = self.handle(&row.player);
            let ledger = self.ledger(&handle, week);
            let weeks = row.weeks.iter().filter(|total| total.counts);
            let counted: i64 = weeks.map(|total| total.points).sum();
            assert_eq!(
                [ledger.sum(), counted, ledger.total],
                [row.total; 3],
                "{handle} after week {week}"
            );
        }
        let totals = table.totals();
        assert!(totals.is_sorted_by(|a, b| a >= b), "{totals:?}");
    }

    /// What happened on the way stands in the ledgers, and the season ends.
    fn end(&self) {
        let amounts = |handle: &str, week: u8, kind: &str| -> Vec<i64> {
            let lines = self.lines(handle, WEEKS).into_iter();
            let meant = lines.filter(|line| line.week == week && line.kind == kind);
            meant.map(|line| line.amount).collect()
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
        assert_eq!(self.season().end().expect(200).state, "ended");
        let export = self.season().by(&self.referee).export();
        offline::check(&export.expect(200));
        let own = self.season().week(WEEKS).list_of(&self.players["Oskrel"]);
        own.check(&self.lists["Oskrel"])
            .refused(409, "season-state");
    }
}
