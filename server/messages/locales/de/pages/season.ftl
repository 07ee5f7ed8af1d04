### A season's own page, the way to its rooms, and how it ends.

## The rooms

overview = Überblick
my-week = Meine Woche
board = Übersicht
rules = Regeln

## The season's page

season-draft-text = Diese Saison wird angelegt. Mitglieder des Vereins, die ihre Adresse haben, sehen sie und können einen Platz nehmen.
start-season = Saison starten
start-season-text = Legt die Regeln fest und zieht das Geheimnis. Das lässt sich nicht zurücknehmen.
players-n = { $count } Spielende
no-players = Noch niemand dabei.
withdrew = ausgestiegen
joined-in = seit Woche { $week }
commitment = Fingerabdruck der geheimen Auslosung
commitment-text = Vor der ersten Paarung festgelegt. Am Ende der Saison wird das Geheimnis gezeigt, und alle können jede Runde nachlosen.

## Joining

join-season = An dieser Saison teilnehmen
join-text = Sie spielen ab der nächsten Woche, deren Listen noch nicht fällig sind.
handle = Name in dieser Saison
handle-hint = Am besten ein Spitzname: Alle können ihn lesen.
usual-nights = Abende, an denen Sie meist können

## Ending

ending = Saison beenden
ended = Wie die Saison endete
ending-will = Was das Beenden bewirkt
ending-will-stop = Listen, Ergebnisse und Entscheide werden nicht mehr angenommen.
ending-will-prizes = Tabelle und Preise sind endgültig.
ending-will-seed = Das Geheimnis der Auslosungen wird allen gezeigt, sodass jede Runde nachgelost werden kann.
ending-will-keep = Alles bleibt lesbar und kann heruntergeladen werden.
ending-for-good = Das lässt sich nicht rückgängig machen.
ending-sure = Ja, Saison beenden
ending-first = Erst diese Wochen abschließen:
places-now = Derzeit vorn
whole-table = Die ganze Tabelle
prizes = Preise
prizes-now = Preise nach jetzigem Stand
prizes-text = Durch die Zahlen der Saison entschieden. Mehrere können sich einen teilen.
prizes-none = Noch gibt es für keinen Preis etwas zu zählen.

## The draws

draws = Die Auslosungen
seed-is = Das Geheimnis selbst. Seine SHA-256 ist der Fingerabdruck oben:
seed-hidden = Das Geheimnis wird am Ende der Saison gezeigt. Bis dahin kennt es niemand, auch die Leitung nicht.
