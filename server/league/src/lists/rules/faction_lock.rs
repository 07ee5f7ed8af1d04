//! Faction lock: a player stays with the faction declared for the season.

use messages::{Message, findings, list_rules};

use crate::lists::finding::Finding;
use crate::lists::list_facts::ListFacts;

/// "A player keeps the faction declared for the season." Waits until one is declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FactionLock;

impl FactionLock {
    #[expect(
        clippy::unused_self,
        reason = "every kind of rule is asked in the same way"
    )]
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_faction_lock()
    }

    #[expect(
        clippy::unused_self,
        reason = "every kind of rule is asked in the same way"
    )]
    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let Some(declared) = facts.declared_faction else {
            return;
        };
        let fielded = facts.list.faction();
        if fielded != declared {
            let message = findings::finding_faction_lock(fielded, declared);
            findings.push(Finding::new("list.faction-lock", message).about(declared));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::key::FactionKey;
    use crate::lists::check::check;
    use crate::lists::rules::{ListRule, Rule};
    use crate::lists::samples::{catalogue, list_of, numbers, terms};
    use crate::lists::terms::ListTerms;

    #[test]
    fn another_faction_than_the_declared_one_is_told() {
        let rules = [ListRule::every_week(Rule::FactionLock(FactionLock))];
        let moot = FactionKey::new("sodwether-moot").unwrap();
        let findings = |faction, declared| {
            let terms = ListTerms {
                faction: declared,
                ..terms(500, &rules)
            };
            check(&list_of(faction, ""), &catalogue(), &terms).findings
        };
        assert_eq!(findings("sodwether-moot", Some(&moot)), []);
        assert_eq!(findings("bramblestile-steadings", None), []);
        assert_eq!(
            numbers(&findings("bramblestile-steadings", Some(&moot))),
            [("list.faction-lock", 0, 0)]
        );
    }
}
