### Refusals about a season, its weeks and its players.

## Setting up

zone-unknown = Ce n’est pas un fuseau horaire de la base IANA ; Europe/Paris en est un.
zone-unknown-in-form = Ce n’est pas un fuseau horaire de la base IANA.
grace-too-long = Une tolérance dure un jour au plus.
season-places = Une saison a de { $least } à { $most } places.
season-faults = La saison a des erreurs.
season-rules-faults = Les règles de la saison ont des erreurs.
catalogue-without-version = Le club n’a pas de tel catalogue doté d’une version.
first-day-far = Une saison créée aujourd’hui commence entre le { $first } et le { $last }, pas le { $day }.
season-stale = La saison a été modifiée entre-temps ; relisez-la.
rules-fixed = Les règles sont fixées depuis le début de la saison.
visibility-fixed = Ceux qui ont rejoint une saison réservée au club n’ont pas accepté d’être vus de tous.
season-started-already = La saison a déjà commencé.
season-not-started = La saison n’a pas encore commencé.
season-over = La saison est terminée.
too-few-players = Une saison commence avec deux joueurs au moins, pas avec { $there }.
week-not-closed = La semaine { $week } n’est pas encore close.
archive-too-early = L’archive est faite une fois la saison terminée.

## The next season

collections-too-early = Les collections suivent une fois la saison terminée : la peinture de ses dernières semaines serait perdue.
other-weekday = La première semaine avait été annoncée un { $weekday } ; le { $day } est un { $actual }. Les jours les plus proches qui conviennent sont le { $before } et le { $after } ; tout autre jour doit être permis exprès, car il déplace toutes les soirées et dates limites.
new-days-faults = Les nouvelles dates ont des erreurs.

## A week

week-is-closed = La semaine est close.
week-not-announced = La semaine n’est pas encore annoncée.
week-announced = Une semaine annoncée le reste ; son plafond et son catalogue sont fixés.
deadline-immutable = Une date limite ne se déplace qu’avant d’être passée, et seulement vers plus tard.
nights-fixed = La semaine est appariée ; ses soirées sont fixées.
play-until-fixed = La semaine est appariée ; la fin des parties ne peut plus qu’être reculée, jusqu’à la clôture de la semaine.
week-cap-range = Un plafond va de 1 à { $most } points.
week-faults = La semaine a des erreurs.
caps-fall = D’une semaine à l’autre, le plafond peut rester le même, mais pas baisser.
catalogue-version-missing = Le catalogue n’a pas cette version.
version-missing = Cette version n’existe pas.

## The scenario

scenario-faults = La fiche de scénario a des erreurs.
scenario-known = Le scénario est connu des joueurs ; il ne change plus.
scenario-title-known = Le titre est connu des joueurs ; il reste.

## Players

last-deadline-passed = La dernière date limite est passée.
season-full = Les { $places } places sont toutes prises.
handle-taken = Quelqu’un porte déjà ce nom dans cette saison, ou un nom qui lui ressemble.
already-registered = Vous jouez déjà dans cette saison.
faction-unknown = Le catalogue n’a pas cette faction.
faction-fixed = La faction est fixée depuis le début de la saison.
nights-known = Les soirées sont { $nights }, chacune une fois au plus.
own-household = C’est à quelqu’un d’autre de changer qui habite avec vous.
round-proposed = Une ronde est proposée. Publiez-la d’abord.
already-withdrawn = Ce joueur s’est déjà retiré.
does-not-play = { $player } ne joue pas en semaine { $week }.
availability-too-late = La semaine est appariée ; prévenez votre adversaire et l’organisateur.

## Reminders

reminded-already = Un rappel a déjà été envoyé dans les { $hours } dernières heures.
nobody-owes =
    En semaine { $week }, personne ne doit { $what ->
        [lists] de liste
       *[results] de résultat
    } pour le moment.
