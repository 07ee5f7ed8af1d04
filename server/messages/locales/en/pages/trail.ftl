### The trail of a season: every act by its name, and by whom.

## The trail

trail = Trail
trail-text = Everything that was done in this season, the newest first. Entries are never changed: each carries the digest of the one before.
trail-officers = You also see what only officers see.
trail-empty = Nothing yet.
entry-n = Entry { $number }
older-entries = Older entries
by-clock = the clock
by-officer = an officer of the club

## Acts

did-create-season = Season set up
did-create-season-from = Season set up from an earlier one
did-update-season = Season changed
did-start-season = Season started
did-end-season = Season ended
did-update-week = Week changed
did-close-week = Week closed
did-reveal = Announced or revealed by time
did-update-scenario = Scenario sheet saved
did-join-season = Joined
did-update-player = Player changed
did-withdraw-player = Withdrew
did-tell-availability = Said when they can come
did-seal-list = List handed in late
did-open-lists = Lists opened
did-open-lists-too-early = Tried to open lists too early
did-grant-late-leave = Late list allowed
did-nudge-players = People reminded
did-propose-round = Round proposed
did-repair-round = Repair proposed
did-publish-round = Round published
did-publish-repair = Repair published
did-report-result = Result reported
did-confirm-result = Result confirmed
did-dispute-result = Result disputed
did-rule-result = Result ruled
did-adjust-points = Points by ruling
did-claim-painting = Painting claimed
did-verify-claim = Painting checked
did-refuse-claim = Painting refused
did-create-photo = Photo added
did-delete-photo = Photo taken away
did-create-invitation = Invitation made
did-delete-invitation = Invitation taken back
did-accept-invitation = Came into the club
did-update-member = Role changed
did-delete-member = Left or removed from the club
did-create-club = Club founded
did-create-catalogue = Catalogue made
did-create-catalogue-version = Version of a catalogue imported
did-create-record-consent = Agreed that everybody may read the record
did-delete-record-consent = Withdrew that agreement
did-something = Something else
