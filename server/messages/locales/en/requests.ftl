### What is wrong with a request itself, before any rule is asked: headers, bodies, parameters.

## Headers

if-match-needed = Send the ETag of what you change as If-Match.
if-match-shape = If-Match must be the ETag of an earlier answer.
if-match-any = If-Match: * names no version; send the ETag of what you change.
version-ahead = The season is at version { $newest }.
idempotency-key-needed = Send a header Idempotency-Key of 1 to { $most } characters.
idempotency-key-reused = This Idempotency-Key was used for another request; choose a new one.

## Bodies

body-too-large = The body may have at most { $limit } bytes.
form-files = The form takes one file.
form-fields = The form has fewer fields.
json-malformed = { $cause }.
library-words = { $words }.
field-missing = This field is missing.
field-unknown = { $field } is no field here; known: { $known }.
word-unknown = { $word } is not known here; give { $known }.
one-of = one of { $names }
id-needed = Must be an id, a UUID such as 0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64.
number-range = Must be a whole number from { $least } to { $most }.
wrong-type = Expected { $wanted }, not { $given }.
a-whole-number = a whole number
a-text = a text
an-object = an object
an-array = an array
a-truth-value = a boolean

## Civil times and dates

civil-time-needed = Give local time of the season without zone or offset, such as 2026-03-03T19:00:00.
date-needed = Give a date that exists, such as 2026-03-03.
time-of-day-needed = Give a time of day of the season without zone or offset, such as 19:00:00.

## Parameters of the address

parameter-range = { $parameter } is from { $least } to { $most }, not { $actual }.
parameter-missing = The parameter `{ $parameter }` is missing.
parameter-twice = The parameter `{ $parameter }` stands twice.
parameter-unknown = { $parameter } is no parameter here; known: { $known }.
parameter-number = `{ $parameter }` must be a whole number within its range.
parameter-fault = `{ $parameter }`: { $fault }
query-number = A number in the query is no whole number, or is out of its range.
