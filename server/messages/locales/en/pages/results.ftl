### Results: the slip of a game, rulings, and what waits for somebody.

## The slip

slip = Result slip
slip-awaited = no result yet
slip-reported = reported
slip-disputed = disputed
slip-confirmed = confirmed
slip-ruled = ruled
outcome-conceded = conceded
outcome-no-show = no-show
outcome-double-loss = both lose
outcome-void = struck from the record
by-silence = nobody objected in time
by-referee = referee
silence-confirms = Without an objection this stands from
is-it-right = Is this right?
confirm = Confirm the result
dispute = Dispute the result
waits-for-referee = A referee rules on this game. Until then nothing counts.
changed-meanwhile = Something has changed here in the meantime, as it says above. What you typed is still there.

## Reporting

report = Report the result
report-other = Report something else
report-send = Send the report
what-counted = What you counted
leg-n = Leg { $leg }
not-a-count = Not a whole number from 0 up.
how-ended = How it ended
ended-played = played to the end
ended-conceded = { $name } gave up
ended-absent = { $name } was not there
ended-absent-notice = { $name } was not there, with notice

## Ruling

ruling = Rule on this game
ruling-text = Your ruling stands at once, whatever the slip says. It is in the trail with its reason; an earlier result stays readable.
ruling-send = Rule

## What waits for somebody

results-of-week = Results
results-open = { $count } without a confirmed result
results = Results
disputed = Disputed
disputed-text = The two sides disagree. Nothing counts until somebody rules.
overdue = Overdue
overdue-text = The time to play is over and nobody has reported. Remind them on the board, or rule.
unreported = Not reported yet
unreported-text = Still to be played, by the time on the right at the latest.
unanswered = Reported, not answered
unanswered-text = One side has reported. Without an objection it stands from the time on the right.
nothing-waits = No game waits for anybody.
painting-to-check = Painting to check: { $count }
