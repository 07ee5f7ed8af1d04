### Refusals that many rooms share.

## Names and reasons that people type, and times

name-fault = Le nom { $fault }.
handle-fault = Le nom de joueur { $fault }.
household-fault = Le nom du foyer { $fault }.
reason-fault = Le motif { $fault }.
unit-fault = Le nom de l’unité { $fault }.
time-fault = L’heure indiquée { $fault }.

## Frames of what a rule says

sentence = { $fault }.
sentences = { $sentences }
not-done = Rien n’a été fait : { $why }.

## Who may do it

role-forbids =
    Le rôle { $role ->
        [owner] de propriétaire
        [organiser] d’organisateur
        [referee] d’arbitre
        [player] de joueur
       *[other] « { $role } »
    } ne le permet pas.
organiser-only = Seul l’organisateur peut faire cela.

## Sizes

from-one-to = La valeur doit aller de 1 à { $most }.
