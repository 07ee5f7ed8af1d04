### Setting up a season in steps, and the next season from an earlier one.

## The steps

step-of = Schritt { $step } von { $steps }
setup-basics = Name und Katalog
setup-caps = Punktgrenzen
setup-rhythm = Tage und Abende
setup-rules = Regeln
setup-preview = Vorschau
setup-needs-catalogue = Eine Saison braucht einen Katalog mit mindestens einer Fassung.

## Name and catalogue

season-name = Name der Saison
visibility = Wer zusehen darf
visible-public = alle
visible-club = nur der Verein
zone = Zeitzone
zone-hint = IANA-Name, etwa Europe/Berlin. Alle Zeiten der Saison gelten darin.
most-players = Höchstens so viele Spielende (leer: keine Grenze)

## Points caps

first-day = Erster Tag von Woche 1
days-per-week = Tage von Woche zu Woche
caps-kind = Wie die Grenze wächst
caps-step = jede Woche um denselben Schritt
caps-list = nach einer Liste von Grenzen
caps-first = Erste Grenze
caps-more = Mehr pro Woche
caps-weeks = Wochen
caps-each = Grenzen, erste Woche zuerst
caps-each-hint = Zum Beispiel: 300, 400, 500, 600, 600, 750

## Days and nights

night-n = Abend { $number }
night-empty-hint = Ein Abend ohne Zahl der Tische entfällt.
grace-minutes = Kulanz nach der Frist, in Minuten

## Rules

pairing-method = Wer gegen wen
method-by-score = Gleiche Punktzahlen treffen sich
method-by-score-help = In jeder Runde treffen sich Spielende, die bisher gleich stehen. Für jede Zahl von Spielenden und Wochen.
method-round-robin = Alle gegen alle
method-round-robin-help = Ein Rundenturnier in der Folge der Berger-Tabellen. Es braucht eine Runde weniger, als Spielende dabei sind: 8 Spielende, 7 Runden. Bei ungerader Zahl sind es so viele Runden wie Spielende.
method-round-robin-twice = Alle zweimal gegen alle
method-round-robin-twice-help = Dasselbe, beim zweiten Mal mit getauschten Rollen, in doppelt so vielen Runden.
rounds-per-week = Runden je Woche
rounds-per-week-help = Sind es mehrere, hat jede ihren Anteil an den Abenden der Woche, in ihrer Folge.
value-win = Ligapunkte für einen Sieg
value-draw = Für ein Unentschieden
value-loss = Für eine Niederlage
value-bye = Für ein Freilos
value-painted = Für eine ganz bemalte Liste
limit-largest-unit = Größter Anteil einer Einheit an der Grenze in Prozent (leer: keine Grenze)
limit-carry-over = Anteil der Vorwochenliste, der wiederkommen muss, in Prozent (leer: keiner)
limit-best-weeks = Wie viele beste Wochen zählen (leer: alle)
faction-lock = Spielende behalten ihre Fraktion
confirm-hours = Stunden, nach denen Schweigen ein Ergebnis bestätigt
rules-as-data = Alle Regeln als Daten (für alle, die mehr wollen)
rules-as-data-hint = JSON in der Form der Programmschnittstelle. Ist es ausgefüllt, gilt es anstelle der Felder oben.

## The preview

week-calendar = Kalender
preview-text = Noch ist nichts gespeichert. So wäre jede Woche.
preview-create = Als Entwurf speichern
preview-after = Danach fügen Sie Szenarioblätter hinzu und starten die Saison, wann Sie wollen.
rules-read = Die Regeln, wie Spielende sie lesen

## The next season from this one

next-season = Nächste Saison aus dieser
next-season-text = Dieselben Regeln, Grenzen, Rhythmen und Abende, an neuen Tagen. Diese Saison bleibt, wie sie ist.
other-weekdays = Die Wochentage dürfen sich mit verschieben
with-scenarios = Die Szenarien kommen mit
carry = Wer mitkommt
carry-nobody = niemand: alle treten neu bei
carry-players = alle, die bis zum Ende spielen
carry-collections = dieselben mit ihren Einheiten; Bemaltes bleibt bemalt
next-season-draft = Daraus wird ein Entwurf, den nur die Leitung sieht. Noch beginnt nichts.
next-season-make = Entwurf anlegen
next-season-made =
    Der Entwurf ist angelegt. { $players } { $players ->
        [one] Person kam
       *[other] Personen kamen
    } mit.
left-out = Wer nicht mitkam
left-withdrew = ausgestiegen
left-club = nicht mehr im Verein
left-faction = die Fraktion fehlt im neuesten Katalog
