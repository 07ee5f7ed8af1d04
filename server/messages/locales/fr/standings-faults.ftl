### Ce à quoi une prévision ou une supposition ne peut pas répondre.

outlook-no-row = le joueur n’a pas de ligne dans ce classement
outlook-too-open = quelqu’un a { $actual } parties en attente ; une réponse exacte en demande { $limit } au plus
outlook-no-such-game = la saison n’a pas de telle partie
outlook-not-open = la partie a un résultat ; on ne peut supposer que celui des parties en attente
