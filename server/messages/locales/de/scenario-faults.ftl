### Was ein Szenarioblatt unspielbar oder seine Wertung zweifelhaft macht.

sheet-fault-item-count = ein Blatt hat 1 bis { $most } Zählungen, dieses hat { $items }
sheet-fault-turns = ein Durchgang hat 1 bis { $most } Züge, nicht { $turns }
sheet-fault-key-twice = der Schlüssel { $item } kommt zweimal vor
sheet-fault-number = { $item }: möglich sind 1 bis { $most }, nicht { $actual }
sheet-fault-grade = { $item }: Schritte und Stufen müssen über 0 % beginnen, steigen und dabei mehr zählen
sheet-fault-exclusive-for-one-role = { $item }: eine Zählung einer einzigen Rolle kann nicht ausschließlich sein
sheet-fault-no-roles = { $item }: das Blatt hat keine Rollen
sheet-fault-rest-of-nothing = { $item }: ein Rest braucht eine Zählung, die allein die andere Rolle wertet
sheet-fault-rest-too-small = { $item }: die Zählung der Gegenseite kann { $actual } wert sein, mehr als die { $limit }, die verteilt werden
sheet-fault-joint-cap = die gemeinsame Grenze von { $cap } muss zwei oder mehr Zählungen des Blatts nennen
sheet-fault-legs-without-roles = zwei Durchgänge brauchen Angreifer und Verteidiger
sheet-fault-fields = eine Seite beginnt mit mehr als 0 % und höchstens 100 % ihrer Liste, nicht mit { $share }
sheet-fault-table-edge = ein Tisch misst 1 bis { $most } cm, nicht { $edge }
sheet-fault-off-table = { $label } liegt neben dem Tisch
