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
