### Refusals about accounts, passwords and sessions.

too-many-attempts = Too many failed attempts; wait a little.
wrong-credentials = E-mail and password do not belong together.
guardian-needed = A parent or guardian must agree before a minor registers.
not-an-email = This is no e-mail address.
password-too-short = The password has { $length } characters; it needs { $shortest }.
password-too-long = The password has { $length } characters; at most { $longest } are allowed.
password-too-common = The password is one of the first that are tried.
password-of-keys = The password runs along the keyboard and is soon guessed. Use several words that have nothing to do with each other.
password-of-repeats = The password repeats itself and is soon guessed. Use several words that have nothing to do with each other.
password-of-sequences = The password counts up or down, like abc or 321, and is soon guessed. Use several words that have nothing to do with each other.
password-of-dates = The password is built on dates or years and is soon guessed. Use several words that have nothing to do with each other.
password-of-names = The password is built on names and is soon guessed. Use several words that have nothing to do with each other.
password-guessable = The password is soon guessed. Use several words that have nothing to do with each other or with you.
token-reused = This refresh token was used before. The session is ended; sign in again.
token-not-valid = The token is not valid (any more). Sign in again.
