//! Reasons, barriers and looks ahead in sentences that a player understands.

use crate::ids::PlayerId;

use super::cost::Level;
use super::proposal::{LookAhead, Proposal};
use super::reason::{AlternativeCost, Barrier, PairingReason, Subject};
use super::wishes::Wish;

/// How a player is called on the page that shows the sentence.
pub type Called<'a> = &'a dyn Fn(PlayerId) -> String;

impl PairingReason {
    /// The reason, one sentence for each fact.
    pub fn sentences(&self, called: Called<'_>) -> Vec<String> {
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
    pub fn sentence(&self, called: Called<'_>) -> String {
        let names = |players: &[PlayerId]| {
            let names: Vec<String> = players.iter().map(|&player| called(player)).collect();
            names.join(", ")
        };
        let sets = self.odd_sets.iter().map(|set| format!("({})", names(set)));
        let sets = sets.collect::<Vec<_>>().join(" and ");
        let without = match &self.removed[..] {
            [] => String::new(),
            removed => format!(", and {} can serve only one group each", names(removed)),
        };
        format!(
            "At least {} must be a rematch: nobody in {sets} has anyone new to meet outside their own \
             group{without}, and a group of odd size always leaves somebody over.",
            games(u64::from(self.rematches)),
        )
    }
}

impl Proposal {
    /// What the hall's tables and nights cost against tables without end.
    pub fn hall_sentence(&self) -> String {
        let levels = self.cost.0.iter().zip(&self.cost_without_hall.0);
        let more =
            levels.map(|(&(level, with), &(_, without))| (level, with.saturating_sub(without)));
        let first = more
            .into_iter()
            .find(|&(level, more)| level != Level::Draw && more > 0);
        match first {
            None => "More tables would not make the round any better.".into(),
            Some((level, more)) => format!(
                "Because the tables are so few on each night, the round has {}.",
                worse(level, more)
            ),
        }
    }
}

impl LookAhead {
    /// What is known of the rounds to come.
    pub fn sentence(&self) -> String {
        match self {
            Self::LastRound => "This is the last round.".into(),
            Self::Playable(plan) => format!(
                "After this round {} more can be played without a rematch; one way was found.",
                rounds(plan.len())
            ),
            Self::NeverRunsDry => {
                "Every round to come can be played without a rematch, however it goes.".into()
            }
            Self::RunsDry(plan) => format!(
                "However this round is paired, only {} more can be played without a rematch.",
                rounds(plan.len())
            ),
            Self::OneRound => "Only this round was considered, not the ones to come.".into(),
        }
    }
}

fn subject(subject: &Subject, called: Called<'_>) -> String {
    match *subject {
        Subject::SameScore { pair, score } => {
            let [a, b] = pair.players().map(called);
            format!("{a} and {b} have the same score, {score}.")
        }
        Subject::Float {
            down,
            down_score,
            up,
            up_score,
        } => format!(
            "{} with {down_score} floats down to meet {} with {up_score}, who floats up.",
            called(down),
            called(up)
        ),
        Subject::Bye { player, score } => {
            format!(
                "{} with {score} sits out because the numbers do not come out even.",
                called(player)
            )
        }
    }
}

fn given_up(wish: Wish, amount: u64) -> String {
    match wish {
        Wish::NoRematch if amount == 1 => "They have met before.".into(),
        Wish::NoRematch => format!("They have met {amount} times before."),
        Wish::NoSecondBye => format!("It is not the first bye: {amount} before."),
        Wish::SpareSitsOut => "Nobody who offered to sit out could.".into(),
        Wish::ByeToFewestPoints => format!("The fewest points are {amount} fewer."),
        Wish::CloseScores => format!("Their scores differ by {}.", amount.isqrt()),
        Wish::ClubsApart => "They are of one club, early in the season.".into(),
        Wish::FactionsApart => "They field one faction, early in the season.".into(),
        Wish::NoRepeatedFloat => "One of them floated the same way in the last two rounds.".into(),
        Wish::RolesInBounds => "Both must have the same role, and only one can.".into(),
        Wish::RolesEven => "Both should have the same role, and only one can.".into(),
    }
}

fn price(price: AlternativeCost) -> String {
    match price {
        AlternativeCost::Pinned => "The organiser fixed this.".into(),
        AlternativeCost::Fixed => "This was settled before the round was drawn.".into(),
        AlternativeCost::Indispensable => "There is no round without it.".into(),
        AlternativeCost::ShorterSeason => {
            "Without it the season would sooner run out of new games.".into()
        }
        AlternativeCost::EquallyGood => {
            "Another round is exactly as good; the draw decided.".into()
        }
        AlternativeCost::Worse(Level::Draw, _) => {
            "Without it the round is as good; the draw decided.".into()
        }
        AlternativeCost::Worse(level, amount) => {
            format!("Without it the best round has {}.", worse(level, amount))
        }
        AlternativeCost::NotComputed => "What it would cost to forbid it was not computed.".into(),
    }
}

fn worse(level: Level, amount: u64) -> String {
    let more = |what: &str| format!("{amount} more in {what}");
    match level {
        Level::SittingOut => more("players without a game"),
        Level::Changed => more("games that differ from the published round"),
        Level::Draw => more("the draw"),
        Level::Wish(Wish::NoRematch) => format!("{} more that are rematches", games(amount)),
        Level::Wish(Wish::NoSecondBye) => more("second byes"),
        Level::Wish(Wish::SpareSitsOut) => more("byes to players who did not offer to sit out"),
        Level::Wish(Wish::ByeToFewestPoints) => more("points of the player who sits out"),
        Level::Wish(Wish::CloseScores) => more("squared differences of scores"),
        Level::Wish(Wish::ClubsApart) => more("games within a club"),
        Level::Wish(Wish::FactionsApart) => more("games within a faction"),
        Level::Wish(Wish::NoRepeatedFloat) => more("repeated floats"),
        Level::Wish(Wish::RolesInBounds) => more("roles out of bounds"),
        Level::Wish(Wish::RolesEven) => more("roles that are not even"),
    }
}

fn games(count: u64) -> String {
    if count == 1 {
        "1 game".into()
    } else {
        format!("{count} games")
    }
}

fn rounds(count: usize) -> String {
    if count == 1 {
        "1 round".into()
    } else {
        format!("{count} rounds")
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
            reason.sentences(&called),
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
            reason.sentences(&called),
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
            barrier.sentence(&called),
            "At least 1 game must be a rematch: nobody in (Oskrel, Lumeth, Pellamoor) and (Juddeth, \
             Braewick, Corvanel) has anyone new to meet outside their own group, and a group of odd size \
             always leaves somebody over."
        );
    }
}
