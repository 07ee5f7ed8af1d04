### What is wrong with the caps and the calendar of a season.

cap-fault-weeks = a season has 1 to { $most } weeks, not { $weeks }
cap-fault-out-of-range = the cap of week { $week } is { $cap }; it must be from 1 to { $most }
cap-fault-falls = the cap falls from { $before } to { $cap } in week { $week }

calendar-fault-days = a week has 1 to { $most } days, not { $days }
calendar-fault-nights = a week has 1 to { $most } nights, not { $nights }
calendar-fault-night-key = the night "{ $night }" needs a name of its own of 1 to { $longest } letters, digits or hyphens
calendar-fault-tables = the night "{ $night }" needs 1 to { $most } tables, not { $tables }
calendar-fault-order = { $later } must come after { $earlier }
calendar-fault-week = week { $week }: { $fault }
calendar-fault-clock = { $what } of week { $week } { $fault }
calendar-fault-too-far = the calendar runs past the last date that can be told

## What a week is made of

calendar-announce = announce
calendar-lists-due = lists_due
calendar-play-until = play_until
calendar-nights = nights
calendar-reveal = the reveal
