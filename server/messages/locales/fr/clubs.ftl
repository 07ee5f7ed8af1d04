### Refusals about clubs, their people and invitations.

last-owner = C’est l’unique propriétaire du club ; donnez d’abord ce rôle à quelqu’un d’autre.
club-slug-shape = Un nom court a de 2 à { $longest } lettres minuscules, chiffres et traits d’union isolés.
club-slug-taken = Un autre club porte ce nom court.
already-member = Vous faites déjà partie de ce club.
minor-record = Le parcours d’un mineur reste au sein du club.
no-invited-owner = On n’invite personne comme propriétaire.
invitation-faults = L’invitation n’est pas valable ainsi.
invitation-unknown = Ce code est inconnu, épuisé ou périmé. Demandez-en un nouveau.
