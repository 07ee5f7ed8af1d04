### Ce qui ne va pas dans les règles de peinture, et pourquoi une déclaration n’est pas reçue.

painting-fault-painted-from = une figurine ne compte comme peinte qu’à partir de « en couleurs » ou « achevée »
painting-fault-amount = un bonus vaut de 1 à { $limit } points, pas { $actual }
painting-fault-threshold = un seuil est au-dessus de 0 % et au plus à 100 %, pas à { $share }
painting-fault-tiers = les paliers doivent croître : celui à partir de { $share } ne le fait pas
painting-fault-step = un bonus pour des points nouvellement achevés demande un pas d’au moins 1 point
painting-fault-nobody-checks = des bonus demandent quelqu’un qui puisse vérifier les déclarations

claim-fault-models = une unité a de 1 à { $most } figurines au carnet de peinture, pas { $models }
claim-fault-nothing-new = le carnet de peinture montre déjà ces figurines à ce point
claim-fault-goes-back = une figurine peinte le reste ; le carnet de peinture en montre plus
claim-fault-photo-used = cette photo a déjà servi à une autre déclaration
claim-fault-not-accepted =
    dans cette saison, une déclaration n’est pas vérifiée par { $checker ->
        [opponent] l’adversaire à la table
        [referee] un arbitre
       *[photo] un arbitre sur photo
    }
claim-fault-no-photo = cette déclaration n’a pas de photo
claim-fault-own-claim = personne ne vérifie sa propre déclaration
claim-fault-decided = la déclaration est déjà tranchée
