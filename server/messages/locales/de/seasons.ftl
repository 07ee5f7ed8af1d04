### Refusals about a season, its weeks and its players.

## Setting up

zone-unknown = Diese Zeitzone kennt die IANA-Datenbank nicht; eine ist Europe/Berlin.
zone-unknown-in-form = Diese Zeitzone kennt die IANA-Datenbank nicht.
grace-too-long = Eine Kulanz dauert höchstens einen Tag.
season-places = Eine Saison hat { $least } bis { $most } Plätze.
season-faults = Die Saison hat Fehler.
season-rules-faults = Die Regeln der Saison haben Fehler.
catalogue-without-version = Der Verein hat keinen solchen Katalog mit einer Fassung.
first-day-far = Eine Saison, die heute angelegt wird, beginnt zwischen { $first } und { $last }, nicht am { $day }.
season-stale = Die Saison wurde inzwischen geändert. Sehen Sie sie noch einmal an.
rules-fixed = Die Regeln stehen fest, seit die Saison begonnen hat.
visibility-fixed = Wer einer Saison nur für den Verein beitrat, hat nicht zugestimmt, von allen gesehen zu werden.
season-started-already = Die Saison hat schon begonnen.
season-not-started = Die Saison hat noch nicht begonnen.
season-over = Die Saison ist vorbei.
too-few-players = Eine Saison beginnt mit mindestens zwei Spielenden, nicht mit { $there }.
week-not-closed = Woche { $week } ist noch nicht abgeschlossen.
archive-too-early = Das Archiv entsteht, sobald die Saison beendet ist.

## The next season

collections-too-early = Sammlungen kommen erst mit, wenn die Saison beendet ist: Die Bemalung der letzten Wochen ginge sonst verloren.
other-weekday = Die erste Woche wurde an einem { $weekday } angekündigt; der { $day } ist ein { $actual }. Die nächsten passenden Tage sind der { $before } und der { $after }; jeder andere muss eigens erlaubt werden, denn er verschiebt alle Abende und Fristen.
new-days-faults = Die neuen Tage haben Fehler.

## A week

week-is-closed = Die Woche ist abgeschlossen.
week-not-announced = Die Woche ist noch nicht angekündigt.
week-announced = Eine angekündigte Woche bleibt angekündigt; ihre Grenze und ihr Katalog stehen fest.
deadline-immutable = Eine Frist lässt sich nur verschieben, solange sie nicht vorbei ist, und nur nach hinten.
nights-fixed = Die Woche ist gepaart; ihre Abende stehen fest.
play-until-fixed = Die Woche ist gepaart; das Ende der Spielzeit lässt sich nur noch nach hinten verschieben, bis die Woche abgeschlossen ist.
week-cap-range = Möglich ist eine Grenze von 1 bis { $most } Punkten.
week-faults = Die Woche hat Fehler.
caps-fall = Die Grenze darf von Woche zu Woche gleich bleiben, aber nicht fallen.
catalogue-version-missing = Diese Fassung hat der Katalog nicht.
version-missing = Diese Fassung gibt es nicht.

## The scenario

scenario-faults = Das Szenarioblatt hat Fehler.
scenario-known = Das Szenario ist den Spielenden bekannt; es ändert sich nicht mehr.
scenario-title-known = Der Titel ist den Spielenden bekannt; er bleibt.

## Players

last-deadline-passed = Die letzte Abgabe ist vorbei.
season-full = Alle { $places } Plätze sind vergeben.
handle-taken = Diesen Namen oder einen, der ihm gleicht, hat in dieser Saison schon jemand.
already-registered = Sie spielen in dieser Saison schon mit.
faction-unknown = Diese Fraktion gibt es im Katalog nicht.
faction-fixed = Die Fraktion steht fest, seit die Saison begonnen hat.
nights-known = Die Abende sind { $nights }, jeder höchstens einmal.
own-household = Wer mit Ihnen zusammenwohnt, muss jemand anderes ändern.
round-proposed = Eine Runde ist vorgeschlagen. Veröffentlichen Sie sie zuerst.
already-withdrawn = Hier ist schon jemand ausgestiegen.
does-not-play = { $player } spielt in Woche { $week } nicht mit.
availability-too-late = Die Woche ist gepaart; sagen Sie es Ihrem Gegenüber und der Leitung.

## Reminders

reminded-already = Daran wurde in den letzten { $hours } Stunden schon erinnert.
nobody-owes =
    In Woche { $week } ist gerade niemand { $what ->
        [lists] eine Liste
       *[results] ein Ergebnis
    } schuldig.
