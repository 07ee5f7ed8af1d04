### Les critères de départage par leur nom, et comment une saison départage les totaux égaux.

criterion-opponents-score = somme des totaux des adversaires
criterion-opponents-score-cut = somme des totaux des adversaires sans le plus bas
criterion-opponents-score-median = somme des totaux des adversaires sans le plus bas ni le plus haut
criterion-sonneborn-berger = Sonneborn–Berger
criterion-direct-encounter = confrontation directe
criterion-wins = parties gagnées
criterion-wins-in-harder-role = parties gagnées dans le rôle le plus difficile
criterion-score-margin = écart de points de jeu
criterion-adjusted-margin = écart ajusté à la force des adversaires
criterion-painting-points = points de peinture
criterion-painted-share = part peinte
criterion-fewest-byes = le moins d’exempts
criterion-fewest-late-lists = moins de listes en retard

counting-opponents-score = Les totaux de tous les adversaires rencontrés, additionnés.
counting-opponents-score-cut = Les totaux de tous les adversaires rencontrés, additionnés sans le plus bas.
counting-opponents-score-median = Les totaux de tous les adversaires rencontrés, additionnés sans le plus bas ni le plus haut.
counting-sonneborn-berger = Pour chaque partie, le résultat du joueur multiplié par le total de l’adversaire, le tout additionné.
counting-direct-encounter = Les parties entre ceux qui sont encore à égalité, si tous se sont rencontrés.
counting-wins = Parties gagnées à la table.
counting-wins-in-harder-role = Parties gagnées dans le rôle le plus difficile.
counting-score-margin = Le score du joueur moins celui de l’adversaire, additionné sur les parties.
counting-adjusted-margin = Les écarts de score vus comme différences entre deux forces : ce que disent ensemble l’écart d’un joueur et les forces de ses adversaires, avec en plus deux matchs nuls contre un adversaire moyen.
counting-painting-points = Points de ligue pour la peinture, avant plafonnement. Les lignes figurent dans le carnet de points ci-dessus.
counting-painted-share = Points peints de la dernière liste, figurine par figurine, divisés par ses points. Le carnet de peinture dit ce qui est vérifié.
counting-fewest-byes = Exempts ; moins il y en a, mieux c’est.
counting-fewest-late-lists = Listes arrivées après leur date limite ; moins il y en a, mieux c’est.

tie-breaks-none = À total égal, la place est partagée.
tie-breaks-order = À total égal départagent : { $order }. Qui reste à égalité partage la place.
tie-breaks-basis =
    Les points des adversaires sont comptés ainsi : { $basis ->
        [standard-points] 1 pour une victoire et ½ pour un match nul
        [game-points] les points de ligue des parties et des exempts
       *[total] les totaux du classement
    }. Les rondes sans partie { $unplayed ->
        [left-out] sont laissées de côté
        [virtual-opponent] comptent comme des parties contre un adversaire fictif
       *[own-score] comptent comme des parties contre un adversaire au même total
    }.
