### What is wrong with a request itself, before any rule is asked: headers, bodies, parameters.

## Headers

if-match-needed = Envoyez l’ETag de ce que vous modifiez dans If-Match.
if-match-shape = If-Match doit être l’ETag d’une réponse précédente.
if-match-any = If-Match : * ne désigne aucune version ; envoyez l’ETag de ce que vous modifiez.
version-ahead = La saison en est à la version { $newest }.
idempotency-key-needed = Envoyez un en-tête Idempotency-Key de 1 à { $most } caractères.
idempotency-key-reused = Cette Idempotency-Key a servi à une autre requête ; choisissez-en une nouvelle.

## Bodies

body-too-large = Le contenu peut avoir { $limit } octets au plus.
form-files = Le formulaire accepte un seul fichier.
form-fields = Le formulaire a moins de champs.
json-malformed = Ce JSON est illisible ({ $cause }).
library-words = { $words }.
field-missing = Ce champ manque.
field-unknown = { $field } n’est pas un champ ici ; connus : { $known }.
word-unknown = { $word } n’est pas connu ici ; possible : { $known }.
one-of = un parmi { $names }
id-needed = Doit être un identifiant, un UUID tel que 0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64.
number-range = Doit être un nombre entier de { $least } à { $most }.
wrong-type = Il faut ici { $wanted }, pas { $given }.
a-whole-number = un nombre entier
a-text = un texte
an-object = un objet
an-array = un tableau
a-truth-value = un booléen

## Civil times and dates

civil-time-needed = Donnez l’heure locale de la saison, sans fuseau ni décalage, par exemple 2026-03-03T19:00:00.
date-needed = Donnez une date qui existe, par exemple 2026-03-03.
time-of-day-needed = Donnez une heure du jour de la saison, sans fuseau ni décalage, par exemple 19:00:00.

## Parameters of the address

parameter-range = { $parameter } va de { $least } à { $most }, pas { $actual }.
parameter-missing = Le paramètre `{ $parameter }` manque.
parameter-twice = Le paramètre `{ $parameter }` figure deux fois.
parameter-unknown = { $parameter } n’est pas un paramètre ici ; connus : { $known }.
parameter-number = `{ $parameter }` doit être un nombre entier dans son intervalle.
parameter-fault = `{ $parameter }` : { $fault }
query-number = Un nombre de la requête n’est pas entier, ou sort de son intervalle.
