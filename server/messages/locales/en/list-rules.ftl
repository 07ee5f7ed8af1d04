### What a season demands of lists, read back.

## A rule, with its weeks and its weight

list-rule = { $rule }.
list-rule-remark = { $rule } (only remarked upon).
list-rule-in-weeks = { $rule } ({ $weeks }).
list-rule-in-weeks-remark = { $rule } ({ $weeks }; only remarked upon).

list-rule-every-week = every week
list-rule-no-week = no week
list-rule-one-week = week { $week }
list-rule-weeks = weeks { $weeks }
list-rule-run-of-weeks = { $first }-{ $last }

## What is demanded

list-rule-minimum-spend = A list spends at least { $amount }
list-rule-largest-unit = No single unit costs more than { $amount }
list-rule-option-budget = The options of a unit cost at most { $points } { $points ->
        [one] point
       *[other] points
    } for each of its models
list-rule-kind-count = Units of the kind { $kind }: { $bounds }
list-rule-kind-share = Points in the kind { $kind }: { $bounds } of the cap
list-rule-copies = The same unit: at most { $most } in one list
list-rule-copies-of = The same unit of the kind { $kinds }: at most { $most } in one list
list-rule-copies-except-of = The same unit (except of the kind { $kinds }): at most { $most } in one list
list-rule-banned-keywords = No unit with the keyword { $keywords }
list-rule-army-size =
    { $counted ->
        [units] Units
       *[models] Models
    } in the list: { $bounds }
list-rule-faction-lock = A player keeps the faction declared for the season
list-rule-carry-over =
    { $returning }{ $may-shrink ->
        [true] {""}
       *[false] ; units may grow, not shrink
    }{ $may-drop-options ->
        [true] {""}
       *[false] ; options may be added, not dropped
    }
list-rule-all-returns = All of last week's points return
list-rule-returning = At least { $share } of last week's points return
list-rule-swap-allowance = At most { $amount } leave the list
list-rule-new-points = At most { $amount } are new since last week
list-rule-new-units = At least { $least } of the units are new or have grown since last week
list-rule-painted-share = At least { $share } of the list's points are painted

## Limits

list-rule-points = { $points } points
list-rule-whole-cap = all of the cap
list-rule-share-of-cap = { $share } of the cap
list-rule-all-of-last-week = all of last week's points
list-rule-share-of-last-week = { $share } of last week's points
list-rule-per-points = 1 per { $points } points of the cap
list-rule-exactly = exactly { $limit }
list-rule-between = at least { $least } and at most { $most }
list-rule-at-least = at least { $least }
list-rule-at-most = at most { $most }
list-rule-any-number = any number
