### Was eine Wertung zweideutig oder unmöglich macht.

scoring-fault-amount = { $part }: möglich sind 0 bis { $most } Punkte, nicht { $actual }
scoring-fault-win-draw-loss = ein Sieg muss mehr zählen als eine Niederlage, und ein Unentschieden nicht mehr und nicht weniger als beide
scoring-fault-no-bands = die Tabelle der Vorsprünge ist leer
scoring-fault-not-from-zero = die Tabelle der Vorsprünge muss bei 0 beginnen, nicht bei { $from }
scoring-fault-last-band-ends = die letzte Stufe muss offen sein, diese endet bei { $to }
scoring-fault-band-end = die Stufe ab { $from } muss enden, und nicht vor ihrem Anfang
scoring-fault-gap = keine Stufe enthält die Vorsprünge { $from } bis { $to }
scoring-fault-overlap = zwei Stufen enthalten den Vorsprung { $margin }
scoring-fault-not-monotone = ab Vorsprung { $margin } erhält die siegende Seite weniger oder die unterlegene mehr als davor
scoring-fault-loser-ahead = ab Vorsprung { $margin } erhält die unterlegene Seite mehr als die siegende
scoring-fault-uneven-draw = bei Vorsprung 0 müssen beide Seiten gleich viel erhalten
scoring-fault-sum = die Stufe ab { $from } verteilt { $actual }, nicht { $limit }
scoring-fault-more-than-win = { $part }: höchstens { $limit } wie für einen Sieg, nicht { $actual }
scoring-fault-fault-pays = { $part }: die Seite, an der es liegt, darf nicht mehr bekommen
scoring-fault-late-steps = eine spätere Liste muss mehr kosten: die Stufe ab { $minutes } Minuten tut es nicht
scoring-fault-cap = eine Grenze für Boni ist mehr als 0 % eines Sieges, nicht { $share }
scoring-fault-best-weeks = mindestens eine Woche muss zählen
scoring-fault-weight = der Faktor der Woche { $week } liegt zwischen 1 und { $most }, nicht bei { $actual }
scoring-fault-no-week = ist keine Woche einer Saison

## Teile der Wertung

scoring-part-win = Sieg
scoring-part-draw = Unentschieden
scoring-part-loss = Niederlage
scoring-part-band = Stufe
scoring-part-concession = Aufgabe
scoring-part-no-show = Fehlen
scoring-part-double-loss = Niederlage beider
scoring-part-attendance = Anwesenheit
scoring-part-late-list = späte Liste
scoring-part-bye = Freilos
scoring-part-late-joiner = später Einstieg
