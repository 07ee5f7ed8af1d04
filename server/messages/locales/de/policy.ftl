### Die Regeln einer Saison im Ganzen.

policy-silence = Ein gemeldetes Ergebnis, dem niemand antwortet, gilt nach { $hours } h.

## Regeln, die nicht passen

policy-silence-hours = Schweigen bestätigt nach 1 bis { $most } Stunden.
policy-rounds-a-week = Eine Woche hat 1 bis { $most } Runden.
policy-no-such-week = Die Saison endet mit Woche { $last }; eine Woche { $week } gibt es nicht.
policy-too-many-best-weeks = Die besten { $best } Wochen können nicht zählen: Die Saison hat { $weeks }.
policy-too-few-nights = Eine Woche hat { $nights } Abende, zu wenige für { $rounds } Runden: Niemand spielt zweimal an einem Abend.
policy-round-robin-players = Ein Rundenturnier hat höchstens { $most } Spielende.
policy-round-robin-rounds = { $players } Spielende brauchen { $needed } Runden, bis alle sich getroffen haben; die Saison hat { $rounds }.
policy-wish-twice = der Wunsch { $wish } steht zweimal in der Reihenfolge
policy-tie-break-twice = { $criterion } ist zweimal genannt
