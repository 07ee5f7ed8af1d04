### Regeln einer Saison, die keine Liste einhalten kann.

unsatisfiable-kind = Keine Einheit des Katalogs ist von der Art { $kind }.
unsatisfiable-keyword = Keine Einheit des Katalogs hat das Stichwort { $keyword }.
unsatisfiable-contradiction = Die Regel erlaubt weniger, als sie verlangt.
unsatisfiable-no-list = In Woche { $week } kann keine Liste von { $faction } gültig sein.
unsatisfiable-returns-too-much = In Woche { $week } müssen von { $faction } mindestens { $least } Punkte wiederkommen; die Grenze ist { $cap }.
unsatisfiable-grows-too-slowly = In Woche { $week } braucht eine Liste von { $faction } { $least } Punkte; höchstens { $most } sind erreichbar.
