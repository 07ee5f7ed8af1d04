### What painting is worth in a season, read back.

painting-rule-painted =
    A model is painted when it is { $stage ->
        [bare] bare
        [primed] primed
        [coloured] coloured
       *[finished] finished
    }; { $counting ->
        [by-model] a unit counts pro rata by its painted models
       *[whole-units] a unit counts when all its models are painted
    }. A painted unit stays painted.
painting-rule-threshold = A list that is at least { $share } painted gives { $points } a week.
painting-rule-tiers = The painted share of the list gives a week: { $tiers }.
painting-rule-tier = { $points } from { $share }
painting-rule-proportional = The painted share of the list gives that share of { $points } a week, rounded down.
painting-rule-units = Each unit finished this week gives { $each }, at most { $most } a week.
painting-rule-points = Every { $step } army points finished this week give { $each }, at most { $most } a week.
painting-rule-checked = Claims are checked by { $checkers }.
painting-rule-opponent = the opponent at the table
painting-rule-referee = a referee
painting-rule-photo = a referee by photo
