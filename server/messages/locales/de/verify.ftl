### Was die Prüfung einer heruntergeladenen Saison ergab.

verify-format = die Datei hat das Format { $format }, nicht { $known }
verify-seats = die Plätze des Rundenturniers wurden ausgelost
verify-seed-hidden = das Geheimnis wird am Ende der Saison enthüllt; Auslosungen gelten so lange als gegeben
verify-seed-shape = das Geheimnis besteht nicht aus 32 Bytes in hexadezimaler Schrift
verify-seed = das Geheimnis ist das, auf das sich die Saison zu Beginn festgelegt hat
verify-receipt = Woche { $week }: die Liste von { $player } ist die ihrer Quittung
verify-table = die Tabelle: jede Zeile ist die Summe ihrer Zeilen im Punktebuch

verify-in-round = Woche { $week }, Runde { $round }: { $finding }
verify-by-table = sie hält sich an die Tabelle des Rundenturniers
verify-draw = das Los folgt aus den festgehaltenen Eingaben
verify-lists-locked = die Eingaben enthalten die Quittung jeder Liste
verify-repair = sie repariert die Fassung davor und lässt deren übrige Eingaben unberührt
verify-first-version = sie ist die erste Fassung ihrer Runde
verify-games = die Partien sind die des Vorschlags
verify-unreadable = Eingaben, Los oder Vorschlag lassen sich nicht lesen
verify-proof = der Beweis zeigt, dass keine Paarung weniger aufgibt
verify-again = die Eingaben erneut zu paaren ergibt dieselben Partien
