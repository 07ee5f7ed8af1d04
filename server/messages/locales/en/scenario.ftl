### What counts in a scenario.

## The game

scenario-one-game =
    One game of { $turns } { $turns ->
        [one] turn
       *[other] turns
    }.
scenario-two-legs-summed =
    Two legs of { $turns } { $turns ->
        [one] turn
       *[other] turns
    } each with the roles swapped; their scores are added.
scenario-two-legs-apart =
    Two legs of { $turns } { $turns ->
        [one] turn
       *[other] turns
    } each with the roles swapped; each is won on its own.
scenario-same-task = Both sides have the same task.
scenario-attacker-paired = The pairing names the attacker.
scenario-attacker-lower = The player with the lower standing attacks.
scenario-attacker-higher = The player with the higher standing attacks.
scenario-fields = The attacker starts with { $attacker } of the list, the defender with { $defender }.
scenario-harder =
    The { $role ->
        [attacker] attacker
       *[defender] defender
    } has the harder task.
scenario-even-scores = Equal scores are a draw.
scenario-draw-margin =
    A difference of up to { $points } { $points ->
        [one] point
       *[other] points
    } is a draw.

## What is counted

scenario-item =
    { $label }{ $who ->
        [attacker] {" (attacker only)"}
        [defender] {" (defender only)"}
       *[either] {""}
    }: { $worth }{ $when ->
        [last-turn] , counted at the end of the last turn
       *[during-play] {""}
    }.
scenario-each =
    { $points } { $points ->
        [one] point
       *[other] points
    } each, up to { $most }{ $exclusive ->
        [true] {" for both sides together"}
       *[false] {""}
    }
scenario-each-capped =
    { $points } { $points ->
        [one] point
       *[other] points
    } each, up to { $most }{ $exclusive ->
        [true] {" for both sides together"}
       *[false] {""}
    }, worth at most { $cap } { $cap ->
        [one] point
       *[other] points
    }
scenario-rest =
    what the opponent's "{ $item }" leaves of { $points } { $points ->
        [one] point
       *[other] points
    }
scenario-steps =
    { $points } { $points ->
        [one] point
       *[other] points
    } for every full { $step } { $whole }, at most { $cap } { $cap ->
        [one] point
       *[other] points
    }
scenario-bands = { $bands } { $whole }
scenario-band =
    { $points } { $points ->
        [one] point
       *[other] points
    } from { $share }
scenario-of-own-army = of the points your army started with
scenario-of-opposing-army = of the points the opposing army started with
scenario-of-cap = of the points cap
scenario-joint-cap =
    { $items } together give at most { $points } { $points ->
        [one] point
       *[other] points
    } to a side.
