### A season's own page, the way to its rooms, and how it ends.

## The rooms

overview = Vue d’ensemble
my-week = Ma semaine
board = Tableau de bord
rules = Règles

## The season's page

season-draft-text = Cette saison est en préparation. Les membres du club qui en ont l’adresse la voient et peuvent y prendre une place.
start-season = Lancer la saison
start-season-text = Fixe les règles et tire le secret des tirages. C’est irréversible.
players-n =
    { $count } { $count ->
        [one] joueur
       *[other] joueurs
    }
no-players = Personne ne s’est encore inscrit.
withdrew = a quitté la saison
joined-in = depuis la semaine { $week }
commitment = Empreinte du secret des tirages
commitment-text = Fixée avant le premier appariement. À la fin de la saison, le secret est dévoilé, et chacun peut refaire le tirage de chaque ronde.

## Joining

join-season = S’inscrire à cette saison
join-text = Vous jouez à partir de la prochaine semaine dont la date limite des listes n’est pas passée.
handle = Nom dans cette saison
handle-hint = Le mieux est un pseudo : tout le monde peut le lire.
usual-nights = Soirées où vous pouvez venir d’habitude

## Ending

ending = Terminer la saison
ended = Comment la saison s’est terminée
ending-will = Ce qu’entraîne la fin
ending-will-stop = Plus aucune liste, aucun résultat ni aucune décision ne sont acceptés.
ending-will-prizes = Le classement et les prix sont définitifs.
ending-will-seed = Le secret des tirages est montré à tous, pour que le tirage de chaque ronde puisse être refait.
ending-will-keep = Tout reste lisible et peut être téléchargé.
ending-for-good = C’est irréversible.
ending-sure = Oui, terminer la saison
ending-first = Clôturez d’abord ces semaines :
places-now = En tête pour l’instant
whole-table = Le classement complet
prizes = Prix
prizes-now = Prix en l’état actuel
prizes-text = Décidés par les chiffres mêmes de la saison. Un prix peut être partagé.
prizes-none = Il n’y a encore rien à compter pour aucun prix.

## The draws

draws = Les tirages
seed-is = Le secret lui-même. Son SHA-256 est l’empreinte ci-dessus :
seed-hidden = Le secret est dévoilé à la fin de la saison. Jusque-là, personne ne le connaît, pas même les organisateurs.
