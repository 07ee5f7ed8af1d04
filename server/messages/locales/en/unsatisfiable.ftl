### Rules of a season that no list can satisfy.

unsatisfiable-kind = No unit of the catalogue is of the kind { $kind }.
unsatisfiable-keyword = No unit of the catalogue has the keyword { $keyword }.
unsatisfiable-contradiction = The rule allows fewer than it demands.
unsatisfiable-no-list = In week { $week } no list of { $faction } can be legal.
unsatisfiable-returns-too-much = In week { $week } at least { $least } points of { $faction } must return; the cap is { $cap }.
unsatisfiable-grows-too-slowly = In week { $week } a list of { $faction } needs { $least } points; at most { $most } can be reached.
