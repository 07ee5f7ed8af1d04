//! What a fairness audit found, as it is told to the players.

use messages::{Message, Value, fairness};

use crate::ids::PlayerId;

use super::audit::{FairnessAudit, FairnessFinding, FairnessMeasure, RANDOM_SEASONS};

impl FairnessAudit {
    /// What was compared, how, and how many values stand out.
    pub fn messages(&self) -> [Message; 3] {
        let unusual = self.findings.iter().filter(|it| it.unusual).count();
        [
            fairness::fairness_compared(RANDOM_SEASONS),
            fairness::fairness_tested(self.tests),
            fairness::fairness_unusual(unusual),
        ]
    }
}

impl FairnessFinding {
    /// The value, what chance gives, and how many dealt seasons are as far from that.
    pub fn message(&self, called: &dyn Fn(PlayerId) -> String) -> Message {
        let (name, value) = (called(self.player), self.value);
        let what = match self.measure {
            FairnessMeasure::OpponentsStrength => fairness::fairness_opponents(name, value),
            FairnessMeasure::Roles => fairness::fairness_roles(name, format!("{value:+}")),
            FairnessMeasure::RepeatedTables => fairness::fairness_tables(name, value),
            FairnessMeasure::Byes => fairness::fairness_byes(name, value),
            FairnessMeasure::SameNight => fairness::fairness_nights(name, value),
        };
        fairness::fairness_value(
            what,
            mean(self.expected_sum),
            self.as_extreme,
            RANDOM_SEASONS + 1,
            self.unusual,
        )
    }
}

/// A mean over the dealt seasons, to one decimal.
fn mean(sum: i64) -> Value {
    let seasons = i64::from(RANDOM_SEASONS);
    Value::Tenths((sum * 10 + seasons / 2).div_euclid(seasons).into())
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    fn finding(measure: FairnessMeasure, value: i64, expected_sum: i64) -> FairnessFinding {
        FairnessFinding {
            player: PlayerId(Uuid::nil()),
            measure,
            value,
            expected_sum,
            as_extreme: 3,
            unusual: true,
        }
    }

    #[test]
    fn a_finding_says_value_mean_and_how_rare_it_is() {
        let called = |_| "Oskrel".to_owned();
        assert_eq!(
            finding(FairnessMeasure::Byes, 6, 8_888)
                .message(&called)
                .to_string(),
            "Oskrel sat out 6 times; chance gives 0.9 on average, and is as far from that in 3 of 10000 \
             seasons: more unusual than chance explains."
        );
        assert!(
            finding(FairnessMeasure::Roles, -2, -12_000)
                .message(&called)
                .to_string()
                .contains("attacked -2 times more than defended; chance gives -1.2 on average")
        );
    }
}
