### Statistics, awards, and the pictures of an army.

## Statistics

statistics = Statistics
statistics-after = Counted after week { $week }
statistics-text = A share of games won is given with its 95 % interval (Wilson): the range in which the true share lies 19 times out of 20. Fewer than { $games } games tell you little.
statistics-none = Nothing has been played yet.
by-faction = By faction
by-faction-text = Games between two armies of one faction are left out.
by-role = By role
by-role-text = The role of the first leg, in scenarios that have roles.
by-scenario = By scenario
by-scenario-text = As the side named first saw it: the attacker where there are roles.
game-role = Role
attacker = Attacker
defender = Defender
games = Games
win-share = Games won
interval = { $low } to { $high } %
percent = { $share } %
too-few = too few games
mean-margin = Mean margin
share-drawn = Drawn from 0 to 100 %
share-key = The dot is the share of games won, the bar its interval, the upright line one half.

## Awards

awards = Awards
awards-so-far = As it stands now; they are given when the season is over.
awards-none = Nothing to award yet.
prize-painted = Most painted
prize-painted-value = points newly finished: { $points }
prize-games = Most games
prize-games-value = games played: { $games }
prize-schedule = Toughest opponents
prize-schedule-value = opponents' mean total: { $points }
prize-climb = Biggest climb
prize-climb-value = places gained: { $places }

## The army, week by week

army-growth = The army, week by week
army-growth-text = Points of each opened list by unit kind, below the points cap of its week.
army-hidden = A list is shown here once all lists of its week are opened.
burn-up = Painting against the cap
burn-up-text = Points newly finished, added up, below the points cap of each week.
cap-line = points cap
list-points = List
newly-finished = Newly finished
finished-so-far = Finished so far
no-list = no list

## Attendance

attendance = Attendance
attendance-text = Who came to play, week by week, for the club’s report on its hall. Everybody counts once a week; nobody is named.
attendance-none = No week has been paired yet.
attendance-players = Players
attendance-came = Came
attendance-away = Said they could not
attendance-no-shows = Did not come
attendance-byes = Bye
attendance-open = Result open
