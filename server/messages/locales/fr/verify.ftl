### Ce qu’a trouvé le contrôle d’une saison téléchargée.

verify-format = le fichier est au format { $format }, pas { $known }
verify-seats = les places du toutes rondes ont été tirées au sort
verify-seed-hidden = le secret est dévoilé à la fin de la saison ; d’ici là, les tirages sont admis tels quels
verify-seed-shape = le secret ne fait pas 32 octets en hexadécimal
verify-seed = le secret est celui sur lequel la saison s’est engagée au départ
verify-receipt = semaine { $week } : la liste de { $player } est celle de son reçu
verify-table = le classement : chaque ligne est la somme de ses lignes du carnet de points

verify-in-round = semaine { $week }, ronde { $round } : { $finding }
verify-by-table = elle suit la table du toutes rondes
verify-draw = le tirage découle des données figées
verify-lists-locked = les données contiennent le reçu de chaque liste
verify-repair = elle répare la version précédente sans toucher à ses autres données
verify-first-version = c’est la première version de sa ronde
verify-games = les parties sont celles de la proposition
verify-unreadable = données, tirage ou proposition sont illisibles
verify-proof = la preuve montre qu’aucun appariement ne sacrifie moins
verify-again = apparier de nouveau les données redonne les mêmes parties
