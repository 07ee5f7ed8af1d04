### Faults of JSON documents beyond those of the values in them.

## Rules of a season

rounds-range = Une semaine a de 1 à { $most } rondes.
silence-hours = Le silence vaut confirmation après 1 à { $most } heures.
week-beyond-season = La saison se termine avec la semaine { $last } ; il n’y a pas de semaine { $week }.
best-weeks-beyond-season = Les { $best } meilleures semaines ne peuvent pas compter dans une saison de { $weeks }.
nights-too-few =
    Une semaine a { $nights ->
        [one] { $nights } soirée
       *[other] { $nights } soirées
    }, trop peu pour { $rounds } rondes : personne ne joue deux parties le même soir.

## List rules

bound-missing = doit indiquer « least », « most » ou les deux
names-missing = doit en nommer au moins un
points-range = doit aller de { $least } à { $most }
share-beyond-all = ne doit pas dépasser le tout
rule-weeks = doit nommer des semaines différentes d’une saison, au moins une
share-of-nothing = le tout d’une part doit être d’au moins 1

## Inputs of a round

pair-of-one = { $player } ne peut pas jouer contre soi-même
no-week = il n’y a pas de semaine { $week }
no-night = il n’y a pas de soirée { $night }
not-an-integer = { $text } n’est pas un entier d’au plus 128 bits

## Civil times and dates

civil-time-needed = Donnez l’heure locale de la saison, sans fuseau ni décalage, par exemple 2026-03-03T19:00:00.
date-needed = Donnez une date qui existe, par exemple 2026-03-03.
time-of-day-needed = Donnez une heure du jour de la saison, sans fuseau ni décalage, par exemple 19:00:00.
