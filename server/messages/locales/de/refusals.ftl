password-too-short = Das Passwort hat { $length } Zeichen; nötig sind { $shortest }.
password-too-long = Das Passwort hat { $length } Zeichen; höchstens { $longest } sind erlaubt.
too-few-players = Eine Saison beginnt mit mindestens zwei Spielenden, nicht mit { $there }.
lists-not-open-yet = Die Listen werden geöffnet, wenn Frist und Kulanz vorbei sind.
