### Ce qui ne va pas dans un nom, une clé ou une heure. Chacun continue ce dont il parle : « Le nom ne doit pas être vide. »

text-empty = ne doit pas être vide
text-too-long =
    a { $actual } { $actual ->
        [one] caractère
       *[other] caractères
    } ; { $limit } au plus sont permis
text-character = contient le caractère U+{ $code }, qui n’est pas permis
text-marks = empile trop de signes sur une lettre
text-key-shape = n’admet que des minuscules et des chiffres séparés par des traits d’union simples
text-entry-key = n’admet que 1 à { $longest } lettres, chiffres, traits d’union ou tirets bas

civil-gap = n’existe pas en { $zone } : les horloges sautent par-dessus
civil-fold = a lieu deux fois en { $zone } : les horloges reculent
civil-year = est hors des années { $first } à { $last }
civil-leap-second = désigne une 61e seconde

text-share-of-nothing = le tout d’une part doit valoir au moins 1
