### Refusals about clubs, their people and invitations.

last-owner = This is the club's only owner; make somebody else an owner first.
club-slug-shape = A short name has 2 to { $longest } lower-case letters, digits and single hyphens.
club-slug-taken = Another club has this short name.
already-member = You belong to this club already.
minor-record = The record of a minor stays within the club.
no-invited-owner = Nobody is invited as an owner.
invitation-faults = The invitation is not valid.
invitation-unknown = This code is unknown, used up or out of date. Ask for a new one.
