### Wie weit eine Saison von dem entfernt ist, was der Zufall verteilt hätte.

fairness-compared = Die Saison wurde mit { $seasons } verglichen, in denen Gegner, Rollen, Abende, Tische und Freilose zufällig an die verteilt wurden, die da waren.
fairness-tested = { $tests } Werte wurden zugleich geprüft; einer gilt nur dann als ungewöhnlich, wenn der Zufall ihn in höchstens 5 % solcher Prüfungen, geteilt durch diese Zahl, erklärt (Bonferroni).
fairness-unusual =
    { $unusual ->
        [0] Nichts liegt
        [one] Ein Wert liegt
       *[other] { $unusual } Werte liegen
    } weiter vom Mittel entfernt, als der Zufall erklärt.
fairness-value =
    { $value }; der Zufall gibt im Mittel { $mean } und liegt in { $as-far } von { $seasons } Saisons ebenso weit davon entfernt: { $unusual ->
        [true] ungewöhnlicher, als der Zufall erklärt
       *[false] im Rahmen des Zufalls
    }.
fairness-opponents = Die Gegner von { $player } haben zusammen { $points } Punkte
fairness-roles = { $player } griff { $more }-mal öfter an, als zu verteidigen war
fairness-tables = { $player } hatte { $games } Partien an einem schon bespielten Tisch
fairness-byes = { $player } setzte { $byes }-mal aus
fairness-nights = { $player } hatte { $games } Partien an ein und demselben Abend
