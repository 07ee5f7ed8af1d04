### The painting log: claims, photos and checks.

## Claiming

painting = Peinture
painting-text = Dites où en sont vos figurines. Quelqu’un d’autre les regarde avant qu’elles ne comptent : votre adversaire à la table, ou un arbitre.
stage-bare = non peintes
stage-primed = sous-couchées
stage-coloured = en couleurs
stage-finished = achevées
models-bare =
    { $models } { $models ->
        [one] non peinte
       *[other] non peintes
    }
models-primed =
    { $models } { $models ->
        [one] sous-couchée
       *[other] sous-couchées
    }
models-coloured = { $models } en couleurs
models-finished =
    { $models } { $models ->
        [one] achevée
       *[other] achevées
    }
models-finished-of =
    { $finished } / { $models } { $models ->
        [one] achevée
       *[other] achevées
    }
claim = Déclarer
photo = Photo (si vous voulez)
photo-hint = Des figurines seulement : pas de personnes, pas de mineurs.
photo-of = { $unit }, peinture : { $player }
photo-delete = Retirer cette photo

## Taking care

painting-care = Prudence
care-spray = Bombes et aérographe : dehors ou avec une aspiration, avec un masque adapté à la peinture, loin des flammes, et dans les locaux du club uniquement à un endroit prévu pour cela.
care-blades = Lames : coupez en éloignant la lame de la main, sur un tapis de coupe, avec une lame neuve, et remettez le capuchon.
care-minors = Les mineurs ne font l’un et l’autre qu’avec un adulte responsable.
photo-caution = Photos : des figurines seulement, pas de personnes, surtout pas de mineurs, et rien qui dise où vous habitez. Le lieu et l’heure sont retirés de l’image. Seul le club la voit, et vous pouvez la retirer.
care-local = Les règles locales priment.

## Checking

claims = Déclarations
no-claims = Personne n’a encore rien déclaré.
claims-n = déclarations : { $count }
to-check = À vérifier par vous ou par d’autres : { $count }
claim-open = à vérifier
claim-verified = vérifiée
claim-refused = refusée
check-claim = Vérifier
verify-claim = J’ai vu les figurines
refuse-claim = Refuser
