### Refusals about results, the table and its outlooks.

## Result slips

participants-only = Seuls les deux joueurs de la partie peuvent faire cela.
referee-strikes = Seul un arbitre annule une partie.
night-not-begun = La soirée de cette partie n’a pas commencé.
slip-changed = Un autre résultat a été déclaré entre-temps ; regardez-le avant de répondre.
week-scenario-not-revealed = Le scénario de la semaine n’est pas encore dévoilé.
scenario-not-revealed = Le scénario n’est pas encore dévoilé.
scenario-missing = La semaine n’a pas de fiche de scénario pour compter les points.
impossible-counts = Certains décomptes sont impossibles.
report-faults = La déclaration a des erreurs.

## Points from the organiser

adjustment-amount = Le nombre de points n’est pas valable.
adjustment-range = De 1 à { $most } points, donnés ou retirés.
own-points = C’est à quelqu’un d’autre de décider de vos propres points.

## Closing a week

week-closed-already = La semaine est déjà close.
week-not-paired = La semaine n’est pas encore appariée.
games-open = Parties de la semaine encore ouvertes ou contestées : { $games }.

## The table and what may come

table-versions = Ce classement existe dans les versions { $oldest } à { $newest }.
rounds-to-come = Rondes encore à venir : { $rounds } ; demandez une prévision.
no-exact-answer = Pas de réponse exacte : { $why }.
not-supposed = Supposition écartée : { $why }.
games-not-supposed = Certaines parties ne peuvent pas être supposées.
suppositions-faults = Certaines suppositions ont des erreurs.
