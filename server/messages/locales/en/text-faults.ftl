### What is wrong with a name, a key or a time of day. Each goes on from what it is about: "The name must not be empty."

text-empty = must not be empty
text-too-long = has { $actual } characters; at most { $limit } are allowed
text-character = contains the character U+{ $code }, which is not allowed
text-marks = stacks too many marks on one letter
text-key-shape = must be lower-case letters and digits joined by single hyphens
text-entry-key = must be 1 to { $longest } letters, digits, hyphens or underscores

civil-gap = does not exist in { $zone }: the clocks jump over it
civil-fold = happens twice in { $zone }: the clocks go back over it
civil-year = lies outside the years { $first } to { $last }
civil-leap-second = names a 61st second

text-share-of-nothing = the whole of a share must be at least 1
