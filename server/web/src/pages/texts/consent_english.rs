//! English for the agreement that everybody reads one's record.

use super::Phrase;

vocabulary! {
    ConsentTexts, CONSENT_ENGLISH, [],
    heading: "My record over the seasons",
    meaning: "The table of each public season names you under the name that you have there. Your record ties these names together: season by season your name, faction, place and points. Nobody reads it unless you agree.",
    state: "Who may read it",
    open: "everybody",
    closed: "nobody",
    since: "You agreed on {}.",
    as_table: "As a table (CSV)",
    as_data: "For programs (JSON)",
    agree_text: "Everybody who has its address may read the record of this club's public seasons, those to come included. You can take this back at any time.",
    agree: "I agree that everybody may read it",
    withdraw_text: "From then on nobody reads the record, and its address leads nowhere for good. Copies that others made remain.",
    withdraw: "Take it back",
    minor: "The record of a minor stays within the club.",
}
