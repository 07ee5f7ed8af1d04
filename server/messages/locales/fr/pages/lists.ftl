### Lists: written, checked, sealed, opened, and read from pasted text.

## Lists of a week

lists = Listes
lists-not-open = Les listes s’ouvrent toutes à la fois après la date limite. Jusque-là, personne ne voit la liste d’autrui.
lists-none = Aucune liste n’a été rendue.
stands-in = remplacée par la liste de la semaine précédente
late-by =
    { $minutes } { $minutes ->
        [one] minute
       *[other] minutes
    } de retard
list-missing = manquante
list-draft = brouillon
list-sealed-state = sous scellé
receipt = Reçu

## My list

my-list = Ma liste
write-list = Écrire ma liste
change-list = Modifier ma liste
list-sealed = Votre liste est scellée
list-sealed-on = Scellée le
list-replace = Vous pouvez la remplacer jusqu’à la date limite.
list-from-last = Commencée à partir de votre dernière liste
list-catalogue-changed = Le catalogue a changé depuis votre dernière liste
list-entry-gone = n’est plus proposée telle quelle ; n’a pas à revenir
entries = Unités de la liste
no-entries = Pas encore d’unité.
models = Figurines
models-points =
    { $models } { $models ->
        [one] figurine
       *[other] figurines
    }, { $points } { $points ->
        [one] point
       *[other] points
    }
option-points = { $name } (+{ $points })
option-each = { $name } (+{ $points } par figurine)
joins = Rejoint
joins-nobody = aucune unité
add-unit = Ajouter une unité
remove-entry = Retirer { $name }
save-and-check = Enregistrer et vérifier
seal = Sceller et rendre
seal-text = Personne ne voit votre liste avant que toutes soient ouvertes. Vous pouvez la remplacer jusqu’à la date limite.
not-handed-in = Liste non rendue. La vérification dit ce qu’il faut corriger.
sealed-now = Votre liste est scellée et rendue.
receipt-text = Gardez ceci. Cela prouvera plus tard ce que vous avez scellé : l’empreinte SHA-256 du texte ci-dessous est votre reçu.
receipt-contents = Ce qui a été scellé

## The check

findings = Ce que dit la vérification
check-fine = Cette liste est valable pour la semaine.
check-empty = Ajoutez une première unité, ou collez une liste.
breach = À corriger
remark = Bon à savoir
left = de marge
over = au-dessus du plafond
adds-up = Le détail du total
cuts = L’un de ces changements suffirait :
cut-shrink =
    { $unit } : seulement { $models } { $models ->
        [one] figurine
       *[other] figurines
    }
cut-drop = { $unit } : sans { $option }
cut-leave-out = se passer de l’unité { $unit }

## A list as pasted text

paste = Coller une liste
paste-text = Collez ou tapez votre liste en texte brut. Vous verrez ligne par ligne ce qui a été compris, avant que quoi que ce soit ne soit enregistré.
paste-label = Liste en texte
paste-example = Par exemple : 2x Name, 6 models, option: 112
paste-read = Lire
paste-understood = Ce qui a été compris
paste-line = Ligne
paste-yours = Votre texte
paste-means = Compris comme
paste-take = Utiliser cette liste
paste-take-text = Remplace votre brouillon. Une liste scellée reste telle quelle.
paste-no-list = Aucune liste n’a pu être tirée de ce texte.
sure = compris
guessed = deviné
not-understood = pas compris
could-be = { $meaning } (ou : { $alternatives })
means-faction = faction { $name }
means-kind = titre { $name }
means-option = option { $name }
means-unit =
    { $name }, { $models } { $models ->
        [one] figurine
       *[other] figurines
    }
means-units =
    { $units } unités { $name }, { $models } { $models ->
        [one] figurine
       *[other] figurines
    } chacune
means-foreign-unit = { $name }, une unité d’une autre faction : { $faction }
means-times = { $times } fois
means-models =
    { $models } { $models ->
        [one] figurine
       *[other] figurines
    }
means-points =
    { $points } { $points ->
        [one] point indiqué
       *[other] points indiqués
    }
means-joins = rejoint { $name }
means-label = introduit la ligne
means-nothing = « { $text } » : rien que le catalogue connaisse
