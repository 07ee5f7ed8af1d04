//! The prices of a [`Tariff`] from small cards and tables: the same numbers, several times faster.
//!
//! The tariff says what a pair costs; this only says it quickly, for loops over millions of pairs.
//! A test compares the two on every pair.

use std::cmp::Reverse;

use crate::pairing::cost::participants::{Entrant, SEATS};
use crate::pairing::cost::{self, Tariff};
use crate::pairing::round::certificate::Place;
use crate::pairing::round::cost::Level;
use crate::pairing::round::task::Float;
use crate::pairing::round::wishes::Wish;
use crate::side::Role;

/// Prices of games by place.
pub struct Quick<'a> {
    tariff: &'a Tariff,
    cards: Vec<Card>,
    /// Of a bye, by player.
    byes: Vec<Option<i128>>,
    kinds: Vec<u32>,
    changed: i128,
    rematch: i128,
    close: i128,
    club: i128,
    faction: i128,
    /// Of 0 to 4 repeated floats.
    floats: [i128; 5],
    /// Of two players by what is due to each.
    roles: [[i128; DUES]; DUES],
    /// Of two seats.
    seats: [[i128; SEATS as usize]; SEATS as usize],
}

/// What the price of a game reads of one player.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Card {
    score: Reverse<i32>,
    household: u32,
    club: u32,
    faction: u32,
    pinned: Option<Place>,
    nights: u8,
    down: u8,
    up: u8,
    due: u8,
    seat: u8,
    /// Has met somebody or must not meet somebody.
    tied: bool,
}

/// Nothing due, and each role with and without need.
const DUES: usize = 5;

impl<'a> Quick<'a> {
    /// Cards and tables for a tariff.
    pub fn new(tariff: &'a Tariff) -> Self {
        let wish = |wish| tariff.unit(Level::Wish(wish));
        let entrants = tariff.field().entrants.iter().enumerate();
        let cards: Vec<Card> = entrants
            .map(|(at, entrant)| card(tariff, at, entrant))
            .collect();
        let bye = cards.len();
        let byes = (0..if tariff.byes() > 0 { bye } else { 0 }).map(|a| tariff.price(a, bye));
        let early = i128::from(tariff.is_early());
        let (bounds, even) = (wish(Wish::RolesInBounds), wish(Wish::RolesEven));
        let role = |one: usize, other: usize| {
            let [broken, uneven] = cost::roles(due(one), due(other)).1.map(i128::from);
            broken * bounds + uneven * even
        };
        let draw = tariff.unit(Level::Draw);
        let index = |at: usize| at as u8;
        Self {
            tariff,
            byes: byes.collect(),
            kinds: kinds(&cards),
            cards,
            changed: tariff.unit(Level::Changed),
            rematch: wish(Wish::NoRematch),
            close: wish(Wish::CloseScores),
            club: early * wish(Wish::ClubsApart),
            faction: early * wish(Wish::FactionsApart),
            floats: std::array::from_fn(|times| times as i128 * wish(Wish::NoRepeatedFloat)),
            roles: std::array::from_fn(|a| std::array::from_fn(|b| role(a, b))),
            seats: std::array::from_fn(|a| {
                std::array::from_fn(|b| i128::from(cost::seats(index(a), index(b))) * draw)
            }),
        }
    }

    /// As [`Tariff::price`].
    pub fn price(&self, a: usize, b: usize) -> Option<i128> {
        let (low, high) = (a.min(b), a.max(b));
        if high >= self.cards.len() {
            return self.byes.get(low).copied().flatten();
        }
        self.tied(a, b, self.untied(a, b)?)
    }

    /// Number of players.
    pub fn players(&self) -> usize {
        self.cards.len()
    }

    /// Players and byes.
    pub fn places(&self) -> usize {
        self.tariff.places()
    }

    /// The score of a player.
    pub fn score(&self, place: usize) -> i32 {
        self.cards[place].score.0
    }

    /// Players of one kind have the same untied price with anybody; kinds rise as scores fall.
    pub fn kind(&self, place: usize) -> u32 {
        self.kinds[place]
    }

    /// The published pairs.
    pub fn published(&self) -> impl Iterator<Item = (usize, usize)> {
        let pairs = |a| {
            let ties = self.tariff.field().ties(a).iter();
            ties.filter(|(_, tie)| tie.published)
                .map(move |&(b, _)| (a, b as usize))
        };
        (0..self.cards.len()).flat_map(pairs).filter(|(a, b)| a < b)
    }

    /// The least that a game between two scores can cost when it is not published.
    pub fn floor(&self, one: i32, other: i32) -> i128 {
        let gap = u64::from(one.abs_diff(other));
        self.changed + self.close * i128::from(gap * gap)
    }

    /// The least the game can cost when it is not published: as if the two had never met and nobody had
    /// forbidden it.
    pub fn untied(&self, a: usize, b: usize) -> Option<i128> {
        let (one, other) = (&self.cards[a], &self.cards[b]);
        let pinned = |card: &Card, to: usize| card.pinned.is_some_and(|p| p as usize != to);
        if one.nights & other.nights == 0
            || (one.household != 0 && one.household == other.household)
            || pinned(one, b)
            || pinned(other, a)
        {
            return None;
        }
        let gap = one.score.0.abs_diff(other.score.0);
        let floats = match one.score.0.cmp(&other.score.0) {
            std::cmp::Ordering::Equal => 0,
            std::cmp::Ordering::Greater => one.down + other.up,
            std::cmp::Ordering::Less => one.up + other.down,
        };
        let mut price = self.changed
            + self.close * i128::from(u64::from(gap) * u64::from(gap))
            + self.floats[usize::from(floats)]
            + self.roles[usize::from(one.due)][usize::from(other.due)]
            + self.seats[usize::from(one.seat)][usize::from(other.seat)];
        if one.faction != 0 && one.faction == other.faction {
            price += self.faction;
        }
        if one.club != 0 && one.club == other.club {
            price += self.club;
        }
        Some(price)
    }

    /// The price of a game whose untied price is known.
    pub fn tied(&self, a: usize, b: usize, untied: i128) -> Option<i128> {
        if !(self.cards[a].tied && self.cards[b].tied) {
            return Some(untied);
        }
        let tie = self.tariff.field().between(a, b);
        let kept = if tie.published { self.changed } else { 0 };
        (!tie.forbidden).then(|| untied - kept + i128::from(tie.met) * self.rematch)
    }
}

fn card(tariff: &Tariff, at: usize, entrant: &Entrant) -> Card {
    let dues = (0..DUES).find(|&number| due(number) == entrant.due);
    Card {
        score: Reverse(entrant.score),
        household: entrant.household,
        club: entrant.club,
        faction: entrant.faction,
        pinned: entrant.pinned,
        nights: entrant.nights.bits(),
        down: cost::float_again(entrant, Float::Down) as u8,
        up: cost::float_again(entrant, Float::Up) as u8,
        due: dues.unwrap_or(0) as u8,
        seat: entrant.seat,
        tied: !tariff.field().ties(at).is_empty(),
    }
}

/// Numbers of alike cards, in their order.
fn kinds(cards: &[Card]) -> Vec<u32> {
    let mut order: Vec<usize> = (0..cards.len()).collect();
    order.sort_unstable_by_key(|&at| cards[at]);
    let mut kinds = vec![0; cards.len()];
    for (before, at) in order.iter().zip(&order[1..]) {
        kinds[*at] = kinds[*before] + u32::from(cards[*at] != cards[*before]);
    }
    kinds
}

/// What is due, by number.
fn due(number: usize) -> Option<(Role, bool)> {
    match number {
        1 => Some((Role::Attacker, false)),
        2 => Some((Role::Attacker, true)),
        3 => Some((Role::Defender, false)),
        4 => Some((Role::Defender, true)),
        _ => None,
    }
}
