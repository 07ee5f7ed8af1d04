### Refusals about army lists: drafts, handing in, opening, leave.

list-faults = Die Liste hat Fehler.
list-text-too-long = Eine Liste als Text hat höchstens { $most } Bytes.

## Drafts

draft-revision-needed = Es gibt schon einen Entwurf; nennen Sie die Fassung, die Sie ändern.
draft-stale = Der Entwurf wurde inzwischen anderswo gespeichert. Öffnen Sie die Seite neu.

## Handing in and opening

deadline-passed = Die Abgabe ist vorbei. Bitten Sie die Leitung um Erlaubnis, später abzugeben.
list-stands = Der Abgabeschluss ist vorbei; die abgegebene Liste gilt.
round-drawn = Die Runde ist ausgelost; es kommt keine Liste mehr herein.
lists-not-open-yet = Die Listen werden geöffnet, wenn Abgabe und Kulanz vorbei sind.

## Leave to hand in late

own-late-leave = Das muss Ihnen jemand anderes erlauben.
late-leave-given = Diese Person hat die Erlaubnis schon.
