### Refusals about catalogues and the tables they are imported from.

catalogue-name-taken = Der Verein hat schon einen Katalog dieses Namens.
catalogue-faults = Der Katalog hat { $faults } Fehler; nichts wurde eingelesen.

## Where in a table

cell-fault = Zeile { $row }, Spalte { $column } ({ $header }): { $fault }
row-fault = Zeile { $row }: { $fault }
