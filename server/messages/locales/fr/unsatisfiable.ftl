### Les règles d’une saison qu’aucune liste ne peut respecter.

unsatisfiable-kind = Aucune unité du catalogue n’est du type { $kind }.
unsatisfiable-keyword = Aucune unité du catalogue n’a le mot-clé { $keyword }.
unsatisfiable-contradiction = La règle permet moins qu’elle n’exige.
unsatisfiable-no-list = En semaine { $week }, aucune liste de { $faction } ne peut être valable.
unsatisfiable-returns-too-much = En semaine { $week }, au moins { $least } points de { $faction } doivent revenir ; le plafond est de { $cap }.
unsatisfiable-grows-too-slowly = En semaine { $week }, une liste de { $faction } a besoin de { $least } points ; { $most } au plus peuvent être atteints.
