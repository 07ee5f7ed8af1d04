### Refusals about catalogues and the tables they are imported from.

catalogue-name-taken = Le club a déjà un catalogue de ce nom.
catalogue-faults =
    Le catalogue a { $faults ->
        [one] { $faults } erreur
       *[other] { $faults } erreurs
    } ; rien n’a été importé.

## Where in a table

cell-fault = Ligne { $row }, colonne { $column } ({ $header }) : { $fault }
row-fault = Ligne { $row } : { $fault }

## What is wrong there

table-too-long = un tableau a au plus { $most } unités ; rien n’a été lu en dessous
table-too-wide = a { $columns } colonnes ; { $most } au plus sont permises
column-unknown = cette colonne n’est pas connue
column-twice = cette colonne figure deux fois
column-missing = la colonne « { $column } » manque
row-length = la ligne a { $cells } cellules, l’en-tête en a { $columns }
cell-encoding = n’est pas un texte en UTF-8
cell-number = « { $text } » n’est pas un nombre entier
cell-range = doit croître, de moins de { $most } figurines
cell-sizes = a { $numbers } nombres pour { $sizes } tailles
cell-option = « { $text } » ne suit pas la forme : NOM POINTS [per model] [up to N] [group NOM]
