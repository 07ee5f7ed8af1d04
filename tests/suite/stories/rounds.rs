//! Several rounds in one week, and a season in which everybody meets everybody.

mod explained;
mod round_robin;
mod two_a_week;

use serde_json::{Value, json};
use tallyhost::demo::data;

use super::season::offline::verify;
use crate::harness::{
    Answer, Game, Player, Round, Season, SeasonBody, Stage, Week, WeekTimes, double_loss, no_show,
};

/// A short season without list rules, whose players can come on both nights.
pub struct ShortSeason {
    pub stage: Stage,
    pub players: Vec<Player>,
    weeks: Vec<WeekTimes>,
}

/// People who can come on both nights.
pub const PEOPLE: [&str; 6] = [
    "Braewick",
    "Gorseley",
    "Joryth",
    "Merrowick",
    "Tamselle",
    "Ilkamar",
];

impl ShortSeason {
    /// Of so many weeks, with these rules for its rounds.
    pub fn begin(weeks: u8, rounds: Value, handles: &[&str]) -> Self {
        Self::with(
            weeks,
            |season| season.rounds(rounds),
            |stage| handles.iter().map(|handle| stage.join(handle)).collect(),
        )
    }

    /// Of so many weeks, changed in other ways, with those whom `join` brings.
    pub fn with(
        weeks: u8,
        change: impl FnOnce(&mut SeasonBody),
        join: impl FnOnce(&Stage) -> Vec<Player>,
    ) -> Self {
        let stage = Stage::with(|season| {
            short(season, weeks);
            change(season);
        });
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        for week in 1..=weeks {
            stage.week(week).set_scenario(&sheet).expect(204);
        }
        let players = join(&stage);
        stage.start();
        Self {
            players,
            weeks: stage.season.weeks().expect(200),
            stage,
        }
    }

    /// As the owner acts in it.
    pub fn season(&self) -> &Season {
        &self.stage.season
    }

    /// As everybody sees it.
    pub fn seen(&self) -> Season {
        self.stage.season.by(self.stage.visitor())
    }

    pub fn week(&self, week: u8) -> Week {
        self.stage.week(week)
    }

    /// When a week begins and ends.
    pub fn times(&self, week: u8) -> &WeekTimes {
        &self.weeks[usize::from(week) - 1]
    }

    pub fn show(&self, moment: &str) {
        self.stage.clock().show(moment);
    }

    /// Opens the lists of a week as soon as that can be done.
    pub fn open(&self, week: u8) {
        self.show(&self.times(week).lists_accepted_until);
        self.week(week).open_lists().expect(204);
    }

    pub fn propose(&self, week: u8) -> Answer<Round> {
        self.week(week).propose()
    }

    /// Proposes and publishes; returns the games.
    pub fn pair(&self, week: u8) -> Vec<Game> {
        let round = self.propose(week).expect(201);
        self.publish(&round)
    }

    pub fn publish(&self, round: &Round) -> Vec<Game> {
        self.season().round(&round.id).publish().expect(200)
    }

    /// The published rounds of a week as a visitor reads them.
    pub fn seen_rounds(&self, week: u8) -> Vec<Round> {
        self.seen().week(week).rounds().expect(200)
    }

    /// The second side of every game of a week did not come, and the week is closed.
    pub fn decide(&self, week: u8) {
        self.settle(week, &no_show("second"));
    }

    /// Nobody gets anything for the games of a week.
    pub fn rule_out(&self, week: u8) {
        self.settle(week, &double_loss());
    }

    fn settle(&self, week: u8, outcome: &Value) {
        for game in meetings(&self.seen().games_of(week).expect(200)) {
            let ruling = self.season().game(&game.id);
            ruling.rule(outcome, "The hall was shut").expect(200);
        }
        self.week(week).close().expect(204);
    }

    /// The season over, its file checked with nothing else.
    pub fn end(&self) -> Value {
        self.season().end().expect(200);
        let export = self.export();
        let (content, said) = verify(&export);
        assert!(content, "{said}");
        assert!(!said.contains("open  "), "{said}");
        export
    }

    pub fn export(&self) -> Value {
        self.seen().export().expect(200)
    }
}

/// Of so many weeks, with rising caps and without list rules.
pub fn short(season: &mut SeasonBody, weeks: u8) {
    season.rising_caps(300, 100, weeks);
    season.list_rules(json!([]));
    season.set("/places", Value::Null);
}

/// Games of two.
pub fn meetings(games: &[Game]) -> Vec<&Game> {
    let games = games.iter();
    games.filter(|game| !game.is_bye()).collect()
}
