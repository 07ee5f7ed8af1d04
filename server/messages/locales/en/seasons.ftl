### Refusals about a season, its weeks and its players.

## Setting up

zone-unknown = This is no time zone of the IANA database; one is Europe/Berlin.
zone-unknown-in-form = This is no time zone of the IANA database.
grace-too-long = A grace lasts a day at the most.
season-places = A season has { $least } to { $most } places.
season-faults = The season has faults.
season-rules-faults = The rules of the season have faults.
catalogue-without-version = The club has no catalogue with this id that has a version.
first-day-far = A season that is set up today begins from { $first } to { $last }, not on { $day }.
season-stale = The season was changed in between; read it again.
rules-fixed = The rules are fixed since the season started.
visibility-fixed = Who joined a season of the club alone did not agree to be seen by everybody.
season-started-already = The season has started already.
season-not-started = The season has not started yet.
season-over = The season is over.
too-few-players = A season starts with two players at least, not with { $there }.
week-not-closed = Week { $week } is not closed yet.
archive-too-early = The archive is made once the season has ended.

## The next season

collections-too-early = Collections come along once the season has ended: paint of its last weeks would be lost.
other-weekday = The first week was announced on a { $weekday }; { $day } is a { $actual }. The nearest are { $before } and { $after }; any other day has to be allowed, for it moves all nights and deadlines.
new-days-faults = The new days have faults.

## A week

week-is-closed = The week is closed.
week-not-announced = The week is not announced yet.
week-announced = A week that is announced stays so, and its cap and catalogue are fixed.
deadline-immutable = A deadline moves only before it has passed, and only to later.
nights-fixed = The week is paired; its nights are fixed.
play-until-fixed = The week is paired; the end of play moves only to later, until the week is closed.
week-cap-range = A cap is from 1 to { $most } points.
week-faults = The week has faults.
caps-fall = Caps may rest but not fall from week to week.
catalogue-version-missing = The catalogue has no such version.
version-missing = There is no such version.

## The scenario

scenario-faults = The scenario sheet has faults.
scenario-known = The scenario is known to the players; it no longer changes.
scenario-title-known = The title is known to the players; it stays.

## Players

last-deadline-passed = The last deadline has passed.
season-full = All { $places } places are taken.
handle-taken = Somebody has this handle in this season, or one that looks like it.
already-registered = You play in this season already.
faction-unknown = The catalogue has no such faction.
faction-fixed = The faction is fixed since the season started.
nights-known = The nights are { $nights }, each at most once.
own-household = Somebody else must change who lives with you.
round-proposed = A round is proposed. Publish it first.
already-withdrawn = This player has withdrawn already.
does-not-play = { $player } does not play in week { $week }.
availability-too-late = The week is paired; tell your opponent and the organiser.

## Reminders

reminded-already = People were reminded of this within the last { $hours } hours.
nobody-owes =
    Nobody owes { $what ->
        [lists] a list
       *[results] a result
    } in week { $week } now.
