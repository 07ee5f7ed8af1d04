### Why there is no round, what is wrong with a task, and why a proof does not hold.

round-fault-task = the task has faults: { $faults }
round-fault-no-game = no two players may meet on a night with a free table
round-fault-too-hard = no proof within { $steps } steps of the search

## The task

round-fault-too-few = { $players } players cannot play
round-fault-too-many = { $players } players; at most { $most } are paired
round-fault-twice = player { $player } is listed twice
round-fault-score = player { $player } has a score out of range
round-fault-hall-closed = no table is free
round-fault-pin-absent = player { $player } is pinned but not playing
round-fault-pin-twice = player { $player } is pinned twice
round-fault-pin-excluded = the pinned pair { $pair } must not or cannot meet
round-fault-too-wide = the wishes together are too wide to be counted exactly

## The proof

round-fault-other-players = the certificate is about other players
round-fault-games = the games do not pair every player once and as allowed
round-fault-hall = the games do not fit the hall
round-fault-cost = the cost is not that of the games
round-fault-byes = fewer byes are not ruled out
round-fault-node = node { $node } of the proof does not hold
round-fault-plan = the plan for the rounds to come does not hold

## As it was kept or sent

round-fault-self = { $player } cannot meet themselves
round-fault-no-week = there is no week { $week }
round-fault-no-night = there is no night { $night }
round-fault-integer = { $text } is not an integer of at most 128 bits
