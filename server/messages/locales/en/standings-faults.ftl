### What a forecast or a supposition cannot answer.

outlook-no-row = the player has no row in this table
outlook-too-open = somebody has { $actual } open games; an exact answer needs at most { $limit }
outlook-no-such-game = the season has no such game
outlook-not-open = the game has a result; only open games can be supposed
