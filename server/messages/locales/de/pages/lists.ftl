### Lists: written, checked, sealed, opened, and read from pasted text.

## Lists of a week

lists = Listen
lists-not-open = Listen werden nach der Frist alle zugleich geöffnet. Bis dahin sieht niemand eine fremde Liste.
lists-none = Keine Liste wurde abgegeben.
stands-in = Liste der Vorwoche springt ein
late-by =
    { $minutes } { $minutes ->
        [one] Minute
       *[other] Minuten
    } zu spät
list-missing = fehlt
list-draft = Entwurf
list-sealed-state = versiegelt
receipt = Quittung

## My list

my-list = Meine Liste
write-list = Liste schreiben
change-list = Liste ändern
list-sealed = Ihre Liste ist versiegelt
list-sealed-on = Versiegelt am
list-replace = Bis zur Frist können Sie sie ersetzen.
list-from-last = Aus Ihrer letzten Liste begonnen
list-catalogue-changed = Der Katalog hat sich seit Ihrer letzten Liste geändert
list-entry-gone = so nicht mehr angeboten; muss nicht wiederkehren
entries = Einheiten der Liste
no-entries = Noch keine Einheit.
models = Modelle
models-points =
    { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }, { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }
option-points = { $name } (+{ $points })
option-each = { $name } (+{ $points } je Modell)
joins = Schließt sich an
joins-nobody = niemandem
add-unit = Einheit hinzufügen
remove-entry = { $name } entfernen
save-and-check = Speichern und prüfen
seal = Versiegeln und abgeben
seal-text = Niemand sieht Ihre Liste, bevor alle geöffnet werden. Bis zur Frist können Sie sie ersetzen.
not-handed-in = Nicht abgegeben. Die Prüfung sagt, was geändert werden muss.
sealed-now = Ihre Liste ist versiegelt und abgegeben.
receipt-text = Heben Sie das auf. Es beweist später, was Sie versiegelt haben: Der SHA-256-Fingerabdruck des Textes unten ist Ihre Quittung.
receipt-contents = Was versiegelt wurde

## The check

findings = Was die Prüfung sagt
check-fine = Diese Liste ist für die Woche gültig.
check-empty = Fügen Sie eine erste Einheit hinzu oder eine Liste ein.
breach = Muss geändert werden
remark = Gut zu wissen
left = übrig
over = über der Grenze
adds-up = Wie sich das zusammensetzt
cuts = Eines davon genügt:
cut-shrink =
    { $unit }: nur { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
cut-drop = { $unit }: ohne { $option }
cut-leave-out = { $unit } weglassen

## A list as pasted text

paste = Liste einfügen
paste-text = Fügen Sie Ihre Liste als einfachen Text ein. Sie sehen Zeile für Zeile, was verstanden wurde, bevor etwas gespeichert wird.
paste-label = Liste als Text
paste-example = Zum Beispiel: 2x Name, 6 models, option: 112
paste-read = Lesen
paste-understood = Was verstanden wurde
paste-line = Zeile
paste-yours = Ihr Text
paste-means = Verstanden als
paste-take = Diese Liste übernehmen
paste-take-text = Ersetzt Ihren Entwurf. Eine versiegelte Liste bleibt, wie sie ist.
paste-no-list = Aus diesem Text wurde keine Liste.
sure = verstanden
guessed = geraten
not-understood = nicht verstanden
could-be = { $meaning } (oder: { $alternatives })
means-faction = Fraktion { $name }
means-kind = Überschrift { $name }
means-option = Option { $name }
means-unit =
    { $name }, { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
means-units =
    { $units } Einheiten { $name }, je { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
means-foreign-unit = { $name }, eine Einheit einer anderen Fraktion: { $faction }
means-times = { $times }-mal
means-models =
    { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
means-points =
    { $points } { $points ->
        [one] Punkt ist
       *[other] Punkte sind
    } angegeben
means-joins = schließt sich { $name } an
means-label = leitet die Zeile ein
means-nothing = „{ $text }“: nichts, was der Katalog kennt
