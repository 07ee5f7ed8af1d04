### Refusals about rounds: proposing, publishing, repairing.

round-published = This round is published. It is never drawn again.
lists-sealed = Rounds are paired once the lists are opened, so that the draw depends on them.
week-before-not-paired = The week before is not paired yet.
two-players-needed = Name two players of the season.
too-few-can-come = Fewer than two players can come.
orders-contradict = The orders contradict the facts.
no-round = There is no such round: { $why }.
own-round-orders = You play in this round. Somebody who does not must give orders about its games.
own-round-drawn = You play in this round, and it is drawn. Publish it and repair it, or let somebody who does not play in it propose it anew.
other-round-published = Another round of the week was published since. Propose this one anew.
proposal-mismatch = The proposal does not follow from its inputs and the committed seed.

## Repairs

own-repair = This repair changes your own game. An organiser or a referee whose game it leaves alone must publish it.
own-game-repair = Somebody else must repair the round where it is about your own game.
round-not-published = The round is not published yet; propose it anew.
too-few-left = Fewer than two players are left.
nothing-changes = Nothing changes for anybody.
game-reported = This player's game is reported; it stays.
not-in-the-season = Does not play this week.
hall-night = Name a night of the week and 0 to { $most } tables.
repair-stale = A game that this repair changes has been reported. Repair the round anew.

## Round robins

round-robin-seats = All { $seats } seats of the round robin are taken.
round-robin-exhausted = Nobody who can come has a game of the table left with somebody else who can.
