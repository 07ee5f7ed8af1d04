### What every problem of a kind is called.

## Of the request itself

problem-malformed-json = The body is no JSON
problem-broken-body = The body broke off or its chunks are wrong
problem-invalid-parameter = A parameter is not valid
problem-sign-in-needed = Sign in first
problem-csrf = This form did not come from our own page
problem-not-found = There is nothing here for you
problem-method-not-allowed = Not in this way
problem-not-acceptable = Not in this format
problem-too-slow = The body did not come in time
problem-payload-too-large = The body is too large
problem-unsupported-media-type = The body is of another type than this takes
problem-unknown-field = A field is not known here
problem-too-many-requests = Too many requests; wait a little
problem-unavailable = Not now; try again soon
problem-internal = A fault of ours; it has been noted

## Accounts

problem-invalid-credentials = E-mail and password do not belong together
problem-invalid-token = The token is not valid
problem-token-reuse = A refresh token was used twice
problem-too-many-attempts = Too many failed attempts to sign in
problem-password-too-short = The password is too short
problem-password-compromised = The password is too easy to guess
problem-guardian-consent-required = A guardian must agree

## Who may do it

problem-forbidden = Your role does not allow this
problem-conflict-of-interest = Not in a matter of your own
problem-approval-required = Somebody else must approve it
problem-not-a-participant = Only the two players of the game
problem-self-confirmation = Nobody confirms their own report

## Fields

problem-validation = One or more fields are not valid
problem-invalid-name = The name is not valid
problem-invalid-text = The text is not valid
problem-unknown-zone = No such time zone
problem-invalid-local-time = This civil time is skipped or repeated by a clock change

## Clubs and catalogues

problem-slug-taken = The short name is used
problem-already-member = Already a member
problem-last-owner = A club keeps an owner
problem-catalogue-name-taken = The club has a catalogue of this name
problem-invalid-catalogue = The catalogue has faults

## Seasons and their players

problem-rules-unsatisfiable = No list can keep the rules
problem-season-state = The season is not at this point
problem-season-fixed = Fixed since the season started
problem-season-full = No place is left
problem-already-registered = Already in this season
problem-handle-taken = The handle is used in this season
problem-player-left = The player has withdrawn

## Lists

problem-deadline-passed = The deadline has passed
problem-deadline-immutable = This deadline can no longer move so
problem-list-locked = The lists of this week have been opened
problem-deadline-ahead = The deadline has not come yet
problem-points-cap-exceeded = The list costs more than the cap
problem-list-breaks-rules = The list breaks a rule
problem-version-mismatch = It was changed in between
problem-precondition-required = Say which version you change, by If-Match
problem-lists-sealed = The lists are still sealed

## Rounds

problem-round-already-paired = The round is published
problem-not-enough-players = Too few players
problem-no-round-possible = No round keeps the hard limits
problem-commitment-mismatch = The proposal does not follow from its inputs
problem-week-state = The week is not at this point
problem-reminded-already = Reminded a short while ago

## Results and the table

problem-round-not-open = The game has not begun
problem-result-final = The result stands
problem-slip-state-changed = The slip was answered in between
problem-impossible-score = Counts that cannot happen
problem-unknown-version = There is no such version
problem-version-ahead = The season has not come to this version
problem-too-open = Too much is open for an exact answer
problem-idempotency-key-required = An Idempotency-Key is needed
problem-idempotency-key-reused = The Idempotency-Key was used for another request

## Painting

problem-photo-already-used = The photo was used before
problem-too-many-photos = No more photos in this season
problem-image-too-large = The picture is too large
problem-invalid-image = The picture cannot be read
problem-claim-state-changed = The claim was decided in between
