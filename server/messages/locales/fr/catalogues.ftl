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
