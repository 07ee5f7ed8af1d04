### How a season scores, read back.

scoring-win-draw-loss = A win gives { $win }, a draw { $draw }, a loss { $loss }; a difference of up to { $margin } is a draw.
scoring-band =
    A margin of { $from } to { $to }{ $unit ->
        [percent] {" % of the cap"}
       *[points] {""}
    } gives { $winner } to { $loser }.
scoring-single-band =
    A margin of { $margin }{ $unit ->
        [percent] {" % of the cap"}
       *[points] {""}
    } gives { $winner } to { $loser }.
scoring-last-band =
    A margin of { $from }{ $unit ->
        [percent] {" % of the cap"}
       *[points] {""}
    } and more gives { $winner } to { $loser }.
scoring-concession = Giving up during play: the other side gets at least { $winner }, the side that gave up at most { $loser }.
scoring-no-show = Absence: { $present } for the side that came; the other gets { $with-notice } with notice and { $without-notice } without.
scoring-double-loss = If neither side comes, each gets { $points }.
scoring-bye = A bye is worth { $points }.
scoring-bye-win = A bye is worth a win, { $points }.
scoring-bye-average = A bye is worth the average of the player's own played games, rounded down, at least { $floor }.
scoring-late-list = A list that comes { $time } or more after its deadline costs { $penalty }.
scoring-minutes = { $minutes } min
scoring-hours = { $hours } h
scoring-hours-minutes = { $hours } h { $minutes } min
scoring-attendance = Coming to the table gives { $points } a week.
scoring-painting-cap = Painted bonuses of a week count up to { $share } of a win, that is { $points }.
scoring-bonus-cap = Painted bonuses and attendance of a week count up to { $share } of a win, that is { $points }.
scoring-best-weeks = The best { $weeks } weeks of each player count.
scoring-late-joiner-nothing = Weeks before joining give nothing.
scoring-late-joiner = Each week before joining gives { $points }.
scoring-late-joiner-median = Each week before joining gives that week's median less { $less }, never below 0.
scoring-weight = Games and byes of week { $week } count { $weight } times.
