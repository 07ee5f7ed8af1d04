### Feinwertungen mit Namen, und wie eine Saison bei gleicher Punktzahl entscheidet.

criterion-opponents-score = Punktsumme der Gegner
criterion-opponents-score-cut = Punktsumme der Gegner ohne die niedrigste
criterion-opponents-score-median = Punktsumme der Gegner ohne die niedrigste und die höchste
criterion-sonneborn-berger = Sonneborn–Berger
criterion-direct-encounter = direkte Begegnung
criterion-wins = gewonnene Partien
criterion-wins-in-harder-role = gewonnene Partien in der schwereren Rolle
criterion-score-margin = Vorsprung an Spielpunkten
criterion-adjusted-margin = Vorsprung, angepasst an die Stärke der Gegner
criterion-painting-points = Punkte für Bemalung
criterion-painted-share = bemalter Anteil
criterion-fewest-byes = wenigste Freilose
criterion-fewest-late-lists = wenigste verspätete Listen

counting-opponents-score = Was alle Gegner haben, zusammengezählt.
counting-opponents-score-cut = Was alle Gegner haben, zusammengezählt ohne den niedrigsten Wert.
counting-opponents-score-median = Was alle Gegner haben, zusammengezählt ohne den niedrigsten und den höchsten Wert.
counting-sonneborn-berger = Für jede Partie das eigene Ergebnis mal das, was der Gegner hat, zusammengezählt.
counting-direct-encounter = Die Partien unter denen, die noch gleich sind, wenn alle einander getroffen haben.
counting-wins = Am Tisch gewonnene Partien.
counting-wins-in-harder-role = Mit der schwereren Rolle gewonnene Partien.
counting-score-margin = Eigene Wertung weniger die des Gegners, über die Partien zusammengezählt.
counting-adjusted-margin = Vorsprünge als Unterschiede zweier Stärken: was der eigene Vorsprung und die Stärken der Gegner zusammen besagen, mit zwei unentschiedenen Partien gegen einen mittleren Gegner dazu.
counting-painting-points = Ligapunkte für Bemalung, vor Grenzen. Die Zeilen stehen im Punktebuch oben.
counting-painted-share = Bemalte Punkte der letzten Liste, nach Modellen, geteilt durch ihre Punkte. Im Bemalungsbuch steht, was geprüft ist.
counting-fewest-byes = Freilose; weniger sind besser.
counting-fewest-late-lists = Listen, die nach ihrer Frist kamen; weniger sind besser.

tie-breaks-none = Bei gleicher Punktzahl wird der Platz geteilt.
tie-breaks-order = Bei gleicher Punktzahl entscheiden: { $order }. Wer danach noch gleich ist, teilt den Platz.
tie-breaks-basis =
    Punkte der Gegner sind: { $basis ->
        [standard-points] 1 für einen Sieg und ½ für ein Unentschieden
        [game-points] Ligapunkte aus Partien und Freilosen
       *[total] Gesamtpunkte der Tabelle
    }. Runden ohne Partie { $unplayed ->
        [left-out] bleiben außer Betracht
        [virtual-opponent] zählen als Partien gegen einen gedachten Gegner
       *[own-score] zählen als Partien gegen einen Gegner mit eigener Punktzahl
    }.
