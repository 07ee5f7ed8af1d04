### Refusals about the painting log and its photos.

stages-fault = The models are not valid: { $fault }.
claim-week = Painting is claimed for a week that is announced and not closed.
claim-checkers = The opponent of that week or a referee looks at painted models.

## Photos

photo-not-sent = Send the photo first; only one of your own counts.
photo-used = This photo stands behind another claim of yours; take a new one.
minor-photo = No photos from a minor's account; the opponent or a referee looks at the models at the table.
too-many-photos = A player has at most { $most } photos in a season; take one away that is not needed.
photo-animated = A photo is one picture, not an animation.
photo-side = A photo may have { $limit } pixels a side; this one has { $actual }.
photo-pixels = A photo may have { $limit } pixels; this one has { $actual }.
photo-damaged = The picture is torn or damaged; send it again.
photo-name = The name of a photo has 64 hexadecimal digits.
