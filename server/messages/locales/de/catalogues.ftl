### Refusals about catalogues and the tables they are imported from.

catalogue-name-taken = Der Verein hat schon einen Katalog dieses Namens.
catalogue-faults = Der Katalog hat { $faults } Fehler; nichts wurde eingelesen.

## Where in a table

cell-fault = Zeile { $row }, Spalte { $column } ({ $header }): { $fault }
row-fault = Zeile { $row }: { $fault }

## What is wrong there

table-too-long = eine Tabelle hat höchstens { $most } Einheiten; darunter wurde nichts gelesen
table-too-wide = hat { $columns } Spalten; höchstens { $most } sind erlaubt
column-unknown = diese Spalte ist nicht bekannt
column-twice = diese Spalte kommt zweimal vor
column-missing = die Spalte „{ $column }“ fehlt
row-length = die Zeile hat { $cells } Zellen, die Kopfzeile { $columns }
cell-encoding = ist kein Text in UTF-8
cell-number = „{ $text }“ ist keine ganze Zahl
cell-range = muss steigen, um weniger als { $most } Modelle
cell-sizes = hat { $numbers } Zahlen für { $sizes } Größen
cell-option = „{ $text }“ ist nicht: NAME PUNKTE [per model] [up to N] [group NAME]
