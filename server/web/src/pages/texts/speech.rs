//! What the rules of the league say in whole sentences, in one language.
//!
//! The league itself speaks English. Another language makes its sentences from the same facts, and
//! does not compile while it lacks one of a kind that the compiler can list. For a finding, which is
//! known by its code, it may pass.

use document::season::policy::Policy;
use league::ids::PlayerId;
use league::lists::{EntryKey, Finding};
use league::pairing::round::changes::AssignmentChange;
use league::pairing::{Barrier, LookAhead, NightKey};
use league::scenario::ScenarioSheet;
use league::standings::TieBreak;
use league::{ledger, pairing};

/// How an entry of a list is called, if it is known.
pub type Named<'a> = &'a dyn Fn(&EntryKey) -> Option<String>;

/// How a player is called.
pub type Called<'a> = &'a dyn Fn(PlayerId) -> String;

/// The sentences of one language.
pub trait Speech: Sync {
    /// A season's rules.
    fn rules(&self, policy: &Policy) -> Vec<String>;

    /// What counts in a scenario.
    fn scenario(&self, sheet: &ScenarioSheet) -> Vec<String>;

    /// What a check says about a list; `None` for a finding that this language does not know.
    fn finding(&self, finding: &Finding, named: Named<'_>) -> Option<String>;

    /// Why an amount was credited.
    fn credited(&self, reason: &ledger::LineReason) -> String;

    /// Why a pair meets.
    fn paired(&self, reason: &pairing::PairingReason, called: Called<'_>) -> Vec<String>;

    /// A tie-break.
    fn tie_break(&self, tie_break: TieBreak) -> &'static str;

    /// How a round that must have rematches is proven to.
    fn barrier(&self, barrier: &Barrier, called: Called<'_>) -> String;

    /// What is known of the rounds to come.
    fn looked_ahead(&self, known: &LookAhead) -> String;

    /// What a repair changes for somebody.
    fn changed(
        &self,
        change: &AssignmentChange,
        called: Called<'_>,
        evening: &dyn Fn(NightKey) -> String,
    ) -> String;

    /// What a refusal of this code says in short; `None` for one that is not known here.
    fn refusal(&self, code: &str) -> Option<&'static str>;

    /// What a refusal says in full, by its English; `None` for a sentence that is not known here.
    fn detail(&self, english: &str) -> Option<String>;
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

    fn credited(&self, reason: &ledger::LineReason) -> String {
        reason.to_string()
    }

    fn paired(&self, reason: &pairing::PairingReason, called: Called<'_>) -> Vec<String> {
        reason.sentences(called)
    }

    fn barrier(&self, barrier: &Barrier, called: Called<'_>) -> String {
        barrier.sentence(called)
    }

    fn looked_ahead(&self, known: &LookAhead) -> String {
        known.sentence()
    }

    fn changed(
        &self,
        change: &AssignmentChange,
        called: Called<'_>,
        evening: &dyn Fn(NightKey) -> String,
    ) -> String {
        change.sentence(called, evening)
    }

    fn tie_break(&self, tie_break: TieBreak) -> &'static str {
        tie_break.words()
    }

    fn refusal(&self, _: &str) -> Option<&'static str> {
        None
    }

    fn detail(&self, english: &str) -> Option<String> {
        Some(english.to_owned())
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
        Self::or_english(speech.finding(finding, named), finding.sentence())
    }

    /// What a refusal says in full in this language, else as it says it itself.
    pub fn detail(speech: &dyn Speech, english: &str) -> Self {
        Self::or_english(speech.detail(english), english)
    }

    fn or_english(words: Option<String>, english: &str) -> Self {
        Self {
            foreign: words.is_none(),
            words: words.unwrap_or_else(|| english.to_owned()),
        }
    }
}
