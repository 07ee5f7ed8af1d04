### Was mit den Punktgrenzen und dem Kalender einer Saison nicht stimmt.

cap-fault-weeks = eine Saison hat 1 bis { $most } Wochen, nicht { $weeks }
cap-fault-out-of-range = die Grenze der Woche { $week } ist { $cap }; möglich sind 1 bis { $most }
cap-fault-falls = die Grenze fällt in Woche { $week } von { $before } auf { $cap }

calendar-fault-days = eine Woche hat 1 bis { $most } Tage, nicht { $days }
calendar-fault-nights = eine Woche hat 1 bis { $most } Abende, nicht { $nights }
calendar-fault-night-key = der Abend „{ $night }“ braucht einen eigenen Namen aus 1 bis { $longest } Buchstaben, Ziffern oder Bindestrichen
calendar-fault-tables = der Abend „{ $night }“ braucht 1 bis { $most } Tische, nicht { $tables }
calendar-fault-order = die Reihenfolge muss sein: erst { $earlier }, dann { $later }
calendar-fault-week = Woche { $week }: { $fault }
calendar-fault-clock = { $what } in Woche { $week } { $fault }
calendar-fault-too-far = der Kalender reicht über das letzte mögliche Datum hinaus

## Woraus eine Woche besteht

calendar-announce = Ankündigung
calendar-lists-due = Abgabe der Listen
calendar-play-until = Ende der Spielzeit
calendar-nights = Abende
calendar-reveal = Enthüllung
