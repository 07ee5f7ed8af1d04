### The frame of every page, what visitors meet first, pages that refuse, and words that many rooms share.

### Glossary of the French texts. People are addressed as "vous"; words for roles stay short and masculine, and a
### sentence is turned so that it need not agree ("votre absence est excusée") wherever that reads naturally.
### escalation league: ligue évolutive - season: saison - week: semaine - night: soirée - club: club
### cap: plafond (de points) - league points: points de ligue - faction: faction - unit: unité - model: figurine
### list: liste - hand in: rendre - deadline: date limite - grace: tolérance - late leave: autorisation de retard
### seal: sceller (état: sous scellé) - receipt: reçu - open a list: ouvrir - draft: brouillon
### check: vérification - breach: à corriger - catalogue: catalogue - version: version
### scenario sheet: fiche de scénario - reveal: dévoiler - side: camp - role: rôle - leg: manche - turn: tour
### round: ronde - pairing: appariement - pair: apparier - round robin: toutes rondes - bye: exempt - order: consigne
### draw of lots: tirage - secret (seed): secret - fingerprint, digest: empreinte - proof: preuve
### game: partie - result slip: feuille de résultat - report: déclarer - dispute: contester - rule, ruling: trancher,
### décision - drawn game: match nul - concession: abandon - no-show: forfait - margin: écart - void: annulée
### standings: classement - tie-break: départage - ledger: carnet de points - record (W-D-L): V-N-D
### painting log: carnet de peinture - claim: déclaration - primed: sous-couchée - finished (paint): achevée
### trail: journal - reminder: rappel - board: tableau de bord - organiser: organisateur - officer: responsable
### referee: arbitre - award: distinction - prize: prix - certificate (paper): diplôme - table card: carton de table
### wall screen: écran mural - record over the seasons: parcours - repair: réparer, réparation - reason: motif

## The frame

skip = Aller au contenu
site-menu = Site
season-menu = Saison
you-are-here = Vous êtes ici
my-clubs = Mes clubs
sign-in = Se connecter
sign-out = Se déconnecter
register = Créer un compte
choose-language = Langue
change = Changer
footer = Une ligue évolutive, semaine après semaine.

## The front page

welcome = Des ligues qui grandissent de semaine en semaine
welcome-text = Une ligue évolutive commence avec de petites armées. Chaque semaine, le plafond de points monte ; chacun ajoute quelque chose, le peint et joue une partie. Tallyhost tient les listes, les appariements, les résultats et le classement.
welcome-onlooker = Pour suivre une saison, ouvrez le lien que le club vous a donné. Vous n’avez pas besoin de compte pour cela.
public-seasons = Saisons publiques
public-seasons-all = Toutes les saisons publiques en tableau (CSV)

## When a page cannot be shown

problem-heading = Cela n’a pas marché
form-faults = Merci de vérifier ceci
refused-not-found = Il n’y a rien ici, ou rien que vous puissiez voir.
refused-csrf = Ce formulaire était trop ancien ou venait d’ailleurs. Rouvrez la page et envoyez-le de nouveau.
refused-unavailable = Le serveur est occupé. Réessayez dans un instant.
refused-internal = L’erreur vient de chez nous. Elle a été notée.
request-id = Numéro de cette requête
to-front-page = Vers la page d’accueil
go-back = Rien n’a été modifié. Si vous revenez à la page précédente, la plupart des navigateurs ont gardé votre saisie.
what-it-means = Ce que cela veut dire

## Words that many rooms share

save = Enregistrer
next = Suivant
back = Précédent
add = Ajouter
reason = Motif
day = Jour
time = Heure
week = Semaine
weeks = Semaines
week-n = Semaine { $week }
night = Soirée
nights = Soirées
table = Table
tables = Tables
game = Partie
result = Résultat
faction = Faction
player = Joueur
total = Total
state = État
points =
    { $points } { $points ->
        [one] point
       *[other] points
    }
other = Autres
as-table = La même chose en tableau
version = version { $version }
zone-note = Heures du fuseau { $zone }.
copy = Copier
label = { $label } :
