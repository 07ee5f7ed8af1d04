### What leaves the site: downloads and checks of them, sheets to print, certificates, and the wall screen.

## Downloads

downloads = Téléchargements
whole-season = Toute la saison en un seul fichier
whole-season-text = Tout ce qui peut être connu maintenant : semaines, listes ouvertes avec leurs reçus, rondes avec tirage et preuve, résultats, classement. Ce qui est encore scellé ou pas encore dévoilé n’y figure pas.
whole-season-get = Télécharger season.json
archive = Ligne par ligne pour les tableurs (ZIP)
archive-later = Quand la saison sera terminée, la même chose sera ici ligne par ligne pour les tableurs, dans un ZIP.
check-yourself = Vérifiez par vous-même
check-yourself-text = Le programme vérifie le fichier sans réseau : reçus, tirages et preuves ; chaque ronde est appariée de nouveau, et chaque ligne du classement est recalculée à partir des lignes de son carnet de points. Les parts peintes demandent le catalogue, que le fichier ne contient pas ; le programme ne vérifie donc pas que chaque ligne découle des règles, des déclarations de peinture et des feuilles de résultat, ni les distinctions.
check-before-end = Les tirages pourront être vérifiés une fois la saison terminée et le secret dévoilé.
spreadsheets = Pour les tableurs et les programmes
spreadsheets-text = Toujours l’état actuel, sans compte.
spreadsheets-closed = Cette saison est réservée au club ; elle n’a donc pas de feuilles de calcul publiques.
ledgers = Carnet de points de chaque joueur

## On paper

print-week = Imprimer cette semaine
print-slip = Ouvrez la feuille de résultat avec votre téléphone
print-sheet = Feuille de la semaine
print-hint = Une page A4. Imprimez-la avec la commande de votre navigateur.
table-cards = Cartons de table
cards-text = Découpez le long des pointillés et posez un carton sur chaque table. Son code ouvre la feuille de résultat.

## The certificate

certificate = Diplôme
certificate-of = Le club certifie que
certificate-took-part = a participé à la saison
certificate-with = avec { $faction }
certificate-place = { $rank } sur { $players } au classement
certificate-points =
    { $points } { $points ->
        [one] point
       *[other] points
    } de ligue
certificate-record =
    { $won } { $won ->
        [one] victoire
       *[other] victoires
    }, { $drawn } { $drawn ->
        [one] match nul
       *[other] matchs nuls
    }, { $lost } { $lost ->
        [one] défaite
       *[other] défaites
    }
certificate-painted =
    { $points } { $points ->
        [one] point
       *[other] points
    } de figurines nouvellement achevées
certificate-awarded = Distinction : { $award }
certificate-signed = Pour le club
certificate-ended = Semaines : { $weeks }. Saison terminée le { $day }.

## The wall screen

wall = Écran mural
wall-link = Pour l’écran mural
wall-pause = Pause
wall-go-on = Reprendre
wall-next = Suivant
wall-part = { $part } sur { $parts }
