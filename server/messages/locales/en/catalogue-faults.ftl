### What is wrong with a catalogue, as data or as a spreadsheet, and what a new version changes.

catalogue-fault-twice = "{ $name }" is there more than once
catalogue-fault-out-of-range = is { $actual }; it must be from { $least } to { $most }
catalogue-fault-count = has { $actual } members; it must have from { $least } to { $most }
catalogue-fault-joins-nothing = no unit of this faction carries "{ $keyword }"

## Spreadsheets

csv-rows = a table has at most { $most } units; nothing below was read
csv-columns = has { $columns } columns; at most { $most }
csv-unknown-column = no such column is known
csv-column-twice = this column is there twice
csv-missing-column = the column "{ $column }" is missing
csv-cells = the row has { $cells } cells, the header { $columns }
csv-encoding = is not UTF-8 text
csv-number = "{ $text }" is no whole number
csv-range = must rise, by fewer than { $sizes } models
csv-sizes = has { $numbers } numbers for { $sizes } sizes
csv-option = "{ $text }" is not: NAME POINTS [per model] [up to N] [group NAME]

## What a new version changes

catalogue-diff = { $changes }
catalogue-diff-none = no unit changed
catalogue-diff-first =
    { $count } { $count ->
        [one] unit
       *[other] units
    } { $change ->
        [dearer] dearer
        [cheaper] cheaper
        [repriced] repriced up and down
        [altered] altered at the same price
        [added] added
       *[gone] gone
    }
catalogue-diff-next =
    { $count } { $change ->
        [dearer] dearer
        [cheaper] cheaper
        [repriced] repriced up and down
        [altered] altered at the same price
        [added] added
       *[gone] gone
    }
