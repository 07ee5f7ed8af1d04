### Ce qui rend une fiche de scénario injouable ou son score douteux.

sheet-fault-item-count = une fiche a de 1 à { $most } comptes, celle-ci en a { $items }
sheet-fault-turns = une manche a de 1 à { $most } tours, pas { $turns }
sheet-fault-key-twice = la clé { $item } sert deux fois
sheet-fault-number = { $item } : les nombres vont de 1 à { $most }, pas { $actual }
sheet-fault-grade = { $item } : les pas et les paliers doivent commencer au-dessus de 0 %, croître, et valoir plus en croissant
sheet-fault-exclusive-for-one-role = { $item } : un compte d’un seul rôle ne peut pas être exclusif
sheet-fault-no-roles = { $item } : la fiche n’a pas de rôles
sheet-fault-rest-of-nothing = { $item } : un reste a besoin d’un compte que seul le rôle adverse marque
sheet-fault-rest-too-small = { $item } : le compte de l’adversaire peut valoir { $actual }, plus que les { $limit } à partager
sheet-fault-joint-cap = le plafond commun de { $cap } doit nommer au moins deux comptes de la fiche
sheet-fault-legs-without-roles = deux manches demandent un attaquant et un défenseur
sheet-fault-fields = un camp commence avec plus de 0 % et au plus 100 % de sa liste, pas { $share }
sheet-fault-table-edge = une table mesure de 1 à { $most } cm, pas { $edge }
sheet-fault-off-table = { $label } se trouve hors de la table
