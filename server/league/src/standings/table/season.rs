//! The facts with every player's identity turned into a place in one list, sorted once for all weeks.

use rustc_hash::FxHashMap;

use crate::ids::PlayerId;
use crate::ledger::{Reason, Source};
use crate::painting::PaintedWeek;
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::scoring::Award;
use crate::side::{Both, Side};
use crate::standings::by_player::{ByWeek, place_of};
use crate::standings::facts::{
    Absence, Adjustment, Fixture, GameFact, LateList, PlayerFact, SeasonFacts,
};
use crate::standings::rounds::{Round, Seen, result_of};
use crate::week::WeekNo;

/// A season up to a week, whose players are numbers from zero. Facts of unknown players are left out.
pub struct Season<'f> {
    pub facts: &'f SeasonFacts,
    /// In the order of their identities.
    pub players: Vec<&'f PlayerFact>,
    pub games: ByWeek<Seat<'f>>,
    pub byes: ByWeek<&'f GameFact>,
    pub painted: ByWeek<PaintedWeek>,
    pub absences: ByWeek<&'f Absence>,
    pub late_lists: ByWeek<&'f LateList>,
    pub adjustments: ByWeek<&'f Adjustment>,
    /// Weeks in which somebody's round counts.
    held: Vec<bool>,
}

/// A game as one of its two players has it.
pub struct Seat<'f> {
    pub fact: &'f GameFact,
    pub side: Side,
    /// `None` while the game is open or disputed, and when it is struck.
    pub stands: Option<Stands>,
}

/// What a game gives one side.
pub struct Stands {
    /// With the factor of the week.
    pub amount: LeaguePoints,
    pub reason: Reason,
    pub source: Source,
    pub came: bool,
    pub round: Round,
}

impl<'f> Season<'f> {
    pub fn of(facts: &'f SeasonFacts, last: WeekNo) -> Self {
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
        let painted = of_players(&facts.painted, number, |fact| (fact.player, fact.week));
        let absences = of_players(&facts.absences, number, |fact| (fact.player, fact.week));
        let late_lists = of_players(&facts.late_lists, number, |fact| (fact.player, fact.week));
        let adjustments = of_players(&facts.adjustments, number, |fact| (fact.player, fact.week));
        Self {
            facts,
            games: ByWeek::sort(count, last, seats(facts, number)),
            byes: ByWeek::sort(count, last, byes),
            painted: ByWeek::sort(
                count,
                last,
                painted.map(|(player, week, fact)| (player, week, *fact)),
            ),
            absences: ByWeek::sort(count, last, absences),
            late_lists: ByWeek::sort(count, last, late_lists),
            adjustments: ByWeek::sort(count, last, adjustments),
            held: held(facts, last),
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
    pub fn missed(&self, player: usize, week: WeekNo) -> bool {
        self.held.get(place_of(week)) == Some(&true)
            && self.games.of(player, week).is_empty()
            && self.byes.of(player, week).is_empty()
            && self.absences.of(player, week).is_empty()
    }
}

/// Facts of known players, each with the player's number and its week.
fn of_players<T>(
    facts: &[T],
    number: impl Fn(PlayerId) -> Option<usize>,
    whose: impl Fn(&T) -> (PlayerId, WeekNo),
) -> impl Iterator<Item = (usize, WeekNo, &T)> {
    facts.iter().filter_map(move |fact| {
        let (player, week) = whose(fact);
        Some((number(player)?, week, fact))
    })
}

fn held(facts: &SeasonFacts, last: WeekNo) -> Vec<bool> {
    let settled = |fact: &&GameFact| match &fact.fixture {
        Fixture::Bye(_) => true,
        Fixture::Game { outcome, .. } => outcome.is_some(),
    };
    let games = facts.games.iter().filter(settled).map(|fact| fact.week);
    let absences = facts.absences.iter().map(|fact| fact.week);
    let mut held = vec![false; usize::from(last.number())];
    for week in games.chain(absences) {
        if let Some(held) = held.get_mut(place_of(week)) {
            *held = true;
        }
    }
    held
}

/// Both seats of every game of two known players.
fn seats<'f>(
    facts: &'f SeasonFacts,
    number: impl Fn(PlayerId) -> Option<usize>,
) -> impl Iterator<Item = (usize, WeekNo, Seat<'f>)> {
    facts.games.iter().flat_map(move |fact| {
        let seats = match &fact.fixture {
            Fixture::Bye(_) => None,
            Fixture::Game { players, .. } => {
                let known = number(players.first).zip(number(players.second));
                known.map(|(first, second)| both_seats(facts, fact, Both::new(first, second)))
            }
        };
        seats.into_iter().flatten()
    })
}

fn both_seats<'f>(
    facts: &'f SeasonFacts,
    fact: &'f GameFact,
    players: Both<usize>,
) -> [(usize, WeekNo, Seat<'f>); 2] {
    let stands = stands(facts, fact, players).map(|both| (both.first, both.second));
    let (first, second) = stands.unzip();
    let seat = |side, stands| (players[side], fact.week, Seat { fact, side, stands });
    [seat(Side::First, first), seat(Side::Second, second)]
}

fn stands(facts: &SeasonFacts, fact: &GameFact, players: Both<usize>) -> Option<Both<Stands>> {
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
    let seen = |side: Side| Seen {
        side,
        opponent: players[side.other()],
        harder_role: *harder == Some(side),
    };
    let stand = |side: Side, award: Award| {
        let amount = facts.scoring.weighted(award.amount, fact.week);
        let (result, kind) = result_of(outcome, seen(side), |score| {
            facts.scoring.verdict(score, cap)
        })?;
        Some(Stands {
            amount,
            reason: award.reason,
            source: ruling.map_or(Source::Game(fact.game), Source::Ruling),
            came: came(outcome, side),
            round: Round {
                week: fact.week,
                result,
                league_points: amount,
                kind,
            },
        })
    };
    let first = stand(Side::First, awards.first);
    let both = first.zip(stand(Side::Second, awards.second));
    both.map(|(first, second)| Both::new(first, second))
}

fn came(outcome: &Outcome, side: Side) -> bool {
    match outcome {
        Outcome::Played(_) | Outcome::Conceded { .. } => true,
        Outcome::NoShow { absent, .. } => *absent != side,
        Outcome::DoubleLoss | Outcome::Void => false,
    }
}
