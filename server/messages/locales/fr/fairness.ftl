### À quelle distance une saison se trouve de ce que le hasard aurait distribué.

fairness-compared = La saison a été comparée à { $seasons } autres, où adversaires, rôles, soirées, tables et exempts étaient distribués au hasard entre les joueurs présents.
fairness-tested = { $tests } valeurs ont été testées à la fois ; l’une ne passe pour inhabituelle que si le hasard l’explique dans au plus 5 % de tels contrôles, divisés par ce nombre (Bonferroni).
fairness-unusual =
    { $unusual ->
        [0] Rien n’est
        [one] Une valeur est
       *[other] { $unusual } valeurs sont
    } plus loin de la moyenne que le hasard ne l’explique.
fairness-value =
    { $value } ; le hasard donne { $mean } en moyenne et s’en écarte autant dans { $as-far } saisons sur { $seasons } : { $unusual ->
        [true] plus inhabituel que le hasard ne l’explique
       *[false] dans les limites du hasard
    }.
fairness-opponents = Les adversaires de { $player } ont ensemble { $points } points
fairness-roles = { $player } a attaqué { $more } fois de plus que défendu
fairness-tables = { $player } a joué { $games } parties à une table déjà connue
fairness-byes = { $player } a été exempt { $byes } fois
fairness-nights = { $player } a joué { $games } parties un seul et même soir
