### Rounds: proposed, proven, published, repaired.

## The pairings of a week

pairings = Pairings
pairings-none = The games of this week are not paired yet.
round-n = Round { $round }
round-of = Round { $round } of { $rounds } in this week
which-round = Which round

## Pairing a week

pairing-desk = Pair the week
pairing-text = The proposal is the best there is by the season's wishes, with proof. Nobody else sees it before you publish it.
propose = Propose a round
propose-again = Solve again
publish = Publish the round
publish-text = Everybody sees the pairings at once. A published round is never drawn again.
order = Order
pin-pair = Must be
forbid-pair = Must not be
as-it-comes = As it comes
another-pair = An order about another pair
and-player = and
orders-text = The rest is solved again around your orders. Everybody will see them.
close-week = Close the week
close-week-text = Freezes the standings of this week. Later rulings make a new, traced version.
week-closed = This week is closed. Its table stands; a later ruling makes a new version, with its reason.

## Why these pairings

why-pairings = Why these pairings
published-at = Published
proof-holds = Proven: no pairing gives up less. The checker agrees.
proof-fails = The proof does not hold. This round cannot be published.
orders-given = Orders of the organiser
draw-of-round = The draw of this round
draw-text = Made of the season's secret and of this round's locked inputs, so that nobody could choose it.

## Repairing a round

repair = Repair the round
repair-text = Somebody cannot come, or a table or a night is lost. The fewest games are changed, with proof; a game that is reported already stays.
repair-would = What would change
repair-publish = Publish the repair
repair-publish-text = Everybody sees the changes and the reason at once. The version before stays readable.
repair-away = Who cannot come now
repair-tables = Tables that there are now (0: no such night)
repair-reason-hint = Everybody can read it. Say nothing of anybody's health.
repair-preview = Show what would change
