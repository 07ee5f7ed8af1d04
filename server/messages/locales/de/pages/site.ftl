skip = Zum Inhalt springen
site-menu = Seite
season-menu = Saison
you-are-here = Sie sind hier
my-clubs = Meine Vereine
sign-in = Anmelden
sign-out = Abmelden
register = Registrieren
choose-language = Sprache
change = Wechseln
footer = Eine Aufbauliga, Woche für Woche.
points =
    { $count ->
        [one] { $count } Punkt
       *[other] { $count } Punkte
    }
percent = { $share } %
