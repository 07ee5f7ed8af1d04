### What makes a scenario sheet unplayable or its score doubtful.

sheet-fault-item-count = a sheet has 1 to { $most } items, this one has { $items }
sheet-fault-turns = a leg has 1 to { $most } turns, not { $turns }
sheet-fault-key-twice = the key { $item } is used twice
sheet-fault-number = { $item }: numbers lie between 1 and { $most }, not { $actual }
sheet-fault-grade = { $item }: steps and bands must start above 0 %, rise, and be worth more as they rise
sheet-fault-exclusive-for-one-role = { $item }: an item of one role cannot be exclusive
sheet-fault-no-roles = { $item }: the sheet has no roles
sheet-fault-rest-of-nothing = { $item }: a rest needs a counted item that the opposing role alone scores
sheet-fault-rest-too-small = { $item }: the opponent's item can be worth { $actual }, more than the { $limit } shared out
sheet-fault-joint-cap = the joint cap of { $cap } must name two or more items of the sheet
sheet-fault-legs-without-roles = two legs need an attacker and a defender
sheet-fault-fields = a side starts with more than 0 % and at most 100 % of its list, not { $share }
sheet-fault-table-edge = a table measures 1 to { $most } cm, not { $edge }
sheet-fault-off-table = { $label } lies off the table
