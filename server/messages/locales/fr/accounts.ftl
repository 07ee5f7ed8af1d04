### Refusals about accounts, passwords and sessions.

too-many-attempts = Trop d’essais manqués ; attendez un peu.
wrong-credentials = L’adresse e-mail et le mot de passe ne vont pas ensemble.
guardian-needed = Un parent ou un tuteur doit donner son accord avant qu’un mineur crée un compte.
not-an-email = Ce n’est pas une adresse e-mail.
password-too-short =
    Le mot de passe a { $length ->
        [one] { $length } caractère
       *[other] { $length } caractères
    } ; il en faut { $shortest }.
password-too-long =
    Le mot de passe a { $length ->
        [one] { $length } caractère
       *[other] { $length } caractères
    } ; { $longest } au plus sont permis.
password-too-common = Ce mot de passe est de ceux que l’on essaie en premier.
token-reused = Ce jeton de renouvellement a déjà servi. La session est terminée ; reconnectez-vous.
token-not-valid = Le jeton n’est pas (ou plus) valable. Reconnectez-vous.
