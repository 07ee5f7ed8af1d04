### Ce qui ne va pas dans les plafonds et le calendrier d’une saison.

cap-fault-weeks = une saison a de 1 à { $most } semaines, pas { $weeks }
cap-fault-out-of-range = le plafond de la semaine { $week } est de { $cap } ; il doit être compris entre 1 et { $most }
cap-fault-falls = le plafond tombe de { $before } à { $cap } en semaine { $week }

calendar-fault-days = une semaine a de 1 à { $most } jours, pas { $days }
calendar-fault-nights = une semaine a de 1 à { $most } soirées, pas { $nights }
calendar-fault-night-key = la soirée « { $night } » a besoin d’un nom à elle, de 1 à { $longest } lettres, chiffres ou traits d’union
calendar-fault-tables = la soirée « { $night } » a besoin de 1 à { $most } tables, pas { $tables }
calendar-fault-order = l’ordre doit être : d’abord { $earlier }, ensuite { $later }
calendar-fault-week = semaine { $week } : { $fault }
calendar-fault-clock = { $what } de la semaine { $week } { $fault }
calendar-fault-too-far = le calendrier dépasse la dernière date possible

## De quoi est faite une semaine

calendar-announce = l’annonce
calendar-lists-due = la date limite des listes
calendar-play-until = la fin du temps de jeu
calendar-nights = la soirée
calendar-reveal = le dévoilement
