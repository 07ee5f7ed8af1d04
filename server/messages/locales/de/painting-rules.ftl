### Was Bemalung in einer Saison zählt, in Sätzen.

painting-rule-painted =
    Ein Modell gilt als bemalt, wenn es { $stage ->
        [bare] zusammengebaut
        [primed] grundiert
        [coloured] in Farbe
       *[finished] fertig
    } ist; { $counting ->
        [by-model] eine Einheit zählt anteilig nach bemalten Modellen
       *[whole-units] eine Einheit zählt, wenn alle ihre Modelle bemalt sind
    }. Eine bemalte Einheit bleibt bemalt.
painting-rule-threshold = Eine Liste, die zu mindestens { $share } bemalt ist, gibt { $points } je Woche.
painting-rule-tiers = Der bemalte Anteil der Liste gibt je Woche: { $tiers }.
painting-rule-tier = { $points } ab { $share }
painting-rule-proportional = Der bemalte Anteil der Liste gibt diesen Anteil von { $points } je Woche, abgerundet.
painting-rule-units = Jede in der Woche fertige Einheit gibt { $each }, höchstens { $most } je Woche.
painting-rule-points = Je { $step } in der Woche fertige Armeepunkte geben { $each }, höchstens { $most } je Woche.
painting-rule-checked = Gemeldetes wird { $checkers } geprüft.
painting-rule-opponent = vom Gegenüber am Tisch
painting-rule-referee = von einer Schiedsperson
painting-rule-photo = von einer Schiedsperson nach Foto
