### What every problem of a kind is called.

## Of the request itself

problem-malformed-json = Le contenu n’est pas du JSON
problem-broken-body = Le contenu s’est interrompu ou ses morceaux (chunks) sont erronés
problem-invalid-parameter = Un paramètre n’est pas valable
problem-sign-in-needed = Connectez-vous d’abord
problem-csrf = Ce formulaire ne venait pas de notre propre page
problem-not-found = Il n’y a rien ici pour vous
problem-method-not-allowed = Pas de cette manière
problem-not-acceptable = Pas dans ce format
problem-too-slow = Le contenu n’est pas arrivé à temps
problem-payload-too-large = Le contenu est trop volumineux
problem-unsupported-media-type = Le contenu n’est pas d’un type accepté ici
problem-unknown-field = Un champ n’est pas connu ici
problem-too-many-requests = Trop de requêtes ; attendez un peu
problem-unavailable = Pas maintenant ; réessayez bientôt
problem-internal = Une erreur de notre part ; elle a été notée

## Accounts

problem-invalid-credentials = L’adresse e-mail et le mot de passe ne vont pas ensemble
problem-invalid-token = Le jeton n’est pas valable
problem-token-reuse = Un jeton de renouvellement a servi deux fois
problem-too-many-attempts = Trop d’essais de connexion manqués
problem-password-too-short = Le mot de passe est trop court
problem-password-compromised = Le mot de passe est trop facile à deviner
problem-guardian-consent-required = Un parent ou un tuteur doit donner son accord

## Who may do it

problem-forbidden = Votre rôle ne le permet pas
problem-conflict-of-interest = Pas pour une affaire qui vous concerne
problem-approval-required = Quelqu’un d’autre doit l’approuver
problem-not-a-participant = Seulement les deux joueurs de la partie
problem-self-confirmation = Personne ne confirme sa propre déclaration

## Fields

problem-validation = Un ou plusieurs champs ne sont pas valables
problem-invalid-name = Le nom n’est pas valable
problem-invalid-text = Le texte n’est pas valable
problem-unknown-zone = Ce fuseau horaire n’existe pas
problem-invalid-local-time = Cette heure tombe dans un changement d’heure

## Clubs and catalogues

problem-slug-taken = Le nom court est pris
problem-already-member = Déjà membre
problem-last-owner = Un club garde un propriétaire
problem-catalogue-name-taken = Le club a déjà un catalogue de ce nom
problem-invalid-catalogue = Le catalogue a des erreurs

## Seasons and their players

problem-rules-unsatisfiable = Aucune liste ne peut respecter les règles
problem-season-state = La saison n’en est pas à ce point
problem-season-fixed = Fixé depuis le début de la saison
problem-season-full = Il ne reste plus de place
problem-already-registered = Déjà inscrit dans cette saison
problem-handle-taken = Ce nom est pris dans la saison
problem-player-left = Le joueur s’est retiré

## Lists

problem-deadline-passed = La date limite est passée
problem-deadline-immutable = Cette date limite ne peut plus être déplacée ainsi
problem-list-locked = Les listes de cette semaine sont ouvertes
problem-deadline-ahead = La date limite n’est pas encore passée
problem-points-cap-exceeded = La liste coûte plus que le plafond de points
problem-list-breaks-rules = La liste enfreint une règle
problem-version-mismatch = Cela a été modifié entre-temps
problem-precondition-required = Dites quelle version vous modifiez, dans If-Match
problem-lists-sealed = Les listes sont encore sous scellé

## Rounds

problem-round-already-paired = La ronde est publiée
problem-not-enough-players = Trop peu de joueurs
problem-no-round-possible = Aucune ronde ne respecte toutes les limites fermes
problem-commitment-mismatch = La proposition ne découle pas de ses données
problem-week-state = La semaine n’en est pas à ce point
problem-reminded-already = Un rappel vient déjà d’être envoyé

## Results and the table

problem-round-not-open = La partie n’a pas commencé
problem-result-final = Le résultat est acquis
problem-slip-state-changed = La feuille de résultat a reçu une réponse entre-temps
problem-impossible-score = Des décomptes impossibles
problem-unknown-version = Cette version n’existe pas
problem-version-ahead = La saison n’en est pas encore à cette version
problem-too-open = Trop de choses sont ouvertes pour une réponse exacte
problem-idempotency-key-required = Une Idempotency-Key est nécessaire
problem-idempotency-key-reused = L’Idempotency-Key a servi à une autre requête

## Painting

problem-photo-already-used = La photo a déjà servi
problem-too-many-photos = Plus de photos dans cette saison
problem-image-too-large = L’image est trop grande
problem-invalid-image = L’image est illisible
problem-claim-state-changed = La déclaration a été tranchée entre-temps
