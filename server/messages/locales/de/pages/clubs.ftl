### Accounts, clubs, their people and codes, catalogues, and the record of a player over the seasons.

## Accounts

email = E-Mail-Adresse
password = Passwort
password-hint = Mindestens 15 Zeichen. Ein Satz lässt sich leicht merken.
your-name = Name, den Vereine sehen
your-name-hint = Ein Spitzname genügt.
minor = Ich bin noch nicht alt genug, um dem allein zuzustimmen
guardian = Ein Elternteil oder Vormund stimmt zu
no-account = Noch kein Konto?
have-account = Schon ein Konto?
registered = Sie können sich jetzt anmelden.

## Clubs

no-clubs = Sie gehören noch keinem Verein an.
found-club = Verein gründen
found-club-text = Wer einen Verein gründet, besitzt ihn und kann andere einladen.
club-name = Name des Vereins
club-slug = Kurzname für Adressen
club-slug-hint = Kleinbuchstaben, Ziffern und Bindestriche, etwa lamplit-ford
seasons = Saisons
no-seasons = Noch keine Saison.
new-season = Saison anlegen
for-club = für den Verein
season-draft = wird angelegt
season-started = läuft
season-ended = beendet

## People and roles

people = Mitglieder
role-owner = besitzt den Verein
role-organiser = leitet Saisons
role-referee = entscheidet Streitfälle
role-player = spielt mit
role-change = Rolle ändern
role-of = Rolle von { $name }
member-remove = Entfernen
member-remove-text = Entfernt { $name } aus dem Verein. Partien und Ergebnisse bleiben; Codes zum Beitreten gelten nicht mehr.

## Codes to join

use-invitation = Einem Verein beitreten
invitation-code = Einladungscode
join = Beitreten
invited-text = Jemand hat Ihnen diesen Code gegeben, allein oder in einem Link. Damit treten Sie dem Verein bei.
invite = Leute einladen
invite-text = Geben Sie den Code weiter. Er gilt für so viele Leute und Tage, wie Sie sagen.
invite-as = Als
invite-uses = Für wie viele Leute
invite-days = Für wie viele Tage
invite-make = Code erzeugen
invite-code-is = Der Code. Er wird nur jetzt gezeigt:
invite-until = Er gilt bis
invites-open = Codes, die noch gelten
invite-withdraw = Zurücknehmen
invite-link = Dasselbe als Link

## Catalogues

catalogue = Katalog
catalogues = Kataloge
catalogues-text = Ein Katalog sagt, welche Einheiten es gibt und was sie kosten. Er hat Fassungen, die sich nie ändern.
no-catalogues = Noch kein Katalog.
new-catalogue = Neuer Katalog
catalogue-name = Name des Katalogs
catalogue-versions = Fassungen: { $newest }
catalogue-none = noch keine Fassung
catalogue-import = Fassung einlesen
catalogue-text = Katalog als CSV oder JSON
catalogue-hint = Fügen Sie eine als CSV gespeicherte Tabelle oder die JSON-Form ein. Alles wird übernommen oder nichts.
catalogue-file = Aus einer Datei füllen
import = Einlesen

## A player's record over the seasons, and who may read it

record-heading = Mein Werdegang über die Saisons
record-meaning = Die Tabelle jeder öffentlichen Saison nennt Sie unter dem Namen, den Sie dort tragen. Ihr Werdegang verbindet diese Namen: Saison für Saison Name, Fraktion, Platz und Punkte. Niemand liest ihn, solange Sie nicht zustimmen.
record-readers = Wer ihn lesen darf
record-open = alle
record-closed = niemand
record-open-since = Sie haben am { $day } zugestimmt.
record-as-table = Als Tabelle (CSV)
record-as-data = Für Programme (JSON)
record-agree-text = Wer die Adresse hat, darf den Werdegang über die öffentlichen Saisons dieses Vereins lesen, auch über künftige. Sie können das jederzeit zurücknehmen.
record-agree = Ich stimme zu, dass ihn alle lesen dürfen
record-withdraw-text = Von da an liest niemand den Werdegang, und seine Adresse führt für immer ins Leere. Kopien, die andere gemacht haben, bleiben.
record-withdraw = Zurücknehmen
record-of-minor = Der Werdegang von Minderjährigen bleibt im Verein.
