### The painting log: claims, photos and checks.

## Claiming

painting = Painting
painting-text = Say how far your models are. Somebody else looks at them before they count: your opponent at the table, or a referee.
stage-bare = bare
stage-primed = primed
stage-coloured = coloured
stage-finished = finished
models-bare = { $models } bare
models-primed = { $models } primed
models-coloured = { $models } coloured
models-finished = { $models } finished
models-finished-of = { $finished } / { $models } finished
claim = Claim
photo = Photo (if you like)
photo-hint = Models only: no people, no minors.
photo-of = { $unit }, painted by { $player }
photo-delete = Take this photo away

## Taking care

painting-care = Take care
care-spray = Spray cans and airbrush: outdoors or with an extractor, with a mask that fits the paint, away from flames, and not on club premises unless a place is marked for it.
care-blades = Blades: cut away from your hand, on a mat, with a fresh blade, and put the cap back on.
care-minors = Minors do both only with a responsible adult.
photo-caution = Photos: models only, no people, above all no minors, and nothing that tells where you live. Place and time are taken out of the picture. The club alone sees it, and you can take it away again.
care-local = Local rules come first.

## Checking

claims = Claims
no-claims = Nobody has claimed anything yet.
claims-n = claims: { $count }
to-check = To be checked by you or others: { $count }
claim-open = to be checked
claim-verified = checked
claim-refused = refused
check-claim = Check
verify-claim = I have seen it
refuse-claim = Refuse
