### Was mit einer Liste oder einer Listenregel nicht stimmt, wie sie gesendet wurde.

list-fault-too-many = hat { $entries } Einträge; höchstens { $most } sind erlaubt
list-fault-twice = der Schlüssel „{ $key }“ steht an mehr als einem Eintrag
list-fault-joins-nothing = schließt sich „{ $key }“ an, und das ist kein anderer Eintrag dieser Liste

list-rule-fault-no-bound = muss „least“, „most“ oder beides nennen
list-rule-fault-nothing-named = muss mindestens eines nennen
list-rule-fault-points = möglich sind { $least } bis { $most }
list-rule-fault-more-than-all = darf nicht mehr als das Ganze sein
list-rule-fault-weeks = müssen verschiedene Wochen einer Saison sein, mindestens eine
