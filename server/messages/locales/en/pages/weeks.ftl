### A week: its moments and phases, its scenario with map and sheet, and what players and organisers have to do.

## What holds for a week

cap = Points cap
cap-of =
    Cap { $points } { $points ->
        [one] point
       *[other] points
    }
lists-due = Lists due
grace-until = counted as in time until
play-until = Play until
announced-at = Announcement
night-line =
    { $tables } { $tables ->
        [one] table
       *[other] tables
    }
phase-planned = planned
phase-announced = lists come in
phase-lists-due = lists are about to be opened
phase-lists-opened = lists opened
phase-paired = paired
phase-closed = closed

## The scenario

scenario = Scenario
scenario-hidden = Not revealed yet.
scenario-title-only = So far only the title is known.
scenario-preview = Only you who run the season see this: players do not know it yet.
scenario-scoring = What counts
map-of = Map of the table, { $width } by { $depth } cm
map-first = first side or attacker starts here
map-second = second side or defender starts here
map-exit = units leave here
map-ground = ground with rules of its own
map-marker = { $marker } (marker)
map-in-words = The map in words
map-place = { $left } cm from the left, { $top } cm from the top
map-size = { $width } by { $depth } cm

## The scenario sheet

sheet-edit = Scenario sheet
sheet-text = The sheet as JSON
sheet-hint = When it is filled in, it counts instead of the fields above.
sheet-title-when = Title is revealed
sheet-full-when = All of it is revealed
reveal-announcement = with the announcement
reveal-opened = when the lists are opened
sheet-title = Title
sheet-summary = In one sentence
sheet-briefing = Briefing
sheet-turns = Turns
sheet-draw = Still a draw up to a difference of
sheet-items = Players type these counts and the server makes the score. Rows without a name are left out.
sheet-item = Count { $number }
item-label = What is counted ({ $number })
item-points = Points for each
item-most = At most
item-when = When
item-during = during play
item-last = after the last turn
item-exclusive = Only one side can hold each
sheet-table = Table
table-width = Width in cm
table-depth = Depth in cm
table-strip = Starting strip in cm (0: none)
near-edge = Near edge
far-edge = Far edge
sheet-reveal = When players see it
sheet-as-data = The whole sheet as data (two legs, roles, zones, bands)

## My week

nothing-due = Nothing is due from you just now.
my-game = My game
excused = You are excused for this week.
availability = When can you come?
availability-text = Untick every night to be excused for this week.
availability-save = Save nights
withdraw = Withdraw from the season
withdraw-text = No drama: games that you played stand, and you are not paired any more.
withdraw-sure = Yes, withdraw
notice-list = Your list is still missing.
notice-result = Your game is still to be reported.
notice-from = Reminder of

## The board

board-text = Who has handed in. Nobody sees a list before all are opened, not even you.
list-state = List
grant-leave = Late list
grant-leave-text = Everybody can read the reason.
leave-for = For
grant = Allow a late list
open-lists = Open all lists now
open-lists-text = The server does this by itself soon after the deadline.
for-whole-season = The whole season

## Reminders

owe-lists = Without a list
owe-results = Game not reported
remind = Remind them
remind-text = Puts a notice on their own page until it is done, at most once in twelve hours. The trail says that people were reminded, not whom.
reminded-last = Last reminded
remind-chat = Ready for the club's chat
chat-lists = Week { $week } of { $season }: if you have not handed in your list, please do. Lists are due: { $due }
chat-results = Week { $week } of { $season }: please report how your game went: { $players }
