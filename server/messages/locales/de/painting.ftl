### Refusals about the painting log and its photos.

stages-fault = Die Modelle stimmen nicht: { $fault }.
claim-week = Bemalung wird für eine Woche gemeldet, die angekündigt und nicht abgeschlossen ist.
claim-checkers = Bemalte Modelle sieht sich das Gegenüber jener Woche an oder eine Schiedsperson.

## Photos

photo-not-sent = Schicken Sie zuerst das Foto; es zählt nur ein eigenes.
photo-used = Dieses Foto steht schon hinter einer anderen Meldung; machen Sie ein neues.
minor-photo = Von Konten Minderjähriger kommen keine Fotos; das Gegenüber oder eine Schiedsperson sieht die Modelle am Tisch an.
too-many-photos = Höchstens { $most } Fotos sind in einer Saison möglich; nehmen Sie eines weg, das nicht gebraucht wird.
photo-animated = Ein Foto ist ein einzelnes Bild, keine Folge von Bildern.
photo-side = Ein Foto darf { $limit } Bildpunkte je Seite haben; dieses hat { $actual }.
photo-pixels = Ein Foto darf { $limit } Bildpunkte haben; dieses hat { $actual }.
photo-damaged = Das Bild ist unvollständig oder beschädigt; senden Sie es noch einmal.
photo-name = Der Name eines Fotos hat 64 hexadezimale Ziffern.
