//! What a player is told of a round: reasons, barriers, and what is known of the rounds to come.

use messages::{Message, Value, pairing as said, proofs, values};

use crate::ids::PlayerId;

use super::cost::Level;
use super::proposal::{LookAhead, Proposal};
use super::reason::{AlternativeCost, Barrier, PairingReason, Subject};
use super::wishes::Wish;

/// How a player is called where the message is shown.
pub type Called<'a> = &'a dyn Fn(PlayerId) -> String;

impl PairingReason {
    /// One message for each fact.
    pub fn messages(&self, called: Called<'_>) -> Vec<Message> {
        let given_up = self
            .given_up
            .iter()
            .map(|&(wish, amount)| given_up(wish, amount));
        [subject(&self.subject, called)]
            .into_iter()
            .chain(given_up)
            .chain([price(self.alternative)])
            .collect()
    }
}

impl Barrier {
    /// Why a rematch cannot be avoided.
    pub fn message(&self, called: Called<'_>) -> Message {
        let names = |players: &[PlayerId]| {
            Value::joined(players.iter().map(|&player| called(player)), values::comma)
        };
        let sets = self.odd_sets.iter();
        let sets = sets.map(|set| proofs::proof_group(names(set)));
        let groups = Value::joined(sets, values::and);
        if self.removed.is_empty() {
            proofs::proof_barrier(self.rematches, groups)
        } else {
            proofs::proof_barrier_without(self.rematches, groups, names(&self.removed))
        }
    }
}

impl Proposal {
    /// What the hall's tables and nights cost against tables without end.
    pub fn hall_message(&self) -> Message {
        let levels = self.cost.0.iter().zip(&self.cost_without_hall.0);
        let more =
            levels.map(|(&(level, with), &(_, without))| (level, with.saturating_sub(without)));
        let first = more
            .into_iter()
            .find(|&(level, more)| level != Level::Draw && more > 0);
        match first {
            None => proofs::proof_hall_costs_nothing(),
            Some((level, more)) => proofs::proof_hall_costs(worse(level, more)),
        }
    }
}

impl LookAhead {
    /// What is known of the rounds to come.
    pub fn message(&self) -> Message {
        match self {
            Self::LastRound => proofs::proof_last_round(),
            Self::Playable(plan) => proofs::proof_playable(plan.len()),
            Self::NeverRunsDry => proofs::proof_never_runs_dry(),
            Self::RunsDry(plan) => proofs::proof_runs_dry(plan.len()),
            Self::OneRound => proofs::proof_one_round(),
        }
    }
}

fn subject(subject: &Subject, called: Called<'_>) -> Message {
    match *subject {
        Subject::SameScore { pair, score } => {
            let [a, b] = pair.players().map(called);
            said::pairing_same_score(a, b, score)
        }
        Subject::Float {
            down,
            down_score,
            up,
            up_score,
        } => said::pairing_float(called(down), down_score, called(up), up_score),
        Subject::Bye { player, score } => said::pairing_bye(called(player), score),
    }
}

fn given_up(wish: Wish, amount: u64) -> Message {
    match wish {
        Wish::NoRematch => said::pairing_met_before(amount),
        Wish::NoSecondBye => said::pairing_second_bye(amount),
        Wish::SpareSitsOut => said::pairing_no_spare(),
        Wish::ByeToFewestPoints => said::pairing_fewest_points(amount),
        Wish::CloseScores => said::pairing_scores_differ(amount.isqrt()),
        Wish::ClubsApart => said::pairing_one_club(),
        Wish::FactionsApart => said::pairing_one_faction(),
        Wish::NoRepeatedFloat => said::pairing_floated_before(),
        Wish::RolesInBounds => said::pairing_must_have_same_role(),
        Wish::RolesEven => said::pairing_should_have_same_role(),
    }
}

fn price(price: AlternativeCost) -> Message {
    match price {
        AlternativeCost::Pinned => said::pairing_pinned(),
        AlternativeCost::Fixed => said::pairing_settled_before(),
        AlternativeCost::Indispensable => said::pairing_indispensable(),
        AlternativeCost::ShorterSeason => said::pairing_shorter_season(),
        AlternativeCost::EquallyGood => said::pairing_another_as_good(),
        AlternativeCost::Worse(Level::Draw, _) => said::pairing_without_it_as_good(),
        AlternativeCost::Worse(level, amount) => {
            said::pairing_without_it_worse(worse(level, amount))
        }
        AlternativeCost::NotComputed => said::pairing_not_computed(),
    }
}

fn worse(level: Level, more: u64) -> Message {
    match level {
        Level::SittingOut => said::pairing_worse_sitting_out(more),
        Level::Changed => said::pairing_worse_changed(more),
        Level::Draw => said::pairing_worse_draw(more),
        Level::Wish(Wish::NoRematch) => said::pairing_worse_rematches(more),
        Level::Wish(Wish::NoSecondBye) => said::pairing_worse_second_byes(more),
        Level::Wish(Wish::SpareSitsOut) => said::pairing_worse_spares(more),
        Level::Wish(Wish::ByeToFewestPoints) => said::pairing_worse_bye_points(more),
        Level::Wish(Wish::CloseScores) => said::pairing_worse_scores(more),
        Level::Wish(Wish::ClubsApart) => said::pairing_worse_clubs(more),
        Level::Wish(Wish::FactionsApart) => said::pairing_worse_factions(more),
        Level::Wish(Wish::NoRepeatedFloat) => said::pairing_worse_floats(more),
        Level::Wish(Wish::RolesInBounds) => said::pairing_worse_role_bounds(more),
        Level::Wish(Wish::RolesEven) => said::pairing_worse_even_roles(more),
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::pairing::round::game::Pair;
    use crate::points::LeaguePoints;

    const HANDLES: [&str; 6] = [
        "Oskrel",
        "Lumeth",
        "Pellamoor",
        "Juddeth",
        "Braewick",
        "Corvanel",
    ];

    fn player(at: usize) -> PlayerId {
        PlayerId(Uuid::from_u128(at as u128))
    }

    fn called(player: PlayerId) -> String {
        HANDLES[player.0.as_u128() as usize].into()
    }

    fn said(messages: Vec<Message>) -> Vec<String> {
        messages.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn a_float_is_explained_with_both_scores_and_its_price() {
        let reason = PairingReason {
            subject: Subject::Float {
                down: player(0),
                down_score: LeaguePoints::new(14),
                up: player(4),
                up_score: LeaguePoints::new(12),
            },
            given_up: vec![(Wish::CloseScores, 4)],
            alternative: AlternativeCost::Worse(Level::Wish(Wish::CloseScores), 12),
        };
        assert_eq!(
            said(reason.messages(&called)),
            [
                "Oskrel with 14 floats down to meet Braewick with 12, who floats up.",
                "Their scores differ by 2.",
                "Without it the best round has 12 more in squared differences of scores.",
            ]
        );
    }

    #[test]
    fn a_game_of_equals_that_the_draw_decided_says_so() {
        let reason = PairingReason {
            subject: Subject::SameScore {
                pair: Pair::new(player(1), player(2)).unwrap(),
                score: LeaguePoints::new(9),
            },
            given_up: Vec::new(),
            alternative: AlternativeCost::EquallyGood,
        };
        assert_eq!(
            said(reason.messages(&called)),
            [
                "Lumeth and Pellamoor have the same score, 9.",
                "Another round is exactly as good; the draw decided.",
            ]
        );
    }

    #[test]
    fn a_barrier_names_the_groups() {
        let barrier = Barrier {
            removed: Vec::new(),
            odd_sets: vec![
                vec![player(0), player(1), player(2)],
                vec![player(3), player(4), player(5)],
            ],
            rematches: 1,
        };
        assert_eq!(
            barrier.message(&called).to_string(),
            "At least 1 game must be a rematch: nobody in (Oskrel, Lumeth, Pellamoor) and (Juddeth, \
             Braewick, Corvanel) has anyone new to meet outside their own group, and a group of odd size \
             always leaves somebody over."
        );
    }
}
