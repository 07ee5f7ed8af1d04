### The rules of a season as a whole.

policy-silence = A reported result that nobody answers stands after { $hours } h.

## Rules that do not fit

policy-silence-hours = Silence confirms after 1 to { $most } hours.
policy-rounds-a-week = A week has 1 to { $most } rounds.
policy-no-such-week = The season ends with week { $last }; there is no week { $week }.
policy-too-many-best-weeks = The best { $best } weeks cannot count in a season of { $weeks }.
policy-too-few-nights = A week has { $nights } nights, too few for { $rounds } rounds: nobody has two games on one night.
policy-round-robin-players = A round robin has at most { $most } players.
policy-round-robin-rounds = { $players } players need { $needed } rounds to meet everybody; the season has { $rounds }.
policy-wish-twice = the wish { $wish } stands twice in the order
policy-tie-break-twice = { $criterion } is named twice
