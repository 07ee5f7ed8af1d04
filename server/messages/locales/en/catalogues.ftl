### Refusals about catalogues and the tables they are imported from.

catalogue-name-taken = The club has a catalogue of this name.
catalogue-faults = The catalogue has { $faults } faults; nothing was imported.

## Where in a table

cell-fault = Row { $row }, column { $column } ({ $header }): { $fault }
row-fault = Row { $row }: { $fault }

## What is wrong there

table-too-long = a table has at most { $most } units; nothing below was read
table-too-wide = has { $columns } columns; at most { $most }
column-unknown = no such column is known
column-twice = this column is there twice
column-missing = the column "{ $column }" is missing
row-length = the row has { $cells } cells, the header { $columns }
cell-encoding = is not UTF-8 text
cell-number = "{ $text }" is no whole number
cell-range = must rise, by fewer than { $most } models
cell-sizes = has { $numbers } numbers for { $sizes } sizes
cell-option = "{ $text }" is not: NAME POINTS [per model] [up to N] [group NAME]
