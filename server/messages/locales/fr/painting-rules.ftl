### Ce que la peinture rapporte dans une saison, en toutes phrases.

painting-rule-painted =
    Une figurine est peinte quand elle est { $stage ->
        [bare] montée
        [primed] sous-couchée
        [coloured] en couleurs
       *[finished] achevée
    } ; { $counting ->
        [by-model] une unité compte au prorata de ses figurines peintes
       *[whole-units] une unité compte quand toutes ses figurines sont peintes
    }. Une unité peinte le reste.
painting-rule-threshold = Une liste peinte à { $share } au moins donne { $points } par semaine.
painting-rule-tiers = La part peinte de la liste donne par semaine : { $tiers }.
painting-rule-tier = { $points } à partir de { $share }
painting-rule-proportional = La part peinte de la liste donne cette même part de { $points } par semaine, arrondie vers le bas.
painting-rule-units = Chaque unité achevée dans la semaine donne { $each }, { $most } au plus par semaine.
painting-rule-points = Chaque tranche de { $step } points d’armée achevés dans la semaine donne { $each }, { $most } au plus par semaine.
painting-rule-checked = Les déclarations sont vérifiées par { $checkers }.
painting-rule-opponent = l’adversaire à la table
painting-rule-referee = un arbitre
painting-rule-photo = un arbitre sur photo
