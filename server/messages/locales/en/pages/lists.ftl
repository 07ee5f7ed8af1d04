### Lists: written, checked, sealed, opened, and read from pasted text.

## Lists of a week

lists = Lists
lists-not-open = Lists are opened all at once after the deadline. Until then nobody sees another list.
lists-none = No list was handed in.
stands-in = last week's list stands in
late-by =
    { $minutes } { $minutes ->
        [one] minute
       *[other] minutes
    } late
list-missing = missing
list-draft = draft
list-sealed-state = sealed
receipt = Receipt

## My list

my-list = My list
write-list = Write my list
change-list = Change my list
list-sealed = Your list is sealed
list-sealed-on = Sealed on
list-replace = You may replace it until the deadline.
list-from-last = Begun from your last list
list-catalogue-changed = The catalogue has changed since your last list
list-entry-gone = no longer offered as it was; it need not return
entries = Units in the list
no-entries = No unit yet.
models = Models
models-points =
    { $models } { $models ->
        [one] model
       *[other] models
    }, { $points } { $points ->
        [one] point
       *[other] points
    }
option-points = { $name } (+{ $points })
option-each = { $name } (+{ $points } a model)
joins = Joins
joins-nobody = nobody
add-unit = Add a unit
remove-entry = Remove { $name }
save-and-check = Save and check
seal = Seal and hand in
seal-text = Nobody sees your list before all lists are opened. You may replace it until the deadline.
not-handed-in = Not handed in. The check says what must be mended.
sealed-now = Your list is sealed and handed in.
receipt-text = Keep this. It proves later what you sealed: the SHA-256 digest of the text below is your receipt.
receipt-contents = What was sealed

## The check

findings = What the check says
check-fine = This list is legal for the week.
check-empty = Add a first unit, or paste a list.
breach = Must be mended
remark = Worth knowing
left = left
over = over the cap
adds-up = How this adds up
cuts = One of these would do:
cut-shrink =
    { $unit }: only { $models } { $models ->
        [one] model
       *[other] models
    }
cut-drop = { $unit }: without { $option }
cut-leave-out = leave out { $unit }

## A list as pasted text

paste = Paste a list
paste-text = Paste or type your list as plain text. You will see line by line what was understood before anything is saved.
paste-label = List as text
paste-example = For example: 2x Name, 6 models, option: 112
paste-read = Read it
paste-understood = What was understood
paste-line = Line
paste-yours = Your text
paste-means = Understood as
paste-take = Use this list
paste-take-text = Replaces your draft. A sealed list stays as it is.
paste-no-list = No list could be made of this text.
sure = understood
guessed = guessed
not-understood = not understood
could-be = { $meaning } (or: { $alternatives })
means-faction = faction { $name }
means-kind = heading { $name }
means-option = option { $name }
means-unit =
    { $name }, { $models } { $models ->
        [one] model
       *[other] models
    }
means-units =
    { $units } units of { $name }, { $models } { $models ->
        [one] model
       *[other] models
    } each
means-foreign-unit = { $name }, a unit of another faction: { $faction }
means-times =
    { $times } { $times ->
        [one] time
       *[other] times
    }
means-models =
    { $models } { $models ->
        [one] model
       *[other] models
    }
means-points =
    { $points } { $points ->
        [one] point is
       *[other] points are
    } stated
means-joins = joins { $name }
means-label = introduces the line
means-nothing = “{ $text }”: nothing that the catalogue knows
