### What is wrong with a list or a list rule as it was sent.

list-fault-too-many = has { $entries } entries; at most { $most } are allowed
list-fault-twice = the key "{ $key }" is used by more than one entry
list-fault-joins-nothing = joins "{ $key }", which is no other entry of this list

list-rule-fault-no-bound = must say "least", "most" or both
list-rule-fault-nothing-named = must name at least one
list-rule-fault-points = must be from { $least } to { $most }
list-rule-fault-more-than-all = must not be more than all of it
list-rule-fault-weeks = must be different weeks of a season, at least one
