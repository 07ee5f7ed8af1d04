//! Accounts, clubs and catalogues.

/// As English says it, and as German does.
pub const SAID: &[(&str, &str)] = &[
    (
        "E-mail and password do not belong together.",
        "E-Mail-Adresse und Passwort passen nicht zusammen.",
    ),
    (
        "Too many failed attempts; wait a little.",
        "Zu viele vergebliche Versuche. Warten Sie ein wenig.",
    ),
    (
        "A parent or guardian must agree before a minor registers.",
        "Ein Elternteil oder Vormund muss zustimmen, bevor sich Minderjährige registrieren.",
    ),
    (
        "This is no e-mail address.",
        "Das ist keine E-Mail-Adresse.",
    ),
    (
        "The password is one of the first that are tried.",
        "Das Passwort gehört zu denen, die zuerst ausprobiert werden.",
    ),
    (
        "The password has {} characters; it needs {}.",
        "Das Passwort hat {0} Zeichen; es braucht {1}.",
    ),
    (
        "The password has {} characters; at most {} are allowed.",
        "Das Passwort hat {0} Zeichen; höchstens {1} sind erlaubt.",
    ),
    ("The name {}.", "Der Name {0}."),
    ("The handle {}.", "Der Name in der Saison {0}."),
    ("The reason {}.", "Der Grund {0}."),
    ("must not be empty", "darf nicht leer sein"),
    (
        "has {} characters; at most {} are allowed",
        "hat {0} Zeichen; höchstens {1} sind erlaubt",
    ),
    (
        "contains the character U+{}, which is not allowed",
        "enthält das Zeichen U+{0}, das nicht erlaubt ist",
    ),
    (
        "stacks too many marks on one letter",
        "häuft zu viele Zeichen auf einem Buchstaben",
    ),
    (
        "A short name has 2 to {} lower-case letters, digits and single hyphens.",
        "Ein Kurzname hat 2 bis {0} Kleinbuchstaben, Ziffern und einzelne Bindestriche.",
    ),
    (
        "Another club has this short name.",
        "Ein anderer Verein hat diesen Kurznamen.",
    ),
    (
        "You belong to this club already.",
        "Sie gehören diesem Verein schon an.",
    ),
    (
        "This is the club's only owner; make somebody else an owner first.",
        "Das ist die einzige Person, der der Verein gehört; übertragen Sie ihn erst noch jemandem.",
    ),
    (
        "Nobody is invited as an owner.",
        "Niemand wird als Besitzer eingeladen.",
    ),
    ("Must be from 1 to {}.", "Möglich sind 1 bis {0}."),
    (
        "The role {} does not allow this.",
        "Ihre Rolle lässt das nicht zu.",
    ),
    (
        "Only the organiser may do this.",
        "Das darf nur die Leitung.",
    ),
    (
        "The club has a catalogue of this name.",
        "Der Verein hat schon einen Katalog dieses Namens.",
    ),
    (
        "The catalogue has {} faults; nothing was imported.",
        "Der Katalog hat {0} Fehler; nichts wurde eingelesen.",
    ),
    (
        "Row {}, column {} ({}): {}",
        "Zeile {0}, Spalte {1} ({2}): {3}",
    ),
    ("Row {}: {}", "Zeile {0}: {1}"),
    (
        "the row has {} cells, the header {}",
        "die Zeile hat {0} Zellen, die Kopfzeile {1}",
    ),
    ("is not UTF-8 text", "ist kein Text in UTF-8"),
    ("\"{}\" is no whole number", "„{0}“ ist keine ganze Zahl"),
    (
        "must rise, by fewer than {} models",
        "muss steigen, um weniger als {0} Modelle",
    ),
    (
        "has {} numbers for {} sizes",
        "hat {0} Zahlen für {1} Größen",
    ),
    (
        "\"{}\" is not: NAME POINTS [per model] [up to N] [group NAME]",
        "„{0}“ ist nicht: NAME PUNKTE [per model] [up to N] [group NAME]",
    ),
    (
        "a table has at most {} units; nothing below was read",
        "eine Tabelle hat höchstens {0} Einheiten; darunter wurde nichts gelesen",
    ),
    (
        "has {} columns; at most {}",
        "hat {0} Spalten; höchstens {1} sind erlaubt",
    ),
    ("no such column is known", "diese Spalte ist nicht bekannt"),
    (
        "this column is there twice",
        "diese Spalte kommt zweimal vor",
    ),
    ("the column \"{}\" is missing", "die Spalte „{0}“ fehlt"),
    (
        "must be lower-case letters and digits joined by single hyphens",
        "darf nur Kleinbuchstaben und Ziffern mit einzelnen Bindestrichen haben",
    ),
    ("\"{}\" is there more than once", "„{0}“ kommt mehrfach vor"),
    (
        "is {}; it must be from {} to {}",
        "ist {0}; möglich sind {1} bis {2}",
    ),
    (
        "has {} members; it must have from {} to {}",
        "hat {0} Glieder; möglich sind {1} bis {2}",
    ),
    (
        "no unit of this faction carries \"{}\"",
        "keine Einheit dieser Fraktion trägt „{0}“",
    ),
];
