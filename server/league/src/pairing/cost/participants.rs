//! The vertices of the matching graph: contenders in seeded order, with everything that costs depend on.

use std::cmp::Reverse;
use std::collections::{BTreeSet, HashMap};

use crate::ids::PlayerId;
use crate::name::Name;
use crate::pairing::round::certificate::Vertex;
use crate::pairing::round::game::Pair;
use crate::pairing::round::hall::NightSet;
use crate::pairing::round::proposal::TaskFault;
use crate::pairing::round::task::{Contender, Float, MAX_SCORE, Task};
use crate::side::GameRole;

/// Most players in one round.
pub const MAX_CONTENDERS: usize = 20_000;

/// Seats of the ring that the draw puts players on.
pub const DRAW_SEATS: u8 = 4;

/// Contenders by score, highest first; equal scores in the order of the draw.
#[derive(Clone, Debug)]
pub struct Participants {
    /// By vertex.
    pub list: Vec<Participant>,
    vertices: HashMap<PlayerId, Vertex>,
    relations: Vec<Vec<(Vertex, Relation)>>,
}

/// A contender reduced to what costs are computed from.
#[derive(Clone, Copy, Debug)]
pub struct Participant {
    pub player: PlayerId,
    pub score: i32,
    /// Nights they can come, of those with a table.
    pub nights: NightSet,
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
    pub due_role: Option<(GameRole, bool)>,
    /// The number they drew.
    pub draw_number: u64,
    /// Seat on the ring of the draw.
    pub draw_seat: u8,
    /// Their opponent, where that was settled before.
    pub pinned: Option<Vertex>,
}

/// What two vertices have in common beyond their own facts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Relation {
    /// How often they met.
    pub met: u8,
    /// The organiser ruled it out.
    pub forbidden: bool,
    /// Their game is published.
    pub published: bool,
}

impl Participants {
    /// The participants of a task, in the order of score and draw.
    ///
    /// # Errors
    /// Every fault of the task.
    pub fn new(task: &Task) -> Result<Self, Vec<TaskFault>> {
        let numbers = task.draw.numbers();
        let numbered = task
            .contenders
            .iter()
            .map(|c| (c, numbers.number_of(c.player)));
        let mut order: Vec<(&Contender, u64)> = numbered.collect();
        order.sort_unstable_by_key(|&(c, draw_number)| (Reverse(c.score), draw_number, c.player));
        Self::build(task, &order)
    }

    /// The participants in this order; contenders that are not named are left out.
    ///
    /// # Errors
    /// Every fault of the task.
    pub fn in_order(task: &Task, players: &[PlayerId]) -> Result<Self, Vec<TaskFault>> {
        let known: HashMap<PlayerId, &Contender> =
            task.contenders.iter().map(|c| (c.player, c)).collect();
        let numbers = task.draw.numbers();
        let order = players.iter().filter_map(|player| known.get(player));
        let order: Vec<(&Contender, u64)> =
            order.map(|&c| (c, numbers.number_of(c.player))).collect();
        Self::build(task, &order)
    }

    fn build(task: &Task, order: &[(&Contender, u64)]) -> Result<Self, Vec<TaskFault>> {
        let mut faults = find_faults(task);
        let open = NightSet::with_tables(&task.nights);
        let clubs = number_names(task.contenders.iter().filter_map(|c| c.club.as_ref()));
        let factions = number_names(task.contenders.iter().filter_map(|c| c.faction.as_ref()));
        let number = |of: &HashMap<&Name, u32>, name: &Option<Name>| {
            name.as_ref().and_then(|n| of.get(n)).copied().unwrap_or(0)
        };
        let players = order.iter().map(|&(c, draw_number)| Participant {
            player: c.player,
            score: c.score.get(),
            nights: c.nights.intersection(open),
            household: c.household.map_or(0, |h| h.0.saturating_add(1)),
            club: number(&clubs, &c.club),
            faction: number(&factions, &c.faction),
            byes: c.byes,
            spare: c.spare,
            floats: c.floats,
            due_role: c.roles.due_role(),
            draw_number,
            draw_seat: (draw_number % u64::from(DRAW_SEATS)) as u8,
            pinned: None,
        });
        let players: Vec<Participant> = players.collect();
        let vertices = (0..)
            .zip(&players)
            .map(|(vertex, e)| (e.player, vertex))
            .collect();
        let relations = vec![Vec::new(); players.len()];
        let mut participants = Self {
            list: players,
            vertices,
            relations,
        };
        participants.add_relations(task);
        let fixed = task.fixed.iter().filter_map(|fixture| fixture.pair());
        let pins: Vec<Pair> = task.pins.iter().copied().chain(fixed).collect();
        participants.apply_pins(&pins, &mut faults);
        if faults.is_empty() {
            Ok(participants)
        } else {
            Err(faults)
        }
    }

    pub fn count(&self) -> usize {
        self.list.len()
    }

    /// The vertex of a player.
    pub fn vertex_of(&self, player: PlayerId) -> Option<Vertex> {
        self.vertices.get(&player).copied()
    }

    /// The vertices of a pair, when both play.
    pub fn vertices_of(&self, pair: Pair) -> Option<[Vertex; 2]> {
        let [a, b] = pair.players();
        Some([self.vertex_of(a)?, self.vertex_of(b)?])
    }

    /// What these two have in common.
    pub fn relation(&self, a: usize, b: usize) -> Relation {
        let relations = &self.relations[a];
        let found = relations.binary_search_by_key(&(b as Vertex), |&(vertex, _)| vertex);
        found.map_or(Relation::default(), |at| relations[at].1)
    }

    /// May these two players meet at all, whether or not they have met? Pins bind one round only and
    /// are left out.
    pub fn may_meet(&self, a: Vertex, b: Vertex) -> bool {
        let (one, other) = (&self.list[a as usize], &self.list[b as usize]);
        let housemates = one.household != 0 && one.household == other.household;
        let apart = one.nights.intersection(other.nights).is_empty();
        !housemates && !apart && !self.relation(a as usize, b as usize).forbidden
    }

    /// Vertices this one has met or must not meet.
    pub fn relations_of(&self, vertex: usize) -> &[(Vertex, Relation)] {
        &self.relations[vertex]
    }

    fn add_relations(&mut self, task: &Task) {
        let none = Relation::default();
        let met = task
            .history
            .iter()
            .map(|m| (m.pair, Relation { met: 1, ..none }));
        let forbidden = task.forbidden.iter().map(|&pair| {
            (
                pair,
                Relation {
                    forbidden: true,
                    ..none
                },
            )
        });
        let published = task.published.iter().filter_map(|game| game.pair());
        let published = published.map(|pair| {
            (
                pair,
                Relation {
                    published: true,
                    ..none
                },
            )
        });
        let barred = self.pairs_not_allowed(task);
        let barred = barred.into_iter().map(|pair| {
            (
                pair,
                Relation {
                    forbidden: true,
                    ..none
                },
            )
        });
        for (pair, relation) in met.chain(forbidden).chain(published).chain(barred) {
            let Some([a, b]) = self.vertices_of(pair) else {
                continue;
            };
            self.relations[a as usize].push((b, relation));
            self.relations[b as usize].push((a, relation));
        }
        for relations in &mut self.relations {
            relations.sort_by_key(|&(vertex, _)| vertex);
            relations.dedup_by(|later, kept| {
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
    fn pairs_not_allowed(&self, task: &Task) -> Vec<Pair> {
        let Some(allowed) = &task.allowed else {
            return Vec::new();
        };
        let allowed: BTreeSet<&Pair> = allowed.iter().collect();
        let players = self.list.iter().map(|e| e.player);
        players
            .enumerate()
            .flat_map(|(at, one)| {
                let others = self.list[at + 1..].iter();
                others.filter_map(move |other| Pair::new(one, other.player))
            })
            .filter(|pair| !allowed.contains(pair))
            .collect()
    }

    fn apply_pins(&mut self, pins: &[Pair], faults: &mut Vec<TaskFault>) {
        for &pair in pins {
            let Some([a, b]) = self.vertices_of(pair) else {
                let absent = pair
                    .players()
                    .into_iter()
                    .filter(|&p| self.vertex_of(p).is_none());
                faults.extend(absent.map(TaskFault::PinAbsent));
                continue;
            };
            let (i, j) = (a as usize, b as usize);
            let (one, other) = (self.list[i], self.list[j]);
            for player in [one, other].iter().filter(|e| e.pinned.is_some()) {
                faults.push(TaskFault::PinTwice(player.player));
            }
            let together = one.household == other.household && one.household != 0;
            let apart = one.nights.intersection(other.nights).is_empty();
            if together || apart || self.relation(i, j).forbidden {
                faults.push(TaskFault::PinExcluded(pair));
            }
            self.list[i].pinned = Some(b);
            self.list[j].pinned = Some(a);
        }
    }
}

fn find_faults(task: &Task) -> Vec<TaskFault> {
    let mut faults = Vec::new();
    let actual = task.contenders.len();
    if actual < 2 {
        faults.push(TaskFault::TooFew(actual));
    }
    if actual > MAX_CONTENDERS {
        faults.push(TaskFault::TooMany {
            limit: MAX_CONTENDERS,
            actual,
        });
    }
    let mut seen = BTreeSet::new();
    for contender in &task.contenders {
        if !seen.insert(contender.player) {
            faults.push(TaskFault::Twice(contender.player));
        }
        if contender.score.get().unsigned_abs() > MAX_SCORE.unsigned_abs() {
            faults.push(TaskFault::Score(contender.player));
        }
    }
    if task.nights.iter().all(|night| night.tables.is_empty()) {
        faults.push(TaskFault::HallClosed);
    }
    faults
}

/// Numbers from 1 for names, 0 being none.
fn number_names<'a>(names: impl Iterator<Item = &'a Name>) -> HashMap<&'a Name, u32> {
    names
        .collect::<BTreeSet<_>>()
        .into_iter()
        .zip(1..)
        .collect()
}
