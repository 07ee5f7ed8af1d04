### Refusals about catalogues and the tables they are imported from.

catalogue-name-taken = The club has a catalogue of this name.
catalogue-faults = The catalogue has { $faults } faults; nothing was imported.

## Where in a table

cell-fault = Row { $row }, column { $column } ({ $header }): { $fault }
row-fault = Row { $row }: { $fault }
