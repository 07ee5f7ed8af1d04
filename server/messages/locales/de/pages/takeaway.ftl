### What leaves the site: downloads and checks of them, sheets to print, certificates, and the wall screen.

## Downloads

downloads = Herunterladen
whole-season = Die ganze Saison in einer Datei
whole-season-text = Alles, was jetzt bekannt sein darf: Wochen, geöffnete Listen mit Quittung, Runden mit Auslosung und Beweis, Ergebnisse, Tabelle. Was noch versiegelt oder nicht enthüllt ist, steht nicht darin.
whole-season-get = season.json herunterladen
archive = Zeile für Zeile für Tabellenblätter (ZIP)
archive-later = Wenn die Saison beendet ist, gibt es dasselbe hier Zeile für Zeile für Tabellenblätter, als ZIP.
check-yourself = Selbst nachprüfen
check-yourself-text = Das Programm prüft die Datei ohne Netz: Quittungen, Auslosungen und Beweise; jede Runde wird neu gepaart und jede Zeile der Tabelle aus den Zeilen des Punktebuchs addiert. Bemalte Anteile brauchen den Katalog, der nicht in der Datei steht; darum prüft es nicht, ob jede Zeile des Punktebuchs aus Regeln, Bemalmeldungen und Ergebnissen folgt, und auch nicht die Auszeichnungen.
check-before-end = Die Auslosungen lassen sich prüfen, sobald die Saison beendet und das Geheimnis gezeigt ist.
spreadsheets = Für Tabellenblätter und Programme
spreadsheets-text = Immer der aktuelle Stand, ohne Konto.
spreadsheets-closed = Diese Saison ist nur für den Verein, darum gibt es keine offenen Tabellenblätter.
ledgers = Punktebuch jeder Person

## On paper

print-week = Diese Woche drucken
print-slip = Öffnen Sie den Ergebniszettel mit dem Telefon
print-sheet = Wochenblatt
print-hint = Eine Seite A4. Drucken Sie mit dem Befehl Ihres Browsers.
table-cards = Tischkarten
cards-text = An den gestrichelten Linien schneiden und je eine Karte auf einen Tisch legen. Ihr Code öffnet den Ergebniszettel.

## The certificate

certificate = Urkunde
certificate-of = Hiermit wird bescheinigt, dass
certificate-took-part = teilgenommen hat an der Saison
certificate-with = mit { $faction }
certificate-place = Platz { $rank } von { $players }
certificate-points =
    { $points } { $points ->
        [one] Ligapunkt
       *[other] Ligapunkte
    }
certificate-record = { $won } gewonnen, { $drawn } unentschieden, { $lost } verloren
certificate-painted =
    { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    } an Modellen neu fertig bemalt
certificate-awarded = Ausgezeichnet: { $award }
certificate-signed = Für den Verein
certificate-ended = Wochen: { $weeks }. Beendet am { $day }.

## The wall screen

wall = Wandbildschirm
wall-link = Für den Wandbildschirm
wall-pause = Anhalten
wall-go-on = Weiter
wall-next = Nächste
wall-part = { $part } von { $parts }
