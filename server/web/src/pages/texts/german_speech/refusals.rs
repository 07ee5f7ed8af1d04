//! What a refusal says in short, in German, by its stable code.

/// The refusal; `None` for a code that is not known here.
pub fn sentence(code: &str) -> Option<&'static str> {
    Some(match code {
        "invalid-credentials" => "E-Mail-Adresse und Passwort passen nicht zusammen.",
        "too-many-attempts" => "Zu viele vergebliche Versuche. Warten Sie ein wenig.",
        "forbidden" => "Ihre Rolle lässt das nicht zu.",
        "conflict-of-interest" => "Nicht in eigener Sache.",
        "approval-required" => "Das ändert Ihre eigene Partie. Jemand anderes muss es freigeben.",
        "not-a-participant" => "Das tun nur die beiden, die diese Partie spielen.",
        "self-confirmation" => "Niemand bestätigt die eigene Meldung.",
        "validation" => "Etwas ist noch nicht richtig ausgefüllt.",
        "password-too-short" => "Das Passwort ist zu kurz. Es braucht mindestens 15 Zeichen.",
        "password-compromised" => "Dieses Passwort ist zu verbreitet.",
        "guardian-consent-required" => "Ein Elternteil oder Vormund muss zustimmen.",
        "invalid-name" => "Der Name ist leer, zu lang oder enthält unzulässige Zeichen.",
        "invalid-text" => "Der Text ist zu lang oder enthält unzulässige Zeichen.",
        "unknown-zone" => "Diese Zeitzone gibt es nicht.",
        "invalid-local-time" => "Diese Uhrzeit fällt in eine Zeitumstellung.",
        "slug-taken" => "Dieser Kurzname ist vergeben.",
        "already-member" => "Sie gehören dem Verein schon an.",
        "last-owner" => "Ein Verein behält mindestens einen Besitzer.",
        "catalogue-name-taken" => "Der Verein hat schon einen Katalog dieses Namens.",
        "invalid-catalogue" => "Der Katalog hat Fehler.",
        "rules-unsatisfiable" => "In mancher Woche kann keine Liste diese Regeln einhalten.",
        "season-state" => "So weit ist die Saison nicht, oder sie ist vorbei.",
        "season-fixed" => "Das steht fest, seit die Saison begonnen hat.",
        "season-full" => "Es ist kein Platz mehr frei.",
        "already-registered" => "Sie spielen in dieser Saison schon mit.",
        "handle-taken" => "Dieser Name ist in der Saison vergeben.",
        "player-left" => "Wer ausgestiegen ist, spielt hier nicht mehr.",
        "deadline-passed" => "Die Abgabe ist vorbei.",
        "deadline-immutable" => "Diese Abgabe lässt sich so nicht mehr verschieben.",
        "deadline-ahead" => "Die Abgabe ist noch nicht vorbei.",
        "list-locked" => "Die Listen dieser Woche sind geöffnet.",
        "unknown-version" => "Diese Fassung gibt es nicht.",
        "lists-sealed" => "Die Listen sind noch versiegelt.",
        "points-cap-exceeded" => "Die Liste kostet mehr als die Punktgrenze.",
        "list-breaks-rules" => "Die Liste verstößt gegen eine Regel der Saison.",
        "version-mismatch" => "Das wurde inzwischen geändert. Sehen Sie es noch einmal an.",
        "round-already-paired" => "Die Runde ist veröffentlicht.",
        "not-enough-players" => "Es sind zu wenige für eine Runde.",
        "no-round-possible" => "Keine Runde erfüllt alle festen Bedingungen.",
        "week-state" => "So weit ist die Woche nicht, oder sie ist vorbei.",
        "reminded-already" => "Vor kurzem wurde schon erinnert.",
        "round-not-open" => "Die Partie hat noch nicht begonnen.",
        "result-final" => "Das Ergebnis steht. Nur ein Entscheid ändert es noch.",
        "slip-state-changed" => "Der Ergebniszettel wurde inzwischen beantwortet.",
        "impossible-score" => "So kann es in diesem Szenario nicht ausgegangen sein.",
        "claim-state-changed" => "Über diese Meldung ist inzwischen entschieden.",
        "photo-already-used" => "Dieses Foto steht schon hinter einer anderen Meldung.",
        "too-many-photos" => "In dieser Saison sind keine weiteren Fotos möglich.",
        "image-too-large" => "Das Bild ist zu groß.",
        "invalid-image" => "Dieses Bild lässt sich nicht lesen.",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use app::Reason;

    use super::*;

    #[test]
    fn every_reason_that_a_page_can_meet_has_its_words() {
        // Programs alone meet these.
        let apart = [
            "invalid-token",
            "token-reuse",
            "commitment-mismatch",
            "too-open",
            "idempotency-key-required",
            "precondition-required",
            "idempotency-key-reused",
        ];
        let codes = Reason::ALL.iter().map(|reason| reason.code());
        let missing: Vec<&str> = codes
            .filter(|code| sentence(code).is_none() && !apart.contains(code))
            .collect();
        assert_eq!(missing, Vec::<&str>::new());
    }
}
