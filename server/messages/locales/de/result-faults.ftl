### Warum sich ein Ergebniszettel nicht ändert, und was ein Szenario nicht ergeben haben kann.

slip-fault-not-reported = es ist kein Ergebnis gemeldet
slip-fault-own-report = die andere Seite muss auf diese Meldung antworten
slip-fault-final = das Ergebnis steht; nur ein Entscheid ändert es
slip-fault-answered = auf eine Antwort wird nicht mehr gewartet; nur ein Entscheid ändert das Ergebnis
slip-fault-disputed = das Ergebnis ist strittig; das entscheidet eine Schiedsperson
slip-fault-own-game = niemand entscheidet über die eigene Partie

count-fault-in-leg = Durchgang { $leg }: { $fault }
count-fault-unknown-item = das Blatt zählt kein { $item }
count-fault-other-role = { $item } wird für die andere Rolle gezählt
count-fault-computed = { $item } ergibt sich aus der anderen Seite und wird nicht eingegeben
count-fault-over-most = { $item } kann höchstens { $limit } sein, nicht { $actual }
count-fault-over-army = { $item } zählt Punkte einer Armee von { $limit }, nicht { $actual }
count-fault-over-field = diese Seite darf mit höchstens { $limit } Punkten beginnen, nicht mit { $actual }
count-fault-legs = Durchgänge des Szenarios: { $limit }; gezählte Durchgänge: { $actual }
