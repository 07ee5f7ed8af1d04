### Ce qui est prouvé d’une ronde, et ce que change une réparation.

## Rencontres répétées inévitables

proof-barrier =
    Au moins { $rematches } { $rematches ->
        [one] partie doit être une rencontre répétée
       *[other] parties doivent être des rencontres répétées
    } : dans { $groups }, personne n’a plus de nouvel adversaire en dehors de son groupe, et un groupe de taille impaire laisse toujours quelqu’un de côté.
proof-barrier-without =
    Au moins { $rematches } { $rematches ->
        [one] partie doit être une rencontre répétée
       *[other] parties doivent être des rencontres répétées
    } : dans { $groups }, personne n’a plus de nouvel adversaire en dehors de son groupe, { $removed } ne peuvent aider qu’un groupe chacun, et un groupe de taille impaire laisse toujours quelqu’un de côté.
proof-group = ({ $players })

## Ce que coûte la salle

proof-hall-costs-nothing = Davantage de tables ne rendraient pas la ronde meilleure.
proof-hall-costs = Parce qu’il y a si peu de tables à chaque soirée, la ronde a { $worse }.

## Les rondes à venir

proof-last-round = C’est la dernière ronde.
proof-playable =
    Après cette ronde, { $rounds } { $rounds ->
        [one] ronde peut encore se jouer
       *[other] rondes peuvent encore se jouer
    } sans rencontre répétée ; une solution est trouvée.
proof-never-runs-dry = Toutes les rondes à venir peuvent se jouer sans rencontre répétée, quoi qu’il arrive.
proof-runs-dry =
    Quel que soit l’appariement de cette ronde, seules peuvent encore se jouer sans rencontre répétée : { $rounds } { $rounds ->
        [one] ronde
       *[other] rondes
    }.
proof-one-round = Seule cette ronde a été considérée, pas celles à venir.
proof-by-table = La table du toutes rondes dit qui rencontre qui et quand ; rondes encore à venir : { $rounds }.

## Ce que change une réparation

proof-change = { $player } : { $after } ; avant : { $before }.
proof-meets = contre { $opponent } ({ $night }, table { $table })
proof-sits-out = exempt
proof-not-in-round = pas dans la ronde
