### Refusals about clubs, their people and invitations.

last-owner = Das ist die einzige Person, der der Verein gehört; übertragen Sie ihn erst noch jemandem.
club-slug-shape = Ein Kurzname hat 2 bis { $longest } Kleinbuchstaben, Ziffern und einzelne Bindestriche.
club-slug-taken = Ein anderer Verein hat diesen Kurznamen.
already-member = Sie gehören diesem Verein schon an.
minor-record = Die Laufbahn von Minderjährigen bleibt im Verein.
no-invited-owner = Niemand wird als Besitzer eingeladen.
invitation-faults = Die Einladung ist so nicht gültig.
invitation-unknown = Dieser Code ist unbekannt, verbraucht oder abgelaufen. Bitten Sie um einen neuen.
