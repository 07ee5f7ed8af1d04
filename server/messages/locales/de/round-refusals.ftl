### Refusals about rounds: proposing, publishing, repairing.

round-published = Diese Runde ist veröffentlicht. Sie wird nie neu gelost.
lists-sealed = Gepaart wird, sobald die Listen geöffnet sind, damit das Los von ihnen abhängt.
week-before-not-paired = Die Woche davor ist noch nicht gepaart.
two-players-needed = Nennen Sie zwei Spielende der Saison.
too-few-can-come = Es können weniger als zwei Spielende kommen.
orders-contradict = Die Vorgaben widersprechen den Tatsachen.
no-round = So eine Runde gibt es nicht: { $why }.
own-round-orders = Sie spielen in dieser Runde. Über ihre Partien muss jemand bestimmen, der nicht mitspielt.
own-round-drawn = Sie spielen in dieser Runde, und sie ist ausgelost. Veröffentlichen und reparieren Sie sie, oder lassen Sie jemanden neu auslosen, der nicht mitspielt.
other-round-published = Inzwischen wurde eine andere Runde der Woche veröffentlicht. Schlagen Sie diese neu vor.
proposal-mismatch = Der Vorschlag folgt nicht aus seinen Angaben und dem festgelegten Geheimnis.

## Repairs

own-repair = Diese Reparatur ändert Ihre eigene Partie. Veröffentlichen muss sie eine Spielleitung oder ein Schiedsrichter, deren Partie sie nicht berührt.
own-game-repair = Wo es um Ihre eigene Partie geht, muss jemand anderes die Runde reparieren.
round-not-published = Die Runde ist noch nicht veröffentlicht; schlagen Sie sie neu vor.
too-few-left = Es sind weniger als zwei Spielende übrig.
nothing-changes = Für niemanden ändert sich etwas.
game-reported = Diese Partie ist gemeldet; sie bleibt.
not-in-the-season = Spielt in dieser Woche nicht.
hall-night = Nennen Sie einen Abend der Woche und 0 bis { $most } Tische.
repair-stale = Eine Partie, die diese Reparatur ändert, wurde gemeldet. Reparieren Sie die Runde neu.

## Round robins

round-robin-seats = Alle { $seats } Plätze des Rundenturniers sind vergeben.
round-robin-exhausted = Von denen, die kommen können, haben keine zwei noch eine Partie der Tabelle miteinander.
