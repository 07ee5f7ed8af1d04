### Refusals about army lists: drafts, handing in, opening, leave.

list-faults = La liste a des erreurs.
list-text-too-long = Une liste en texte a au plus { $most } octets.

## Drafts

draft-revision-needed = Il existe un brouillon ; dites quelle révision vous modifiez.
draft-stale = Le brouillon a été enregistré ailleurs entre-temps ; relisez-le.

## Handing in and opening

deadline-passed = La date limite est passée. Demandez à l’organisateur l’autorisation de rendre en retard.
list-stands = La date limite est passée ; la liste rendue reste valable.
round-drawn = La ronde est tirée ; plus aucune liste n’est acceptée.
lists-not-open-yet = Les listes s’ouvrent une fois la date limite et sa tolérance passées.

## Leave to hand in late

own-late-leave = C’est à quelqu’un d’autre de vous donner l’autorisation.
late-leave-given = Ce joueur a déjà l’autorisation.
