//! Season size: whether a season has the weeks, nights and rounds that its rules refer to.

use league::pairing::robin::table_round::{RoundRobinFault, check_room};
use league::pairing::round::method::PairingMethod;
use messages::{Message, policy};

use super::PolicyDocument;
use crate::fault::DocumentFault;

/// What the rules have to fit into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeasonSize {
    /// Weeks of the season.
    pub weeks: usize,
    /// Nights of the week that has most of them.
    pub nights: usize,
    /// Most players, if limited.
    pub places: Option<u16>,
}

impl PolicyDocument {
    /// Everything that the rules say of weeks, nights and rounds beyond the frame.
    pub fn faults_beyond(&self, frame: SeasonSize) -> Vec<DocumentFault> {
        let mut faults: Vec<DocumentFault> = self.weeks_beyond(frame.weeks).collect();
        faults.extend(self.best_weeks_beyond(frame.weeks));
        faults.extend(self.rounds_beyond(frame));
        faults
    }

    fn weeks_beyond(&self, last: usize) -> impl Iterator<Item = DocumentFault> {
        let weights = self.scoring.weights.keys();
        let weights = weights.map(|week| (format!("scoring/weights/{week}"), *week));
        let rules = self.list_rules.iter().enumerate().flat_map(|(at, rule)| {
            let weeks = rule.weeks.iter().flatten().enumerate();
            weeks.map(move |(of, week)| (format!("list_rules/{at}/weeks/{of}"), *week))
        });
        let named = rules.chain(weights);
        let beyond = named.filter(move |(_, week)| usize::from(*week) > last);
        beyond.map(move |(place, week)| {
            let message = policy::policy_no_such_week(last, week);
            fault(&place, "policy.weeks", message, last, week.into())
        })
    }

    fn best_weeks_beyond(&self, weeks: usize) -> Option<DocumentFault> {
        let best = usize::from(self.scoring.best_weeks?);
        let message = policy::policy_too_many_best_weeks(best, weeks);
        (best > weeks).then(|| {
            fault(
                "scoring/best_weeks",
                "policy.best-weeks",
                message,
                weeks,
                best,
            )
        })
    }

    fn rounds_beyond(&self, frame: SeasonSize) -> Option<DocumentFault> {
        // Rounds that cannot be read are a fault of the rules themselves.
        let rounds = self.rounds.to_rounds().ok()?;
        let per_week = usize::from(rounds.per_week());
        let nights = frame.nights;
        if per_week > nights {
            let message = policy::policy_too_few_nights(nights, per_week);
            let place = "rounds/per_week";
            return Some(fault(place, "policy.rounds", message, nights, per_week));
        }
        let PairingMethod::RoundRobin(cycles) = rounds.method() else {
            return None;
        };
        // Two is the fewest that play, however many may come.
        let players = frame.places.map_or(2, usize::from);
        let none = check_room(players, cycles, frame.weeks * per_week).err()?;
        let place = match none {
            RoundRobinFault::Players { .. } => "/places",
            RoundRobinFault::Rounds { .. } => "/policy/rounds",
        };
        let (limit, actual) = none.limit_and_actual();
        let found = DocumentFault::new(place, "policy.round-robin", none.message());
        Some(found.with_limit(number(limit), number(actual)))
    }
}

fn fault(place: &str, code: &str, message: Message, limit: usize, actual: usize) -> DocumentFault {
    DocumentFault::new(format!("/policy/{place}"), code, message)
        .with_limit(number(limit), number(actual))
}

fn number(of: usize) -> u32 {
    u32::try_from(of).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;

    const FRAME: SeasonSize = SeasonSize {
        weeks: 6,
        nights: 2,
        places: None,
    };

    fn beyond(policy: Value, frame: SeasonSize) -> Vec<(String, Option<i64>, Option<i64>)> {
        let policy: PolicyDocument = serde_json::from_value(policy).unwrap();
        let faults = policy.faults_beyond(frame).into_iter();
        faults
            .map(|fault| (fault.pointer, fault.limit, fault.actual))
            .collect()
    }

    fn one(pointer: &str, limit: i64, actual: i64) -> Vec<(String, Option<i64>, Option<i64>)> {
        vec![(pointer.to_owned(), Some(limit), Some(actual))]
    }

    #[test]
    fn no_rule_speaks_of_a_week_after_the_last() {
        let rule = |weeks: Value| json!({ "list_rules": [{ "rule": { "kind": "faction_lock" }, "weeks": weeks }] });
        assert_eq!(beyond(rule(json!([1, 6])), FRAME), []);
        let expected = one("/policy/list_rules/0/weeks/1", 6, 7);
        assert_eq!(beyond(rule(json!([6, 7])), FRAME), expected);
    }

    #[test]
    fn no_factor_stands_on_a_week_after_the_last_and_no_more_weeks_count_than_there_are() {
        let scoring = |best: u8, heavy: &str| {
            let mut policy = json!(PolicyDocument::default());
            policy["scoring"]["best_weeks"] = json!(best);
            policy["scoring"]["weights"] = json!({ heavy: 2 });
            policy
        };
        assert_eq!(beyond(scoring(6, "6"), FRAME), []);
        let expected = one("/policy/scoring/weights/7", 6, 7);
        assert_eq!(beyond(scoring(6, "7"), FRAME), expected);
        let expected = one("/policy/scoring/best_weeks", 6, 7);
        assert_eq!(beyond(scoring(7, "6"), FRAME), expected);
    }

    #[test]
    fn a_week_has_a_night_for_each_of_its_rounds() {
        let rounds =
            |per_week: u8| json!({ "rounds": { "kind": "by_score", "per_week": per_week } });
        assert_eq!(beyond(rounds(2), FRAME), []);
        let expected = one("/policy/rounds/per_week", 2, 3);
        assert_eq!(beyond(rounds(3), FRAME), expected);
    }

    #[test]
    fn everybody_who_has_a_place_in_a_round_robin_meets_everybody() {
        let rounds =
            |double: bool| json!({ "rounds": { "kind": "round_robin", "double": double } });
        let places = |places: u16| SeasonSize {
            places: Some(places),
            ..FRAME
        };
        assert_eq!(beyond(rounds(false), places(6)), []);
        let expected = one("/policy/rounds", 7, 6);
        assert_eq!(beyond(rounds(false), places(7)), expected);
        assert_eq!(beyond(rounds(false), places(55)), one("/places", 54, 55));
        let short = SeasonSize { weeks: 1, ..FRAME };
        assert_eq!(beyond(rounds(false), short), []);
        assert_eq!(beyond(rounds(true), short), one("/policy/rounds", 2, 1));
    }
}
