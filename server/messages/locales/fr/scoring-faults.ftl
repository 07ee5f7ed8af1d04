### Ce qui rend un barème ambigu ou impossible.

scoring-fault-amount = { $part } : les points vont de 0 à { $most }, pas { $actual }
scoring-fault-win-draw-loss = une victoire doit valoir plus qu’une défaite, et un match nul ni plus ni moins que les deux
scoring-fault-no-bands = la table des écarts est vide
scoring-fault-not-from-zero = la table des écarts doit commencer à 0, pas à { $from }
scoring-fault-last-band-ends = le dernier palier doit être ouvert, celui-ci finit à { $to }
scoring-fault-band-end = le palier à partir de { $from } doit finir, et pas avant de commencer
scoring-fault-gap = aucun palier ne contient les écarts de { $from } à { $to }
scoring-fault-overlap = deux paliers contiennent l’écart { $margin }
scoring-fault-not-monotone = à partir de l’écart { $margin }, le vainqueur reçoit moins ou le perdant plus qu’avant
scoring-fault-loser-ahead = à partir de l’écart { $margin }, le perdant reçoit plus que le vainqueur
scoring-fault-uneven-draw = à l’écart 0, les deux camps doivent recevoir autant
scoring-fault-sum = le palier à partir de { $from } distribue { $actual }, pas { $limit }
scoring-fault-more-than-win = { $part } : au plus { $limit }, comme pour une victoire, pas { $actual }
scoring-fault-fault-pays = { $part } : le camp en faute ne doit pas recevoir plus
scoring-fault-late-steps = une liste plus tardive doit coûter plus : le palier à partir de { $minutes } minutes ne le fait pas
scoring-fault-cap = un plafond de bonus est de plus de 0 % d’une victoire, pas { $share }
scoring-fault-best-weeks = une semaine au moins doit compter
scoring-fault-weight = le facteur de la semaine { $week } va de 1 à { $most }, pas { $actual }
scoring-fault-no-week = n’est pas une semaine d’une saison

## Parties du barème

scoring-part-win = victoire
scoring-part-draw = match nul
scoring-part-loss = défaite
scoring-part-band = palier
scoring-part-concession = abandon
scoring-part-no-show = forfait
scoring-part-double-loss = défaite des deux
scoring-part-attendance = présence
scoring-part-late-list = liste en retard
scoring-part-bye = exempt
scoring-part-late-joiner = inscription tardive
