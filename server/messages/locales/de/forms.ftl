### What is wrong with a field of a form on a page, before any rule is asked.

form-unreadable = Einige Felder sind nicht lesbar.
form-empty = { $label }: Bitte ausfüllen.
form-number = { $label }: „{ $typed }“ ist keine ganze Zahl von { $least } bis { $most }.
form-date = { $label }: „{ $typed }“ ist kein Tag des Kalenders.
form-time = { $label }: „{ $typed }“ ist keine Uhrzeit wie 19:00.
form-choice = { $label }: Bitte wählen Sie etwas aus der Liste.
form-broken = Dieses Formular ist nicht so, wie seine Seite es gemacht hat. Laden Sie die Seite neu.
