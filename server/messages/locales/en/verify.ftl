### What the check of a downloaded season found.

verify-format = the file is of format { $format }, not { $known }
verify-seats = the seats of the round robin were drawn by lot
verify-seed-hidden = the seed is revealed when the season ends; draws are taken as given
verify-seed-shape = the seed is not 32 bytes in hexadecimal
verify-seed = the seed is the one committed to at the start
verify-receipt = week { $week }: the list of { $player } is the one of its receipt
verify-table = the table: every row is the sum of its ledger lines

verify-in-round = week { $week }, round { $round }: { $finding }
verify-by-table = it keeps to the round robin's table
verify-draw = the draw follows from the locked inputs
verify-lists-locked = the inputs hold the receipt of every list
verify-repair = it repairs the version before, whose other inputs it leaves alone
verify-first-version = it is the first version of its round
verify-games = the games are those of the proposal
verify-unreadable = inputs, draw or proposal cannot be read
verify-proof = the proof shows that no pairing gives up less
verify-again = pairing the inputs again gives the same games
