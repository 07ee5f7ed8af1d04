### Warum es keine Runde gibt, was mit einer Aufgabe nicht stimmt, und warum ein Beweis nicht hält.

round-fault-task = die Aufgabe hat Fehler: { $faults }
round-fault-no-game = keine zwei Spielenden dürfen sich an einem Abend mit freiem Tisch treffen
round-fault-too-hard = in { $steps } Schritten fand sich kein Beweis

## Die Aufgabe

round-fault-too-few = { $players } Spielende können nicht spielen
round-fault-too-many = { $players } Spielende; höchstens { $most } werden gepaart
round-fault-twice = { $player } ist zweimal aufgeführt
round-fault-score = { $player } hat eine Punktzahl außerhalb des Möglichen
round-fault-hall-closed = kein Tisch ist frei
round-fault-pin-absent = { $player } ist festgelegt, spielt aber nicht mit
round-fault-pin-twice = { $player } ist zweimal festgelegt
round-fault-pin-excluded = das festgelegte Paar { $pair } darf oder kann sich nicht treffen
round-fault-too-wide = die Wünsche sind zusammen zu weit, um genau gezählt zu werden

## Der Beweis

round-fault-other-players = der Beweis handelt von anderen Spielenden
round-fault-games = die Partien paaren nicht alle einmal und wie erlaubt
round-fault-hall = die Partien passen nicht in den Saal
round-fault-cost = die Kosten sind nicht die der Partien
round-fault-byes = weniger Freilose sind nicht ausgeschlossen
round-fault-node = Knoten { $node } des Beweises hält nicht
round-fault-plan = der Plan für die kommenden Runden hält nicht

## Wie es aufbewahrt oder gesendet wurde

round-fault-self = { $player } kann nicht auf sich selbst treffen
round-fault-no-week = eine Woche { $week } gibt es nicht
round-fault-no-night = einen Abend { $night } gibt es nicht
round-fault-integer = { $text } ist keine ganze Zahl von höchstens 128 Bit
