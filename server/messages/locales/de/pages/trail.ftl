### The trail of a season: every act by its name, and by whom.

## The trail

trail = Protokoll
trail-text = Alles, was in dieser Saison getan wurde, das Neueste zuerst. Einträge ändern sich nie: jeder trägt die Prüfsumme des vorigen.
trail-officers = Sie sehen auch, was nur die Leitung sieht.
trail-empty = Noch nichts.
entry-n = Eintrag { $number }
older-entries = Ältere Einträge
by-clock = die Uhr
by-officer = die Leitung des Vereins

## Acts

did-create-season = Saison angelegt
did-create-season-from = Saison nach einer früheren angelegt
did-update-season = Saison geändert
did-start-season = Saison begonnen
did-end-season = Saison beendet
did-update-week = Woche geändert
did-close-week = Woche abgeschlossen
did-reveal = Zur festgesetzten Zeit bekannt gegeben
did-update-scenario = Szenario gespeichert
did-join-season = Beigetreten
did-update-player = Teilnahme geändert
did-withdraw-player = Ausgestiegen
did-tell-availability = Abende genannt
did-seal-list = Liste verspätet abgegeben
did-open-lists = Listen geöffnet
did-open-lists-too-early = Vorzeitiges Öffnen der Listen versucht
did-grant-late-leave = Erlaubnis, später abzugeben
did-nudge-players = Erinnerung verschickt
did-propose-round = Runde vorgeschlagen
did-repair-round = Reparatur vorgeschlagen
did-publish-round = Runde veröffentlicht
did-publish-repair = Reparatur veröffentlicht
did-report-result = Ergebnis gemeldet
did-confirm-result = Ergebnis bestätigt
did-dispute-result = Ergebnis bestritten
did-rule-result = Ergebnis entschieden
did-adjust-points = Punkte durch Entscheid
did-claim-painting = Bemalung gemeldet
did-verify-claim = Bemalung geprüft
did-refuse-claim = Bemalung abgelehnt
did-create-photo = Foto hinzugefügt
did-delete-photo = Foto entfernt
did-create-invitation = Einladung erstellt
did-delete-invitation = Einladung zurückgenommen
did-accept-invitation = In den Verein gekommen
did-update-member = Rolle geändert
did-delete-member = Aus dem Verein ausgeschieden
did-create-club = Verein gegründet
did-create-catalogue = Katalog angelegt
did-create-catalogue-version = Katalogversion eingelesen
did-create-record-consent = Zugestimmt, dass alle die Bilanz lesen
did-delete-record-consent = Diese Zustimmung widerrufen
did-something = Etwas anderes
