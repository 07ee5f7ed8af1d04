### A season's own page, the way to its rooms, and how it ends.

## The rooms

overview = Overview
my-week = My week
board = Board
rules = Rules

## The season's page

season-draft-text = This season is being set up. Members of the club who have its address see it and may take a place.
start-season = Start the season
start-season-text = Fixes the rules and draws the secret seed. This cannot be undone.
players-n =
    { $count } { $count ->
        [one] player
       *[other] players
    }
no-players = Nobody has joined yet.
withdrew = withdrew
joined-in = since week { $week }
commitment = Fingerprint of the secret draw
commitment-text = Fixed before the first pairing. When the season ends the secret is shown, and anybody can draw every round again.

## Joining

join-season = Join this season
join-text = You play from the next week whose lists are not due yet.
handle = Name in this season
handle-hint = A nickname is best: everybody can read it.
usual-nights = Nights you can usually come

## Ending

ending = End the season
ended = How the season ended
ending-will = What ending does
ending-will-stop = No more lists, results or rulings are taken.
ending-will-prizes = The table and the prizes are final.
ending-will-seed = The secret of the draws is shown to everybody, so that every round can be drawn again.
ending-will-keep = Everything stays readable and can be downloaded.
ending-for-good = This cannot be undone.
ending-sure = Yes, end the season
ending-first = First close these weeks:
places-now = At the top now
whole-table = The whole table
prizes = Prizes
prizes-now = Prizes as they stand
prizes-text = Decided by the season's own numbers. Several may share one.
prizes-none = No prize has anything to count yet.

## The draws

draws = The draws
seed-is = The secret itself. Its SHA-256 is the fingerprint above:
seed-hidden = The secret is shown when the season ends. Until then nobody knows it, not even those who run the season.
