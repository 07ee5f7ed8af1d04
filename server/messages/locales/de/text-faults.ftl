### Was mit einem Namen, einem Schlüssel oder einer Uhrzeit nicht stimmt. Jedes setzt fort, worum es geht: „Der Name darf nicht leer sein.“

text-empty = darf nicht leer sein
text-too-long = hat { $actual } Zeichen; höchstens { $limit } sind erlaubt
text-character = enthält das Zeichen U+{ $code }, das nicht erlaubt ist
text-marks = häuft zu viele Zeichen auf einem Buchstaben
text-key-shape = darf nur Kleinbuchstaben und Ziffern mit einzelnen Bindestrichen haben
text-entry-key = darf nur 1 bis { $longest } Buchstaben, Ziffern, Bindestriche oder Unterstriche haben

civil-gap = gibt es in { $zone } nicht: Die Uhr springt darüber
civil-fold = gibt es in { $zone } zweimal: Die Uhr wird zurückgestellt
civil-year = liegt außerhalb der Jahre { $first } bis { $last }
civil-leap-second = nennt eine 61. Sekunde

text-share-of-nothing = das Ganze eines Anteils muss mindestens 1 sein
