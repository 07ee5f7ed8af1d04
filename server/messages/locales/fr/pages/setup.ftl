### Setting up a season in steps, and the next season from an earlier one.

## The steps

step-of = Étape { $step } sur { $steps }
setup-basics = Nom et catalogue
setup-caps = Plafonds de points
setup-rhythm = Jours et soirées
setup-rules = Règles
setup-preview = Aperçu
setup-needs-catalogue = Une saison a besoin d’un catalogue comptant au moins une version.

## Name and catalogue

season-name = Nom de la saison
visibility = Qui peut la suivre
visible-public = tout le monde
visible-club = le club seulement
zone = Fuseau horaire
zone-hint = Nom IANA, par exemple Europe/Paris. Toutes les heures de la saison suivent ce fuseau.
most-players = Nombre maximal de joueurs (vide : sans limite)

## Points caps

first-day = Premier jour de la semaine 1
days-per-week = Jours d’une semaine à l’autre
caps-kind = Comment monte le plafond
caps-step = du même pas chaque semaine
caps-list = selon une liste de plafonds
caps-first = Premier plafond
caps-more = En plus chaque semaine
caps-weeks = Semaines
caps-each = Plafonds, en commençant par la première semaine
caps-each-hint = Par exemple : 300, 400, 500, 600, 600, 750

## Days and nights

night-n = Soirée { $number }
night-empty-hint = Une soirée sans nombre de tables est laissée de côté.
grace-minutes = Tolérance après la date limite, en minutes

## Rules

pairing-method = Qui rencontre qui
method-by-score = Les scores égaux se rencontrent
method-by-score-help = À chaque ronde se rencontrent les joueurs qui en sont au même score. Pour tout nombre de joueurs et de semaines.
method-round-robin = Tous contre tous
method-round-robin-help = Un tournoi toutes rondes, dans l’ordre des tables de Berger. Il faut une ronde de moins qu’il n’y a de joueurs : 8 joueurs, 7 rondes. Un nombre impair demande autant de rondes que de joueurs.
method-round-robin-twice = Tous contre tous, deux fois
method-round-robin-twice-help = La même chose avec les rôles échangés la seconde fois, en deux fois plus de rondes.
rounds-per-week = Rondes par semaine
rounds-per-week-help = S’il y en a plusieurs, chacune a sa part des soirées de la semaine, dans l’ordre.
value-win = Points de ligue pour une victoire
value-draw = Pour un match nul
value-loss = Pour une défaite
value-bye = Pour un exempt
value-painted = Pour une liste entièrement peinte
limit-largest-unit = Part maximale du plafond pour une seule unité, en pour cent (vide : sans limite)
limit-carry-over = Part de la liste de la semaine précédente qui doit revenir, en pour cent (vide : aucune)
limit-best-weeks = Nombre de meilleures semaines qui comptent (vide : toutes)
faction-lock = Les joueurs gardent leur faction
confirm-hours = Heures au bout desquelles le silence confirme un résultat
rules-as-data = Toutes les règles sous forme de données (pour qui veut davantage)
rules-as-data-hint = JSON à la forme de l’interface de programmation. S’il est rempli, il compte à la place des champs ci-dessus.

## The preview

week-calendar = Calendrier
preview-text = Rien n’est encore enregistré. Voici chaque semaine telle qu’elle serait.
preview-create = Enregistrer comme brouillon
preview-after = Ensuite, vous ajoutez les fiches de scénario et lancez la saison quand vous voulez.
rules-read = Les règles telles que les joueurs les lisent

## The next season from this one

next-season = Saison suivante à partir de celle-ci
next-season-text = Les mêmes règles, plafonds, rythme et soirées, à de nouvelles dates. Cette saison-ci reste telle quelle.
other-weekdays = Les jours de la semaine peuvent se décaler du même coup
with-scenarios = Les fiches de scénario suivent
carry = Qui suit
carry-nobody = personne : chacun s’inscrit de nouveau
carry-players = tous ceux qui jouent jusqu’au bout
carry-collections = les mêmes avec leurs unités ; ce qui est peint le reste
next-season-draft = Il en naît un brouillon que seuls les organisateurs voient. Rien ne commence encore.
next-season-make = Créer le brouillon
next-season-made =
    Le brouillon est créé. { $players } { $players ->
        [one] personne a suivi
       *[other] personnes ont suivi
    }.
left-out = Qui n’a pas suivi
left-withdrew = a quitté la saison
left-club = a quitté le club
left-faction = la faction ne figure pas dans le dernier catalogue
