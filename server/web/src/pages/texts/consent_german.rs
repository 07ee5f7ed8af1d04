//! German for the agreement that everybody reads one's record.

use super::Phrase;
use super::consent_english::ConsentTexts;

translation! {
    ConsentTexts, CONSENT_GERMAN, [],
    heading: "Mein Werdegang über die Saisons",
    meaning: "Die Tabelle jeder öffentlichen Saison nennt Sie unter dem Namen, den Sie dort tragen. Ihr Werdegang verbindet diese Namen: Saison für Saison Name, Fraktion, Platz und Punkte. Niemand liest ihn, solange Sie nicht zustimmen.",
    state: "Wer ihn lesen darf",
    open: "alle",
    closed: "niemand",
    since: "Sie haben am {} zugestimmt.",
    as_table: "Als Tabelle (CSV)",
    as_data: "Für Programme (JSON)",
    agree_text: "Wer die Adresse hat, darf den Werdegang über die öffentlichen Saisons dieses Vereins lesen, auch über künftige. Sie können das jederzeit zurücknehmen.",
    agree: "Ich stimme zu, dass ihn alle lesen dürfen",
    withdraw_text: "Von da an liest niemand den Werdegang, und seine Adresse führt für immer ins Leere. Kopien, die andere gemacht haben, bleiben.",
    withdraw: "Zurücknehmen",
    minor: "Der Werdegang von Minderjährigen bleibt im Verein.",
}
