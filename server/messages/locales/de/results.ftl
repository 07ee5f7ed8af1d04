### Refusals about results, the table and its outlooks.

## Result slips

participants-only = Das tun nur die beiden, die diese Partie spielen.
referee-strikes = Nur eine Schiedsperson streicht eine Partie.
night-not-begun = Der Abend dieser Partie hat noch nicht begonnen.
slip-changed = Inzwischen wurde ein anderes Ergebnis gemeldet. Sehen Sie es an, bevor Sie antworten.
week-scenario-not-revealed = Das Szenario der Woche ist noch nicht enthüllt.
scenario-not-revealed = Das Szenario ist noch nicht enthüllt.
scenario-missing = Die Woche hat kein Szenarioblatt, nach dem gewertet wird.
impossible-counts = Manches kann so nicht gezählt worden sein.
report-faults = Die Meldung hat Fehler.

## Points from the organiser

adjustment-amount = Die Punktzahl ist nicht gültig.
adjustment-range = 1 bis { $most } Punkte, gegeben oder genommen.
own-points = Über Ihre eigenen Punkte muss jemand anderes entscheiden.

## Closing a week

week-closed-already = Die Woche ist schon abgeschlossen.
week-not-paired = Die Woche ist noch nicht gepaart.
games-open = Partien der Woche, die offen oder strittig sind: { $games }.

## The table and what may come

table-versions = Von dieser Tabelle gibt es die Fassungen { $oldest } bis { $newest }.
rounds-to-come = Runden, die noch kommen: { $rounds }; fragen Sie nach einer Vorhersage.
no-exact-answer = Keine genaue Antwort: { $why }.
not-supposed = Nicht angenommen: { $why }.
games-not-supposed = Manche Partien lassen sich nicht annehmen.
suppositions-faults = Manche Annahmen haben Fehler.
