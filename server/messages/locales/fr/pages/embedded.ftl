### The table and the badge that other websites show.

embedded-standings = { $season } : classement après la semaine { $week }
games-won = Victoires
games-drawn = Nuls
games-lost = Défaites
league-points = Points
badge-week = semaine { $week }
badge-nobody = encore personne
badge-shared = { $leaders } joueurs en tête
