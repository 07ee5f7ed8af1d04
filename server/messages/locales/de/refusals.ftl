### Refusals that many rooms share.

## Names and reasons that people type, and times

name-fault = Der Name { $fault }.
handle-fault = Der Name in der Saison { $fault }.
household-fault = Der Haushalt { $fault }.
reason-fault = Der Grund { $fault }.
unit-fault = Die Einheit { $fault }.
time-fault = Die Uhrzeit { $fault }.

## Frames of what a rule says

sentence = { $fault }.
sentences = { $sentences }
not-done = Nicht geschehen: { $why }.

## Who may do it

role-forbids =
    Die Rolle { $role ->
        [owner] des Besitzers
        [organiser] der Spielleitung
        [referee] des Schiedsrichters
        [player] der Mitspielenden
       *[other] „{ $role }“
    } lässt das nicht zu.
organiser-only = Das darf nur die Leitung.

## Sizes

from-one-to = Möglich sind 1 bis { $most }.
