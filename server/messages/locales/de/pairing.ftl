### Warum zwei sich treffen oder jemand aussetzt.

## Was erklärt wird

pairing-same-score = { $one } und { $other } haben gleich viele Punkte, { $score }.
pairing-float = { $down } mit { $down-score } wird nach unten gelost und trifft { $up } mit { $up-score }.
pairing-bye = { $player } mit { $score } setzt aus, weil die Zahl nicht aufgeht.

## Wünsche, die dafür aufgegeben werden

pairing-met-before =
    { $times ->
        [one] Sie sind sich schon einmal begegnet.
       *[other] Sie sind sich schon { $times }-mal begegnet.
    }
pairing-second-bye = Es ist nicht das erste Freilos: { $byes } davor.
pairing-no-spare = Niemand, der aussetzen wollte, konnte es.
pairing-fewest-points = Die wenigsten Punkte sind { $fewer } weniger.
pairing-scores-differ = Ihre Punkte liegen { $difference } auseinander.
pairing-one-club = Sie sind früh in der Saison aus einem Verein.
pairing-one-faction = Sie führen früh in der Saison dieselbe Fraktion.
pairing-floated-before = Einer von ihnen wurde in den letzten zwei Runden schon so gelost.
pairing-must-have-same-role = Beide müssten dieselbe Rolle haben, nur einer kann es.
pairing-should-have-same-role = Beide sollten dieselbe Rolle haben, nur einer kann es.

## Was es kosten würde, es zu verbieten

pairing-pinned = Die Leitung hat es so festgelegt.
pairing-settled-before = Das stand schon vor der Auslosung fest.
pairing-indispensable = Ohne sie gibt es keine Runde.
pairing-shorter-season = Ohne sie gingen der Saison früher die neuen Partien aus.
pairing-another-as-good = Eine andere Runde ist genauso gut; das Los entschied.
pairing-without-it-as-good = Ohne sie ist die Runde genauso gut; das Los entschied.
pairing-without-it-worse = Ohne sie hätte die beste Runde { $worse }.
pairing-not-computed = Was ein Verbot kosten würde, wurde nicht berechnet.

## Worin eine Runde schlechter ist

pairing-worse-sitting-out = { $more } mehr an Spielenden ohne Partie
pairing-worse-changed = { $more } mehr an Partien, die von der veröffentlichten Runde abweichen
pairing-worse-draw = { $more } mehr an Los
pairing-worse-rematches =
    { $more } { $more ->
        [one] Partie
       *[other] Partien
    } mehr als Wiederholung
pairing-worse-second-byes = { $more } mehr an zweiten Freilosen
pairing-worse-spares = { $more } mehr an Freilosen für Spielende, die nicht aussetzen wollten
pairing-worse-bye-points = { $more } mehr an Punkten der Person, die aussetzt
pairing-worse-scores = { $more } mehr an quadrierten Punktabständen
pairing-worse-clubs = { $more } mehr an Partien innerhalb eines Vereins
pairing-worse-factions = { $more } mehr an Partien innerhalb einer Fraktion
pairing-worse-floats = { $more } mehr an wiederholtem Losen aus der Punktgruppe
pairing-worse-role-bounds = { $more } mehr an Rollen außerhalb der Grenzen
pairing-worse-even-roles = { $more } mehr an ungleichen Rollen
