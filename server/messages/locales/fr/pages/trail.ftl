### The trail of a season: every act by its name, and by whom.

## The trail

trail = Journal
trail-text = Tout ce qui s’est fait dans cette saison, le plus récent d’abord. Les entrées ne changent jamais : chacune porte l’empreinte de la précédente.
trail-officers = Vous voyez aussi ce que seuls les responsables voient.
trail-empty = Rien pour l’instant.
entry-n = Entrée { $number }
older-entries = Entrées plus anciennes
by-clock = l’horloge
by-officer = un responsable du club

## Acts

did-create-season = Saison créée
did-create-season-from = Saison créée à partir d’une précédente
did-update-season = Saison modifiée
did-start-season = Saison lancée
did-end-season = Saison terminée
did-update-week = Semaine modifiée
did-close-week = Semaine clôturée
did-reveal = Annoncé ou dévoilé à l’heure prévue
did-update-scenario = Fiche de scénario enregistrée
did-join-season = Inscription
did-update-player = Inscription modifiée
did-withdraw-player = Départ de la saison
did-tell-availability = Soirées indiquées
did-seal-list = Liste rendue en retard
did-open-lists = Listes ouvertes
did-open-lists-too-early = Tentative d’ouvrir les listes trop tôt
did-grant-late-leave = Autorisation de retard
did-nudge-players = Rappel envoyé
did-propose-round = Ronde proposée
did-repair-round = Réparation proposée
did-publish-round = Ronde publiée
did-publish-repair = Réparation publiée
did-report-result = Résultat déclaré
did-confirm-result = Résultat confirmé
did-dispute-result = Résultat contesté
did-rule-result = Résultat tranché
did-adjust-points = Points par décision
did-claim-painting = Peinture déclarée
did-verify-claim = Peinture vérifiée
did-refuse-claim = Peinture refusée
did-create-photo = Photo ajoutée
did-delete-photo = Photo retirée
did-create-invitation = Invitation créée
did-delete-invitation = Invitation révoquée
did-accept-invitation = Arrivée au club
did-update-member = Rôle modifié
did-delete-member = Départ ou exclusion du club
did-create-club = Club fondé
did-create-catalogue = Catalogue créé
did-create-catalogue-version = Version d’un catalogue importée
did-create-record-consent = Accord pour un palmarès public
did-delete-record-consent = Accord retiré
did-something = Autre chose
