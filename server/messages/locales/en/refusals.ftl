password-too-short = The password has { $length } characters; it needs { $shortest }.
password-too-long = The password has { $length } characters; at most { $longest } are allowed.
too-few-players = A season starts with two players at least, not with { $there }.
lists-not-open-yet = The lists are opened when the deadline and its grace are over.
