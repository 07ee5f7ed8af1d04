### What is wrong with a field of a form on a page, before any rule is asked.

form-unreadable = Certains champs sont illisibles.
form-empty = { $label } : veuillez remplir ce champ.
form-number = { $label } : « { $typed } » n’est pas un nombre entier de { $least } à { $most }.
form-date = { $label } : « { $typed } » n’est pas une date du calendrier.
form-time = { $label } : « { $typed } » n’est pas une heure comme 19:00.
form-choice = { $label } : veuillez choisir dans la liste.
form-broken = Ce formulaire n’est pas tel que sa page l’a créé. Rechargez la page.
