### What gives scoring two readings, or none.

scoring-fault-amount = { $part }: points lie between 0 and { $most }, not { $actual }
scoring-fault-win-draw-loss = a win must be worth more than a loss, and a draw neither more nor less than both
scoring-fault-no-bands = the margin table is empty
scoring-fault-not-from-zero = the margin table must start at 0, not at { $from }
scoring-fault-last-band-ends = the last band must be open, this one ends at { $to }
scoring-fault-band-end = the band from { $from } must end, and not before it starts
scoring-fault-gap = no band holds the margins { $from } to { $to }
scoring-fault-overlap = two bands hold the margin { $margin }
scoring-fault-not-monotone = from margin { $margin } on, the winner gets less or the loser more than before
scoring-fault-loser-ahead = from margin { $margin } on, the loser gets more than the winner
scoring-fault-uneven-draw = at margin 0 both sides must get the same
scoring-fault-sum = the band from { $from } shares out { $actual }, not { $limit }
scoring-fault-more-than-win = { $part }: at most a win's { $limit }, not { $actual }
scoring-fault-fault-pays = { $part }: the side at fault must not get more
scoring-fault-late-steps = a later list must cost more: the step from { $minutes } minutes does not
scoring-fault-cap = a bonus cap is more than 0 % of a win, not { $share }
scoring-fault-best-weeks = at least one week must count
scoring-fault-weight = the factor of week { $week } lies between 1 and { $most }, not { $actual }
scoring-fault-no-week = is no week of a season

## Parts of scoring

scoring-part-win = win
scoring-part-draw = draw
scoring-part-loss = loss
scoring-part-band = band
scoring-part-concession = concession
scoring-part-no-show = no-show
scoring-part-double-loss = double loss
scoring-part-attendance = attendance
scoring-part-late-list = late list
scoring-part-bye = bye
scoring-part-late-joiner = late joiner
