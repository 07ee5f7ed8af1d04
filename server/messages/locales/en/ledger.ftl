### Why points were credited, for the lines of the ledger.

credited-won = won { $own } to { $other }
credited-drew = drew { $own } to { $other }
credited-lost = lost { $own } to { $other }
credited-conceded = conceded
credited-opponent-conceded = the opponent conceded
credited-opponent-absent = the opponent was absent
credited-absent-with-notice = absent with notice
credited-absent-without-notice = absent without notice
credited-double-loss = both sides lose
credited-bye = bye
credited-bye-by-average =
    bye, by the average of { $games } { $games ->
        [one] own game
       *[other] own games
    }
credited-attended = came to the table
credited-painted-share = { $share } of the list painted
credited-newly-finished = { $count } newly finished
credited-above-bonus-cap = bonuses of { $earned } in a week that allows { $limit }
credited-late = list late by { $hours } h { $minutes } min
credited-median-of-week = before joining: median { $median } less { $less }
credited-missed-week = before joining
credited-ruled = { $words }
credited-not-among-best = not among the best { $best } weeks
