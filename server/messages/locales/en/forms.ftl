### What is wrong with a field of a form on a page, before any rule is asked.

form-unreadable = Some fields could not be read.
form-empty = { $label }: please fill this in.
form-number = { $label }: "{ $typed }" is not a whole number from { $least } to { $most }.
form-date = { $label }: "{ $typed }" is not a day of the calendar.
form-time = { $label }: "{ $typed }" is not a time of day such as 19:00.
form-choice = { $label }: please choose one of the list.
form-broken = This form is not as its page made it. Load the page again.
