### Pourquoi il n’y a pas de ronde, ce qui ne va pas dans un problème, et pourquoi une preuve ne tient pas.

round-fault-task = le problème a des défauts : { $faults }
round-fault-no-game = aucun joueur ne peut en rencontrer un autre un soir où une table est libre
round-fault-too-hard = aucune preuve en { $steps } étapes de recherche

## Le problème

round-fault-too-few = { $players } joueurs ne peuvent pas jouer
round-fault-too-many = { $players } joueurs ; { $most } au plus sont appariés
round-fault-twice = le joueur { $player } figure deux fois
round-fault-score = le joueur { $player } a un total hors limites
round-fault-hall-closed = aucune table n’est libre
round-fault-pin-absent = le joueur { $player } est imposé mais ne joue pas
round-fault-pin-twice = le joueur { $player } est imposé deux fois
round-fault-pin-excluded = la paire imposée { $pair } ne doit pas ou ne peut pas se rencontrer
round-fault-too-wide = les souhaits réunis sont trop étendus pour être comptés exactement

## La preuve

round-fault-other-players = la preuve porte sur d’autres joueurs
round-fault-games = les parties n’apparient pas chacun une fois et comme permis
round-fault-hall = les parties ne tiennent pas dans la salle
round-fault-cost = le coût n’est pas celui des parties
round-fault-byes = moins d’exempts ne sont pas exclus
round-fault-node = le nœud { $node } de la preuve ne tient pas
round-fault-plan = le plan des rondes à venir ne tient pas

## Tel que conservé ou envoyé

round-fault-self = { $player } ne peut pas se rencontrer soi-même
round-fault-no-week = il n’y a pas de semaine { $week }
round-fault-no-night = il n’y a pas de soirée { $night }
round-fault-integer = { $text } n’est pas un entier de 128 bits au plus
