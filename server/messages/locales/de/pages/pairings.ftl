### Rounds: proposed, proven, published, repaired.

## The pairings of a week

pairings = Paarungen
pairings-none = Die Partien dieser Woche sind noch nicht gepaart.
round-n = Runde { $round }
round-of = Runde { $round } von { $rounds } in dieser Woche
which-round = Welche Runde

## Pairing a week

pairing-desk = Woche paaren
pairing-text = Der Vorschlag ist nach den Wünschen der Saison nachweislich der beste. Niemand sonst sieht ihn, bevor Sie ihn veröffentlichen.
propose = Runde vorschlagen
propose-again = Neu lösen
publish = Runde veröffentlichen
publish-text = Alle sehen die Paarungen sofort. Eine veröffentlichte Runde wird nie neu gelost.
order = Anweisung
pin-pair = Muss sein
forbid-pair = Darf nicht sein
as-it-comes = Wie es kommt
another-pair = Vorgabe für ein anderes Paar
and-player = und
orders-text = Der Rest wird um Ihre Vorgaben herum neu gelöst. Alle werden sie sehen.
close-week = Woche abschließen
close-week-text = Friert die Tabelle dieser Woche ein. Spätere Entscheide ergeben eine neue, nachvollziehbare Fassung.
week-closed = Diese Woche ist abgeschlossen. Ihre Tabelle steht; ein späterer Entscheid ergibt eine neue Fassung, mit Begründung.

## Why these pairings

why-pairings = Warum diese Paarungen
published-at = Veröffentlicht
proof-holds = Bewiesen: keine Paarung gibt weniger auf. Der Prüfer stimmt zu.
proof-fails = Der Beweis hält nicht. Diese Runde kann nicht veröffentlicht werden.
orders-given = Vorgaben der Leitung
draw-of-round = Die Auslosung dieser Runde
draw-text = Aus dem Geheimnis der Saison und den festgehaltenen Eingaben dieser Runde, sodass niemand sie wählen konnte.

## Repairing a round

repair = Runde reparieren
repair-text = Jemand kann nicht kommen, oder ein Tisch oder Abend fällt weg. Es ändern sich so wenige Partien wie möglich, mit Beweis; eine gemeldete Partie bleibt.
repair-would = Was sich ändern würde
repair-publish = Reparatur veröffentlichen
repair-publish-text = Alle sehen die Änderungen und die Begründung sofort. Die Fassung davor bleibt lesbar.
repair-away = Wer jetzt nicht kommen kann
repair-tables = Tische, die es jetzt gibt (0: kein Abend)
repair-reason-hint = Alle können sie lesen. Nichts über die Gesundheit von jemandem sagen.
repair-preview = Zeigen, was sich ändern würde
