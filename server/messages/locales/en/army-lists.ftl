### Refusals about army lists: drafts, handing in, opening, leave.

list-faults = The list has faults.
list-text-too-long = A list as text has at most { $most } bytes.

## Drafts

draft-revision-needed = There is a draft; say which revision of it you change.
draft-stale = The draft was saved elsewhere in between; read it again.

## Handing in and opening

deadline-passed = The deadline has passed. Ask the organiser for leave to hand in late.
list-stands = The deadline has passed; the list that was handed in stands.
round-drawn = The round is drawn; no list comes in any more.
lists-not-open-yet = The lists are opened when the deadline and its grace are over.

## Leave to hand in late

own-late-leave = Somebody else must give you leave.
late-leave-given = This player has leave already.
