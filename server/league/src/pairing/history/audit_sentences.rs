//! The findings of an audit in sentences that a player understands.

use crate::ids::PlayerId;

use super::audit::{FairnessAudit, FairnessFinding, FairnessMeasure, RANDOM_SEASONS};

impl FairnessAudit {
    /// What was compared, how, and how many values stand out.
    pub fn sentences(&self) -> Vec<String> {
        let unusual = self.findings.iter().filter(|it| it.unusual).count();
        let found = match unusual {
            0 => "Nothing is further from the mean than chance explains.".to_owned(),
            1 => "One value is further from the mean than chance explains.".to_owned(),
            _ => format!("{unusual} values are further from the mean than chance explains."),
        };
        vec![
            format!(
                "The season was compared with {RANDOM_SEASONS} in which opponents, roles, nights, tables and \
                 byes were dealt out at random to the players who were there."
            ),
            format!(
                "{} values were tested at once; one counts as unusual only where chance explains it in \
                 at most 5 % of such audits, divided by that number (Bonferroni).",
                self.tests
            ),
            found,
        ]
    }
}

impl FairnessFinding {
    /// The value, what chance gives, and how many dealt seasons are as far from that.
    pub fn sentence(&self, called: &dyn Fn(PlayerId) -> String) -> String {
        let (name, value) = (called(self.player), self.value);
        let what = match self.measure {
            FairnessMeasure::OpponentsStrength => {
                format!("The opponents of {name} have {value} points together")
            }
            FairnessMeasure::Roles => format!("{name} attacked {value:+} times more than defended"),
            FairnessMeasure::RepeatedTables => {
                format!("{name} had {value} games at a table played on before")
            }
            FairnessMeasure::Byes => format!("{name} sat out {value} times"),
            FairnessMeasure::SameNight => {
                format!("{name} had {value} games on one and the same night")
            }
        };
        let verdict = if self.unusual {
            "more unusual than chance explains"
        } else {
            "within what chance allows"
        };
        format!(
            "{what}; chance gives {} on average, and is as far from that in {} of {} seasons: {verdict}.",
            tenths(self.expected_sum),
            self.as_extreme,
            RANDOM_SEASONS + 1
        )
    }
}

/// A mean over the dealt seasons, to one decimal.
fn tenths(sum: i64) -> String {
    let seasons = i64::from(RANDOM_SEASONS);
    let tenths = (sum * 10 + seasons / 2).div_euclid(seasons);
    let sign = if tenths < 0 { "-" } else { "" };
    format!("{sign}{}.{}", tenths.abs() / 10, tenths.abs() % 10)
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
            finding(FairnessMeasure::Byes, 6, 8_888).sentence(&called),
            "Oskrel sat out 6 times; chance gives 0.9 on average, and is as far from that in 3 of 10000 \
             seasons: more unusual than chance explains."
        );
        assert!(
            finding(FairnessMeasure::Roles, -2, -12_000)
                .sentence(&called)
                .contains("attacked -2 times more than defended; chance gives -1.2 on average")
        );
    }
}
