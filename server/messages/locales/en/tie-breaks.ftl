### Tie-breaks by name, and how a season decides equal totals, read back.

criterion-opponents-score = opponents' score sum
criterion-opponents-score-cut = opponents' score sum without the lowest
criterion-opponents-score-median = opponents' score sum without the lowest and the highest
criterion-sonneborn-berger = Sonneborn–Berger
criterion-direct-encounter = direct encounter
criterion-wins = games won
criterion-wins-in-harder-role = games won with the harder role
criterion-score-margin = score margin
criterion-adjusted-margin = score margin adjusted for the opponents' strength
criterion-painting-points = painting points
criterion-painted-share = painted share
criterion-fewest-byes = fewest byes

tie-breaks-none = Equal totals share the rank.
tie-breaks-order = Equal totals are decided by { $order }; who is equal after that shares the rank.
tie-breaks-basis =
    Opponents' scores are counted as { $basis ->
        [standard-points] 1 for a win and ½ for a draw
        [game-points] league points of games and byes
       *[total] the totals of the table
    }; rounds without a game { $unplayed ->
        [left-out] are left out
        [virtual-opponent] count as games against a virtual opponent
       *[own-score] count as games against an opponent with one's own score
    }.
