### Accounts, clubs, their people and codes, catalogues, and the record of a player over the seasons.

## Accounts

email = Adresse e-mail
password = Mot de passe
password-hint = Au moins 15 caractères. Une phrase se retient facilement.
your-name = Nom que voient les clubs
your-name-hint = Un pseudo suffit.
minor = Je n’ai pas encore l’âge d’y consentir par moi-même
guardian = Un parent ou tuteur donne son accord
no-account = Pas encore de compte ?
have-account = Vous avez déjà un compte ?
registered = Vous pouvez maintenant vous connecter.

## Clubs

no-clubs = Vous n’appartenez encore à aucun club.
found-club = Fonder un club
found-club-text = Qui fonde un club en est propriétaire et peut inviter d’autres personnes.
club-name = Nom du club
club-slug = Nom court pour les adresses
club-slug-hint = Minuscules, chiffres et traits d’union, par exemple lamplit-ford
seasons = Saisons
no-seasons = Pas encore de saison.
new-season = Créer une saison
for-club = pour le club
season-draft = en préparation
season-started = en cours
season-ended = terminée

## People and roles

people = Membres
role-owner = propriétaire
role-organiser = organisateur
role-referee = arbitre
role-player = joueur
role-change = Changer le rôle
role-of = { $name }, rôle
member-remove = Exclure
member-remove-text = Exclut { $name } du club. Les parties et les résultats restent ; les codes d’adhésion cessent de fonctionner.

## Codes to join

use-invitation = Rejoindre un club
invitation-code = Code d’invitation
join = Rejoindre
invited-text = Quelqu’un vous a donné ce code, tel quel ou dans un lien. Il vous permet de rejoindre son club.
invite = Inviter des gens
invite-text = Transmettez le code. Il vaut pour autant de personnes et de jours que vous le dites.
invite-as = En tant que
invite-uses = Pour combien de personnes
invite-days = Pour combien de jours
invite-make = Créer un code
invite-code-is = Le code. Il n’est montré que maintenant :
invite-until = Valable jusqu’au
invites-open = Codes encore valables
invite-withdraw = Révoquer
invite-link = La même chose en lien

## Catalogues

catalogue = Catalogue
catalogues = Catalogues
catalogues-text = Un catalogue dit quelles unités existent et ce qu’elles coûtent. Il paraît en versions qui ne changent jamais.
no-catalogues = Pas encore de catalogue.
new-catalogue = Nouveau catalogue
catalogue-name = Nom du catalogue
catalogue-versions = versions : { $newest }
catalogue-none = pas encore de version
catalogue-import = Importer une version
catalogue-text = Catalogue en CSV ou JSON
catalogue-hint = Collez une feuille de calcul enregistrée en CSV, ou la forme JSON. Tout est repris, ou rien.
catalogue-file = Remplir depuis un fichier
import = Importer

## A player's record over the seasons, and who may read it

record-heading = Mon parcours au fil des saisons
record-meaning = Le classement de chaque saison publique vous cite sous le nom que vous y portez. Votre parcours relie ces noms : saison par saison, votre nom, votre faction, votre place et vos points. Personne ne le lit sans votre accord.
record-readers = Qui peut le lire
record-open = tout le monde
record-closed = personne
record-open-since = Vous avez donné votre accord le { $day }.
record-as-table = En tableau (CSV)
record-as-data = Pour les programmes (JSON)
record-agree-text = Quiconque en a l’adresse peut lire le parcours à travers les saisons publiques de ce club, y compris celles à venir. Vous pouvez revenir sur cet accord à tout moment.
record-agree = J’accepte que tout le monde puisse le lire
record-withdraw-text = Dès lors, plus personne ne lit le parcours, et son adresse ne mène définitivement nulle part. Les copies que d’autres ont faites demeurent.
record-withdraw = Retirer mon accord
record-of-minor = Le parcours d’une personne mineure reste à l’intérieur du club.
