### Les règles d’une saison dans leur ensemble.

policy-silence = Un résultat déclaré auquel personne ne répond est acquis après { $hours } h.

## Règles qui ne conviennent pas

policy-silence-hours = Le silence confirme après 1 à { $most } heures.
policy-rounds-a-week = Une semaine a de 1 à { $most } rondes.
policy-no-such-week = La saison se termine avec la semaine { $last } ; il n’y a pas de semaine { $week }.
policy-too-many-best-weeks = Les { $best } meilleures semaines ne peuvent pas compter : la saison en a { $weeks }.
policy-too-few-nights = Une semaine a { $nights } soirées, trop peu pour { $rounds } rondes : personne ne joue deux parties le même soir.
policy-round-robin-players = Un toutes rondes a { $most } joueurs au plus.
policy-round-robin-rounds = Il faut { $needed } rondes à { $players } joueurs pour que tous se rencontrent ; la saison en a { $rounds }.
policy-wish-twice = le souhait { $wish } figure deux fois dans l’ordre
policy-tie-break-twice = { $criterion } est nommé deux fois
