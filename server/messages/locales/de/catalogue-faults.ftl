### Was mit einem Katalog nicht stimmt, als Daten oder als Tabelle, und was eine neue Fassung ändert.

catalogue-fault-twice = „{ $name }“ kommt mehrfach vor
catalogue-fault-out-of-range = ist { $actual }; möglich sind { $least } bis { $most }
catalogue-fault-count = hat { $actual } Glieder; möglich sind { $least } bis { $most }
catalogue-fault-joins-nothing = keine Einheit dieser Fraktion trägt „{ $keyword }“

## Tabellen

csv-rows = eine Tabelle hat höchstens { $most } Einheiten; darunter wurde nichts gelesen
csv-columns = hat { $columns } Spalten; höchstens { $most } sind erlaubt
csv-unknown-column = diese Spalte ist nicht bekannt
csv-column-twice = diese Spalte kommt zweimal vor
csv-missing-column = die Spalte „{ $column }“ fehlt
csv-cells = die Zeile hat { $cells } Zellen, die Kopfzeile { $columns }
csv-encoding = ist kein Text in UTF-8
csv-number = „{ $text }“ ist keine ganze Zahl
csv-range = muss steigen, um weniger als { $sizes } Modelle
csv-sizes = hat { $numbers } Zahlen für { $sizes } Größen
csv-option = „{ $text }“ ist nicht: NAME PUNKTE [per model] [up to N] [group NAME]

## Was eine neue Fassung ändert

catalogue-diff = { $changes }
catalogue-diff-none = keine Einheit geändert
catalogue-diff-first =
    { $count } { $count ->
        [one] Einheit
       *[other] Einheiten
    } { $change ->
        [dearer] teurer
        [cheaper] billiger
        [repriced] teils teurer, teils billiger
        [altered] bei gleichem Preis geändert
        [added] neu
       *[gone] weggefallen
    }
catalogue-diff-next =
    { $count } { $change ->
        [dearer] teurer
        [cheaper] billiger
        [repriced] teils teurer, teils billiger
        [altered] bei gleichem Preis geändert
        [added] neu
       *[gone] weggefallen
    }
