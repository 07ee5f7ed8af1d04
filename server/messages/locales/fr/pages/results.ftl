### Results: the slip of a game, rulings, and what waits for somebody.

## The slip

slip = Feuille de résultat
slip-awaited = pas encore de résultat
slip-reported = déclaré
slip-disputed = contesté
slip-confirmed = confirmé
slip-ruled = tranché
outcome-conceded = abandon
outcome-no-show = forfait
outcome-double-loss = défaite des deux
outcome-void = partie annulée
by-silence = personne n’a contesté à temps
by-referee = arbitre
silence-confirms = Sans contestation, ce résultat est acquis à partir du
is-it-right = Est-ce exact ?
confirm = Confirmer le résultat
dispute = Contester le résultat
waits-for-referee = Un arbitre va trancher cette partie. Jusque-là, rien ne compte.
changed-meanwhile = Quelque chose a changé ici entre-temps, comme indiqué ci-dessus. Votre saisie est toujours là.

## Reporting

report = Déclarer le résultat
report-other = Déclarer autre chose
report-send = Envoyer la déclaration
what-counted = Ce que vous avez compté
leg-n = Manche { $leg }
not-a-count = Il faut un nombre entier, 0 ou plus.
how-ended = Comment la partie s’est terminée
ended-played = jouée jusqu’au bout
ended-conceded = { $name } a abandonné
ended-absent = { $name } n’était pas là
ended-absent-notice = { $name } n’était pas là, mais avait prévenu

## Ruling

ruling = Trancher cette partie
ruling-text = Votre décision vaut aussitôt, quoi que dise la feuille. Elle figure au journal avec son motif ; un résultat antérieur reste lisible.
ruling-send = Trancher

## What waits for somebody

results-of-week = Résultats
results-open = { $count } sans résultat confirmé
results = Résultats
disputed = Contestées
disputed-text = Les deux camps ne sont pas d’accord. Rien ne compte tant que personne n’a tranché.
overdue = En retard
overdue-text = Le temps pour jouer est écoulé et personne n’a rien déclaré. Envoyez un rappel depuis le tableau de bord, ou tranchez.
unreported = Pas encore déclarées
unreported-text = Appariées, et il reste du temps. L’heure indiquée est la dernière pour jouer.
unanswered = Déclarées, sans réponse
unanswered-text = Un camp a déclaré. Sans contestation, le résultat est acquis à partir de l’heure indiquée à droite.
nothing-waits = Aucune partie n’attend personne.
painting-to-check = Peinture à vérifier : { $count }
