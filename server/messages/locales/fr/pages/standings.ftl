### The table, a player's page with the ledger behind the total, tie-breaks, and points by ruling.

## The table

standings = Classement
standings-after = Classement après la semaine { $week }
standings-caption = Ouvrez un nom pour voir chaque point et sa raison.
rank = Rang
won-drawn-lost = V–N–D
up-by =
    monte de { $places } { $places ->
        [one] place
       *[other] places
    }
down-by =
    descend de { $places } { $places ->
        [one] place
       *[other] places
    }
as-of = Après la semaine
decided-by = départage : { $criterion }
rank-chart = Rang après chaque semaine

## A player's page

placed = { $rank } sur { $players }
no-place = Pas encore au classement.
games-played = Parties
no-games = Pas encore de partie.

## The ledger

ledger = Carnet de points
ledger-text = Le score est la somme de ces lignes, et rien d’autre.
what-for = Objet
why = raison
credited = Points
line-game = Partie
line-bye = Exempt
line-absence = Absence annoncée
line-attendance = Présence
line-painting = Peinture
line-bonus-cap = Plafond des bonus
line-late-list = Liste en retard
line-catch-up = Semaines avant l’inscription
line-ruling = Décision
line-dropped = Semaine écartée
models-painted =
    { $painted } sur { $models } { $models ->
        [one] figurine peinte
       *[other] figurines peintes
    }
points-counted =
    { $counted } sur { $points } { $points ->
        [one] point compté
       *[other] points comptés
    }

## Tie-breaks

tie-breaks = Comment départager des totaux égaux
games-and-opponents = Parties et adversaires
opponent-total = l’adversaire a { $total }

## Points by ruling

points-by-ruling = Points par décision
points-by-ruling-text = Donnez ou retirez des points de ligue, avec un motif. Cela devient une ligne à part dans le carnet de points du joueur. Rien n’est effacé : une erreur se reprend par une autre ligne.
points-early = Des points peuvent être donnés à partir de la première semaine appariée.
points-amount = Points
points-amount-hint = Par exemple 2, ou -1 pour en retirer un.
points-give = Inscrire au carnet
points-given = Donnés et retirés jusqu’ici
points-none = Rien pour l’instant.
points-take-back = Reprendre
