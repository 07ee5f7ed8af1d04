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
points =
    { $count ->
        [one] { $count } point
       *[other] { $count } points
    }
percent = { $share } %
