//! The first week of the demo, played by some of its people.

use serde_json::{Value, json};
use tallyhost::demo::data;

use crate::harness::{
    Answer, Game, GameClient, Ledger, List, Player, Round, Season, Slip, Stage, Week,
};

pub const LISTS_DUE: &str = "2026-01-12T21:00:00+01:00";
/// Both nights have begun.
pub const LAST_NIGHT: &str = "2026-01-15T19:00:00+01:00";

pub struct FirstWeek {
    pub stage: Stage,
    pub players: Vec<Player>,
}

impl FirstWeek {
    /// Everybody has sealed a list.
    pub fn sealed(handles: &[&str]) -> Self {
        Self::sealed_in(Stage::draft(), handles)
    }

    /// The same in another season than the demo's.
    pub fn sealed_in(stage: Stage, handles: &[&str]) -> Self {
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        stage.week(1).set_scenario(&sheet).expect(204);
        let players: Vec<Player> = handles.iter().map(|handle| stage.join(handle)).collect();
        stage.start();
        for (player, handle) in players.iter().zip(handles) {
            let list = List::demo(handle, 1);
            stage.week(1).list_of(player).seal(&list).expect(201);
        }
        Self { stage, players }
    }

    /// With everybody paired, on the last night.
    pub fn paired(handles: &[&str]) -> Self {
        let week = Self::sealed(handles);
        week.pair();
        week.stage.clock().show(LAST_NIGHT);
        week
    }

    /// A season of one week, played to its end: Oskrel has won.
    pub fn ended() -> Self {
        let stage = Stage::with(|season| {
            season.caps(&[300]);
            season.set("/policy/scoring/best_weeks", Value::Null);
        });
        let week = Self::sealed_in(stage, &["Oskrel", "Corvanel"]);
        week.pair();
        week.stage.clock().show(LAST_NIGHT);
        let [first, second] = week.sides();
        let own = if first.id == week.players[0].id {
            played((5, 150), (1, 60))
        } else {
            played((1, 60), (5, 150))
        };
        week.report(first, "one", &own).expect(200);
        week.game().by(second).confirm().expect(200);
        week.week().close().expect(204);
        week.season().end().expect(200);
        week
    }

    /// As the owner acts in it.
    pub fn season(&self) -> &Season {
        &self.stage.season
    }

    pub fn week(&self) -> Week {
        self.stage.week(1)
    }

    /// Opens the lists and proposes the round.
    pub fn propose(&self) -> Round {
        self.stage.clock().show(LISTS_DUE);
        self.week().open_lists().expect(204);
        self.week().propose().expect(201)
    }

    /// Publishes a round.
    pub fn publish(&self, round: &Round) -> Vec<Game> {
        self.season().round(&round.id).publish().expect(200)
    }

    /// Opens the lists, proposes the round and publishes it.
    pub fn pair(&self) -> Vec<Game> {
        self.publish(&self.propose())
    }

    /// All games of the season.
    pub fn games(&self) -> Vec<Game> {
        self.season().games().expect(200)
    }

    /// Games of two.
    pub fn meetings(&self) -> Vec<Game> {
        let games = self.games().into_iter();
        games.filter(|game| !game.is_bye()).collect()
    }

    /// The first game.
    pub fn game(&self) -> GameClient {
        self.season().game(&self.games()[0].id)
    }

    /// The player with this id.
    pub fn player(&self, id: &str) -> &Player {
        let mut players = self.players.iter();
        players.find(|player| player.id == id).unwrap()
    }

    /// The two players of the first game, in its order.
    pub fn sides(&self) -> [&Player; 2] {
        self.games()[0].sides().map(|id| self.player(id))
    }

    /// A player reports the first game.
    pub fn report(&self, player: &Player, key: &str, result: &Value) -> Answer<Slip> {
        self.game().by(player).report(key, result)
    }

    /// What everybody can read of what was done, the newest first, but for what the clock reveals at
    /// moments of its own.
    pub fn acts(&self) -> Vec<String> {
        let trail = self.season().trail().expect(200).into_iter();
        trail
            .map(|entry| entry.act)
            .filter(|act| act != "reveal")
            .collect()
    }

    /// A player says which nights of the week are possible.
    pub fn tell(&self, player: &Player, nights: &[&str]) -> Answer<()> {
        self.week().by(player).tell_nights(nights)
    }

    /// A player's ledger, whose lines make the total.
    pub fn ledger(&self, player: &Player) -> Ledger {
        let ledger = self.season().ledger(&player.id).expect(200);
        assert_eq!(ledger.total, ledger.sum(), "{ledger:?}");
        ledger
    }

    /// Kind and amount of every line of a player.
    pub fn lines(&self, player: &Player) -> Vec<(String, i64)> {
        let lines = self.ledger(player).lines.into_iter();
        lines.map(|line| (line.kind, line.amount)).collect()
    }
}

/// Turns at the ford and points destroyed, of the side named first and of the other.
pub fn played(first: (u32, u32), second: (u32, u32)) -> Value {
    let side =
        |(turns, destroyed)| json!({ "items": { "ford-marker": turns, "destroyed": destroyed } });
    let leg = json!({ "first": side(first), "second": side(second) });
    json!({ "kind": "played", "counts": { "legs": [leg] } })
}
