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
password-of-keys = Le mot de passe suit les touches du clavier et se devine vite. Prenez plusieurs mots sans rapport entre eux.
password-of-repeats = Le mot de passe se répète et se devine vite. Prenez plusieurs mots sans rapport entre eux.
password-of-sequences = Le mot de passe est une suite, comme abc ou 321, et se devine vite. Prenez plusieurs mots sans rapport entre eux.
password-of-dates = Le mot de passe est fait de dates ou d’années et se devine vite. Prenez plusieurs mots sans rapport entre eux.
password-of-names = Le mot de passe est fait de noms et se devine vite. Prenez plusieurs mots sans rapport entre eux.
password-guessable = Le mot de passe se devine vite. Prenez plusieurs mots sans rapport entre eux ni avec vous.
token-reused = Ce jeton de renouvellement a déjà servi. La session est terminée ; reconnectez-vous.
token-not-valid = Le jeton n’est pas (ou plus) valable. Reconnectez-vous.
