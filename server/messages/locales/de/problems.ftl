### What every problem of a kind is called.

## Of the request itself

problem-malformed-json = Der Inhalt ist kein JSON
problem-broken-body = Der Inhalt brach ab, oder seine Teile (chunks) sind falsch
problem-invalid-parameter = Ein Parameter ist nicht gültig
problem-sign-in-needed = Melden Sie sich zuerst an
problem-csrf = Dieses Formular kam nicht von unserer eigenen Seite
problem-not-found = Hier ist nichts, was Sie sehen könnten
problem-method-not-allowed = Nicht auf diese Weise
problem-not-acceptable = Nicht in diesem Format
problem-too-slow = Der Inhalt kam nicht rechtzeitig an
problem-payload-too-large = Der Inhalt ist zu groß
problem-unsupported-media-type = Diese Art von Inhalt wird hier nicht angenommen
problem-unknown-field = Ein Feld ist hier nicht bekannt
problem-too-many-requests = Zu viele Anfragen; warten Sie ein wenig
problem-unavailable = Gerade nicht; versuchen Sie es gleich noch einmal
problem-internal = Ein Fehler von uns; er ist vermerkt

## Accounts

problem-invalid-credentials = E-Mail-Adresse und Passwort passen nicht zusammen
problem-invalid-token = Das Token ist nicht gültig
problem-token-reuse = Ein Token zum Erneuern wurde zweimal benutzt
problem-too-many-attempts = Zu viele vergebliche Anmeldeversuche
problem-password-too-short = Das Passwort ist zu kurz
problem-password-compromised = Das Passwort ist zu leicht zu erraten
problem-guardian-consent-required = Ein Elternteil oder Vormund muss zustimmen

## Who may do it

problem-forbidden = Ihre Rolle lässt das nicht zu
problem-conflict-of-interest = Nicht in eigener Sache
problem-approval-required = Jemand anderes muss es freigeben
problem-not-a-participant = Nur die beiden, die diese Partie spielen
problem-self-confirmation = Niemand bestätigt die eigene Meldung

## Fields

problem-validation = Etwas ist noch nicht richtig ausgefüllt
problem-invalid-name = Der Name ist nicht gültig
problem-invalid-text = Der Text ist nicht gültig
problem-unknown-zone = Diese Zeitzone gibt es nicht
problem-invalid-local-time = Diese Uhrzeit fällt in eine Zeitumstellung

## Clubs and catalogues

problem-slug-taken = Der Kurzname ist vergeben
problem-already-member = Schon Mitglied
problem-last-owner = Ein Verein behält einen Besitzer
problem-catalogue-name-taken = Der Verein hat schon einen Katalog dieses Namens
problem-invalid-catalogue = Der Katalog hat Fehler

## Seasons and their players

problem-rules-unsatisfiable = Keine Liste kann die Regeln einhalten
problem-season-state = So weit ist die Saison nicht, oder sie ist vorbei
problem-season-fixed = Das steht fest, seit die Saison begonnen hat
problem-season-full = Es ist kein Platz mehr frei
problem-already-registered = Schon in dieser Saison dabei
problem-handle-taken = Der Name ist in der Saison vergeben
problem-player-left = Wer ausgestiegen ist, spielt hier nicht mehr

## Lists

problem-deadline-passed = Die Abgabe ist vorbei
problem-deadline-immutable = Diese Abgabe lässt sich so nicht mehr verschieben
problem-list-locked = Die Listen dieser Woche sind geöffnet
problem-deadline-ahead = Die Abgabe ist noch nicht vorbei
problem-points-cap-exceeded = Die Liste kostet mehr als die Punktgrenze
problem-list-breaks-rules = Die Liste verstößt gegen eine Regel
problem-version-mismatch = Das wurde inzwischen geändert
problem-precondition-required = Nennen Sie die Fassung, die Sie ändern, in If-Match
problem-lists-sealed = Die Listen sind noch versiegelt

## Rounds

problem-round-already-paired = Die Runde ist veröffentlicht
problem-not-enough-players = Zu wenige Spielende
problem-no-round-possible = Keine Runde erfüllt alle festen Bedingungen
problem-commitment-mismatch = Der Vorschlag folgt nicht aus seinen Angaben
problem-week-state = So weit ist die Woche nicht, oder sie ist vorbei
problem-reminded-already = Vor kurzem wurde schon erinnert

## Results and the table

problem-round-not-open = Die Partie hat noch nicht begonnen
problem-result-final = Das Ergebnis steht
problem-slip-state-changed = Der Ergebniszettel wurde inzwischen beantwortet
problem-impossible-score = So kann es nicht ausgegangen sein
problem-unknown-version = Diese Fassung gibt es nicht
problem-version-ahead = So weit ist die Saison noch nicht
problem-too-open = Für eine genaue Antwort ist noch zu viel offen
problem-idempotency-key-required = Ein Idempotency-Key ist nötig
problem-idempotency-key-reused = Der Idempotency-Key wurde für eine andere Anfrage benutzt

## Painting

problem-photo-already-used = Das Foto wurde schon benutzt
problem-too-many-photos = Keine weiteren Fotos in dieser Saison
problem-image-too-large = Das Bild ist zu groß
problem-invalid-image = Das Bild lässt sich nicht lesen
problem-claim-state-changed = Über diese Meldung ist inzwischen entschieden
