### Was in einem Szenario zählt.

## Die Partie

scenario-one-game =
    Eine Partie über { $turns } { $turns ->
        [one] Zug
       *[other] Züge
    }.
scenario-two-legs-summed =
    Zwei Durchgänge über je { $turns } { $turns ->
        [one] Zug
       *[other] Züge
    } mit getauschten Rollen; ihre Punkte werden addiert.
scenario-two-legs-apart =
    Zwei Durchgänge über je { $turns } { $turns ->
        [one] Zug
       *[other] Züge
    } mit getauschten Rollen; jeder wird für sich gewonnen.
scenario-same-task = Beide Seiten haben dieselbe Aufgabe.
scenario-attacker-paired = Die Paarung bestimmt den Angreifer.
scenario-attacker-lower = Wer in der Tabelle tiefer steht, greift an.
scenario-attacker-higher = Wer in der Tabelle höher steht, greift an.
scenario-fields = Der Angreifer beginnt mit { $attacker } der Liste, der Verteidiger mit { $defender }.
scenario-harder =
    Der { $role ->
        [attacker] Angreifer
       *[defender] Verteidiger
    } hat es schwerer.
scenario-even-scores = Gleich viele Punkte sind ein Unentschieden.
scenario-draw-margin =
    { $points ->
        [one] Ein Unterschied von { $points } Punkt ist noch ein Unentschieden.
       *[other] Ein Unterschied von bis zu { $points } Punkten ist ein Unentschieden.
    }

## Was gezählt wird

scenario-item =
    { $label }{ $who ->
        [attacker] {" (nur Angreifer)"}
        [defender] {" (nur Verteidiger)"}
       *[either] {""}
    }: { $worth }{ $when ->
        [last-turn] , gezählt am Ende des letzten Zuges
       *[during-play] {""}
    }.
scenario-each =
    je { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }, bis zu { $most }{ $exclusive ->
        [true] {" für beide Seiten zusammen"}
       *[false] {""}
    }
scenario-each-capped =
    je { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }, bis zu { $most }{ $exclusive ->
        [true] {" für beide Seiten zusammen"}
       *[false] {""}
    }, im Wert von höchstens { $cap } { $cap ->
        [one] Punkt
       *[other] Punkten
    }
scenario-rest =
    was „{ $item }“ der Gegenseite von { $points } { $points ->
        [one] Punkt
       *[other] Punkten
    } übrig lässt
scenario-steps =
    { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    } für je volle { $step } { $whole }, höchstens { $cap } { $cap ->
        [one] Punkt
       *[other] Punkte
    }
scenario-bands = { $bands } { $whole }
scenario-band =
    { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    } ab { $share }
scenario-of-own-army = der Punkte, mit denen die eigene Armee begann
scenario-of-opposing-army = der Punkte, mit denen die gegnerische Armee begann
scenario-of-cap = der Punktgrenze
scenario-joint-cap =
    { $items } geben einer Seite zusammen höchstens { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }.
