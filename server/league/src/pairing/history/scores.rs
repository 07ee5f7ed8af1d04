//! Scores that the pairing goes by: what everybody has, and had when earlier rounds were paired.

use std::collections::BTreeMap;

use crate::ids::PlayerId;
use crate::points::LeaguePoints;

use super::past::RoundKey;

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PairingScores {
    now: BTreeMap<PlayerId, LeaguePoints>,
    paired: BTreeMap<(RoundKey, PlayerId), LeaguePoints>,
}

impl PairingScores {
    /// `paired` are the scores that published rounds were drawn from, in the order of their versions: a
    /// repair takes the place of what it repairs.
    pub fn new(
        now: BTreeMap<PlayerId, LeaguePoints>,
        paired: impl IntoIterator<Item = (RoundKey, PlayerId, LeaguePoints)>,
    ) -> Self {
        let paired = paired.into_iter();
        let paired = paired.map(|(round, player, score)| ((round, player), score));
        Self {
            now,
            paired: paired.collect(),
        }
    }

    /// What a player has. Whoever has no row in the table yet has no points.
    pub fn now(&self, player: PlayerId) -> LeaguePoints {
        self.now.get(&player).copied().unwrap_or_default()
    }

    /// What a player had when a round was paired. Whoever was not in it had no points.
    pub fn at(&self, round: RoundKey, player: PlayerId) -> LeaguePoints {
        self.paired
            .get(&(round, player))
            .copied()
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::week::WeekNo;

    #[test]
    fn a_score_is_that_of_now_or_of_the_version_of_a_round_that_stands() {
        let [a, b] = [1, 2].map(|number| PlayerId(Uuid::from_u128(number)));
        let points = LeaguePoints::new;
        let round = |number| RoundKey {
            week: WeekNo::FIRST,
            number,
        };
        let drawn = [
            (round(1), a, points(1)),
            (round(1), b, points(2)),
            (round(1), a, points(3)),
        ];
        let scores = PairingScores::new([(a, points(9))].into(), drawn);
        assert_eq!([scores.now(a), scores.now(b)], [points(9), points(0)]);
        let at = |number| [a, b].map(|player| scores.at(round(number), player));
        assert_eq!(at(1), [points(3), points(2)]);
        assert_eq!(at(2), [points(0); 2]);
    }
}
