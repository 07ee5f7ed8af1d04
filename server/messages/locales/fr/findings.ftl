### Ce que la vérification dit d’une liste.

## D’après les règles de la saison

finding-over-cap =
    La liste a { $total } { $total ->
        [one] point
       *[other] points
    }, soit { $over } de plus que le plafond de { $cap }.
finding-minimum-spend =
    La liste a { $total } { $total ->
        [one] point
       *[other] points
    } ; il en manque { $short } pour atteindre le minimum de { $least }.
finding-largest-unit =
    { $unit } coûte { $points } { $points ->
        [one] point
       *[other] points
    } ; une unité peut coûter { $most } au plus.
finding-option-budget =
    { $unit } a pour { $points } points d’options ; avec { $models } { $models ->
        [one] figurine
       *[other] figurines
    }, elles peuvent en coûter { $most } au plus.
finding-kind-count =
    La liste en a { $count } du type { $kind } ; cette semaine, c’est { $limit } { $bound ->
        [least] au moins
       *[most] au plus
    }.
finding-kind-share =
    La liste met { $points } { $points ->
        [one] point
       *[other] points
    } dans le type { $kind } ; cette semaine, c’est { $limit } { $bound ->
        [least] au moins
       *[most] au plus
    }.
finding-copies = { $unit } y figure { $count } fois ; cette semaine, { $most } fois au plus.
finding-banned-keyword = { $unit } a le mot-clé { $keyword }, qui n’est pas permis cette semaine.
finding-army-size =
    La liste a { $count } { $counted ->
        [units] { $count ->
            [one] unité
           *[other] unités
        }
       *[models] { $count ->
            [one] figurine
           *[other] figurines
        }
    } ; cette semaine, c’est { $limit } { $bound ->
        [least] au moins
       *[most] au plus
    }.
finding-faction-lock = La liste est de « { $fielded } » ; la faction annoncée pour la saison est « { $declared } ».
finding-new-points =
    { $points ->
        [one] { $points } point est nouveau depuis la semaine précédente ; le maximum est { $most }.
       *[other] { $points } points sont nouveaux depuis la semaine précédente ; le maximum est { $most }.
    }
finding-new-units =
    { $count ->
        [one] { $count } unité est nouvelle ou a grandi depuis la semaine précédente ; il en faut { $least } au moins.
       *[other] { $count } unités sont nouvelles ou ont grandi depuis la semaine précédente ; il en faut { $least } au moins.
    }
finding-painted-share = Points peints : { $painted } sur { $total } ; il en faut { $least } au moins ({ $share }).

## Par rapport à la liste de la semaine précédente

finding-carry-over = { $kept } des { $counted } reviennent ; il en faut { $least } au moins. Disparu en tout ou en partie : { $units }.
finding-swap = { $left } des { $counted } s’en vont ; le maximum est { $most }. Parti en tout ou en partie : { $units }.
finding-last-weeks-points = { $total } points de la semaine précédente
finding-last-weeks-points-reckoned = { $points } points auxquels sont ramenés les { $total } de la semaine précédente
finding-shrunk =
    { $unit } avait { $before } { $before ->
        [one] figurine
       *[other] figurines
    } la semaine précédente et en a maintenant { $now }.
finding-shrunk-below =
    { $unit } avait { $before } { $before ->
        [one] figurine
       *[other] figurines
    } la semaine précédente, pourrait encore en avoir { $due } et en a maintenant { $now }.
finding-option-dropped = { $unit } avait { $option } la semaine précédente et doit garder cette option.

## D’après le catalogue

finding-unknown-faction = Le catalogue n’a pas de faction « { $faction } ».
finding-unknown-unit = La faction n’a pas d’unité « { $unit } ».
finding-unit-size =
    { $unit } ne peut pas avoir { $models } { $models ->
        [one] figurine
       *[other] figurines
    } ; effectifs proposés : { $sizes }.
finding-unknown-option = { $unit } n’a pas d’option « { $option } ».
finding-option-limit = { $unit } prend { $option } { $taken } fois ; c’est { $limit } fois au plus.
finding-option-group = { $unit } ne peut prendre qu’une de ces options : { $options }.
finding-joins-nobody = { $unit } ne rejoint aucune unité, donc { $host } non plus.
finding-joins-others = { $unit } ne rejoint que des unités avec le mot-clé { $keyword } ; { $host } ne l’a pas.
finding-most-per-army = { $unit } y figure { $count } fois ; une armée peut l’avoir { $most } fois.

## À propos d’un texte collé

finding-stated-points =
    La ligne { $line } indique { $stated } { $stated ->
        [one] point
       *[other] points
    } pour { $unit } ; le catalogue dit { $points }.
finding-stated-kind-points =
    La ligne { $line } indique { $stated } { $stated ->
        [one] point
       *[other] points
    } pour le type { $kind } ; le catalogue dit { $points }.
finding-stated-total =
    La ligne { $line } indique { $stated } { $stated ->
        [one] point
       *[other] points
    } en tout ; ce qui a été lu en a { $points }.
finding-stated-faction = La ligne { $line } nomme la faction « { $faction } ».
reading-name = { $name }
reading-unit =
    { $name }, { $models } { $models ->
        [one] figurine
       *[other] figurines
    }
reading-units =
    { $units }x { $name }, { $models } { $models ->
        [one] figurine
       *[other] figurines
    }
