### Statistics, awards, and the pictures of an army.

## Statistics

statistics = Statistiques
statistics-after = Compté après la semaine { $week }
statistics-text = La part de parties gagnées est donnée avec son intervalle à 95 % (Wilson) : la plage où se trouve la vraie part 19 fois sur 20. En dessous de { $games } parties, elle en dirait plus sur le hasard que sur la chose elle-même.
statistics-none = Rien n’a encore été joué.
by-faction = Par faction
by-faction-text = Les parties entre deux armées d’une même faction sont laissées de côté.
by-role = Par rôle
by-role-text = Le rôle de la première manche, dans les scénarios qui ont des rôles.
by-scenario = Par scénario
by-scenario-text = Vu par le camp cité en premier : l’attaquant, là où il y a des rôles.
game-role = Rôle
attacker = Attaquant
defender = Défenseur
games = Parties
win-share = Parties gagnées
interval = { $low } à { $high } %
percent = { $share } %
too-few = trop peu de parties
mean-margin = Écart moyen
share-drawn = Échelle de 0 à 100 %
share-key = Le point est la part de parties gagnées, la barre son intervalle, le trait vertical la moitié.

## Awards

awards = Distinctions
awards-so-far = En l’état actuel ; elles sont remises quand la saison est terminée.
awards-none = Rien à distinguer pour l’instant.
prize-painted = Le plus de peinture
prize-painted-value = points nouvellement achevés : { $points }
prize-games = Le plus de parties
prize-games-value = parties jouées : { $games }
prize-schedule = Les adversaires les plus coriaces
prize-schedule-value = total moyen des adversaires : { $points }
prize-climb = La plus belle remontée
prize-climb-value = places gagnées : { $places }

## The army, week by week

army-growth = L’armée, semaine après semaine
army-growth-text = Points de chaque liste ouverte par type d’unité, sous le plafond de points de sa semaine.
army-hidden = Une liste apparaît ici dès que toutes les listes de sa semaine sont ouvertes.
burn-up = La peinture face au plafond
burn-up-text = Points nouvellement achevés, cumulés, sous le plafond de points de chaque semaine.
cap-line = plafond de points
list-points = Liste
newly-finished = Nouvellement achevés
finished-so-far = Achevés jusqu’ici
no-list = pas de liste

## Attendance

attendance = Présence
attendance-text = Qui est venu jouer, semaine par semaine, pour le rapport du club sur sa salle. Chacun compte une fois par semaine ; personne n’est nommé.
attendance-none = Aucune semaine n’a encore d’appariements.
attendance-players = Joueurs
attendance-came = Venus
attendance-away = Excusés
attendance-no-shows = Absents sans prévenir
attendance-byes = Exempts
attendance-open = Résultat en attente
