### Was eine Prüfung über eine Liste sagt.

## Nach den Regeln der Saison

finding-over-cap =
    Die Liste hat { $total } { $total ->
        [one] Punkt
       *[other] Punkte
    }, { $over } über der Punktgrenze von { $cap }.
finding-minimum-spend =
    Die Liste hat { $total } { $total ->
        [one] Punkt
       *[other] Punkte
    }, { $short } unter dem Mindestwert von { $least }.
finding-largest-unit =
    { $unit } kostet { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    }; eine einzelne Einheit darf höchstens { $most } kosten.
finding-option-budget =
    { $unit } hat Optionen für { $points } Punkte; bei { $models } { $models ->
        [one] Modell
       *[other] Modellen
    } dürfen sie höchstens { $most } kosten.
finding-kind-count =
    Die Liste hat { $count } der Art { $kind }; diese Woche sind es { $bound ->
        [least] mindestens
       *[most] höchstens
    } { $limit }.
finding-kind-share =
    Die Liste gibt { $points } { $points ->
        [one] Punkt
       *[other] Punkte
    } für die Art { $kind } aus; diese Woche sind es { $bound ->
        [least] mindestens
       *[most] höchstens
    } { $limit }.
finding-copies = { $unit } ist { $count }-mal dabei; diese Woche höchstens { $most }-mal.
finding-banned-keyword = { $unit } hat das Stichwort { $keyword }, das diese Woche nicht erlaubt ist.
finding-army-size =
    Die Liste hat { $count } { $counted ->
        [units] { $count ->
            [one] Einheit
           *[other] Einheiten
        }
       *[models] { $count ->
            [one] Modell
           *[other] Modelle
        }
    }; diese Woche sind es { $bound ->
        [least] mindestens
       *[most] höchstens
    } { $limit }.
finding-faction-lock = Die Liste ist von „{ $fielded }“; für die Saison genannt ist „{ $declared }“.
finding-new-points =
    { $points ->
        [one] { $points } Punkt ist neu seit der Vorwoche; höchstens { $most } dürfen es sein.
       *[other] { $points } Punkte sind neu seit der Vorwoche; höchstens { $most } dürfen es sein.
    }
finding-new-units =
    { $count ->
        [one] { $count } Einheit ist
       *[other] { $count } Einheiten sind
    } seit der Vorwoche neu oder gewachsen; mindestens { $least } müssen es sein.
finding-painted-share = { $painted } von { $total } Punkten sind bemalt; mindestens { $least } ({ $share }) müssen es sein.

## Gegenüber der Liste der Vorwoche

finding-carry-over = { $kept } von { $counted } kommen wieder; mindestens { $least } müssen es. Ganz oder teilweise fort: { $units }.
finding-swap = { $left } von { $counted } gehen; höchstens { $most } dürfen es. Ganz oder teilweise fort: { $units }.
finding-last-weeks-points = { $total } Punkten der Vorwoche
finding-last-weeks-points-reckoned = { $points } Punkten, mit denen die { $total } der Vorwoche gerechnet werden,
finding-shrunk =
    { $unit } hatte in der Vorwoche { $before } { $before ->
        [one] Modell
       *[other] Modelle
    } und hat jetzt { $now }.
finding-shrunk-below =
    { $unit } hatte in der Vorwoche { $before } { $before ->
        [one] Modell
       *[other] Modelle
    }, könnte noch { $due } haben und hat jetzt { $now }.
finding-option-dropped = { $unit } hatte in der Vorwoche { $option } und muss es behalten.

## Nach dem Katalog

finding-unknown-faction = Der Katalog kennt keine Fraktion „{ $faction }“.
finding-unknown-unit = Die Fraktion hat keine Einheit „{ $unit }“.
finding-unit-size =
    { $unit } kann nicht { $models } { $models ->
        [one] Modell
       *[other] Modelle
    } haben; möglich sind { $sizes }.
finding-unknown-option = { $unit } hat keine Option „{ $option }“.
finding-option-limit = { $unit } nimmt { $option } { $taken }-mal; höchstens { $limit }-mal ist erlaubt.
finding-option-group = { $unit } darf nur eine dieser Optionen nehmen: { $options }.
finding-joins-nobody = { $unit } schließt sich keiner Einheit an, also auch nicht { $host }.
finding-joins-others = { $unit } schließt sich nur Einheiten mit dem Stichwort { $keyword } an; { $host } hat es nicht.
finding-most-per-army = { $unit } ist { $count }-mal dabei; eine Armee darf sie { $most }-mal haben.

## Über einen eingefügten Text

finding-stated-points = Zeile { $line } nennt { $stated } Punkte für { $unit }; nach dem Katalog sind es { $points }.
finding-stated-kind-points = Zeile { $line } nennt { $stated } Punkte für die Art { $kind }; nach dem Katalog sind es { $points }.
finding-stated-total = Zeile { $line } nennt { $stated } Punkte im Ganzen; was gelesen wurde, hat { $points }.
finding-stated-faction = Zeile { $line } nennt die Fraktion „{ $faction }“.
reading-name = { $name }
reading-unit =
    { $name }, { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
reading-units =
    { $units }x { $name }, { $models } { $models ->
        [one] Modell
       *[other] Modelle
    }
