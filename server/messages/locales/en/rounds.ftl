### How a season makes its rounds, read back.

rounds-by-score = In each round equal scores meet, as far as the wishes allow.
rounds-round-robin = Everybody meets everybody once, by the Berger tables; a game that is missed is caught up when both are free.
rounds-double-round-robin = Everybody meets everybody twice with the roles swapped, by the Berger tables; a game that is missed is caught up when both are free.
rounds-one-a-week = A week has one round.
rounds-several-a-week = A week has up to { $rounds } rounds, each on its share of the nights in order.
