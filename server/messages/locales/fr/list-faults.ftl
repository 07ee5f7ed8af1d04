### Ce qui ne va pas dans une liste ou une règle de liste telle qu’envoyée.

list-fault-too-many =
    a { $entries } { $entries ->
        [one] entrée
       *[other] entrées
    } ; { $most } au plus sont permises
list-fault-twice = la clé « { $key } » sert à plus d’une entrée
list-fault-joins-nothing = rejoint « { $key } », qui n’est pas une autre entrée de cette liste

list-rule-fault-no-bound = doit donner « least », « most » ou les deux
list-rule-fault-nothing-named = doit en nommer au moins un
list-rule-fault-points = doit être compris entre { $least } et { $most }
list-rule-fault-more-than-all = ne doit pas dépasser le tout
list-rule-fault-weeks = doivent être des semaines différentes d’une saison, au moins une
