### Wie eine Saison ihre Runden macht, in Sätzen.

rounds-by-score = In jeder Runde treffen sich gleiche Punktzahlen, soweit die Wünsche es zulassen.
rounds-round-robin = Alle treffen einmal auf alle, nach den Berger-Tabellen; eine versäumte Partie wird nachgeholt, wenn beide frei sind.
rounds-double-round-robin = Alle treffen zweimal auf alle, mit getauschten Rollen, nach den Berger-Tabellen; eine versäumte Partie wird nachgeholt, wenn beide frei sind.
rounds-one-a-week = Eine Woche hat eine Runde.
rounds-several-a-week = Eine Woche hat bis zu { $rounds } Runden, jede mit ihrem Anteil an den Abenden in ihrer Folge.
