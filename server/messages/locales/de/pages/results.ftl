### Results: the slip of a game, rulings, and what waits for somebody.

## The slip

slip = Ergebniszettel
slip-awaited = noch kein Ergebnis
slip-reported = gemeldet
slip-disputed = bestritten
slip-confirmed = bestätigt
slip-ruled = entschieden
outcome-conceded = aufgegeben
outcome-no-show = nicht erschienen
outcome-double-loss = beide verlieren
outcome-void = gestrichen
by-silence = niemand widersprach rechtzeitig
by-referee = Schiedsrichter
silence-confirms = Ohne Widerspruch gilt das ab
is-it-right = Stimmt das?
confirm = Ergebnis bestätigen
dispute = Ergebnis bestreiten
waits-for-referee = Eine Schiedsperson entscheidet über diese Partie. Bis dahin zählt nichts.
changed-meanwhile = Inzwischen hat sich hier etwas geändert, wie oben steht. Was Sie eingegeben haben, ist noch da.

## Reporting

report = Ergebnis melden
report-other = Etwas anderes melden
report-send = Meldung senden
what-counted = Was Sie gezählt haben
leg-n = Durchgang { $leg }
not-a-count = Keine ganze Zahl ab 0.
how-ended = Wie es endete
ended-played = zu Ende gespielt
ended-conceded = { $name } gab auf
ended-absent = { $name } war nicht da
ended-absent-notice = { $name } fehlte mit Ansage

## Ruling

ruling = Über diese Partie entscheiden
ruling-text = Ihr Entscheid gilt sofort, was immer auf dem Zettel steht. Er steht mit Grund im Protokoll; ein früheres Ergebnis bleibt lesbar.
ruling-send = Entscheiden

## What waits for somebody

results-of-week = Ergebnisse
results-open = { $count } ohne bestätigtes Ergebnis
results = Ergebnisse
disputed = Strittig
disputed-text = Die beiden Seiten sind uneins. Nichts zählt, bis jemand entscheidet.
overdue = Überfällig
overdue-text = Die Spielzeit ist vorbei und niemand hat gemeldet. Auf der Übersicht erinnern, oder entscheiden.
unreported = Noch nicht gemeldet
unreported-text = Gepaart, mit Zeit übrig. Die Zeit ist die letzte zum Spielen.
unanswered = Gemeldet, nicht beantwortet
unanswered-text = Eine Seite hat gemeldet. Ohne Einspruch gilt es ab der Zeit rechts.
nothing-waits = Keine Partie wartet auf jemanden.
painting-to-check = Bemalung zu prüfen: { $count }
