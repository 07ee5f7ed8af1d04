### Wie eine Saison wertet, in Sätzen.

scoring-win-draw-loss = Ein Sieg gibt { $win }, ein Unentschieden { $draw }, eine Niederlage { $loss }; bis zu { $margin } Unterschied ist es unentschieden.
scoring-band =
    Ein Vorsprung von { $from } bis { $to }{ $unit ->
        [percent] {" % der Punktgrenze"}
       *[points] {""}
    } gibt { $winner } zu { $loser }.
scoring-single-band =
    Ein Vorsprung von { $margin }{ $unit ->
        [percent] {" % der Punktgrenze"}
       *[points] {""}
    } gibt { $winner } zu { $loser }.
scoring-last-band =
    Ein Vorsprung von { $from } und mehr{ $unit ->
        [percent] {" % der Punktgrenze"}
       *[points] {""}
    } gibt { $winner } zu { $loser }.
scoring-concession = Aufgabe während der Partie: Die andere Seite erhält mindestens { $winner }, die aufgebende höchstens { $loser }.
scoring-no-show = Fehlen: { $present } für die Seite, die kam; die andere erhält abgemeldet { $with-notice } und unabgemeldet { $without-notice }.
scoring-double-loss = Kommt keine Seite, erhält jede { $points }.
scoring-bye = Ein Freilos zählt { $points }.
scoring-bye-win = Ein Freilos zählt wie ein Sieg, { $points }.
scoring-bye-average = Ein Freilos zählt das Mittel der eigenen gespielten Partien, abgerundet, mindestens { $floor }.
scoring-late-list = Eine Liste, die { $time } oder mehr nach Abgabeschluss kommt, kostet { $penalty }.
scoring-minutes = { $minutes } min
scoring-hours = { $hours } h
scoring-hours-minutes = { $hours } h { $minutes } min
scoring-attendance = Am Tisch zu sein gibt { $points } je Woche.
scoring-painting-cap = Boni für Bemalung einer Woche zählen bis { $share } eines Sieges, also { $points }.
scoring-bonus-cap = Boni für Bemalung und Anwesenheit einer Woche zählen bis { $share } eines Sieges, also { $points }.
scoring-best-weeks =
    { $weeks ->
        [one] Es zählt die beste Woche.
       *[other] Es zählen die besten { $weeks } Wochen.
    }
scoring-late-joiner-nothing = Wochen vor dem Einstieg geben nichts.
scoring-late-joiner = Jede Woche vor dem Einstieg gibt { $points }.
scoring-late-joiner-median = Jede Woche vor dem Einstieg gibt den Median jener Woche weniger { $less }, nie unter 0.
scoring-weight = Partien und Freilose der Woche { $week } zählen { $weight }-fach.
