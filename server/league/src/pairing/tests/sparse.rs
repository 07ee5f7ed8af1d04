//! The sparse solve against the solve on all pairs, and the cost table against `PairCosts`.

use proptest::prelude::*;
use uuid::Uuid;

use crate::ids::PlayerId;
use crate::name::Name;
use crate::pairing::cost::PairCosts;
use crate::pairing::cost::participants::Participants;
use crate::pairing::round::draw::Draw;
use crate::pairing::round::game::{Game, Meeting, Pair};
use crate::pairing::round::hall::{Night, NightKey, NightSet, TableNo};
use crate::pairing::round::task::{Contender, Float, Household, RoleHistory, Task};
use crate::pairing::round::wishes::Wishes;
use crate::pairing::search::cost_table::CostTable;
use crate::pairing::search::sparse;
use crate::pairing::solve::Matcher;
use crate::points::LeaguePoints;
use crate::side::GameRole;
use crate::week::WeekNo;

fn player(at: usize) -> PlayerId {
    PlayerId(Uuid::from_u128(at as u128))
}

fn contender() -> impl Strategy<Value = Contender> {
    let float = || prop::option::of(prop_oneof![Just(Float::Down), Just(Float::Up)]);
    let streak = prop::option::of((
        prop_oneof![Just(GameRole::Attacker), Just(GameRole::Defender)],
        1..4_u8,
    ));
    let roles = (0..4_u16, 0..4_u16, streak).prop_map(|(attacker, defender, streak)| RoleHistory {
        attacker,
        defender,
        streak,
    });
    let facts = (0..7, 1..4_u8, 0..9_u32, 0..4_u8, 0..3_u8, any::<bool>());
    (facts, float(), float(), roles).prop_map(|(facts, last, earlier, roles)| {
        let (score, nights, household, faction, byes, spare) = facts;
        let name = |kind: &str| {
            Name::new(&format!("{kind} {faction}"))
                .ok()
                .filter(|_| faction > 0)
        };
        Contender {
            player: player(0),
            score: LeaguePoints::new(score),
            nights: NightSet::from_bits(nights),
            household: (household == 0).then_some(Household(1)),
            club: name("Club"),
            faction: name("Faction"),
            byes,
            spare,
            floats: [last, earlier],
            roles,
            tables: Vec::new(),
        }
    })
}

fn tasks(players: std::ops::Range<usize>) -> impl Strategy<Value = Task> {
    let contenders = prop::collection::vec(contender(), players);
    let pairs = || prop::collection::vec((0..1000_usize, 0..1000_usize), 0..150);
    (contenders, pairs(), pairs(), pairs(), 1..5_u8).prop_map(
        |(mut contenders, met, not, kept, week)| {
            let count = contenders.len();
            for (at, contender) in contenders.iter_mut().enumerate() {
                contender.player = player(at);
            }
            let pairs = |list: Vec<(usize, usize)>| -> Vec<Pair> {
                let named = list
                    .into_iter()
                    .map(|(a, b)| Pair::new(player(a % count), player(b % count)));
                named.flatten().collect()
            };
            let week = WeekNo::new(week).unwrap();
            let key = |number| NightKey::new(number).unwrap();
            let tables: Vec<TableNo> = (0..200).map(TableNo).collect();
            Task {
                week,
                contenders,
                history: pairs(met)
                    .into_iter()
                    .map(|pair| Meeting { pair, week })
                    .collect(),
                nights: vec![
                    Night {
                        key: key(0),
                        tables: tables.clone(),
                    },
                    Night {
                        key: key(1),
                        tables,
                    },
                ],
                wishes: Wishes::default(),
                pins: Vec::new(),
                forbidden: pairs(not).into_iter().take(9).collect(),
                fixed: Vec::new(),
                allowed: None,
                published: pairs(kept).into_iter().take(20).map(game).collect(),
                rounds_left: 0,
                draw: Draw([9; 32]),
            }
        },
    )
}

fn game(pair: Pair) -> Game {
    let [attacker, defender] = pair.players();
    Game {
        night: NightKey::new(0).unwrap(),
        table: TableNo(0),
        attacker,
        defender,
    }
}

fn costs(task: &Task) -> PairCosts {
    PairCosts::new(
        task,
        Participants::new(task).unwrap(),
        task.contenders.len() % 2,
    )
    .unwrap()
}

fn total(costs: &PairCosts, matcher: &Matcher) -> i128 {
    let cost = |&[a, b]: &[u32; 2]| costs.edge_cost(a as usize, b as usize).unwrap();
    matcher.pairs().iter().map(cost).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn table_costs_are_the_pair_costs(task in tasks(4..30)) {
        let costs = costs(&task);
        let cost_table = CostTable::new(&costs);
        for a in 0..costs.vertex_count() {
            for b in (0..costs.vertex_count()).filter(|&b| b != a) {
                prop_assert_eq!(cost_table.edge_cost(a, b), costs.edge_cost(a, b));
            }
        }
    }

    #[test]
    fn few_pairs_give_the_optimum_of_all_pairs(
        mut task in tasks(70..110),
        scores in 1..9_i32,
        out in 0..30_usize,
    ) {
        for contender in &mut task.contenders {
            contender.score = LeaguePoints::new(contender.score.get() % scores);
        }
        let costs = costs(&task);
        let all = |a: usize, b: usize| costs.edge_cost(a, b);
        let dense = Matcher::optimum(costs.vertex_count(), all);
        let few = sparse::optimum(&costs);
        prop_assert_eq!(dense.is_ok(), few.is_ok());
        let (Ok(dense), Ok(few)) = (dense, few) else { return Ok(()) };
        prop_assert_eq!(total(&costs, &dense), total(&costs, &few));

        let excluded = few.pairs()[out];
        let all = |a: usize, b: usize| costs.edge_cost(a, b).filter(|_| excluded != [a as u32, b as u32]);
        let dense = Matcher::optimum(costs.vertex_count(), all);
        let few = sparse::optimum_without(&costs, few, &[excluded]);
        prop_assert_eq!(dense.is_ok(), few.is_ok());
        if let (Ok(dense), Ok(few)) = (dense, few) {
            prop_assert_eq!(total(&costs, &dense), total(&costs, &few));
        }
    }

    #[test]
    fn a_repair_that_begins_with_the_published_pairs_ends_with_the_optimum(
        task in tasks(24..90),
        change in (0..3_u8, 0..12_usize),
    ) {
        let Ok(solved) = sparse::optimum(&costs(&task)) else { return Ok(()) };
        let participants = Participants::new(&task).unwrap();
        let pairs = solved.pairs().into_iter().filter_map(|[a, b]| {
            let other = participants.list.get(b as usize)?;
            Pair::new(participants.list[a as usize].player, other.player)
        });
        let pairs: Vec<Pair> = pairs.collect();
        let mut task = task;
        task.published = pairs.iter().copied().map(game).collect();
        let ([one, _], [other, _]) = (pairs[change.1 % 9].players(), pairs[9].players());
        match change.0 {
            0 => task.contenders.retain(|contender| contender.player != one),
            1 => task.forbidden.push(pairs[change.1 % 9]),
            _ => task.pins.extend(Pair::new(one, other)),
        }
        if Participants::new(&task).is_err() {
            return Ok(());
        }
        let costs = costs(&task);
        let all = Matcher::optimum(costs.vertex_count(), |a, b| costs.edge_cost(a, b));
        let few = sparse::optimum(&costs);
        prop_assert_eq!(all.is_ok(), few.is_ok());
        if let (Ok(all), Ok(few)) = (all, few) {
            prop_assert_eq!(total(&costs, &all), total(&costs, &few));
        }
    }
}
