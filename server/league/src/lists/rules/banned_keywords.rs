//! Banned keywords: units that may not be fielded yet, or at all.

use messages::{Message, Value, findings, list_rules, values};

use crate::catalogue::key::Keyword;
use crate::lists::finding::Finding;
use crate::lists::list_facts::ListFacts;

/// "No unit with the keyword toughness 4."
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BannedKeywords {
    /// A unit with any of these is refused.
    pub keywords: Vec<Keyword>,
}

impl BannedKeywords {
    pub(super) fn message(&self) -> Message {
        let keywords = Value::joined(&self.keywords, values::or);
        list_rules::list_rule_banned_keywords(keywords)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        for line in &facts.lines {
            let Some(unit) = line.unit else { continue };
            for keyword in self
                .keywords
                .iter()
                .filter(|keyword| unit.has_keyword(keyword))
            {
                let message = findings::finding_banned_keyword(&unit.name, keyword);
                findings.push(
                    Finding::new("list.banned-keyword", message)
                        .about(keyword)
                        .entries([&line.entry.key]),
                );
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{entries, keyword, under};

    #[test]
    fn every_unit_with_a_banned_keyword_is_named() {
        let rule = Rule::BannedKeywords(BannedKeywords {
            keywords: vec![keyword("toughness-3"), keyword("toughness-4")],
        });
        let now = "a bog-oak-hulks 2, b turf-cutters 8, c drowned-bell-beast 1";
        let findings = under(rule, 500, now);
        let named: Vec<_> = findings
            .iter()
            .map(|f| (entries(f), f.about.clone()))
            .collect();
        assert_eq!(
            named,
            [
                (vec!["a"], Some("toughness-3".into())),
                (vec!["c"], Some("toughness-4".into())),
            ]
        );
        assert_eq!(
            findings[1].message().to_string(),
            "Drowned Bell-Beast has the keyword toughness 4, which is not allowed this week."
        );
    }
}
