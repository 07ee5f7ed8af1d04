### Was von einer Runde bewiesen ist, und was eine Reparatur ändert.

## Erzwungene Wiederholungen

proof-barrier =
    Mindestens { $rematches } { $rematches ->
        [one] Partie muss
       *[other] Partien müssen
    } eine Wiederholung sein: In { $groups } kann niemand außerhalb der eigenen Gruppe noch auf jemand Neues treffen, und in einer Gruppe ungerader Größe bleibt immer jemand übrig.
proof-barrier-without =
    Mindestens { $rematches } { $rematches ->
        [one] Partie muss
       *[other] Partien müssen
    } eine Wiederholung sein: In { $groups } kann niemand außerhalb der eigenen Gruppe noch auf jemand Neues treffen, { $removed } können nur je einer Gruppe helfen, und in einer Gruppe ungerader Größe bleibt immer jemand übrig.
proof-group = ({ $players })

## Was der Saal kostet

proof-hall-costs-nothing = Mehr Tische würden die Runde nicht besser machen.
proof-hall-costs = Weil an jedem Abend so wenige Tische da sind, hat die Runde { $worse }.

## Kommende Runden

proof-last-round = Das ist die letzte Runde.
proof-playable =
    Nach dieser Runde { $rounds ->
        [one] geht noch { $rounds } Runde
       *[other] gehen noch { $rounds } Runden
    } ohne Wiederholung; ein Weg ist gefunden.
proof-never-runs-dry = Alle kommenden Runden gehen ohne Wiederholung, wie auch immer es läuft.
proof-runs-dry =
    Wie auch immer diese Runde gepaart wird, danach geht ohne Wiederholung nur noch: { $rounds } { $rounds ->
        [one] Runde
       *[other] Runden
    }.
proof-one-round = Nur diese Runde wurde betrachtet, nicht die kommenden.
proof-by-table = Die Tabelle des Rundenturniers sagt, wer wann auf wen trifft; Runden, die noch kommen: { $rounds }.

## Was eine Reparatur ändert

proof-change = { $player }: { $after }; vorher: { $before }.
proof-meets = gegen { $opponent } ({ $night }, Tisch { $table })
proof-sits-out = setzt aus
proof-not-in-round = nicht in der Runde
