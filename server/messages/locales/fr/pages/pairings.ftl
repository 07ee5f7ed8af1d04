### Rounds: proposed, proven, published, repaired.

## The pairings of a week

pairings = Appariements
pairings-none = Les parties de cette semaine ne sont pas encore appariées.
round-n = Ronde { $round }
round-of = Ronde { $round } sur { $rounds } de cette semaine
which-round = Quelle ronde

## Pairing a week

pairing-desk = Apparier la semaine
pairing-text = La proposition est, preuve à l’appui, la meilleure qui soit selon les souhaits de la saison. Personne d’autre ne la voit avant sa publication.
propose = Proposer une ronde
propose-again = Recalculer
publish = Publier la ronde
publish-text = Tout le monde voit aussitôt les appariements. Une ronde publiée n’est jamais tirée de nouveau.
order = Consigne
pin-pair = Imposé
forbid-pair = Interdit
as-it-comes = Comme il vient
another-pair = Une consigne pour une autre paire
and-player = et
orders-text = Le reste est recalculé autour de vos consignes. Tout le monde les verra.
close-week = Clôturer la semaine
close-week-text = Fige le classement de cette semaine. Les décisions ultérieures en font une nouvelle version, dont la trace est gardée.
week-closed = Cette semaine est clôturée. Son classement est acquis ; une décision ultérieure en fait une nouvelle version, avec son motif.

## Why these pairings

why-pairings = Pourquoi ces appariements
published-at = Publiée le
proof-holds = Prouvé : aucun appariement ne sacrifie moins. Le vérificateur confirme.
proof-fails = La preuve ne tient pas. Cette ronde ne peut pas être publiée.
orders-given = Consignes des organisateurs
draw-of-round = Le tirage de cette ronde
draw-text = Fait du secret de la saison et des données figées de cette ronde, pour que personne n’ait pu le choisir.

## Repairing a round

repair = Réparer la ronde
repair-text = Quelqu’un ne peut pas venir, ou une table ou une soirée est perdue. On change le moins de parties possible, preuve à l’appui ; une partie déjà déclarée reste.
repair-would = Ce qui changerait
repair-publish = Publier la réparation
repair-publish-text = Tout le monde voit aussitôt les changements et le motif. La version précédente reste lisible.
repair-away = Qui ne peut plus venir
repair-tables = Tables désormais disponibles (0 : pas de soirée)
repair-reason-hint = Tout le monde peut le lire. Ne dites rien de la santé de qui que ce soit.
repair-preview = Montrer ce qui changerait
