### What a check says about a list.

## By the season's rules

finding-over-cap = The list has { $total } points, { $over } over the cap of { $cap }.
finding-minimum-spend = The list has { $total } points, { $short } short of the least spend of { $least }.
finding-largest-unit = { $unit } costs { $points } points; a single unit may cost at most { $most }.
finding-option-budget =
    { $unit } has options for { $points } points; with { $models } { $models ->
        [one] model
       *[other] models
    } they may cost at most { $most }.
finding-kind-count =
    The list has { $count } of the kind { $kind }; { $bound ->
        [least] at least
       *[most] at most
    } { $limit } this week.
finding-kind-share =
    The list spends { $points } points on the kind { $kind }; { $bound ->
        [least] at least
       *[most] at most
    } { $limit } this week.
finding-copies = { $unit } is there { $count } times; at most { $most } this week.
finding-banned-keyword = { $unit } has the keyword { $keyword }, which is not allowed this week.
finding-army-size =
    The list has { $count } { $counted ->
        [units] units
       *[models] models
    }; { $bound ->
        [least] at least
       *[most] at most
    } { $limit } this week.
finding-faction-lock = The list is of "{ $fielded }"; declared for the season is "{ $declared }".
finding-new-points = { $points } points are new since last week; at most { $most } may be.
finding-new-units = { $count } units are new or have grown since last week; at least { $least } must.
finding-painted-share = { $painted } of { $total } points are painted; at least { $least } ({ $share }) must be.

## Against last week's list

finding-carry-over = { $kept } of { $counted } return; at least { $least } must. Missing in whole or part: { $units }.
finding-swap = { $left } of { $counted } leave; at most { $most } may. Leaving in whole or part: { $units }.
finding-last-weeks-points = last week's { $total } points
finding-last-weeks-points-reckoned = the { $points } points that last week's { $total } are reckoned at
finding-shrunk = { $unit } had { $before } models last week and has { $now } now.
finding-shrunk-below = { $unit } had { $before } models last week, could have { $due } still and has { $now } now.
finding-option-dropped = { $unit } had { $option } last week and must keep it.

## By the catalogue

finding-unknown-faction = The catalogue has no faction "{ $faction }".
finding-unknown-unit = The faction has no unit "{ $unit }".
finding-unit-size = { $unit } cannot have { $models } models; it comes with { $sizes }.
finding-unknown-option = { $unit } has no option "{ $option }".
finding-option-limit = { $unit } takes { $option } { $taken } times; at most { $limit } allowed.
finding-option-group = { $unit } may take only one of { $options }.
finding-joins-nobody = { $unit } joins no unit, so not { $host } either.
finding-joins-others = { $unit } joins units with the keyword { $keyword } only; { $host } has it not.
finding-most-per-army = { $unit } is there { $count } times; its army may have it { $most } times.

## About a pasted text

finding-stated-points = Line { $line } says { $stated } points for { $unit }; the catalogue says { $points }.
finding-stated-kind-points = Line { $line } says { $stated } points for the kind { $kind }; the catalogue says { $points }.
finding-stated-total = Line { $line } says { $stated } points in all; what was read has { $points }.
finding-stated-faction = Line { $line } names the faction "{ $faction }".
reading-name = { $name }
reading-unit =
    { $name }, { $models } { $models ->
        [one] model
       *[other] models
    }
reading-units =
    { $units }x { $name }, { $models } { $models ->
        [one] model
       *[other] models
    }
