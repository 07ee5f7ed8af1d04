### The table, a player's page with the ledger behind the total, tie-breaks, and points by ruling.

## The table

standings = Tabelle
standings-after = Tabelle nach Woche { $week }
standings-caption = Öffnen Sie einen Namen, um jeden Punkt mit seinem Grund zu sehen.
rank = Rang
won-drawn-lost = S–U–N
up-by = { $places } hinauf
down-by = { $places } hinunter
as-of = Nach Woche
decided-by = nach: { $criterion }
rank-chart = Rang nach jeder Woche

## A player's page

placed = Platz { $rank } von { $players }
no-place = Noch nicht in der Tabelle.
games-played = Partien
no-games = Noch keine Partie.

## The ledger

ledger = Punktebuch
ledger-text = Der Stand ist die Summe dieser Zeilen und nichts sonst.
what-for = Wofür
why = Warum
credited = Punkte
line-game = Partie
line-bye = Freilos
line-absence = Abgemeldet
line-attendance = Anwesenheit
line-painting = Bemalung
line-bonus-cap = Bonusgrenze
line-late-list = Späte Liste
line-catch-up = Wochen vor dem Einstieg
line-ruling = Entscheid
line-dropped = Gestrichene Woche
models-painted =
    { $painted } von { $models } { $models ->
        [one] Modell
       *[other] Modellen
    } bemalt
points-counted =
    { $counted } von { $points } { $points ->
        [one] Punkt zählt
       *[other] Punkten zählen
    }

## Tie-breaks

tie-breaks = Wie gleiche Summen unterschieden werden
games-and-opponents = Partien und Gegner
opponent-total = Gegner hat { $total }

## Points by ruling

points-by-ruling = Punkte durch Entscheid
points-by-ruling-text = Ligapunkte geben oder nehmen, mit Begründung. Daraus wird eine eigene Zeile im Punktebuch. Nichts wird gelöscht: ein Irrtum wird durch eine weitere Zeile zurückgenommen.
points-early = Punkte lassen sich ab der ersten gepaarten Woche geben.
points-amount = Punkte
points-amount-hint = Zum Beispiel 2, oder -1, um einen zu nehmen.
points-give = Ins Punktebuch eintragen
points-given = Bisher gegeben und genommen
points-none = Noch nichts.
points-take-back = Zurücknehmen
