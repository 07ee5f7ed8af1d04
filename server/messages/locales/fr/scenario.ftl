### Ce qui compte dans un scénario.

## La partie

scenario-one-game =
    Une partie en { $turns } { $turns ->
        [one] tour
       *[other] tours
    }.
scenario-two-legs-summed =
    Deux manches de { $turns } { $turns ->
        [one] tour
       *[other] tours
    } chacune, rôles échangés ; leurs scores s’additionnent.
scenario-two-legs-apart =
    Deux manches de { $turns } { $turns ->
        [one] tour
       *[other] tours
    } chacune, rôles échangés ; chacune se gagne pour elle-même.
scenario-same-task = Les deux camps ont la même mission.
scenario-attacker-paired = L’appariement désigne l’attaquant.
scenario-attacker-lower = Le moins bien classé des deux attaque.
scenario-attacker-higher = Le mieux classé des deux attaque.
scenario-fields = L’attaquant commence avec { $attacker } de la liste, le défenseur avec { $defender }.
scenario-harder =
    { $role ->
        [attacker] L’attaquant
       *[defender] Le défenseur
    } a la tâche la plus difficile.
scenario-even-scores = À scores égaux, c’est un match nul.
scenario-draw-margin =
    Un écart jusqu’à { $points } { $points ->
        [one] point
       *[other] points
    } est un match nul.

## Ce que l’on compte

scenario-item =
    { $label }{ $who ->
        [attacker] {" (attaquant seulement)"}
        [defender] {" (défenseur seulement)"}
       *[either] {""}
    } : { $worth }{ $when ->
        [last-turn] , compté à la fin du dernier tour
       *[during-play] {""}
    }.
scenario-each =
    { $points } { $points ->
        [one] point
       *[other] points
    } chacun, jusqu’à { $most }{ $exclusive ->
        [true] {" pour les deux camps ensemble"}
       *[false] {""}
    }
scenario-each-capped =
    { $points } { $points ->
        [one] point
       *[other] points
    } chacun, jusqu’à { $most }{ $exclusive ->
        [true] {" pour les deux camps ensemble"}
       *[false] {""}
    }, pour { $cap } { $cap ->
        [one] point
       *[other] points
    } au plus
scenario-rest =
    ce que « { $item } » de l’adversaire laisse sur { $points } { $points ->
        [one] point
       *[other] points
    }
scenario-steps =
    { $points } { $points ->
        [one] point
       *[other] points
    } pour chaque tranche entière de { $step } { $whole }, { $cap } { $cap ->
        [one] point
       *[other] points
    } au plus
scenario-bands = { $bands } { $whole }
scenario-band =
    { $points } { $points ->
        [one] point
       *[other] points
    } à partir de { $share }
scenario-of-own-army = des points avec lesquels votre armée a commencé
scenario-of-opposing-army = des points avec lesquels l’armée adverse a commencé
scenario-of-cap = du plafond de points
scenario-joint-cap =
    { $items } donnent ensemble à un camp { $points } { $points ->
        [one] point
       *[other] points
    } au plus.
