### Comment une saison compte les points, en toutes phrases.

scoring-win-draw-loss = Une victoire donne { $win }, un match nul { $draw }, une défaite { $loss } ; un écart jusqu’à { $margin } est un match nul.
scoring-band =
    Un écart de { $from } à { $to }{ $unit ->
        [percent] {" % du plafond"}
       *[points] {""}
    } donne { $winner } à { $loser }.
scoring-single-band =
    Un écart de { $margin }{ $unit ->
        [percent] {" % du plafond"}
       *[points] {""}
    } donne { $winner } à { $loser }.
scoring-last-band =
    Un écart de { $from }{ $unit ->
        [percent] {" % du plafond"}
       *[points] {""}
    } ou plus donne { $winner } à { $loser }.
scoring-concession = Abandon en cours de partie : l’autre camp reçoit { $winner } au moins, celui qui abandonne { $loser } au plus.
scoring-no-show = Absence : { $present } pour le camp qui est venu ; l’autre reçoit { $with-notice } s’il a prévenu et { $without-notice } sinon.
scoring-double-loss = Si aucun camp ne vient, chacun reçoit { $points }.
scoring-bye = Un exempt vaut { $points }.
scoring-bye-win = Un exempt vaut une victoire, soit { $points }.
scoring-bye-average = Un exempt vaut la moyenne des parties que le joueur a lui-même jouées, arrondie vers le bas, { $floor } au moins.
scoring-late-list = Une liste rendue { $time } ou plus après la date limite coûte { $penalty }.
scoring-minutes = { $minutes } min
scoring-hours = { $hours } h
scoring-hours-minutes = { $hours } h { $minutes } min
scoring-attendance = Venir à la table donne { $points } par semaine.
scoring-painting-cap = Les bonus de peinture d’une semaine comptent jusqu’à { $share } d’une victoire, soit { $points }.
scoring-bonus-cap = Les bonus de peinture et de présence d’une semaine comptent jusqu’à { $share } d’une victoire, soit { $points }.
scoring-best-weeks =
    { $weeks ->
        [one] La meilleure semaine de chaque joueur compte.
       *[other] Les { $weeks } meilleures semaines de chaque joueur comptent.
    }
scoring-late-joiner-nothing = Les semaines avant l’inscription ne donnent rien.
scoring-late-joiner = Chaque semaine avant l’inscription donne { $points }.
scoring-late-joiner-median = Chaque semaine avant l’inscription donne la médiane de cette semaine moins { $less }, jamais moins de 0.
scoring-weight = Les parties et les exempts de la semaine { $week } comptent { $weight } fois.
