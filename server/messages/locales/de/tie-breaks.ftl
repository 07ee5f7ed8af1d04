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
