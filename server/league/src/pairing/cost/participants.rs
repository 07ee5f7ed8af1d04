//! The contenders in seeded order, with everything a price needs close at hand.

use std::cmp::Reverse;
use std::collections::{BTreeSet, HashMap};

use crate::ids::PlayerId;
use crate::name::Name;
use crate::pairing::round::certificate::Place;
use crate::pairing::round::game::Pair;
use crate::pairing::round::hall::Nights;
use crate::pairing::round::proposal::Fault;
use crate::pairing::round::task::{Contender, Float, MOST_SCORE, Task};
use crate::side::Role;

/// Most players in one round.
pub const MOST_CONTENDERS: usize = 20_000;

/// Seats of the ring that the draw places players on.
pub const SEATS: u8 = 4;

/// Contenders by score, highest first; equal scores in the order of the draw.
#[derive(Clone, Debug)]
pub struct Field {
    /// One entrant for each place.
    pub entrants: Vec<Entrant>,
    places: HashMap<PlayerId, Place>,
    ties: Vec<Vec<(Place, Tie)>>,
}

/// A contender reduced to what prices are made of.
#[derive(Clone, Copy, Debug)]
pub struct Entrant {
    /// Who.
    pub player: PlayerId,
    /// League points.
    pub score: i32,
    /// Nights they can come, of those with a table.
    pub nights: Nights,
    /// Number of the household, 0 for none.
    pub household: u32,
    /// Number of the club, 0 for none.
    pub club: u32,
    /// Number of the faction, 0 for none.
    pub faction: u32,
    /// Rounds scored without play.
    pub byes: u8,
    /// Offered to sit out.
    pub spare: bool,
    /// Float in the round before, and in the one before that.
    pub floats: [Option<Float>; 2],
    /// The role they should have, and whether they must (C.04.1, articles 6 to 8).
    pub due: Option<(Role, bool)>,
    /// The number they drew.
    pub drawn: u64,
    /// Seat on the ring of the draw.
    pub seat: u8,
    /// Their opponent, where that was settled before.
    pub pinned: Option<Place>,
}

/// What two places have in common beyond their own facts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tie {
    /// How often they met.
    pub met: u8,
    /// The organiser ruled it out.
    pub forbidden: bool,
    /// Their game is published.
    pub published: bool,
}

impl Field {
    /// The field of a task.
    ///
    /// # Errors
    /// Every fault of the task.
    pub fn new(task: &Task) -> Result<Self, Vec<Fault>> {
        let urn = task.draw.urn();
        let numbered = task.contenders.iter().map(|c| (c, urn.number(c.player)));
        let mut order: Vec<(&Contender, u64)> = numbered.collect();
        order.sort_unstable_by_key(|&(c, drawn)| (Reverse(c.score), drawn, c.player));
        Self::of(task, &order)
    }

    /// The field with these players at these places; contenders that are not named are left out.
    ///
    /// # Errors
    /// Every fault of the task.
    pub fn in_order(task: &Task, players: &[PlayerId]) -> Result<Self, Vec<Fault>> {
        let known: HashMap<PlayerId, &Contender> =
            task.contenders.iter().map(|c| (c.player, c)).collect();
        let urn = task.draw.urn();
        let order = players.iter().filter_map(|player| known.get(player));
        let order: Vec<(&Contender, u64)> = order.map(|&c| (c, urn.number(c.player))).collect();
        Self::of(task, &order)
    }

    fn of(task: &Task, order: &[(&Contender, u64)]) -> Result<Self, Vec<Fault>> {
        let mut faults = faults(task);
        let open = Nights::open(&task.nights);
        let clubs = numbers(task.contenders.iter().filter_map(|c| c.club.as_ref()));
        let factions = numbers(task.contenders.iter().filter_map(|c| c.faction.as_ref()));
        let number = |of: &HashMap<&Name, u32>, name: &Option<Name>| {
            name.as_ref().and_then(|n| of.get(n)).copied().unwrap_or(0)
        };
        let entrants = order.iter().map(|&(c, drawn)| Entrant {
            player: c.player,
            score: c.score.get(),
            nights: c.nights.and(open),
            household: c.household.map_or(0, |h| h.0.saturating_add(1)),
            club: number(&clubs, &c.club),
            faction: number(&factions, &c.faction),
            byes: c.byes,
            spare: c.spare,
            floats: c.floats,
            due: c.roles.due(),
            drawn,
            seat: (drawn % u64::from(SEATS)) as u8,
            pinned: None,
        });
        let entrants: Vec<Entrant> = entrants.collect();
        let places = (0..)
            .zip(&entrants)
            .map(|(place, e)| (e.player, place))
            .collect();
        let ties = vec![Vec::new(); entrants.len()];
        let mut field = Self {
            entrants,
            places,
            ties,
        };
        field.tie(task);
        let fixed = task.fixed.iter().filter_map(|fixture| fixture.pair());
        let pins: Vec<Pair> = task.pins.iter().copied().chain(fixed).collect();
        field.pin(&pins, &mut faults);
        if faults.is_empty() {
            Ok(field)
        } else {
            Err(faults)
        }
    }

    /// Number of players.
    pub fn players(&self) -> usize {
        self.entrants.len()
    }

    /// The place of a player.
    pub fn place(&self, player: PlayerId) -> Option<Place> {
        self.places.get(&player).copied()
    }

    /// The places of a pair, when both play.
    pub fn places(&self, pair: Pair) -> Option<[Place; 2]> {
        let [a, b] = pair.players();
        Some([self.place(a)?, self.place(b)?])
    }

    /// What these two have in common.
    pub fn between(&self, a: usize, b: usize) -> Tie {
        let ties = &self.ties[a];
        let found = ties.binary_search_by_key(&(b as Place), |&(place, _)| place);
        found.map_or(Tie::default(), |at| ties[at].1)
    }

    /// May these two players meet at all, whether or not they have met? Pins bind one round only and
    /// are left out.
    pub fn may_meet(&self, a: Place, b: Place) -> bool {
        let (one, other) = (&self.entrants[a as usize], &self.entrants[b as usize]);
        let housemates = one.household != 0 && one.household == other.household;
        let apart = one.nights.and(other.nights).is_empty();
        !housemates && !apart && !self.between(a as usize, b as usize).forbidden
    }

    /// Places this one has met or must not meet.
    pub fn ties(&self, place: usize) -> &[(Place, Tie)] {
        &self.ties[place]
    }

    fn tie(&mut self, task: &Task) {
        let none = Tie::default();
        let met = task
            .history
            .iter()
            .map(|m| (m.pair, Tie { met: 1, ..none }));
        let forbidden = task.forbidden.iter().map(|&pair| {
            (
                pair,
                Tie {
                    forbidden: true,
                    ..none
                },
            )
        });
        let published = task.published.iter().filter_map(|game| game.pair());
        let published = published.map(|pair| {
            (
                pair,
                Tie {
                    published: true,
                    ..none
                },
            )
        });
        let barred = self.barred(task);
        let barred = barred.into_iter().map(|pair| {
            (
                pair,
                Tie {
                    forbidden: true,
                    ..none
                },
            )
        });
        for (pair, tie) in met.chain(forbidden).chain(published).chain(barred) {
            let Some([a, b]) = self.places(pair) else {
                continue;
            };
            self.ties[a as usize].push((b, tie));
            self.ties[b as usize].push((a, tie));
        }
        for ties in &mut self.ties {
            ties.sort_by_key(|&(place, _)| place);
            ties.dedup_by(|later, kept| {
                let same = later.0 == kept.0;
                if same {
                    kept.1.met = kept.1.met.saturating_add(later.1.met);
                    kept.1.forbidden |= later.1.forbidden;
                    kept.1.published |= later.1.published;
                }
                same
            });
        }
    }

    /// Pairs that the season's table does not allow.
    fn barred(&self, task: &Task) -> Vec<Pair> {
        let Some(allowed) = &task.allowed else {
            return Vec::new();
        };
        let allowed: BTreeSet<&Pair> = allowed.iter().collect();
        let players = self.entrants.iter().map(|e| e.player);
        players
            .enumerate()
            .flat_map(|(at, one)| {
                let others = self.entrants[at + 1..].iter();
                others.filter_map(move |other| Pair::new(one, other.player))
            })
            .filter(|pair| !allowed.contains(pair))
            .collect()
    }

    fn pin(&mut self, pins: &[Pair], faults: &mut Vec<Fault>) {
        for &pair in pins {
            let Some([a, b]) = self.places(pair) else {
                let absent = pair
                    .players()
                    .into_iter()
                    .filter(|&p| self.place(p).is_none());
                faults.extend(absent.map(Fault::PinAbsent));
                continue;
            };
            let (i, j) = (a as usize, b as usize);
            let (one, other) = (self.entrants[i], self.entrants[j]);
            for entrant in [one, other].iter().filter(|e| e.pinned.is_some()) {
                faults.push(Fault::PinTwice(entrant.player));
            }
            let together = one.household == other.household && one.household != 0;
            let apart = one.nights.and(other.nights).is_empty();
            if together || apart || self.between(i, j).forbidden {
                faults.push(Fault::PinExcluded(pair));
            }
            self.entrants[i].pinned = Some(b);
            self.entrants[j].pinned = Some(a);
        }
    }
}

fn faults(task: &Task) -> Vec<Fault> {
    let mut faults = Vec::new();
    let actual = task.contenders.len();
    if actual < 2 {
        faults.push(Fault::TooFew(actual));
    }
    if actual > MOST_CONTENDERS {
        faults.push(Fault::TooMany {
            limit: MOST_CONTENDERS,
            actual,
        });
    }
    let mut seen = BTreeSet::new();
    for contender in &task.contenders {
        if !seen.insert(contender.player) {
            faults.push(Fault::Twice(contender.player));
        }
        if contender.score.get().unsigned_abs() > MOST_SCORE.unsigned_abs() {
            faults.push(Fault::Score(contender.player));
        }
    }
    if task.nights.iter().all(|night| night.tables.is_empty()) {
        faults.push(Fault::HallClosed);
    }
    faults
}

/// Numbers from 1 for names, 0 being none.
fn numbers<'a>(names: impl Iterator<Item = &'a Name>) -> HashMap<&'a Name, u32> {
    names
        .collect::<BTreeSet<_>>()
        .into_iter()
        .zip(1..)
        .collect()
}
