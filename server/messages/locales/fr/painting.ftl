### Refusals about the painting log and its photos.

stages-fault = Les figurines ne conviennent pas : { $fault }.
claim-week = La peinture se déclare pour une semaine annoncée et non close.
claim-checkers = C’est l’adversaire de cette semaine-là ou un arbitre qui regarde les figurines peintes.

## Photos

photo-not-sent = Envoyez d’abord la photo ; seule une des vôtres compte.
photo-used = Cette photo appuie déjà une autre de vos déclarations ; prenez-en une nouvelle.
minor-photo = Pas de photos depuis le compte d’un mineur ; l’adversaire ou un arbitre regarde les figurines à la table.
too-many-photos = Un joueur a au plus { $most } photos par saison ; retirez-en une qui ne sert pas.
photo-animated = Une photo est une seule image, pas une animation.
photo-side = Une photo peut avoir { $limit } pixels de côté ; celle-ci en a { $actual }.
photo-pixels = Une photo peut avoir { $limit } pixels ; celle-ci en a { $actual }.
photo-damaged = L’image est incomplète ou abîmée ; renvoyez-la.
photo-name = Le nom d’une photo a 64 chiffres hexadécimaux.
