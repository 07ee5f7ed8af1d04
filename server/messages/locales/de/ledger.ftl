### Wofür Punkte gutgeschrieben wurden, für die Zeilen des Punktebuchs.

credited-won = { $own } zu { $other } gewonnen
credited-drew = { $own } zu { $other } unentschieden
credited-lost = { $own } zu { $other } verloren
credited-conceded = aufgegeben
credited-opponent-conceded = der Gegner gab auf
credited-opponent-absent = der Gegner war nicht da
credited-absent-with-notice = abgemeldet gefehlt
credited-absent-without-notice = unabgemeldet gefehlt
credited-double-loss = beide Seiten verlieren
credited-bye = Freilos
credited-bye-by-average =
    { $games ->
        [one] Freilos, nach einer eigenen Partie
       *[other] Freilos, nach dem Mittel von { $games } eigenen Partien
    }
credited-attended = am Tisch gewesen
credited-painted-share = { $share } der Liste bemalt
credited-newly-finished = { $count } neu fertig
credited-above-bonus-cap = { $earned } an Boni in einer Woche, die { $limit } zulässt
credited-late = Liste { $hours } h { $minutes } min zu spät
credited-median-of-week = vor dem Einstieg: Median { $median } weniger { $less }
credited-missed-week = vor dem Einstieg
credited-ruled = { $words }
credited-not-among-best =
    { $best ->
        [one] nicht die beste Woche
       *[other] nicht unter den besten { $best } Wochen
    }
