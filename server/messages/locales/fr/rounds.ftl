### Comment une saison fait ses rondes, en toutes phrases.

rounds-by-score = À chaque ronde, les scores égaux se rencontrent, autant que les souhaits le permettent.
rounds-round-robin = Tout le monde rencontre tout le monde une fois, d’après les tables de Berger ; une partie manquée se rattrape quand les deux sont libres.
rounds-double-round-robin = Tout le monde rencontre tout le monde deux fois, rôles échangés, d’après les tables de Berger ; une partie manquée se rattrape quand les deux sont libres.
rounds-one-a-week = Une semaine a une ronde.
rounds-several-a-week = Une semaine a jusqu’à { $rounds } rondes, chacune sur sa part des soirées, dans l’ordre.
