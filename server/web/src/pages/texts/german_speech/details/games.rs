//! Rounds, results, painting and scenario sheets.

/// As English says it, and as German does.
pub const SAID: &[(&str, &str)] = &[
    (
        "This round is published. It is never drawn again.",
        "Diese Runde ist veröffentlicht. Sie wird nie neu gelost.",
    ),
    (
        "Rounds are paired once the lists are opened, so that the draw depends on them.",
        "Gepaart wird, sobald die Listen geöffnet sind, damit das Los von ihnen abhängt.",
    ),
    (
        "The week before is not paired yet.",
        "Die Woche davor ist noch nicht gepaart.",
    ),
    (
        "Name two players of the season.",
        "Nennen Sie zwei Spielende der Saison.",
    ),
    (
        "You play in this round. Somebody who does not must give orders about its games.",
        "Sie spielen in dieser Runde. Über ihre Partien muss jemand bestimmen, der nicht mitspielt.",
    ),
    (
        "You play in this round, and it is drawn. Publish it and repair it, or let somebody who does not play in it propose it anew.",
        "Sie spielen in dieser Runde, und sie ist ausgelost. Veröffentlichen und reparieren Sie sie, oder lassen Sie jemanden neu auslosen, der nicht mitspielt.",
    ),
    (
        "This repair changes your own game. An organiser or a referee whose game it leaves alone must publish it.",
        "Diese Reparatur ändert Ihre eigene Partie. Veröffentlichen muss sie eine Spielleitung oder ein Schiedsrichter, deren Partie sie nicht berührt.",
    ),
    (
        "Another result was reported in between; look at it before you answer.",
        "Inzwischen wurde ein anderes Ergebnis gemeldet. Sehen Sie es an, bevor Sie antworten.",
    ),
    (
        "The round is drawn; no list comes in any more.",
        "Die Runde ist ausgelost; es kommt keine Liste mehr herein.",
    ),
    (
        "The deadline has passed; the list that was handed in stands.",
        "Der Abgabeschluss ist vorbei; die abgegebene Liste gilt.",
    ),
    (
        "The scenario of the week is not revealed yet.",
        "Das Szenario der Woche ist noch nicht enthüllt.",
    ),
    (
        "Fewer than two players can come.",
        "Es können weniger als zwei Spielende kommen.",
    ),
    (
        "Fewer than two players are left.",
        "Es sind weniger als zwei Spielende übrig.",
    ),
    (
        "There is no such round: {}.",
        "So eine Runde gibt es nicht: {0}.",
    ),
    (
        "no two players may meet on a night with a free table",
        "keine zwei Spielenden dürfen sich an einem Abend mit freiem Tisch treffen",
    ),
    (
        "no proof within {} steps of the search",
        "in {0} Schritten fand sich kein Beweis",
    ),
    (
        "the pinned pair {} must not or cannot meet",
        "das festgelegte Paar darf oder kann sich nicht treffen",
    ),
    ("player {} is pinned twice", "jemand ist zweimal festgelegt"),
    (
        "player {} is pinned but not playing",
        "jemand ist festgelegt, spielt aber nicht mit",
    ),
    (
        "A season starts with two players at least, not with {}.",
        "Eine Saison beginnt mit mindestens zwei Spielenden, nicht mit {0}.",
    ),
    (
        "legs of the sheet: {}; legs counted: {}",
        "Durchgänge des Szenarios: {0}; gezählte Durchgänge: {1}",
    ),
    (
        "Rounds still to come: {}; ask for a forecast.",
        "Runden, die noch kommen: {0}; fragen Sie nach einer Vorhersage.",
    ),
    (
        "A round robin has at most {} players.",
        "Ein Rundenturnier hat höchstens {0} Spielende.",
    ),
    (
        "{} players need {} rounds to meet everybody; the season has {}.",
        "{0} Spielende brauchen {1} Runden, bis alle sich getroffen haben; die Saison hat {2}.",
    ),
    (
        "All {} seats of the round robin are taken.",
        "Alle {0} Plätze des Rundenturniers sind vergeben.",
    ),
    (
        "Nobody who can come has a game of the table left with somebody else who can.",
        "Von denen, die kommen können, haben keine zwei noch eine Partie der Tabelle miteinander.",
    ),
    (
        "Another round of the week was published since. Propose this one anew.",
        "Inzwischen wurde eine andere Runde der Woche veröffentlicht. Schlagen Sie diese neu vor.",
    ),
    (
        "The round is not published yet; propose it anew.",
        "Die Runde ist noch nicht veröffentlicht; schlagen Sie sie neu vor.",
    ),
    (
        "Nothing changes for anybody.",
        "Für niemanden ändert sich etwas.",
    ),
    (
        "This player's game is reported; it stays.",
        "Diese Partie ist gemeldet; sie bleibt.",
    ),
    ("Does not play this week.", "Spielt in dieser Woche nicht."),
    (
        "Somebody else must repair the round where it is about your own game.",
        "Wo es um Ihre eigene Partie geht, muss jemand anderes die Runde reparieren.",
    ),
    (
        "Name a night of the week and 0 to {} tables.",
        "Nennen Sie einen Abend der Woche und 0 bis {0} Tische.",
    ),
    (
        "A game that this repair changes has been reported. Repair the round anew.",
        "Eine Partie, die diese Reparatur ändert, wurde gemeldet. Reparieren Sie die Runde neu.",
    ),
    (
        "The week is closed already.",
        "Die Woche ist schon abgeschlossen.",
    ),
    (
        "The week is not paired yet.",
        "Die Woche ist noch nicht gepaart.",
    ),
    (
        "{} games of the week are open or disputed.",
        "Partien der Woche, die offen oder strittig sind: {0}.",
    ),
    ("Not done: {}.", "Nicht geschehen: {0}."),
    (
        "no result has been reported",
        "es ist kein Ergebnis gemeldet",
    ),
    (
        "the other side must answer this report",
        "die andere Seite muss auf diese Meldung antworten",
    ),
    (
        "the result is final; only a ruling changes it",
        "das Ergebnis steht; nur ein Entscheid ändert es",
    ),
    (
        "no answer is awaited any more; only a ruling changes the result",
        "auf eine Antwort wird nicht mehr gewartet; nur ein Entscheid ändert das Ergebnis",
    ),
    (
        "the result is disputed; a referee decides",
        "das Ergebnis ist strittig; das entscheidet eine Schiedsperson",
    ),
    (
        "nobody rules on a game of their own",
        "niemand entscheidet über die eigene Partie",
    ),
    (
        "Only a referee strikes a game from the record.",
        "Nur eine Schiedsperson streicht eine Partie.",
    ),
    (
        "The night of this game has not begun.",
        "Der Abend dieser Partie hat noch nicht begonnen.",
    ),
    (
        "The week has no scenario sheet to score by.",
        "Die Woche hat kein Szenarioblatt, nach dem gewertet wird.",
    ),
    (
        "The scenario is not revealed yet.",
        "Das Szenario ist noch nicht enthüllt.",
    ),
    ("leg {}: {}", "Durchgang {0}: {1}"),
    (
        "{} is counted for the other role",
        "{0} wird für die andere Rolle gezählt",
    ),
    (
        "{} follows from the other side and is not typed",
        "{0} ergibt sich aus der anderen Seite und wird nicht eingegeben",
    ),
    (
        "{} can be at most {}, not {}",
        "{0} kann höchstens {1} sein, nicht {2}",
    ),
    (
        "{} counts points of an army of {}, not {}",
        "{0} zählt Punkte einer Armee von {1}, nicht {2}",
    ),
    (
        "this side may start with at most {} points, not {}",
        "diese Seite darf mit höchstens {0} Punkten beginnen, nicht mit {1}",
    ),
    (
        "From 1 to {} points, given or taken.",
        "1 bis {0} Punkte, gegeben oder genommen.",
    ),
    (
        "Somebody else must rule on your own points.",
        "Über Ihre eigenen Punkte muss jemand anderes entscheiden.",
    ),
    (
        "Painting is claimed for a week that is announced and not closed.",
        "Bemalung wird für eine Woche gemeldet, die angekündigt und nicht abgeschlossen ist.",
    ),
    (
        "The models are not valid: {}.",
        "Die Modelle stimmen nicht: {0}.",
    ),
    (
        "a unit has 1 to {} models in the painting log, not {}",
        "eine Einheit hat im Bemalungsbuch 1 bis {0} Modelle, nicht {1}",
    ),
    (
        "the log already shows these models so far",
        "so weit zeigt das Bemalungsbuch die Modelle schon",
    ),
    (
        "a painted model stays painted; the log shows more",
        "ein bemaltes Modell bleibt bemalt; das Bemalungsbuch zeigt mehr",
    ),
    (
        "in this season a claim is not checked by {}",
        "in dieser Saison prüft das niemand als {0}",
    ),
    ("the opponent at the table", "Gegenüber am Tisch"),
    ("a referee", "Schiedsperson"),
    ("a referee by photo", "Schiedsperson nach einem Foto"),
    (
        "this claim has no photo",
        "zu dieser Meldung gibt es kein Foto",
    ),
    (
        "nobody checks a claim of their own",
        "niemand prüft die eigene Meldung",
    ),
    (
        "the claim was already decided",
        "über die Meldung ist schon entschieden",
    ),
    (
        "The opponent of that week or a referee looks at painted models.",
        "Bemalte Modelle sieht sich das Gegenüber jener Woche an oder eine Schiedsperson.",
    ),
    (
        "This photo stands behind another claim of yours; take a new one.",
        "Dieses Foto steht schon hinter einer anderen Meldung; machen Sie ein neues.",
    ),
    (
        "No photos from a minor's account; the opponent or a referee looks at the models at the table.",
        "Von Konten Minderjähriger kommen keine Fotos; das Gegenüber oder eine Schiedsperson sieht die Modelle am Tisch an.",
    ),
    (
        "A player has at most {} photos in a season; take one away that is not needed.",
        "Höchstens {0} Fotos sind in einer Saison möglich; nehmen Sie eines weg, das nicht gebraucht wird.",
    ),
    (
        "A photo is one picture, not an animation.",
        "Ein Foto ist ein einzelnes Bild, keine Folge von Bildern.",
    ),
    (
        "A photo may have {} {}; this one has {}.",
        "Ein Foto darf {0} {1} haben; dieses hat {2}.",
    ),
    ("pixels a side", "Bildpunkte je Seite"),
    ("pixels", "Bildpunkte"),
    (
        "The picture is torn or damaged; send it again.",
        "Das Bild ist unvollständig oder beschädigt; senden Sie es noch einmal.",
    ),
    (
        "a sheet has 1 to {} items, this one has {}",
        "ein Blatt hat 1 bis {0} Zählungen, dieses hat {1}",
    ),
    (
        "a leg has 1 to {} turns, not {}",
        "ein Durchgang hat 1 bis {0} Züge, nicht {1}",
    ),
    (
        "the key {} is used twice",
        "der Schlüssel {0} kommt zweimal vor",
    ),
    (
        "{}: numbers lie between 1 and {}, not {}",
        "{0}: möglich sind 1 bis {1}, nicht {2}",
    ),
    (
        "a table measures 1 to {} cm, not {}",
        "ein Tisch misst 1 bis {0} cm, nicht {1}",
    ),
    ("{} lies off the table", "{0} liegt neben dem Tisch"),
];
