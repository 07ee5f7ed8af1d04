### Pourquoi une feuille de résultat ne change pas, et ce qu’un scénario n’a pas pu donner.

slip-fault-not-reported = aucun résultat n’a été déclaré
slip-fault-own-report = l’autre camp doit répondre à cette déclaration
slip-fault-final = le résultat est acquis ; seule une décision le change
slip-fault-answered = aucune réponse n’est plus attendue ; seule une décision change le résultat
slip-fault-disputed = le résultat est contesté ; un arbitre va trancher
slip-fault-own-game = personne ne tranche sa propre partie

count-fault-in-leg = manche { $leg } : { $fault }
count-fault-unknown-item = la fiche ne compte pas { $item }
count-fault-other-role = { $item } se compte pour l’autre rôle
count-fault-computed = { $item } découle de l’autre camp et ne se saisit pas
count-fault-over-most = { $item } peut valoir { $limit } au plus, pas { $actual }
count-fault-over-army = { $item } compte les points d’une armée de { $limit }, pas { $actual }
count-fault-over-field = ce camp peut commencer avec { $limit } points au plus, pas { $actual }
count-fault-legs = manches de la fiche : { $limit } ; manches comptées : { $actual }
