### Was eine Saison von Listen verlangt, in Sätzen.

## Eine Regel mit ihren Wochen und ihrem Gewicht

list-rule = { $rule }.
list-rule-remark = { $rule } (nur als Hinweis).
list-rule-in-weeks = { $rule } ({ $weeks }).
list-rule-in-weeks-remark = { $rule } ({ $weeks }; nur als Hinweis).

list-rule-every-week = in jeder Woche
list-rule-no-week = in keiner Woche
list-rule-one-week = in Woche { $week }
list-rule-weeks = in den Wochen { $weeks }
list-rule-run-of-weeks = { $first }–{ $last }

## Was verlangt wird

list-rule-minimum-spend = Eine Liste hat mindestens { $amount }
list-rule-largest-unit = Keine einzelne Einheit kostet mehr als { $amount }
list-rule-option-budget = Die Optionen einer Einheit kosten höchstens { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    } je Modell
list-rule-kind-count = Einheiten der Art { $kind }: { $bounds }
list-rule-kind-share = Punkte der Art { $kind }: { $bounds } der Punktgrenze
list-rule-copies = Dieselbe Einheit: höchstens { $most } in einer Liste
list-rule-copies-of = Dieselbe Einheit der Art { $kinds }: höchstens { $most } in einer Liste
list-rule-copies-except-of = Dieselbe Einheit (außer der Art { $kinds }): höchstens { $most } in einer Liste
list-rule-banned-keywords = Keine Einheit mit dem Stichwort { $keywords }
list-rule-army-size =
    { $counted ->
        [units] Einheiten
       *[models] Modelle
    } in der Liste: { $bounds }
list-rule-faction-lock = Wer spielt, bleibt bei der Fraktion, die für die Saison genannt ist
list-rule-carry-over =
    { $returning }{ $may-shrink ->
        [true] {""}
       *[false] ; Einheiten dürfen wachsen, nicht schrumpfen
    }{ $may-drop-options ->
        [true] {""}
       *[false] ; Optionen dürfen dazukommen, nicht wegfallen
    }
list-rule-all-returns = Alle Punkte der Vorwoche kommen wieder
list-rule-returning = Mindestens { $share } der Punkte der Vorwoche kommen wieder
list-rule-swap-allowance = Höchstens { $amount } gehen aus der Liste
list-rule-new-points = Höchstens { $amount } sind neu seit der Vorwoche
list-rule-new-units = Mindestens { $least } der Einheiten sind seit der Vorwoche neu oder gewachsen
list-rule-painted-share = Mindestens { $share } der Punkte einer Liste sind bemalt

## Grenzen

list-rule-points =
    { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }
list-rule-whole-cap = 100 % der Punktgrenze
list-rule-share-of-cap = { $share } der Punktgrenze
list-rule-all-of-last-week = 100 % der Punkte der Vorwoche
list-rule-share-of-last-week = { $share } der Punkte der Vorwoche
list-rule-per-points = 1 je { $points } Punkte der Punktgrenze
list-rule-exactly = genau { $limit }
list-rule-between = mindestens { $least } und höchstens { $most }
list-rule-at-least = mindestens { $least }
list-rule-at-most = höchstens { $most }
list-rule-any-number = beliebig
