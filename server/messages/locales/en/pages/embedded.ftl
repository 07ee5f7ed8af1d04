### The table and the badge that other websites show.

embedded-standings = { $season }: standings after week { $week }
games-won = Won
games-drawn = Drawn
games-lost = Lost
league-points = Points
badge-week = week { $week }
badge-nobody = nobody yet
badge-shared = { $leaders } share the lead
