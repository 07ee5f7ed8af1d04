### Pourquoi des points ont été crédités, pour les lignes du carnet de points.

credited-won = victoire { $own } à { $other }
credited-drew = match nul { $own } à { $other }
credited-lost = défaite { $own } à { $other }
credited-conceded = abandon
credited-opponent-conceded = l’adversaire a abandonné
credited-opponent-absent = l’adversaire n’était pas là
credited-absent-with-notice = absence annoncée
credited-absent-without-notice = absence non annoncée
credited-double-loss = les deux camps perdent
credited-bye = exempt
credited-bye-by-average =
    { $games ->
        [one] exempt, d’après la seule partie jouée
       *[other] exempt, d’après la moyenne des { $games } parties jouées
    }
credited-attended = venu à la table
credited-painted-share = { $share } de la liste peints
credited-newly-finished =
    { $count ->
        [one] nouvellement achevée : { $count }
       *[other] nouvellement achevées : { $count }
    }
credited-above-bonus-cap = { $earned } de bonus dans une semaine qui en permet { $limit }
credited-late = liste en retard de { $hours } h { $minutes } min
credited-median-of-week = avant l’inscription : médiane { $median } moins { $less }
credited-missed-week = avant l’inscription
credited-ruled = { $words }
credited-not-among-best =
    { $best ->
        [one] pas la meilleure semaine
       *[other] pas parmi les { $best } meilleures semaines
    }
