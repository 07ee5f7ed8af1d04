### What leaves the site: downloads and checks of them, sheets to print, certificates, and the wall screen.

## Downloads

downloads = Downloads
whole-season = The whole season in one file
whole-season-text = Everything that may be known now: weeks, opened lists with their receipts, rounds with draw and proof, results, standings. What is still sealed or not revealed is not in it.
whole-season-get = Download season.json
archive = Row by row for spreadsheets (ZIP)
archive-later = When the season has ended, the same is here row by row for spreadsheets, as a ZIP.
check-yourself = Check it yourself
check-yourself-text = The program checks the file without a network: receipts, draws and proofs; every round is paired again, and every row of the table is added up from its ledger lines. Painted shares need the catalogue, which the file does not carry, so it does not check that each line follows from the rules, the claims and the slips; nor does it check the awards.
check-before-end = The draws can be checked once the season has ended and the secret is shown.
spreadsheets = For spreadsheets and programs
spreadsheets-text = Always the current state, without an account.
spreadsheets-closed = This season is for the club alone, so there are no open spreadsheets of it.
ledgers = Ledger of each player

## On paper

print-week = Print this week
print-slip = Open the result slip with your phone
print-sheet = Week sheet
print-hint = One page of A4. Use your browser's own command to print it.
table-cards = Table cards
cards-text = Cut along the dashed lines and put one card on each table. Its code opens the result slip.

## The certificate

certificate = Certificate
certificate-of = This says that
certificate-took-part = took part in the season
certificate-with = with { $faction }
certificate-place = Place { $rank } of { $players }
certificate-points =
    { $points } league { $points ->
        [one] point
       *[other] points
    }
certificate-record = { $won } won, { $drawn } drawn, { $lost } lost
certificate-painted =
    { $points } { $points ->
        [one] point
       *[other] points
    } of models newly finished
certificate-awarded = Awarded: { $award }
certificate-signed = For the club
certificate-ended = Weeks: { $weeks }. Ended on { $day }.

## The wall screen

wall = Wall screen
wall-link = For the wall screen
wall-pause = Pause
wall-go-on = Go on
wall-next = Next
wall-part = { $part } of { $parts }
