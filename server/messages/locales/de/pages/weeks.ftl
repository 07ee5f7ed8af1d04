### A week: its moments and phases, its scenario with map and sheet, and what players and organisers have to do.

## What holds for a week

cap = Punktgrenze
cap-of =
    Grenze { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }
lists-due = Listen fällig
grace-until = gilt als rechtzeitig bis
play-until = Spielen bis
announced-at = Ankündigung
night-line =
    { $tables } { $tables ->
        [one] Tisch
       *[other] Tische
    }
phase-planned = geplant
phase-announced = Listen kommen herein
phase-lists-due = Listen werden gleich geöffnet
phase-lists-opened = Listen geöffnet
phase-paired = gepaart
phase-closed = abgeschlossen

## The scenario

scenario = Szenario
scenario-hidden = Noch nicht enthüllt.
scenario-title-only = Bisher ist nur der Titel bekannt.
scenario-preview = Das sehen nur Sie als Leitung: Die Spielenden kennen es noch nicht.
scenario-scoring = Was zählt
map-of = Karte des Tischs, { $width } mal { $depth } cm
map-first = erste Seite oder Angriff beginnt hier
map-second = zweite Seite oder Verteidigung beginnt hier
map-exit = Einheiten verlassen hier den Tisch
map-ground = Gelände mit eigenen Regeln
map-marker = { $marker } (Marke)
map-in-words = Die Karte in Worten
map-place = { $left } cm von links, { $top } cm von oben
map-size = { $width } mal { $depth } cm

## The scenario sheet

sheet-edit = Szenarioblatt
sheet-text = Das Blatt als JSON
sheet-hint = Wenn es ausgefüllt ist, zählt es statt der Felder oben.
sheet-title-when = Titel wird enthüllt
sheet-full-when = Alles wird enthüllt
reveal-announcement = mit der Ankündigung
reveal-opened = wenn die Listen geöffnet werden
sheet-title = Titel
sheet-summary = In einem Satz
sheet-briefing = Einweisung
sheet-turns = Züge
sheet-draw = Noch unentschieden bis zu einem Abstand von
sheet-items = Diese Zahlen geben die Spielenden ein, der Server macht daraus die Wertung. Zeilen ohne Namen entfallen.
sheet-item = Zählung { $number }
item-label = Was gezählt wird ({ $number })
item-points = Punkte für jedes
item-most = Höchstens
item-when = Wann
item-during = während des Spiels
item-last = nach dem letzten Zug
item-exclusive = Jedes kann nur eine Seite halten
sheet-table = Tisch
table-width = Breite in cm
table-depth = Tiefe in cm
table-strip = Startstreifen in cm (0: keiner)
near-edge = Naher Rand
far-edge = Ferner Rand
sheet-reveal = Wann die Spielenden es sehen
sheet-as-data = Das ganze Blatt als Daten (Doppelspiel, Rollen, Zonen, Stufen)

## My week

nothing-due = Gerade steht bei Ihnen nichts an.
my-game = Meine Partie
excused = Sie sind für diese Woche entschuldigt.
availability = Wann können Sie kommen?
availability-text = Nehmen Sie alle Haken weg, um in dieser Woche entschuldigt zu fehlen.
availability-save = Abende speichern
withdraw = Aus der Saison aussteigen
withdraw-text = Kein Drama: Gespielte Partien bleiben, und Sie werden nicht mehr gepaart.
withdraw-sure = Ja, aussteigen
notice-list = Ihre Liste fehlt noch.
notice-result = Ihre Partie ist noch zu melden.
notice-from = Erinnerung vom

## The board

board-text = Wer abgegeben hat. Niemand sieht eine Liste, bevor alle geöffnet werden, auch Sie nicht.
list-state = Liste
grant-leave = Erlaubnis, später abzugeben
grant-leave-text = Alle können den Grund lesen.
leave-for = Für
grant = Erlauben
open-lists = Jetzt alle Listen öffnen
open-lists-text = Der Server tut das bald nach der Frist von selbst.
for-whole-season = Die ganze Saison

## Reminders

owe-lists = Ohne Liste
owe-results = Partie nicht gemeldet
remind = Erinnern
remind-text = Zeigt ihnen einen Hinweis auf ihrer eigenen Seite, bis es erledigt ist, höchstens einmal in zwölf Stunden. Das Protokoll sagt, dass erinnert wurde, nicht wen.
reminded-last = Zuletzt erinnert
remind-chat = Fertig für den Chat des Vereins
chat-lists = Woche { $week } von { $season }: Wer noch keine Liste abgegeben hat, bitte abgeben. Abgabeschluss ist: { $due }
chat-results = Woche { $week } von { $season }: Bitte meldet, wie eure Partie ausging: { $players }
