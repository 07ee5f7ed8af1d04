### How far a season is from what chance would have dealt.

fairness-compared = The season was compared with { $seasons } in which opponents, roles, nights, tables and byes were dealt out at random to the players who were there.
fairness-tested = { $tests } values were tested at once; one counts as unusual only where chance explains it in at most 5 % of such audits, divided by that number (Bonferroni).
fairness-unusual =
    { $unusual ->
        [0] Nothing is
        [one] One value is
       *[other] { $unusual } values are
    } further from the mean than chance explains.
fairness-value =
    { $value }; chance gives { $mean } on average, and is as far from that in { $as-far } of { $seasons } seasons: { $unusual ->
        [true] more unusual than chance explains
       *[false] within what chance allows
    }.
fairness-opponents = The opponents of { $player } have { $points } points together
fairness-roles = { $player } attacked { $more } times more than defended
fairness-tables = { $player } had { $games } games at a table played on before
fairness-byes = { $player } sat out { $byes } times
fairness-nights = { $player } had { $games } games on one and the same night
