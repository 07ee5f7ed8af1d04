### The frame of every page, what visitors meet first, pages that refuse, and words that many rooms share.

## The frame

skip = Skip to the contents
site-menu = Site
season-menu = Season
you-are-here = You are here
my-clubs = My clubs
sign-in = Sign in
sign-out = Sign out
register = Register
choose-language = Language
change = Change
footer = An escalation league, week by week.

## The front page

welcome = Leagues that grow week by week
welcome-text = An escalation league starts with small armies. Each week the points cap rises, everybody adds something, paints it and plays a game. Tallyhost keeps the lists, the pairings, the results and the standings.
welcome-onlooker = To look at a season, open the link that the club gave you. You need no account for that.
public-seasons = Public seasons
public-seasons-all = All public seasons as a table (CSV)

## When a page cannot be shown

problem-heading = This did not work
form-faults = Please look at this again
refused-not-found = There is nothing here, or nothing that you may see.
refused-csrf = This form was too old or came from elsewhere. Open the page again and send it once more.
refused-unavailable = The server is busy. Try again in a moment.
refused-internal = This is a fault of ours. It has been noted.
request-id = Number of this request
to-front-page = To the front page
go-back = Nothing was changed. If you go back one page, most browsers still have what you typed.
what-it-means = What this means

## Words that many rooms share

save = Save
next = Next
back = Back
add = Add
reason = Reason
day = Day
time = Time
week = Week
weeks = Weeks
week-n = Week { $week }
night = Night
nights = Nights
table = Table
tables = Tables
game = Game
result = Result
faction = Faction
player = Player
total = Total
state = State
points =
    { $points } { $points ->
        [one] point
       *[other] points
    }
other = Other
as-table = The same as a table
version = version { $version }
zone-note = Times are those of { $zone }.
copy = Copy
label = { $label }:
