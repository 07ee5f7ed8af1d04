### Faults of JSON documents beyond those of the values in them.

## Rules of a season

rounds-range = Eine Woche hat 1 bis { $most } Runden.
silence-hours = Schweigen bestätigt nach 1 bis { $most } Stunden.
week-beyond-season = Die Saison endet mit Woche { $last }; eine Woche { $week } gibt es nicht.
best-weeks-beyond-season = Die besten { $best } Wochen können nicht zählen: Die Saison hat { $weeks }.
nights-too-few =
    Eine Woche hat { $nights ->
        [one] einen Abend, zu wenig
       *[other] { $nights } Abende, zu wenige
    } für { $rounds } Runden: Niemand spielt zweimal an einem Abend.

## List rules

bound-missing = muss „least“, „most“ oder beides angeben
names-missing = muss mindestens eines nennen
points-range = möglich sind { $least } bis { $most }
share-beyond-all = darf nicht mehr als das Ganze sein
rule-weeks = müssen verschiedene Wochen einer Saison sein, mindestens eine
share-of-nothing = das Ganze eines Anteils muss mindestens 1 sein

## Inputs of a round

pair-of-one = { $player } kann sich nicht selbst treffen
no-week = eine Woche { $week } gibt es nicht
no-night = einen Abend { $night } gibt es nicht
not-an-integer = { $text } ist keine ganze Zahl von höchstens 128 Bit

## Civil times and dates

civil-time-needed = Nennen Sie die Ortszeit der Saison ohne Zone oder Versatz, etwa 2026-03-03T19:00:00.
date-needed = Nennen Sie ein Datum, das es gibt, etwa 2026-03-03.
time-of-day-needed = Nennen Sie eine Uhrzeit der Saison ohne Zone oder Versatz, etwa 19:00:00.
