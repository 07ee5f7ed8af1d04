//! English for what hangs on the wall of the hall or is printed.

use super::Phrase;

vocabulary! {
    HallTexts, HALL_ENGLISH, [],
    wall: "Wall screen",
    wall_link: "For the wall screen",
    wall_pause: "Pause",
    wall_go_on: "Go on",
    wall_next: "Next",
    wall_part: "{} of {}",
    table_cards: "Table cards",
    cards_text: "Cut along the dashed lines and put one card on each table. Its code opens the result slip.",
    print_hint: "One page of A4. Use your browser's own command to print it.",
    certificate: "Certificate",
    certificate_of: "This says that",
    certificate_took_part: "took part in the season",
    certificate_with: "with {}",
    certificate_place: "Place {} of {}",
    certificate_points: "{} league [point|points]",
    certificate_record: "{} won, {} drawn, {} lost",
    certificate_painted: "{} [point|points] of models newly finished",
    certificate_awarded: "Awarded: {}",
    certificate_signed: "For the club",
    certificate_ended: "Weeks: {}. Ended on {}.",
}
