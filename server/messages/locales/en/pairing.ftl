### Why two players meet or one sits out.

## What is explained

pairing-same-score = { $one } and { $other } have the same score, { $score }.
pairing-float = { $down } with { $down-score } floats down to meet { $up } with { $up-score }, who floats up.
pairing-bye = { $player } with { $score } sits out because the numbers do not come out even.

## Wishes that it gives up

pairing-met-before =
    { $times ->
        [one] They have met before.
       *[other] They have met { $times } times before.
    }
pairing-second-bye = It is not the first bye: { $byes } before.
pairing-no-spare = Nobody who offered to sit out could.
pairing-fewest-points = The fewest points are { $fewer } fewer.
pairing-scores-differ = Their scores differ by { $difference }.
pairing-one-club = They are of one club, early in the season.
pairing-one-faction = They field one faction, early in the season.
pairing-floated-before = One of them floated the same way in the last two rounds.
pairing-must-have-same-role = Both must have the same role, and only one can.
pairing-should-have-same-role = Both should have the same role, and only one can.

## What it would cost to forbid it

pairing-pinned = The organiser fixed this.
pairing-settled-before = This was settled before the round was drawn.
pairing-indispensable = There is no round without it.
pairing-shorter-season = Without it the season would sooner run out of new games.
pairing-another-as-good = Another round is exactly as good; the draw decided.
pairing-without-it-as-good = Without it the round is as good; the draw decided.
pairing-without-it-worse = Without it the best round has { $worse }.
pairing-not-computed = What it would cost to forbid it was not computed.

## In what a round is worse

pairing-worse-sitting-out = { $more } more in players without a game
pairing-worse-changed = { $more } more in games that differ from the published round
pairing-worse-draw = { $more } more in the draw
pairing-worse-rematches =
    { $more } { $more ->
        [one] game
       *[other] games
    } more that are rematches
pairing-worse-second-byes = { $more } more in second byes
pairing-worse-spares = { $more } more in byes to players who did not offer to sit out
pairing-worse-bye-points = { $more } more in points of the player who sits out
pairing-worse-scores = { $more } more in squared differences of scores
pairing-worse-clubs = { $more } more in games within a club
pairing-worse-factions = { $more } more in games within a faction
pairing-worse-floats = { $more } more in repeated floats
pairing-worse-role-bounds = { $more } more in roles out of bounds
pairing-worse-even-roles = { $more } more in roles that are not even
