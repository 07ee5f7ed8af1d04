### Refusals about accounts, passwords and sessions.

too-many-attempts = Zu viele vergebliche Versuche. Warten Sie ein wenig.
wrong-credentials = E-Mail-Adresse und Passwort passen nicht zusammen.
guardian-needed = Ein Elternteil oder Vormund muss zustimmen, bevor sich Minderjährige registrieren.
not-an-email = Das ist keine E-Mail-Adresse.
password-too-short = Das Passwort hat { $length } Zeichen; nötig sind { $shortest }.
password-too-long = Das Passwort hat { $length } Zeichen; höchstens { $longest } sind erlaubt.
password-too-common = Das Passwort gehört zu denen, die zuerst ausprobiert werden.
token-reused = Dieses Token zum Erneuern wurde schon benutzt. Die Sitzung ist beendet; melden Sie sich neu an.
token-not-valid = Das Token gilt nicht (mehr). Melden Sie sich neu an.
