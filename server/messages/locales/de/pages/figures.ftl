### Statistics, awards, and the pictures of an army.

## Statistics

statistics = Statistik
statistics-after = Gezählt nach Woche { $week }
statistics-text = Der Anteil gewonnener Partien steht mit seinem 95-%-Intervall (Wilson) da: dem Bereich, in dem der wahre Anteil in 19 von 20 Fällen liegt. Unter { $games } Partien sagte er mehr über den Zufall als über die Sache.
statistics-none = Noch ist nichts gespielt.
by-faction = Nach Fraktion
by-faction-text = Partien zwischen zwei Armeen einer Fraktion zählen nicht mit.
by-role = Nach Rolle
by-role-text = Die Rolle im ersten Durchgang, bei Szenarien mit Rollen.
by-scenario = Nach Szenario
by-scenario-text = Aus Sicht der zuerst genannten Seite: der Angreifer, wo es Rollen gibt.
game-role = Rolle
attacker = Angreifer
defender = Verteidiger
games = Partien
win-share = Gewonnen
interval = { $low } bis { $high } %
percent = { $share } %
too-few = zu wenige Partien
mean-margin = Mittlerer Vorsprung
share-drawn = Gezeichnet von 0 bis 100 %
share-key = Der Punkt ist der Anteil gewonnener Partien, der Balken sein Intervall, der senkrechte Strich die Hälfte.

## Awards

awards = Auszeichnungen
awards-so-far = So stünde es jetzt; vergeben wird, wenn die Saison vorbei ist.
awards-none = Noch gibt es nichts auszuzeichnen.
prize-painted = Am meisten bemalt
prize-painted-value = neu fertige Punkte: { $points }
prize-games = Die meisten Partien
prize-games-value = gespielte Partien: { $games }
prize-schedule = Die stärksten Gegner
prize-schedule-value = mittlere Ligapunkte der Gegner: { $points }
prize-climb = Der größte Aufstieg
prize-climb-value = gewonnene Plätze: { $places }

## The army, week by week

army-growth = Die Armee, Woche für Woche
army-growth-text = Punkte jeder geöffneten Liste nach Einheitenart, unter der Punktgrenze ihrer Woche.
army-hidden = Eine Liste erscheint hier, sobald alle Listen ihrer Woche geöffnet sind.
burn-up = Bemaltes und die Punktgrenze
burn-up-text = Neu fertige Punkte, aufsummiert, unter der Punktgrenze jeder Woche.
cap-line = Punktgrenze
list-points = Liste
newly-finished = Neu fertig
finished-so-far = Fertig bisher
no-list = keine Liste

## Attendance

attendance = Teilnahme
attendance-text = Wer zum Spielen kam, Woche für Woche, für den Bericht des Vereins über seinen Saal. Jeder zählt einmal in der Woche; niemand wird genannt.
attendance-none = Noch ist keine Woche gepaart.
attendance-players = Mitspieler
attendance-came = Gekommen
attendance-away = Abgesagt
attendance-no-shows = Nicht gekommen
attendance-byes = Freilos
attendance-open = Ergebnis offen
