### Setting up a season in steps, and the next season from an earlier one.

## The steps

step-of = Step { $step } of { $steps }
setup-basics = Name and catalogue
setup-caps = Points caps
setup-rhythm = Days and nights
setup-rules = Rules
setup-preview = Preview
setup-needs-catalogue = A season needs a catalogue with at least one version.

## Name and catalogue

season-name = Name of the season
visibility = Who may look
visible-public = everybody
visible-club = the club alone
zone = Time zone
zone-hint = IANA name, such as Europe/Berlin. All times of the season are kept in it.
most-players = Most players (empty: no limit)

## Points caps

first-day = First day of week 1
days-per-week = Days from week to week
caps-kind = How the cap grows
caps-step = by the same step every week
caps-list = by a list of caps
caps-first = First cap
caps-more = More each week
caps-weeks = Weeks
caps-each = Caps, first week first
caps-each-hint = For example: 300, 400, 500, 600, 600, 750

## Days and nights

night-n = Night { $number }
night-empty-hint = A night without a number of tables is left out.
grace-minutes = Grace after the deadline, in minutes

## Rules

pairing-method = Who meets whom
method-by-score = Equal scores meet
method-by-score-help = In each round players meet who stand alike so far. For any number of players and weeks.
method-round-robin = Everybody meets everybody
method-round-robin-help = A round robin, in the order of the Berger tables. It takes one round fewer than there are players: 8 players, 7 rounds. An odd number takes as many rounds as players.
method-round-robin-twice = Everybody meets everybody twice
method-round-robin-twice-help = The same with the roles swapped the second time, in twice as many rounds.
rounds-per-week = Rounds each week
rounds-per-week-help = With more than one, each has its share of the week's nights, in order.
value-win = League points for a win
value-draw = For a draw
value-loss = For a loss
value-bye = For a bye
value-painted = For a fully painted list
limit-largest-unit = Largest share of the cap for one unit, in percent (empty: no limit)
limit-carry-over = Share of last week's list that must return, in percent (empty: none)
limit-best-weeks = How many best weeks count (empty: all)
faction-lock = Players keep their faction
confirm-hours = Hours after which silence confirms a result
rules-as-data = All rules as data (for those who want more)
rules-as-data-hint = JSON in the shape of the program interface. When it is filled in, it counts instead of the fields above.

## The preview

week-calendar = Calendar
preview-text = Nothing is saved yet. This is every week as it would be.
preview-create = Save as a draft
preview-after = After that you add scenario sheets and start the season when you like.
rules-read = The rules as players read them

## The next season from this one

next-season = Next season from this one
next-season-text = The same rules, caps, rhythm and nights, on new days. This season stays as it is.
other-weekdays = The days of the week may shift with it
with-scenarios = The scenario sheets come along
carry = Who comes along
carry-nobody = nobody: everybody joins anew
carry-players = everybody who plays to the end
carry-collections = the same with their units; painted stays painted
next-season-draft = It becomes a draft that only those who run seasons see. Nothing starts yet.
next-season-make = Make the draft
next-season-made =
    The draft is made. { $players } { $players ->
        [one] person
       *[other] people
    } came along.
left-out = Who did not come along
left-withdrew = withdrew
left-club = left the club
left-faction = the faction is not in the newest catalogue
