//! The season's list rules as JSON.
//!
//! To add a kind: name it in [`rule_documents!`] below, with the members of its struct in the league.
//! A member of a new type says in `members.rs` how it is read and written.

mod amounts;
mod members;

pub use amounts::{AmountDocument, CountDocument, CountedDocument, KindsDocument};

use league::lists::rules::{self, ListRule, Rule};
use league::lists::week_set::WeekSet;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::DocumentFault;
use crate::lists::report::SeverityDocument;
use crate::share::ShareDocument;
use members::{Member, Reader};

/// A rule with the weeks it applies in and its weight.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ListRuleDocument {
    /// What is demanded.
    pub rule: RuleDocument,
    /// The weeks it applies in; every week when absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = json!([1, 2, 3]))]
    pub weeks: Option<Vec<u8>>,
    /// Whether a list against it is stopped.
    #[serde(default)]
    pub severity: SeverityDocument,
}

/// The enum of the documents, and both ways between it and the rules of the league.
macro_rules! rule_documents {
    ($(#[$doc:meta])* $name:ident {
        $($(#[$kind_doc:meta])* $kind:ident {
            $($(#[$member_doc:meta])* $member:ident: $outer:ident $(<$inner:ident>)?,)*
        },)+
    }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
        #[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
        pub enum $name {
            $($(#[$kind_doc])* $kind {
                $($(#[$member_doc])* $member: $outer $(<$inner>)?,)*
            },)+
        }

        impl $name {
            fn read(&self, reader: &mut Reader<'_>) -> Option<Rule> {
                Some(match self {
                    $(Self::$kind { $($member),* } => {
                        $(let $member = $member.read(reader, stringify!($member));)*
                        Rule::$kind(rules::$kind { $($member: $member?),* })
                    })+
                })
            }
        }

        impl From<&Rule> for $name {
            fn from(rule: &Rule) -> Self {
                match rule {
                    $(Rule::$kind(rules::$kind { $($member),* }) => Self::$kind {
                        $($member: Member::write($member),)*
                    },)+
                }
            }
        }
    };
}

rule_documents! {
    /// The kinds of list rule.
    RuleDocument {
        /// A list spends at least so much; a share is of the cap.
        MinimumSpend {
            /// Least points.
            least: AmountDocument,
        },
        /// No single unit costs more, options included; a share is of the cap.
        LargestUnit {
            /// Most points.
            most: AmountDocument,
        },
        /// The options of a unit cost no more for each of its models.
        OptionBudget {
            /// Most points for each model.
            most_per_model: u32,
        },
        /// So many units of a kind.
        KindCount {
            /// Key of the unit kind.
            unit_kind: String,
            /// Fewest.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            least: Option<CountDocument>,
            /// Most.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            most: Option<CountDocument>,
        },
        /// So much of the cap goes into a kind.
        KindShare {
            /// Key of the unit kind.
            unit_kind: String,
            /// Least share of the cap.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            least: Option<ShareDocument>,
            /// Largest share of the cap.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            most: Option<ShareDocument>,
        },
        /// So many of the same unit.
        Copies {
            /// Most entries of one unit.
            most: CountDocument,
            /// The kinds it is about; every kind when absent.
            #[serde(default)]
            of: KindsDocument,
        },
        /// No units of some keywords.
        BannedKeywords {
            /// Keys of the keywords.
            keywords: Vec<String>,
        },
        /// So many units or models in all.
        ArmySize {
            /// What is counted.
            counted: CountedDocument,
            /// Fewest.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            least: Option<u32>,
            /// Most.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            most: Option<u32>,
        },
        /// A player keeps the faction declared for the season.
        FactionLock {},
        /// So much of last week's list returns.
        CarryOver {
            /// Share of last week's points.
            returning: ShareDocument,
            /// Whether a returning unit may have fewer models.
            #[serde(default)]
            may_shrink: bool,
            /// Whether a returning unit may have fewer options.
            #[serde(default)]
            may_drop_options: bool,
        },
        /// So much of last week's list may leave; a share is of last week's points.
        SwapAllowance {
            /// Most points.
            most: AmountDocument,
        },
        /// So much may be new since last week; a share is of the cap.
        NewPoints {
            /// Most points.
            most: AmountDocument,
        },
        /// So many units are new or have grown since last week.
        NewUnits {
            /// Fewest.
            least: u32,
        },
        /// So much of the list's own points is painted.
        PaintedShare {
            /// Least share.
            least: ShareDocument,
        },
    }
}

/// The rules of a season, with every fault of every rule below the pointer `at`.
///
/// # Errors
/// Every [`DocumentFault`], such as one at `{at}/2/rule/unit_kind`.
pub fn read_list_rules(
    documents: Vec<ListRuleDocument>,
    at: &str,
) -> Result<Vec<ListRule>, Vec<DocumentFault>> {
    let mut rules = Vec::with_capacity(documents.len());
    let mut all = Vec::new();
    for (i, document) in documents.into_iter().enumerate() {
        match ListRule::try_from(document) {
            Ok(rule) => rules.push(rule),
            Err(faults) => all.extend(faults.into_iter().map(|fault| DocumentFault {
                pointer: format!("{at}/{i}{}", fault.pointer),
                ..fault
            })),
        }
    }
    if all.is_empty() { Ok(rules) } else { Err(all) }
}

impl RuleDocument {
    /// Whether it has two bounds and neither is given.
    fn lacks_bounds(&self) -> bool {
        matches!(
            self,
            Self::KindCount {
                least: None,
                most: None,
                ..
            } | Self::KindShare {
                least: None,
                most: None,
                ..
            } | Self::ArmySize {
                least: None,
                most: None,
                ..
            }
        )
    }
}

impl TryFrom<ListRuleDocument> for ListRule {
    type Error = Vec<DocumentFault>;

    fn try_from(document: ListRuleDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut reader = Reader::at("");
        let weeks = reader.weeks(document.weeks.as_deref());
        reader.at = "/rule";
        let rule = document.rule.read(&mut reader);
        if document.rule.lacks_bounds() {
            reader.no_bound();
        }
        match (rule, weeks) {
            (Some(rule), Some(weeks)) if reader.faults.is_empty() => Ok(Self {
                rule,
                weeks,
                severity: document.severity.into(),
            }),
            _ => Err(reader.faults),
        }
    }
}

impl From<&ListRule> for ListRuleDocument {
    fn from(rule: &ListRule) -> Self {
        Self {
            rule: (&rule.rule).into(),
            weeks: (rule.weeks != WeekSet::EVERY)
                .then(|| rule.weeks.iter().map(|week| week.number()).collect()),
            severity: rule.severity.into(),
        }
    }
}
