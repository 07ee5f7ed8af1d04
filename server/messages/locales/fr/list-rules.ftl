### Ce qu’une saison exige des listes, en toutes phrases.

## Une règle, avec ses semaines et son poids

list-rule = { $rule }.
list-rule-remark = { $rule } (à titre indicatif).
list-rule-in-weeks = { $rule } ({ $weeks }).
list-rule-in-weeks-remark = { $rule } ({ $weeks } ; à titre indicatif).

list-rule-every-week = chaque semaine
list-rule-no-week = aucune semaine
list-rule-one-week = semaine { $week }
list-rule-weeks = semaines { $weeks }
list-rule-run-of-weeks = { $first } à { $last }

## Ce qui est exigé

list-rule-minimum-spend = Une liste compte au moins { $amount }
list-rule-largest-unit = Aucune unité ne coûte à elle seule plus de { $amount }
list-rule-option-budget = Les options d’une unité coûtent au plus { $points } { $points ->
        [one] point
       *[other] points
    } par figurine
list-rule-kind-count = Unités du type { $kind } : { $bounds }
list-rule-kind-share = Points du type { $kind } : { $bounds } du plafond
list-rule-copies = La même unité : au plus { $most } dans une liste
list-rule-copies-of = La même unité du type { $kinds } : au plus { $most } dans une liste
list-rule-copies-except-of = La même unité (sauf du type { $kinds }) : au plus { $most } dans une liste
list-rule-banned-keywords = Aucune unité avec le mot-clé { $keywords }
list-rule-army-size =
    { $counted ->
        [units] Unités
       *[models] Figurines
    } dans la liste : { $bounds }
list-rule-faction-lock = Chacun garde la faction annoncée pour la saison
list-rule-carry-over =
    { $returning }{ $may-shrink ->
        [true] {""}
       *[false]  ; les unités peuvent grandir, pas rétrécir
    }{ $may-drop-options ->
        [true] {""}
       *[false]  ; des options peuvent s’ajouter, pas disparaître
    }
list-rule-all-returns = Tous les points de la semaine précédente reviennent
list-rule-returning = Au moins { $share } des points de la semaine précédente reviennent
list-rule-swap-allowance = Au plus { $amount } quittent la liste
list-rule-new-points = Au plus { $amount } sont nouveaux depuis la semaine précédente
list-rule-new-units =
    { $least ->
        [one] Au moins { $least } unité est nouvelle ou a grandi
       *[other] Au moins { $least } unités sont nouvelles ou ont grandi
    } depuis la semaine précédente
list-rule-painted-share = Au moins { $share } des points de la liste sont peints

## Limites

list-rule-points =
    { $points } { $points ->
        [one] point
       *[other] points
    }
list-rule-whole-cap = 100 % du plafond
list-rule-share-of-cap = { $share } du plafond
list-rule-all-of-last-week = 100 % des points de la semaine précédente
list-rule-share-of-last-week = { $share } des points de la semaine précédente
list-rule-per-points = 1 par tranche de { $points } points du plafond
list-rule-exactly = exactement { $limit }
list-rule-between = au moins { $least } et au plus { $most }
list-rule-at-least = au moins { $least }
list-rule-at-most = au plus { $most }
list-rule-any-number = sans limite
