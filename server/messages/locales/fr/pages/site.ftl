skip = Aller au contenu
site-menu = Site
season-menu = Saison
you-are-here = Vous êtes ici
my-clubs = Mes clubs
sign-in = Se connecter
sign-out = Se déconnecter
register = S’inscrire
choose-language = Langue
change = Changer
footer = Une ligue à escalade, semaine après semaine.
points =
    { $count ->
        [one] { $count } point
       *[other] { $count } points
    }
percent = { $share } %
