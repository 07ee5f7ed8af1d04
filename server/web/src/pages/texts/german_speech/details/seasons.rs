//! Setting up and joining a season, lists and reminders.

/// As English says it, and as German does.
pub const SAID: &[(&str, &str)] = &[
    (
        "This is no time zone of the IANA database.",
        "Diese Zeitzone kennt die IANA-Datenbank nicht.",
    ),
    (
        "This is no time zone of the IANA database; one is Europe/Berlin.",
        "Diese Zeitzone kennt die IANA-Datenbank nicht; eine ist Europe/Berlin.",
    ),
    (
        "A grace lasts a day at the most.",
        "Eine Kulanz dauert höchstens einen Tag.",
    ),
    (
        "A season has 2 to 10000 places.",
        "Eine Saison hat 2 bis 10000 Plätze.",
    ),
    (
        "The club has no catalogue with this id that has a version.",
        "Der Verein hat keinen solchen Katalog mit einer Fassung.",
    ),
    (
        "a season has 1 to {} weeks, not {}",
        "eine Saison hat 1 bis {0} Wochen, nicht {1}",
    ),
    (
        "the cap of week {} is {}; it must be from 1 to {}",
        "die Grenze der Woche {0} ist {1}; möglich sind 1 bis {2}",
    ),
    (
        "the cap falls from {} to {} in week {}",
        "die Grenze fällt in Woche {2} von {0} auf {1}",
    ),
    (
        "a week has 1 to 100 days, not {}",
        "eine Woche hat 1 bis 100 Tage, nicht {0}",
    ),
    (
        "a week has 1 to 14 nights, not {}",
        "eine Woche hat 1 bis 14 Abende, nicht {0}",
    ),
    (
        "the night {} needs 1 to 500 tables, not {}",
        "der Abend {0} braucht 1 bis 500 Tische, nicht {1}",
    ),
    (
        "The season ends with week {}; there is no week {}.",
        "Die Saison endet mit Woche {0}; eine Woche {1} gibt es nicht.",
    ),
    (
        "The best {} weeks cannot count in a season of {}.",
        "Die besten {0} Wochen können nicht zählen: Die Saison hat {1}.",
    ),
    (
        "A week has {} nights, too few for {} rounds: nobody has two games on one night.",
        "Eine Woche hat {0} Abende, zu wenige für {1} Runden: Niemand spielt zweimal an einem Abend.",
    ),
    (
        "A season that is set up today begins from {} to {}, not on {}.",
        "Eine Saison, die heute angelegt wird, beginnt zwischen {0} und {1}, nicht am {2}.",
    ),
    ("{} must come after {}", "{0}: muss später sein als {1}"),
    ("announce", "Ankündigung"),
    ("lists_due", "Abgabe der Listen"),
    ("play_until", "Ende der Spielzeit"),
    ("nights", "Abende"),
    (
        "the calendar runs past the last date that can be told",
        "der Kalender reicht über das letzte mögliche Datum hinaus",
    ),
    ("{} of week {} {}", "{0} in Woche {1} {2}"),
    (
        "does not exist in {}: the clocks jump over it",
        "gibt es in {0} nicht: Die Uhr springt darüber",
    ),
    (
        "happens twice in {}: the clocks go back over it",
        "gibt es in {0} zweimal: Die Uhr wird zurückgestellt",
    ),
    ("The time {}.", "Die Uhrzeit {0}."),
    (
        "A week has 1 to {} rounds.",
        "Eine Woche hat 1 bis {0} Runden.",
    ),
    (
        "Silence confirms after 1 to {} hours.",
        "Schweigen bestätigt nach 1 bis {0} Stunden.",
    ),
    (
        "a win must be worth more than a loss, and a draw neither more nor less than both",
        "ein Sieg muss mehr zählen als eine Niederlage, und ein Unentschieden nicht mehr und nicht weniger als beide",
    ),
    (
        "{}: points lie between 0 and {}, not {}",
        "{0}: möglich sind 0 bis {1} Punkte, nicht {2}",
    ),
    (
        "{}: at most a win's {}, not {}",
        "{0}: höchstens {1} wie für einen Sieg, nicht {2}",
    ),
    (
        "{}: the side at fault must not get more",
        "{0}: die Seite, an der es liegt, darf nicht mehr bekommen",
    ),
    (
        "at least one week must count",
        "mindestens eine Woche muss zählen",
    ),
    (
        "a bonus is worth 1 to {} points, not {}",
        "ein Bonus zählt 1 bis {0} Punkte, nicht {1}",
    ),
    (
        "must not be more than all of it",
        "darf nicht mehr als das Ganze sein",
    ),
    (
        "No unit of the catalogue is of the kind {}.",
        "Keine Einheit des Katalogs ist von der Art {0}.",
    ),
    (
        "No unit of the catalogue has the keyword {}.",
        "Keine Einheit des Katalogs hat das Stichwort {0}.",
    ),
    (
        "The rule allows fewer than it demands.",
        "Die Regel erlaubt weniger, als sie verlangt.",
    ),
    (
        "In week {} no list of {} can be legal.",
        "In Woche {0} kann keine Liste von {1} gültig sein.",
    ),
    (
        "In week {} at least {} points of {} must return; the cap is {}.",
        "In Woche {0} müssen von {2} mindestens {1} Punkte wiederkommen; die Grenze ist {3}.",
    ),
    (
        "In week {} a list of {} needs {} points; at most {} can be reached.",
        "In Woche {0} braucht eine Liste von {1} {2} Punkte; höchstens {3} sind erreichbar.",
    ),
    (
        "The season has started already.",
        "Die Saison hat schon begonnen.",
    ),
    (
        "The season has not started yet.",
        "Die Saison hat noch nicht begonnen.",
    ),
    ("The season is over.", "Die Saison ist vorbei."),
    (
        "The last deadline has passed.",
        "Die letzte Abgabe ist vorbei.",
    ),
    ("All {} places are taken.", "Alle {0} Plätze sind vergeben."),
    (
        "Somebody has this handle in this season, or one that looks like it.",
        "Diesen Namen oder einen, der ihm gleicht, hat in dieser Saison schon jemand.",
    ),
    (
        "A week that is announced stays so, and its cap and catalogue are fixed.",
        "Eine angekündigte Woche bleibt angekündigt; ihre Grenze und ihr Katalog stehen fest.",
    ),
    (
        "The title is known to the players; it stays.",
        "Der Titel ist den Spielenden bekannt; er bleibt.",
    ),
    (
        "Somebody else must change who lives with you.",
        "Wer mit Ihnen zusammenwohnt, muss jemand anderes ändern.",
    ),
    (
        "Who joined a season of the club alone did not agree to be seen by everybody.",
        "Wer einer Saison nur für den Verein beitrat, hat nicht zugestimmt, von allen gesehen zu werden.",
    ),
    (
        "You play in this season already.",
        "Sie spielen in dieser Saison schon mit.",
    ),
    (
        "The catalogue has no such faction.",
        "Diese Fraktion gibt es im Katalog nicht.",
    ),
    (
        "The nights are {}, each at most once.",
        "Die Abende sind {0}, jeder höchstens einmal.",
    ),
    (
        "This player has withdrawn already.",
        "Hier ist schon jemand ausgestiegen.",
    ),
    (
        "{} does not play in week {}.",
        "{0} spielt in Woche {1} nicht mit.",
    ),
    (
        "The week is paired; tell your opponent and the organiser.",
        "Die Woche ist gepaart; sagen Sie es Ihrem Gegenüber und der Leitung.",
    ),
    (
        "The scenario is known to the players; it no longer changes.",
        "Das Szenario ist den Spielenden bekannt; es ändert sich nicht mehr.",
    ),
    (
        "Week {} is not closed yet.",
        "Woche {0} ist noch nicht abgeschlossen.",
    ),
    (
        "The archive is made once the season has ended.",
        "Das Archiv entsteht, sobald die Saison beendet ist.",
    ),
    (
        "Name the first day of the new season.",
        "Nennen Sie den ersten Tag der neuen Saison.",
    ),
    (
        "Collections come along once the season has ended: paint of its last weeks would be lost.",
        "Sammlungen kommen erst mit, wenn die Saison beendet ist: Die Bemalung der letzten Wochen ginge sonst verloren.",
    ),
    (
        "The first week was announced on a {}; {} is a {}. The nearest are {} and {}; any other day has to be allowed, for it moves all nights and deadlines.",
        "Die erste Woche wurde an einem anderen Wochentag angekündigt, als {1} es ist. Die nächsten passenden Tage sind {3} und {4}; jeder andere muss eigens erlaubt werden, denn er verschiebt alle Abende und Fristen.",
    ),
    (
        "The week is not announced yet.",
        "Die Woche ist noch nicht angekündigt.",
    ),
    ("The week is closed.", "Die Woche ist abgeschlossen."),
    (
        "The draft was saved elsewhere in between; read it again.",
        "Der Entwurf wurde inzwischen anderswo gespeichert. Öffnen Sie die Seite neu.",
    ),
    (
        "The deadline has passed. Ask the organiser for leave to hand in late.",
        "Die Abgabe ist vorbei. Bitten Sie die Leitung um Erlaubnis, später abzugeben.",
    ),
    (
        "The lists are opened when the deadline and its grace are over.",
        "Die Listen werden geöffnet, wenn Abgabe und Kulanz vorbei sind.",
    ),
    (
        "A list as text has at most {} bytes.",
        "Eine Liste als Text hat höchstens {0} Bytes.",
    ),
    (
        "Somebody else must give you leave.",
        "Das muss Ihnen jemand anderes erlauben.",
    ),
    (
        "This player has leave already.",
        "Diese Person hat die Erlaubnis schon.",
    ),
    (
        "People were reminded of this within the last {} hours.",
        "Daran wurde in den letzten {0} Stunden schon erinnert.",
    ),
    (
        "Nobody owes {} in week {} now.",
        "In Woche {1} ist gerade niemand {0} schuldig.",
    ),
    ("a list", "eine Liste"),
    ("a result", "ein Ergebnis"),
];
