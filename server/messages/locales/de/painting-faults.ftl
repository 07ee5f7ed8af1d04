### Was mit Regeln der Bemalung nicht stimmt, und warum eine Meldung nicht angenommen wird.

painting-fault-painted-from = ein Modell gilt frühestens ab „in Farbe“ oder „fertig“ als bemalt
painting-fault-amount = ein Bonus zählt 1 bis { $limit } Punkte, nicht { $actual }
painting-fault-threshold = eine Schwelle liegt über 0 % und höchstens bei 100 %, nicht bei { $share }
painting-fault-tiers = Stufen müssen steigen: die ab { $share } tut es nicht
painting-fault-step = ein Bonus für neu fertige Punkte braucht einen Schritt von mindestens 1 Punkt
painting-fault-nobody-checks = Boni brauchen jemanden, der die Meldungen prüfen darf

claim-fault-models = eine Einheit hat im Bemalungsbuch 1 bis { $most } Modelle, nicht { $models }
claim-fault-nothing-new = so weit zeigt das Bemalungsbuch die Modelle schon
claim-fault-goes-back = ein bemaltes Modell bleibt bemalt; das Bemalungsbuch zeigt mehr
claim-fault-photo-used = dieses Foto steht schon hinter einer anderen Meldung
claim-fault-not-accepted =
    in dieser Saison prüft das niemand als { $checker ->
        [opponent] Gegenüber am Tisch
        [referee] Schiedsperson
       *[photo] Schiedsperson nach einem Foto
    }
claim-fault-no-photo = zu dieser Meldung gibt es kein Foto
claim-fault-own-claim = niemand prüft die eigene Meldung
claim-fault-decided = über die Meldung ist schon entschieden
