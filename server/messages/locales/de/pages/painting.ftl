### The painting log: claims, photos and checks.

## Claiming

painting = Bemalung
painting-text = Sagen Sie, wie weit Ihre Modelle sind. Bevor sie zählen, sieht sie jemand anderes an: Ihr Gegenüber am Tisch oder ein Schiedsrichter.
stage-bare = unbemalt
stage-primed = grundiert
stage-coloured = in Farbe
stage-finished = fertig
models-bare = { $models } unbemalt
models-primed = { $models } grundiert
models-coloured = { $models } in Farbe
models-finished = { $models } fertig
models-finished-of = { $finished } / { $models } fertig
claim = Melden
photo = Foto (wenn Sie mögen)
photo-hint = Nur Modelle: keine Menschen, keine Minderjährigen.
photo-of = { $unit }, bemalt von { $player }
photo-delete = Dieses Foto zurückziehen

## Taking care

painting-care = Bitte Vorsicht
care-spray = Sprühdosen und Airbrush: im Freien oder mit Absaugung, mit einer zur Farbe passenden Maske, fern von Flammen, und im Vereinsheim nur an einem dafür bezeichneten Platz.
care-blades = Klingen: von der Hand weg schneiden, auf einer Matte, mit frischer Klinge, und die Kappe wieder aufsetzen.
care-minors = Minderjährige tun beides nur mit einem verantwortlichen Erwachsenen.
photo-caution = Fotos: nur Modelle, keine Menschen, vor allem keine Minderjährigen, und nichts, was Ihren Wohnort verrät. Ort und Zeit werden aus dem Bild entfernt. Nur der Verein sieht es, und Sie können es wieder zurückziehen.
care-local = Örtliche Regeln gehen vor.

## Checking

claims = Meldungen
no-claims = Noch hat niemand etwas gemeldet.
claims-n = gemeldet: { $count }
to-check = Von Ihnen oder anderen zu prüfen: { $count }
claim-open = zu prüfen
claim-verified = geprüft
claim-refused = abgelehnt
check-claim = Prüfen
verify-claim = Ich habe es gesehen
refuse-claim = Ablehnen
