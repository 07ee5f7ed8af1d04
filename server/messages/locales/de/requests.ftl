### What is wrong with a request itself, before any rule is asked: headers, bodies, parameters.

## Headers

if-match-needed = Senden Sie das ETag dessen, was Sie ändern, als If-Match.
if-match-shape = If-Match muss das ETag einer früheren Antwort sein.
if-match-any = If-Match: * nennt keine Fassung; senden Sie das ETag dessen, was Sie ändern.
version-ahead = Die Saison steht bei Fassung { $newest }.
idempotency-key-needed = Senden Sie eine Kopfzeile Idempotency-Key mit 1 bis { $most } Zeichen.
idempotency-key-reused = Dieser Idempotency-Key wurde schon für eine andere Anfrage benutzt; wählen Sie einen neuen.

## Bodies

body-too-large = Der Inhalt darf höchstens { $limit } Bytes haben.
form-files = Das Formular nimmt eine Datei.
form-fields = Das Formular hat weniger Felder.
json-malformed = Das ist kein lesbares JSON ({ $cause }).
library-words = { $words }.
field-missing = Dieses Feld fehlt.
field-unknown = { $field } ist hier kein Feld; bekannt: { $known }.
word-unknown = { $word } ist hier nicht bekannt; möglich: { $known }.
one-of = eines von { $names }
id-needed = Muss eine Kennung sein, eine UUID wie 0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e64.
number-range = Muss eine ganze Zahl von { $least } bis { $most } sein.
wrong-type = Erwartet wird { $wanted }, nicht { $given }.
a-whole-number = eine ganze Zahl
a-text = ein Text
an-object = ein Objekt
an-array = eine Liste
a-truth-value = ein Wahrheitswert

## Civil times and dates

civil-time-needed = Nennen Sie die Ortszeit der Saison ohne Zone oder Versatz, etwa 2026-03-03T19:00:00.
date-needed = Nennen Sie ein Datum, das es gibt, etwa 2026-03-03.
time-of-day-needed = Nennen Sie eine Uhrzeit der Saison ohne Zone oder Versatz, etwa 19:00:00.

## Parameters of the address

parameter-range = { $parameter } liegt zwischen { $least } und { $most }, nicht bei { $actual }.
parameter-missing = Der Parameter `{ $parameter }` fehlt.
parameter-twice = Der Parameter `{ $parameter }` steht zweimal da.
parameter-unknown = { $parameter } ist hier kein Parameter; bekannt: { $known }.
parameter-number = `{ $parameter }` muss eine ganze Zahl in seinem Bereich sein.
parameter-fault = `{ $parameter }`: { $fault }
query-number = Eine Zahl in der Anfrage ist keine ganze Zahl oder liegt außerhalb ihres Bereichs.
