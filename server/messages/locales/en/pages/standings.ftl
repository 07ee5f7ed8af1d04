### The table, a player's page with the ledger behind the total, tie-breaks, and points by ruling.

## The table

standings = Standings
standings-after = Standings after week { $week }
standings-caption = Open a name to see every point and its reason.
rank = Rank
won-drawn-lost = Won–drawn–lost
up-by = up by { $places }
down-by = down by { $places }
as-of = After week
decided-by = by { $criterion }
rank-chart = Rank after each week

## A player's page

placed = Place { $rank } of { $players }
no-place = Not in the table yet.
games-played = Games
no-games = No game yet.

## The ledger

ledger = Ledger
ledger-text = The score is the sum of these lines and nothing else.
what-for = What for
why = Why
credited = Credited
line-game = Game
line-bye = Bye
line-absence = Away with notice
line-attendance = Attendance
line-painting = Painting
line-bonus-cap = Cap on bonuses
line-late-list = Late list
line-catch-up = Weeks before joining
line-ruling = Ruling
line-dropped = Week dropped
models-painted =
    { $painted } of { $models } { $models ->
        [one] model
       *[other] models
    } painted
points-counted =
    { $counted } of { $points } { $points ->
        [one] point counts
       *[other] points count
    }

## Tie-breaks

tie-breaks = How equal totals are told apart
games-and-opponents = Games and opponents
opponent-total = opponent has { $total }

## Points by ruling

points-by-ruling = Points by ruling
points-by-ruling-text = Give or take league points, with a reason. It becomes a line of its own in the player's ledger. Nothing is erased: a mistake is taken back by another line.
points-early = Points can be given from the first paired week on.
points-amount = Points
points-amount-hint = For example 2, or -1 to take one.
points-give = Enter into the ledger
points-given = Given and taken so far
points-none = Nothing yet.
points-take-back = Take back
