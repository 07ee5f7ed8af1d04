### Refusals about accounts, passwords and sessions.

too-many-attempts = Zu viele vergebliche Versuche. Warten Sie ein wenig.
wrong-credentials = E-Mail-Adresse und Passwort passen nicht zusammen.
guardian-needed = Ein Elternteil oder Vormund muss zustimmen, bevor sich Minderjährige registrieren.
not-an-email = Das ist keine E-Mail-Adresse.
password-too-short = Das Passwort hat { $length } Zeichen; nötig sind { $shortest }.
password-too-long = Das Passwort hat { $length } Zeichen; höchstens { $longest } sind erlaubt.
password-too-common = Das Passwort gehört zu denen, die zuerst ausprobiert werden.
password-of-keys = Das Passwort folgt der Tastatur und ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander zu tun haben.
password-of-repeats = Das Passwort wiederholt sich und ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander zu tun haben.
password-of-sequences = Das Passwort zählt auf oder ab, wie abc oder 321, und ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander zu tun haben.
password-of-dates = Das Passwort besteht aus Daten oder Jahreszahlen und ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander zu tun haben.
password-of-names = Das Passwort besteht aus Namen und ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander zu tun haben.
password-guessable = Das Passwort ist schnell erraten. Nehmen Sie mehrere Wörter, die nichts miteinander und nichts mit Ihnen zu tun haben.
token-reused = Dieses Token zum Erneuern wurde schon benutzt. Die Sitzung ist beendet; melden Sie sich neu an.
token-not-valid = Das Token gilt nicht (mehr). Melden Sie sich neu an.
