password-too-short =
    Le mot de passe a { $length ->
        [one] { $length } caractère
       *[other] { $length } caractères
    } ; il en faut { $shortest }.
password-too-long =
    Le mot de passe a { $length ->
        [one] { $length } caractère
       *[other] { $length } caractères
    } ; { $longest } au plus sont permis.
too-few-players = Une saison commence avec deux joueurs au moins, pas avec { $there }.
lists-not-open-yet = Les listes s’ouvrent une fois l’échéance et son délai de grâce passés.
