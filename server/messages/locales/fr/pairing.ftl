### Pourquoi deux joueurs se rencontrent, ou pourquoi l’un est exempt.

## Ce qui est expliqué

pairing-same-score = { $one } et { $other } ont le même total, { $score }.
pairing-float = { $down } avec { $down-score } descend à la rencontre de { $up } avec { $up-score }, qui monte.
pairing-bye = { $player } avec { $score } est exempt, parce que le compte ne tombe pas juste.

## Les souhaits auxquels cela renonce

pairing-met-before =
    { $times ->
        [one] Ils se sont déjà rencontrés.
       *[other] Ils se sont déjà rencontrés { $times } fois.
    }
pairing-second-bye = Ce n’est pas le premier exempt : { $byes } auparavant.
pairing-no-spare = Aucun de ceux qui proposaient d’être exempts ne pouvait l’être.
pairing-fewest-points = Le total le plus bas est inférieur de { $fewer }.
pairing-scores-differ = Leurs totaux diffèrent de { $difference }.
pairing-one-club = Ils sont du même club, tôt dans la saison.
pairing-one-faction = Ils jouent la même faction, tôt dans la saison.
pairing-floated-before = L’un d’eux a déjà flotté dans ce sens au cours des deux dernières rondes.
pairing-must-have-same-role = Les deux doivent avoir le même rôle, et un seul le peut.
pairing-should-have-same-role = Les deux devraient avoir le même rôle, et un seul le peut.

## Ce que coûterait l’interdire

pairing-pinned = L’organisateur l’a fixé ainsi.
pairing-settled-before = C’était décidé avant le tirage de la ronde.
pairing-indispensable = Sans cela, il n’y a pas de ronde.
pairing-shorter-season = Sans cela, la saison manquerait plus tôt de parties nouvelles.
pairing-another-as-good = Une autre ronde est tout aussi bonne ; le tirage a décidé.
pairing-without-it-as-good = Sans cela, la ronde est tout aussi bonne ; le tirage a décidé.
pairing-without-it-worse = Sans cela, la meilleure ronde aurait { $worse }.
pairing-not-computed = Ce que coûterait l’interdire n’a pas été calculé.

## En quoi une ronde est moins bonne

pairing-worse-sitting-out = { $more } de plus en joueurs sans partie
pairing-worse-changed = { $more } de plus en parties qui diffèrent de la ronde publiée
pairing-worse-draw = { $more } de plus en tirage
pairing-worse-rematches =
    { $more } { $more ->
        [one] partie
       *[other] parties
    } de plus déjà jouées
pairing-worse-second-byes = { $more } de plus en seconds exempts
pairing-worse-spares = { $more } de plus en exempts pour des joueurs qui ne le proposaient pas
pairing-worse-bye-points = { $more } de plus en points du joueur exempt
pairing-worse-scores = { $more } de plus en carrés des écarts de totaux
pairing-worse-clubs = { $more } de plus en parties au sein d’un club
pairing-worse-factions = { $more } de plus en parties au sein d’une faction
pairing-worse-floats = { $more } de plus en flottements répétés
pairing-worse-role-bounds = { $more } de plus en rôles hors limites
pairing-worse-even-roles = { $more } de plus en rôles inégaux
