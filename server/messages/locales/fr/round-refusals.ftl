### Refusals about rounds: proposing, publishing, repairing.

round-published = Cette ronde est publiée. Elle ne sera jamais tirée de nouveau.
lists-sealed = Les rondes sont appariées une fois les listes ouvertes, pour que le tirage en dépende.
week-before-not-paired = La semaine précédente n’est pas encore appariée.
two-players-needed = Indiquez deux joueurs de la saison.
too-few-can-come = Moins de deux joueurs peuvent venir.
orders-contradict = Les consignes contredisent les faits.
no-round = Une telle ronde n’existe pas : { $why }.
own-round-orders = Vous jouez dans cette ronde. C’est à quelqu’un qui n’y joue pas de donner des consignes sur ses parties.
own-round-drawn = Vous jouez dans cette ronde, et elle est tirée. Publiez-la puis réparez-la, ou laissez quelqu’un qui n’y joue pas la proposer de nouveau.
other-round-published = Une autre ronde de la semaine a été publiée depuis. Proposez celle-ci de nouveau.
proposal-mismatch = La proposition ne découle pas de ses données et du secret engagé.

## Repairs

own-repair = Cette réparation change votre propre partie. C’est à un organisateur ou à un arbitre dont elle ne touche pas la partie de la publier.
own-game-repair = Quand il s’agit de votre propre partie, c’est à quelqu’un d’autre de réparer la ronde.
round-not-published = La ronde n’est pas encore publiée ; proposez-la de nouveau.
too-few-left = Il reste moins de deux joueurs.
nothing-changes = Rien ne change pour personne.
game-reported = La partie de ce joueur est déclarée ; elle reste.
not-in-the-season = Ne joue pas cette semaine.
hall-night = Indiquez une soirée de la semaine et de 0 à { $most } tables.
repair-stale = Une partie que cette réparation change a été déclarée. Réparez la ronde de nouveau.

## Round robins

round-robin-seats = Les { $seats } places du toutes rondes sont toutes prises.
round-robin-exhausted = Parmi ceux qui peuvent venir, plus personne n’a de partie de la grille à jouer avec un autre.
