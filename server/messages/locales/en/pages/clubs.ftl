### Accounts, clubs, their people and codes, catalogues, and the record of a player over the seasons.

## Accounts

email = E-mail address
password = Password
password-hint = At least 15 characters. A sentence is easy to remember.
your-name = Name that clubs see
your-name-hint = A nickname will do.
minor = I am under the age at which I may agree to this by myself
guardian = A parent or guardian agrees
no-account = No account yet?
have-account = Have an account already?
registered = You can sign in now.

## Clubs

no-clubs = You belong to no club yet.
found-club = Found a club
found-club-text = Whoever founds a club owns it and can invite others.
club-name = Name of the club
club-slug = Short name for addresses
club-slug-hint = Lower-case letters, digits and hyphens, such as lamplit-ford
seasons = Seasons
no-seasons = No season yet.
new-season = Set up a season
for-club = for the club
season-draft = being set up
season-started = running
season-ended = over

## People and roles

people = People
role-owner = owner
role-organiser = organiser
role-referee = referee
role-player = player
role-change = Change role
role-of = Role of { $name }
member-remove = Remove
member-remove-text = Removes { $name } from the club. Games and results stay; codes to join stop working.

## Codes to join

use-invitation = Join a club
invitation-code = Invitation code
join = Join
invited-text = Somebody gave you this code, alone or in a link. With it you join their club.
invite = Invite people
invite-text = Hand on the code. It works for as many people and days as you say.
invite-as = As
invite-uses = For how many people
invite-days = For how many days
invite-make = Make a code
invite-code-is = The code. It is shown only now:
invite-until = It works until
invites-open = Codes that still work
invite-withdraw = Take back
invite-link = The same as a link

## Catalogues

catalogue = Catalogue
catalogues = Catalogues
catalogues-text = A catalogue says which units there are and what they cost. It comes in versions that never change.
no-catalogues = No catalogue yet.
new-catalogue = New catalogue
catalogue-name = Name of the catalogue
catalogue-versions = versions: { $newest }
catalogue-none = no version yet
catalogue-import = Import a version
catalogue-text = Catalogue as CSV or JSON
catalogue-hint = Paste a spreadsheet saved as CSV, or the JSON form. All of it is taken, or nothing.
catalogue-file = Fill in from a file
import = Import

## A player's record over the seasons, and who may read it

record-heading = My record over the seasons
record-meaning = The table of each public season names you under the name that you have there. Your record ties these names together: season by season your name, faction, place and points. Nobody reads it unless you agree.
record-readers = Who may read it
record-open = everybody
record-closed = nobody
record-open-since = You agreed on { $day }.
record-as-table = As a table (CSV)
record-as-data = For programs (JSON)
record-agree-text = Everybody who has its address may read the record of this club's public seasons, those to come included. You can take this back at any time.
record-agree = I agree that everybody may read it
record-withdraw-text = From then on nobody reads the record, and its address leads nowhere for good. Copies that others made remain.
record-withdraw = Take it back
record-of-minor = The record of a minor stays within the club.
