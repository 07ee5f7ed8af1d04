//! The policy of a season as JSON: everything that it decides for itself, each part with a default.

mod defaults;
mod season_size;

use league::lists::rules::ListRule;
use league::painting::Painting;
use league::pairing::Wishes;
use league::pairing::round::method::RoundSettings;
use league::scoring::Scoring;
use league::standings::TieBreaks;
use messages::{Message, policy};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::DocumentFault;
use crate::lists::rules::{ListRuleDocument, read_list_rules};
use crate::painting::rules::PaintingDocument;
use crate::rounds::method::RoundsDocument;
use crate::rounds::task::WishesDocument;
use crate::season::scoring::ScoringDocument;
use crate::season::tie_breaks::TieBreaksDocument;

pub use season_size::SeasonSize;

/// Longest time that silence may take to confirm a result.
pub const MAX_CONFIRM_HOURS: u16 = 24 * 14;

/// Everything a season decides for itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct PolicyDocument {
    /// What a list must be like, besides the cap.
    pub list_rules: Vec<ListRuleDocument>,
    /// How games, byes, absences and lists become league points.
    pub scoring: ScoringDocument,
    /// What painting is worth and who checks it.
    pub painting: PaintingDocument,
    /// What decides between equal totals.
    pub tie_breaks: TieBreaksDocument,
    /// How many rounds there are, and what decides who may meet.
    pub rounds: RoundsDocument,
    /// What is wanted of the pairings.
    pub pairing: WishesDocument,
    /// Hours after which silence confirms a reported result.
    #[schema(example = 48, minimum = 1, maximum = 336)]
    pub confirm_within_hours: u16,
}

/// The rules of a season as the league knows them.
#[derive(Clone, Debug)]
pub struct Policy {
    /// What a list must be like, besides the cap.
    pub list_rules: Vec<ListRule>,
    /// How games, byes, absences and lists become league points.
    pub scoring: Scoring,
    /// What painting is worth and who checks it.
    pub painting: Painting,
    /// What decides between equal totals.
    pub tie_breaks: TieBreaks,
    /// How many rounds there are, and what decides who may meet.
    pub rounds: RoundSettings,
    /// What is wanted of the pairings.
    pub pairing: Wishes,
    /// Hours after which silence confirms a reported result.
    pub confirm_within_hours: u16,
}

impl PolicyDocument {
    /// The rules, or everything wrong with them at once.
    ///
    /// # Errors
    /// Every [`DocumentFault`], its pointer below `/policy`.
    pub fn to_policy(&self) -> Result<Policy, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let rules = read_list_rules(self.list_rules.clone(), "/policy/list_rules");
        let list_rules = rules.map_err(|found| faults.extend(found)).ok();
        let scoring = part(
            &mut faults,
            "scoring",
            Scoring::try_from(self.scoring.clone()),
        );
        let painting = part(
            &mut faults,
            "painting",
            Painting::try_from(self.painting.clone()),
        );
        let order = part(
            &mut faults,
            "tie_breaks",
            TieBreaks::try_from(self.tie_breaks.clone()),
        );
        let rounds = part(&mut faults, "rounds", self.rounds.to_rounds());
        let wishes = self.pairing.to_wishes();
        let wishes = wishes.map_err(|fault| {
            vec![DocumentFault::new(
                "/order",
                "pairing.wishes",
                fault.message(),
            )]
        });
        let pairing = part(&mut faults, "pairing", wishes);
        if !(1..=MAX_CONFIRM_HOURS).contains(&self.confirm_within_hours) {
            let message = policy::policy_silence_hours(MAX_CONFIRM_HOURS);
            let actual = self.confirm_within_hours;
            let limit = actual.clamp(1, MAX_CONFIRM_HOURS);
            let fault =
                DocumentFault::new("/policy/confirm_within_hours", "policy.confirm", message);
            faults.push(fault.with_limit(limit, actual));
        }
        match (list_rules, scoring, painting, order, rounds.zip(pairing)) {
            (
                Some(list_rules),
                Some(scoring),
                Some(painting),
                Some(tie_breaks),
                Some((rounds, pairing)),
            ) if faults.is_empty() => Ok(Policy {
                list_rules,
                scoring,
                painting,
                tie_breaks,
                rounds,
                pairing,
                confirm_within_hours: self.confirm_within_hours,
            }),
            _ => Err(faults),
        }
    }
}

impl Policy {
    /// The rules as players read them.
    pub fn messages(&self) -> Vec<Message> {
        let lists = self.list_rules.iter().map(ListRule::message);
        lists
            .chain(self.scoring.messages())
            .chain([policy::policy_silence(self.confirm_within_hours)])
            .chain(self.painting.messages())
            .chain(self.tie_breaks.messages())
            .chain(self.rounds.messages())
            .collect()
    }
}

fn part<T>(
    faults: &mut Vec<DocumentFault>,
    name: &str,
    read: Result<T, Vec<DocumentFault>>,
) -> Option<T> {
    read.map_err(|found| {
        faults.extend(found.into_iter().map(|mut fault| {
            fault.pointer.insert_str(0, &format!("/policy/{name}"));
            fault
        }));
    })
    .ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_that_decides_nothing_gets_rules_that_hold() {
        let policy: PolicyDocument = serde_json::from_str("{}").unwrap();
        assert_eq!(policy, PolicyDocument::default());
        let messages = policy.to_policy().unwrap().messages();
        let silence = "A reported result that nobody answers stands after 48 h.";
        assert!(
            messages.iter().any(|said| said.to_string() == silence),
            "{messages:?}"
        );
    }

    #[test]
    fn every_fault_of_every_part_is_named_with_its_place() {
        let mut policy = PolicyDocument {
            confirm_within_hours: 0,
            ..PolicyDocument::default()
        };
        policy.scoring.best_weeks = Some(0);
        policy
            .tie_breaks
            .order
            .extend(policy.tie_breaks.order.clone());
        let faults = policy.to_policy().unwrap_err();
        let places: Vec<&str> = faults.iter().map(|fault| fault.pointer.as_str()).collect();
        assert!(
            places
                .iter()
                .any(|place| place.starts_with("/policy/scoring")),
            "{places:?}"
        );
        assert!(
            places
                .iter()
                .any(|place| place.starts_with("/policy/tie_breaks")),
            "{places:?}"
        );
        assert!(
            places.contains(&"/policy/confirm_within_hours"),
            "{places:?}"
        );
    }
}
