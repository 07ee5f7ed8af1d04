### The frame of every page, what visitors meet first, pages that refuse, and words that many rooms share.

## The frame

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

## The front page

welcome = Ligen, die Woche für Woche wachsen
welcome-text = Eine Aufbauliga beginnt mit kleinen Armeen. Jede Woche steigt die Punktgrenze, alle fügen etwas hinzu, bemalen es und spielen eine Partie. Tallyhost führt Listen, Paarungen, Ergebnisse und Tabelle.
welcome-onlooker = Um eine Saison anzusehen, öffnen Sie den Link des Vereins. Dafür brauchen Sie kein Konto.
public-seasons = Öffentliche Saisons
public-seasons-all = Alle öffentlichen Saisons als Tabelle (CSV)

## When a page cannot be shown

problem-heading = Das hat nicht geklappt
form-faults = Bitte noch einmal ansehen
refused-not-found = Hier ist nichts, oder nichts, was Sie sehen dürfen.
refused-csrf = Dieses Formular war zu alt oder kam von anderswo. Öffnen Sie die Seite neu und senden Sie es noch einmal.
refused-unavailable = Der Server ist beschäftigt. Versuchen Sie es gleich noch einmal.
refused-internal = Das ist unser Fehler. Er wurde vermerkt.
request-id = Nummer dieser Anfrage
to-front-page = Zur Startseite
go-back = Es wurde nichts geändert. Wenn Sie eine Seite zurückgehen, haben die meisten Browser Ihre Eingaben noch.
what-it-means = Was das bedeutet

## Words that many rooms share

save = Speichern
next = Weiter
back = Zurück
add = Hinzufügen
reason = Grund
day = Tag
time = Uhrzeit
week = Woche
weeks = Wochen
week-n = Woche { $week }
night = Abend
nights = Abende
table = Tisch
tables = Tische
game = Partie
result = Ergebnis
faction = Fraktion
player = Name
total = Summe
state = Stand
points =
    { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }
other = Übriges
as-table = Dasselbe als Tabelle
version = Fassung { $version }
zone-note = Zeiten gelten für { $zone }.
copy = Kopieren
label = { $label }:
