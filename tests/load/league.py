"""People and seasons for a measurement, made over HTTP from the demo's invented material."""

import http.client
import json
import time
from concurrent.futures import ThreadPoolExecutor
from datetime import date, timedelta

from programs import ROOT

PASSWORD = "six lanterns on the ford"
# An invitation has 500 uses at most.
USES = 500
AT_ONCE = 4
# The server closes a connection that was silent for five seconds.
SILENCE = 3


class Client:
    """A person who talks to the server over one connection."""

    def __init__(self, address, token=None):
        self.address = address
        self.token = token
        self.connection = http.client.HTTPConnection(address.removeprefix("http://"), timeout=30)
        self.asked = time.monotonic()

    def ask(self, method, path, body=None, headers=()):
        """Status, headers and body of the answer."""
        headers = dict(headers)
        if self.token:
            headers["Authorization"] = f"Bearer {self.token}"
        if body is not None:
            body = json.dumps(body)
            headers["Content-Type"] = "application/json"
        if time.monotonic() > self.asked + SILENCE:
            self.connection.close()
        self.asked = time.monotonic()
        self.connection.request(method, path, body, headers)
        answer = self.connection.getresponse()
        said = answer.read()
        assert answer.status < 400, f"{method} {path}: {answer.status} {said[:2000]}"
        return answer.status, answer.headers, said

    def read(self, path, headers=()):
        return self.ask("GET", path, headers=headers)[2]

    def post(self, path, body):
        """Where it was put, or what was answered."""
        _, headers, said = self.ask("POST", path, body)
        return headers.get("Location") or (json.loads(said) if said else None)

    def register(self, handle):
        email = f"{handle.lower()}@example.org"
        self.post("/api/v1/accounts", {"email": email, "name": handle, "password": PASSWORD})
        session = {"email": email, "password": PASSWORD}
        self.token = self.post("/api/v1/sessions", session)["access_token"]
        return self


def part(name):
    """A part of the demo."""
    return json.loads((ROOT / "demo" / f"{name}.json").read_text())


def demo_policy():
    """The demo's rules."""
    rules = ["list_rules", "scoring", "painting", "tie_breaks", "pairing"]
    return {name: part(name) for name in rules} | {"confirm_within_hours": 48}


def ruling(player, amount):
    """Points that a referee gives."""
    return {"player": player, "week": 1, "amount": amount, "reason": "Swept the hall"}


def version_of(body):
    """The version of what everybody reads."""
    return int(body[:40].removeprefix(b'{"version":').split(b",")[0])


class League:
    """A started public season with its owner and players."""

    def __init__(self, address, players, policy=None, caps=None, begins_in=1, factions=None):
        """`begins_in` days the first week begins; a negative number: it is announced already."""
        self.address = address
        self.owner = Client(address).register("Wennable")
        club = {"name": "Lamplit Ford gaming circle", "slug": "lamplit-ford"}
        self.club = self.owner.post("/api/v1/clubs", club)
        catalogue = self.owner.post(f"{self.club}/catalogues", {"name": "Quernlight Reckoning"})
        self.owner.post(f"{catalogue}/versions", part("catalogue"))
        season = part("season") | {
            "catalogue": catalogue.rsplit("/", 1)[1],
            "places": players,
            "policy": policy or demo_policy(),
        }
        season["calendar"]["first_day"] = (date.today() + timedelta(days=begins_in)).isoformat()
        if caps:
            season["caps"] = {"kind": "list", "caps": caps}
        self.season = self.owner.post(f"{self.club}/seasons", season)
        self.rulings = f"{self.season}/adjustments"
        self.public = self.season.replace("/api/v1", "/public", 1)
        codes = [self._invite() for _ in range(0, players, USES)]
        factions = factions or [person["faction"] for person in part("players")]

        def join(number):
            person = Client(address).register(f"Lantern{number}")
            person.post("/api/v1/invitations/accept", {"code": codes[number // USES]})
            place = {
                "handle": f"Lantern{number}",
                "faction": factions[number % len(factions)],
                "nights": ["first", "second"],
            }
            _, _, said = person.ask("POST", f"{self.season}/players", place)
            person.connection.close()
            return person, json.loads(said)["id"]

        with ThreadPoolExecutor(AT_ONCE) as threads:
            joined = list(threads.map(join, range(players)))
        self.people = [person for person, _ in joined]
        self.players = [player for _, player in joined]
        self.owner.post(f"{self.season}/start", {})

    def _invite(self):
        invitation = {"role": "player", "uses": USES, "days": 90}
        return self.owner.post(f"{self.club}/invitations", invitation)["code"]

    def give(self, player, amount):
        """Points by a ruling, acknowledged when this returns."""
        self.owner.post(self.rulings, ruling(player, amount))

    def version(self, of="standings"):
        """The version of what everybody reads."""
        return version_of(self.owner.read(f"{self.public}/{of}"))
