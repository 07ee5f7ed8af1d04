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
criterion-fewest-late-lists = fewest late lists

counting-opponents-score = What everybody met has, added up.
counting-opponents-score-cut = What everybody met has, added up without the lowest.
counting-opponents-score-median = What everybody met has, added up without the lowest and the highest.
counting-sonneborn-berger = For each game, one's own result times what the opponent has, added up.
counting-direct-encounter = The games among those who are still equal, where all of them have met.
counting-wins = Games won on the table.
counting-wins-in-harder-role = Games won with the harder role.
counting-score-margin = Own score less the opponent's, added up over the games.
counting-adjusted-margin = Score margins as differences of two strengths: as much as a player's margin and the strengths of their opponents say together, with two drawn games against an average opponent added.
counting-painting-points = League points for painting, before caps. The lines are in the ledger above.
counting-painted-share = Painted points of the latest list, by models, divided by its points. The painting log says what is checked.
counting-fewest-byes = Byes; fewer are better.
counting-fewest-late-lists = Lists that came after their deadline; fewer are better.

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
