### Was eine Vorhersage oder eine Annahme nicht beantworten kann.

outlook-no-row = in dieser Tabelle steht die Person nicht
outlook-too-open = jemand hat { $actual } offene Partien; eine genaue Antwort braucht höchstens { $limit }
outlook-no-such-game = die Saison hat keine solche Partie
outlook-not-open = die Partie hat ein Ergebnis; annehmen lässt sich nur eines für offene Partien
