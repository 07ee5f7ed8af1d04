### Refusals that many rooms share.

## Names and reasons that people type, and times

name-fault = The name { $fault }.
handle-fault = The handle { $fault }.
household-fault = The household { $fault }.
reason-fault = The reason { $fault }.
unit-fault = The unit { $fault }.
time-fault = The time { $fault }.

## Frames of what a rule says

sentence = { $fault }.
sentences = { $sentences }
not-done = Not done: { $why }.

## Who may do it

role-forbids = The role { $role } does not allow this.
organiser-only = Only the organiser may do this.

## Sizes

from-one-to = Must be from 1 to { $most }.
