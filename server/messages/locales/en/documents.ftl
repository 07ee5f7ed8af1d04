### Faults of JSON documents beyond those of the values in them.

## Rules of a season

rounds-range = A week has 1 to { $most } rounds.
silence-hours = Silence confirms after 1 to { $most } hours.
week-beyond-season = The season ends with week { $last }; there is no week { $week }.
best-weeks-beyond-season = The best { $best } weeks cannot count in a season of { $weeks }.
nights-too-few = A week has { $nights } nights, too few for { $rounds } rounds: nobody has two games on one night.

## List rules

bound-missing = must say "least", "most" or both
names-missing = must name at least one
points-range = must be from { $least } to { $most }
share-beyond-all = must not be more than all of it
rule-weeks = must be different weeks of a season, at least one
share-of-nothing = the whole of a share must be at least 1

## Inputs of a round

pair-of-one = { $player } cannot meet themselves
no-week = there is no week { $week }
no-night = there is no night { $night }
not-an-integer = { $text } is not an integer of at most 128 bits

## Civil times and dates

civil-time-needed = Give local time of the season without zone or offset, such as 2026-03-03T19:00:00.
date-needed = Give a date that exists, such as 2026-03-03.
time-of-day-needed = Give a time of day of the season without zone or offset, such as 19:00:00.
