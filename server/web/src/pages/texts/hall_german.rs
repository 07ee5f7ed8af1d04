//! German for what hangs on the wall of the hall or is printed.

use super::Phrase;
use super::hall_english::HallTexts;

translation! {
    HallTexts, HALL_GERMAN, [],
    wall: "Wandbildschirm",
    wall_link: "Für den Wandbildschirm",
    wall_pause: "Anhalten",
    wall_go_on: "Weiter",
    wall_next: "Nächste",
    wall_part: "{} von {}",
    table_cards: "Tischkarten",
    cards_text: "An den gestrichelten Linien schneiden und je eine Karte auf einen Tisch legen. Ihr Code öffnet den Ergebniszettel.",
    print_hint: "Eine Seite A4. Drucken Sie mit dem Befehl Ihres Browsers.",
    certificate: "Urkunde",
    certificate_of: "Hiermit wird bescheinigt, dass",
    certificate_took_part: "teilgenommen hat an der Saison",
    certificate_with: "mit {}",
    certificate_place: "Platz {} von {}",
    certificate_points: "{} [Ligapunkt|Ligapunkte]",
    certificate_record: "{} gewonnen, {} unentschieden, {} verloren",
    certificate_painted: "{} [Punkt|Punkte] an Modellen neu fertig bemalt",
    certificate_awarded: "Ausgezeichnet: {}",
    certificate_signed: "Für den Verein",
    certificate_ended: "Wochen: {}. Beendet am {}.",
}
