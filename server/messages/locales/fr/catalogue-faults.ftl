### Ce qui ne va pas dans un catalogue, en données ou en feuille de calcul, et ce que change une nouvelle version.

catalogue-fault-twice = « { $name } » figure plusieurs fois
catalogue-fault-out-of-range = vaut { $actual } ; il faut de { $least } à { $most }
catalogue-fault-count = a { $actual } éléments ; il en faut de { $least } à { $most }
catalogue-fault-joins-nothing = aucune unité de cette faction ne porte « { $keyword } »

## Feuilles de calcul

csv-rows = un tableau a { $most } unités au plus ; rien n’a été lu plus bas
csv-columns = a { $columns } colonnes ; { $most } au plus sont permises
csv-unknown-column = cette colonne est inconnue
csv-column-twice = cette colonne figure deux fois
csv-missing-column = la colonne « { $column } » manque
csv-cells = la ligne a { $cells } cellules, l’en-tête { $columns }
csv-encoding = n’est pas du texte en UTF-8
csv-number = « { $text } » n’est pas un nombre entier
csv-range = doit croître, de moins de { $sizes } figurines
csv-sizes = a { $numbers } nombres pour { $sizes } effectifs
csv-option = « { $text } » n’est pas de la forme : NOM POINTS [per model] [up to N] [group NOM]

## Ce que change une nouvelle version

catalogue-diff = { $changes }
catalogue-diff-none = aucune unité modifiée
catalogue-diff-first =
    { $count ->
        [one] { $count } unité { $change ->
            [dearer] plus chère
            [cheaper] moins chère
            [repriced] à prix revus à la hausse et à la baisse
            [altered] modifiée à prix égal
            [added] ajoutée
           *[gone] disparue
        }
       *[other] { $count } unités { $change ->
            [dearer] plus chères
            [cheaper] moins chères
            [repriced] à prix revus à la hausse et à la baisse
            [altered] modifiées à prix égal
            [added] ajoutées
           *[gone] disparues
        }
    }
catalogue-diff-next =
    { $count ->
        [one] { $count } { $change ->
            [dearer] plus chère
            [cheaper] moins chère
            [repriced] à prix revus à la hausse et à la baisse
            [altered] modifiée à prix égal
            [added] ajoutée
           *[gone] disparue
        }
       *[other] { $count } { $change ->
            [dearer] plus chères
            [cheaper] moins chères
            [repriced] à prix revus à la hausse et à la baisse
            [altered] modifiées à prix égal
            [added] ajoutées
           *[gone] disparues
        }
    }
