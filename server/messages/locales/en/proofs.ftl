### What is proven of a round, and what a repair changes.

## Forced rematches

proof-barrier =
    At least { $rematches } { $rematches ->
        [one] game
       *[other] games
    } must be a rematch: nobody in { $groups } has anyone new to meet outside their own group, and a group of odd size always leaves somebody over.
proof-barrier-without =
    At least { $rematches } { $rematches ->
        [one] game
       *[other] games
    } must be a rematch: nobody in { $groups } has anyone new to meet outside their own group, and { $removed } can serve only one group each, and a group of odd size always leaves somebody over.
proof-group = ({ $players })

## What the hall costs

proof-hall-costs-nothing = More tables would not make the round any better.
proof-hall-costs = Because the tables are so few on each night, the round has { $worse }.

## Rounds to come

proof-last-round = This is the last round.
proof-playable =
    After this round { $rounds } { $rounds ->
        [one] round
       *[other] rounds
    } more can be played without a rematch; one way was found.
proof-never-runs-dry = Every round to come can be played without a rematch, however it goes.
proof-runs-dry =
    However this round is paired, only { $rounds } { $rounds ->
        [one] round
       *[other] rounds
    } more can be played without a rematch.
proof-one-round = Only this round was considered, not the ones to come.
proof-by-table = The round robin's table says who meets when; { $rounds } more of its rounds are to come.

## What a repair changes

proof-change = { $player } { $after }; before: { $before }.
proof-meets = meets { $opponent } ({ $night }, table { $table })
proof-sits-out = sits out
proof-not-in-round = is not in the round
