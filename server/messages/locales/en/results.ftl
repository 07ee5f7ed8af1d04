### Refusals about results, the table and its outlooks.

## Result slips

participants-only = Only the two players of the game may do this.
referee-strikes = Only a referee strikes a game from the record.
night-not-begun = The night of this game has not begun.
slip-changed = Another result was reported in between; look at it before you answer.
week-scenario-not-revealed = The scenario of the week is not revealed yet.
scenario-not-revealed = The scenario is not revealed yet.
scenario-missing = The week has no scenario sheet to score by.
impossible-counts = Some counts cannot happen.
report-faults = The report has faults.

## Points from the organiser

adjustment-amount = The amount is not valid.
adjustment-range = From 1 to { $most } points, given or taken.
own-points = Somebody else must rule on your own points.

## Closing a week

week-closed-already = The week is closed already.
week-not-paired = The week is not paired yet.
games-open = { $games } games of the week are open or disputed.

## The table and what may come

table-versions = There are versions { $oldest } to { $newest } of this table.
rounds-to-come = Rounds still to come: { $rounds }; ask for a forecast.
no-exact-answer = No exact answer: { $why }.
not-supposed = Not supposed: { $why }.
games-not-supposed = Some games cannot be supposed.
suppositions-faults = Some suppositions have faults.
