### A week: its moments and phases, its scenario with map and sheet, and what players and organisers have to do.

## What holds for a week

cap = Plafond de points
cap-of =
    Plafond de { $points } { $points ->
        [one] point
       *[other] points
    }
lists-due = Date limite des listes
grace-until = compte comme à l’heure jusqu’au
play-until = À jouer jusqu’au
announced-at = Annonce
night-line =
    { $tables } { $tables ->
        [one] table
       *[other] tables
    }
phase-planned = prévue
phase-announced = les listes arrivent
phase-lists-due = listes sur le point d’être ouvertes
phase-lists-opened = listes ouvertes
phase-paired = appariée
phase-closed = clôturée

## The scenario

scenario = Scénario
scenario-hidden = Pas encore dévoilé.
scenario-title-only = Pour l’instant, seul le titre est connu.
scenario-preview = Vous voyez ceci parce que vous organisez la saison : les joueurs ne le connaissent pas encore.
scenario-scoring = Ce qui compte
map-of = Plan de la table, { $width } sur { $depth } cm
map-first = le premier camp ou l’attaquant commence ici
map-second = le second camp ou le défenseur commence ici
map-exit = les unités quittent la table ici
map-ground = terrain qui a ses propres règles
map-marker = { $marker } (repère)
map-in-words = Le plan en toutes lettres
map-place = à { $left } cm de la gauche, à { $top } cm du haut
map-size = { $width } sur { $depth } cm

## The scenario sheet

sheet-edit = Fiche de scénario
sheet-text = La fiche en JSON
sheet-hint = Si elle est remplie, elle compte à la place des champs ci-dessus.
sheet-title-when = Le titre est dévoilé
sheet-full-when = La fiche entière est dévoilée
reveal-announcement = avec l’annonce
reveal-opened = à l’ouverture des listes
sheet-title = Titre
sheet-summary = En une phrase
sheet-briefing = Briefing
sheet-turns = Tours
sheet-draw = Encore match nul jusqu’à un écart de
sheet-items = Les joueurs saisissent ces comptes et le serveur en tire le score. Les lignes sans nom sont laissées de côté.
sheet-item = Compte { $number }
item-label = Ce que l’on compte ({ $number })
item-points = Points pour chacun
item-most = Au plus
item-when = Quand
item-during = en cours de partie
item-last = après le dernier tour
item-exclusive = Un seul camp à la fois peut tenir chacun
sheet-table = Table
table-width = Largeur en cm
table-depth = Profondeur en cm
table-strip = Bande de départ en cm (0 : aucune)
near-edge = Bord proche
far-edge = Bord éloigné
sheet-reveal = Quand les joueurs la voient
sheet-as-data = Toute la fiche sous forme de données (deux manches, rôles, zones, paliers)

## My week

nothing-due = Rien ne vous attend pour le moment.
my-game = Ma partie
excused = Votre absence est excusée pour cette semaine.
availability = Quand pouvez-vous venir ?
availability-text = Décochez toutes les soirées pour que votre absence soit excusée cette semaine.
availability-save = Enregistrer les soirées
withdraw = Quitter la saison
withdraw-text = Pas de drame : les parties que vous avez jouées restent acquises, et vous n’êtes plus dans les appariements.
withdraw-sure = Oui, quitter la saison
notice-list = Votre liste manque encore.
notice-result = Le résultat de votre partie reste à déclarer.
notice-from = Rappel du

## The board

board-text = Qui a rendu sa liste. Personne ne voit de liste avant que toutes soient ouvertes, pas même vous.
list-state = Liste
grant-leave = Autorisation de retard
grant-leave-text = Tout le monde peut lire le motif.
leave-for = Pour
grant = Autoriser
open-lists = Ouvrir toutes les listes maintenant
open-lists-text = Le serveur le fait de lui-même peu après la date limite.
for-whole-season = Toute la saison

## Reminders

owe-lists = Sans liste
owe-results = Résultat non déclaré
remind = Envoyer un rappel
remind-text = Affiche un avis sur leur propre page jusqu’à ce que ce soit fait, au plus une fois toutes les douze heures. Le journal dit qu’un rappel est parti, pas à qui.
reminded-last = Dernier rappel le
remind-chat = Prêt pour la messagerie du club
chat-lists = Semaine { $week }, { $season } : si vous n’avez pas encore rendu votre liste, merci de le faire. Date limite des listes : { $due }
chat-results = Semaine { $week }, { $season } : merci de déclarer comment votre partie s’est terminée : { $players }
