//! What the rules of the league say in whole sentences, in one language.
//!
//! The league itself speaks English. Another language makes its sentences from the same facts, and
//! does not compile while it lacks one of a kind that the compiler can list. For a finding, which is
//! known by its code, it may pass.

use document::policy::Policy;
use league::ids::PlayerId;
use league::lists::{EntryKey, Finding};
use league::scenario::ScenarioSheet;
use league::standings::TieBreak;
use league::{ledger, pairing};

/// How an entry of a list is called, if it is known.
pub type Named<'a> = &'a dyn Fn(&EntryKey) -> Option<String>;

/// The sentences of one language.
pub trait Speech: Sync {
    /// A season's rules.
    fn rules(&self, policy: &Policy) -> Vec<String>;

    /// What counts in a scenario.
    fn scenario(&self, sheet: &ScenarioSheet) -> Vec<String>;

    /// What a check says about a list; `None` for a finding that this language does not know.
    fn finding(&self, finding: &Finding, named: Named<'_>) -> Option<String>;

    /// Why an amount was credited.
    fn credited(&self, reason: &ledger::Reason) -> String;

    /// Why a pair meets.
    fn paired(&self, reason: &pairing::Reason, called: &dyn Fn(PlayerId) -> String) -> Vec<String>;

    /// A tie-break.
    fn tie_break(&self, tie_break: TieBreak) -> &'static str;

    /// What a refusal of this code says in short, before its details, which stay English; `None`
    /// where the details say enough.
    fn refusal(&self, code: &str) -> Option<&'static str>;
}

/// The league's own sentences.
pub struct English;

impl Speech for English {
    fn rules(&self, policy: &Policy) -> Vec<String> {
        policy.sentences()
    }

    fn scenario(&self, sheet: &ScenarioSheet) -> Vec<String> {
        sheet.sentences()
    }

    fn finding(&self, finding: &Finding, _: Named<'_>) -> Option<String> {
        Some(finding.sentence().to_owned())
    }

    fn credited(&self, reason: &ledger::Reason) -> String {
        reason.to_string()
    }

    fn paired(&self, reason: &pairing::Reason, called: &dyn Fn(PlayerId) -> String) -> Vec<String> {
        reason.sentences(&called)
    }

    fn tie_break(&self, tie_break: TieBreak) -> &'static str {
        tie_break.words()
    }

    fn refusal(&self, _: &str) -> Option<&'static str> {
        None
    }
}

/// A sentence that may have stayed English.
pub struct Said {
    /// The sentence.
    pub words: String,
    /// Whether it is English on a page that is not.
    pub foreign: bool,
}

impl Said {
    /// A finding in this language, else in the league's own.
    pub fn finding(speech: &dyn Speech, finding: &Finding, named: Named<'_>) -> Self {
        match speech.finding(finding, named) {
            Some(words) => Self {
                words,
                foreign: false,
            },
            None => Self {
                words: finding.sentence().to_owned(),
                foreign: true,
            },
        }
    }
}
