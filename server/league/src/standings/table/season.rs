//! The index of a season's facts: players as indices, facts sorted once by player and week.

use rustc_hash::FxHashMap;

use crate::ids::PlayerId;
use crate::ledger::{LineReason, LineSource};
use crate::painting::PaintedWeek;
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::GameAward;
use crate::side::{PerSide, Side};
use crate::standings::by_player::{ByPlayerWeek, week_index};
use crate::standings::facts::{
    Absence, Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts,
};
use crate::standings::rounds::{GameSide, PlayerRound, round_result};
use crate::week::WeekNo;

/// A season up to a week, whose players are numbers from zero. Facts of unknown players are left out.
pub struct IndexedSeason<'f> {
    pub facts: &'f SeasonFacts,
    /// In the order of their identities.
    pub players: Vec<&'f PlayerFact>,
    pub games: ByPlayerWeek<PlayerGame<'f>>,
    pub byes: ByPlayerWeek<&'f GameFact>,
    pub painted: ByPlayerWeek<PaintedWeek>,
    pub absences: ByPlayerWeek<&'f Absence>,
    pub late_lists: ByPlayerWeek<&'f LateList>,
    pub adjustments: ByPlayerWeek<&'f Adjustment>,
    /// Weeks in which somebody's round counts.
    played_weeks: Vec<bool>,
}

/// A game as one of its two players has it.
pub struct PlayerGame<'f> {
    pub fact: &'f GameFact,
    pub side: Side,
    /// `None` while the game is open or disputed, and when it is struck.
    pub counted: Option<CountedResult>,
}

/// What a game gives one side.
pub struct CountedResult {
    /// With the factor of the week.
    pub amount: LeaguePoints,
    pub reason: LineReason,
    pub source: LineSource,
    pub came: bool,
    pub round: PlayerRound,
}

impl<'f> IndexedSeason<'f> {
    pub fn new(facts: &'f SeasonFacts, last: WeekNo) -> Self {
        let mut players: Vec<_> = facts.players.iter().collect();
        players.sort_unstable_by_key(|player| player.player);
        let numbered = players.iter().enumerate();
        let numbers: FxHashMap<PlayerId, usize> = numbered
            .map(|(number, player)| (player.player, number))
            .collect();
        let number = |player: PlayerId| numbers.get(&player).copied();
        let count = players.len();
        let byes = facts.games.iter().filter_map(|fact| match fact.fixture {
            Fixture::Bye(player) => Some((number(player)?, fact.week, fact)),
            Fixture::Game { .. } => None,
        });
        let painted = by_number(&facts.painted, number, |fact| (fact.player, fact.week));
        let absences = by_number(&facts.absences, number, |fact| (fact.player, fact.week));
        let late_lists = by_number(&facts.late_lists, number, |fact| (fact.player, fact.week));
        let adjustments = by_number(&facts.adjustments, number, |fact| (fact.player, fact.week));
        Self {
            facts,
            games: ByPlayerWeek::new(count, last, games(facts, number)),
            byes: ByPlayerWeek::new(count, last, byes),
            painted: ByPlayerWeek::new(
                count,
                last,
                painted.map(|(player, week, fact)| (player, week, *fact)),
            ),
            absences: ByPlayerWeek::new(count, last, absences),
            late_lists: ByPlayerWeek::new(count, last, late_lists),
            adjustments: ByPlayerWeek::new(count, last, adjustments),
            played_weeks: played_weeks(facts, last),
            players,
        }
    }

    /// Whether the player has a row as of `week`.
    pub fn has_row(&self, player: usize, week: WeekNo) -> bool {
        self.players
            .get(player)
            .is_some_and(|player| player.joined <= week)
    }

    /// Whether a player stayed away without a word: somebody's round of the week counts, and this
    /// player had none.
    pub fn is_missed(&self, player: usize, week: WeekNo) -> bool {
        self.played_weeks.get(week_index(week)) == Some(&true)
            && self.games.get(player, week).is_empty()
            && self.byes.get(player, week).is_empty()
            && self.absences.get(player, week).is_empty()
    }
}

/// Facts of known players, each with the player's number and its week.
fn by_number<T>(
    facts: &[T],
    number: impl Fn(PlayerId) -> Option<usize>,
    whose: impl Fn(&T) -> (PlayerId, WeekNo),
) -> impl Iterator<Item = (usize, WeekNo, &T)> {
    facts.iter().filter_map(move |fact| {
        let (player, week) = whose(fact);
        Some((number(player)?, week, fact))
    })
}

fn played_weeks(facts: &SeasonFacts, last: WeekNo) -> Vec<bool> {
    let settled = |fact: &&GameFact| match &fact.fixture {
        Fixture::Bye(_) => true,
        Fixture::Game { outcome, .. } => outcome.is_some(),
    };
    let games = facts.games.iter().filter(settled).map(|fact| fact.week);
    let absences = facts.absences.iter().map(|fact| fact.week);
    let mut played = vec![false; usize::from(last.number())];
    for week in games.chain(absences) {
        if let Some(week_played) = played.get_mut(week_index(week)) {
            *week_played = true;
        }
    }
    played
}

/// Every game of two known players, once for each of them.
fn games<'f>(
    facts: &'f SeasonFacts,
    number: impl Fn(PlayerId) -> Option<usize>,
) -> impl Iterator<Item = (usize, WeekNo, PlayerGame<'f>)> {
    facts.games.iter().flat_map(move |fact| {
        let games = match &fact.fixture {
            Fixture::Bye(_) => None,
            Fixture::Game { players, .. } => {
                let known = number(players.first).zip(number(players.second));
                known.map(|(first, second)| both_games(facts, fact, PerSide::new(first, second)))
            }
        };
        games.into_iter().flatten()
    })
}

fn both_games<'f>(
    facts: &'f SeasonFacts,
    fact: &'f GameFact,
    players: PerSide<usize>,
) -> [(usize, WeekNo, PlayerGame<'f>); 2] {
    let counted = count_result(facts, fact, players).map(|both| (both.first, both.second));
    let (first, second) = counted.unzip();
    let game = |side, counted| {
        (
            players[side],
            fact.week,
            PlayerGame {
                fact,
                side,
                counted,
            },
        )
    };
    [game(Side::First, first), game(Side::Second, second)]
}

fn count_result(
    facts: &SeasonFacts,
    fact: &GameFact,
    players: PerSide<usize>,
) -> Option<PerSide<CountedResult>> {
    let Fixture::Game {
        harder,
        outcome: Some(outcome),
        ruling,
        ..
    } = &fact.fixture
    else {
        return None;
    };
    let cap = facts.caps.get(&fact.week).copied().unwrap_or(Points::ZERO);
    let awards = facts.scoring.award(outcome, cap)?;
    let view = |side: Side| GameSide {
        side,
        opponent: players[side.other()],
        harder_role: *harder == Some(side),
    };
    let counted = |side: Side, award: GameAward| {
        let amount = facts.scoring.weighted(award.amount, fact.week);
        let (result, kind) = round_result(outcome, view(side), |score| {
            facts.scoring.verdict(score, cap)
        })?;
        Some(CountedResult {
            amount,
            reason: award.reason,
            source: ruling.map_or(LineSource::Game(fact.game), LineSource::Ruling),
            came: came(outcome, side),
            round: PlayerRound {
                week: fact.week,
                result,
                league_points: amount,
                kind,
            },
        })
    };
    let first = counted(Side::First, awards.first);
    let both = first.zip(counted(Side::Second, awards.second));
    both.map(|(first, second)| PerSide::new(first, second))
}

fn came(outcome: &Outcome, side: Side) -> bool {
    match outcome {
        Outcome::Played(_) | Outcome::Conceded { .. } => true,
        Outcome::NoShow { absent, .. } => *absent != side,
        Outcome::DoubleLoss | Outcome::Void => false,
    }
}
