### The table and the badge that other websites show.

embedded-standings = { $season }: Tabelle nach Woche { $week }
games-won = Siege
games-drawn = Unentschieden
games-lost = Niederlagen
league-points = Punkte
badge-week = Woche { $week }
badge-nobody = noch niemand
badge-shared = { $leaders } gemeinsam vorn
