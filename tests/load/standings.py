"""A table of 64 rows from the read service, against nginx serving the same bytes as a file.

Both have two threads, 64 connections and the same two cores as wrk. The two take turns, several
times for each kind of body; what is reported is the ratio of the medians. Then the same while an
organiser gives points at a steady rate: after each acknowledgement the table is read, and must hold
what was written.
"""

import argparse
import gzip
import json
import os
import re
import shutil
import signal
import statistics
import subprocess
import tempfile
import threading
import time
import urllib.request
from datetime import date, timedelta
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PLAYERS = 64
CONNECTIONS = 64
THREADS = 2
PASSWORD = "six lanterns on the ford"


class Client:
    """A person who talks to the server."""

    def __init__(self, address):
        self.address = address
        self.token = None

    def ask(self, method, path, body=None, headers=None):
        request = urllib.request.Request(self.address + path, method=method)
        for name, value in (headers or {}).items():
            request.add_header(name, value)
        if self.token:
            request.add_header("Authorization", f"Bearer {self.token}")
        data = None if body is None else json.dumps(body).encode()
        if data is not None:
            request.add_header("Content-Type", "application/json")
        with urllib.request.urlopen(request, data, timeout=20) as answer:
            return answer.headers, answer.read()

    def post(self, path, body):
        headers, answer = self.ask("POST", path, body)
        return headers.get("Location") or (json.loads(answer) if answer else None)

    def register(self, handle):
        email = f"{handle.lower()}@example.org"
        account = {"email": email, "name": handle, "password": PASSWORD}
        self.post("/api/v1/accounts", account)
        session = {"email": email, "password": PASSWORD}
        self.token = self.post("/api/v1/sessions", session)["access_token"]
        return self


def part(name):
    return json.loads((ROOT / "demo" / f"{name}.json").read_text())


def set_up(address):
    """A started public season; its owner, its path and the players' identities."""
    owner = Client(address).register("Wennable")
    club = owner.post("/api/v1/clubs", {"name": "Lamplit Ford gaming circle", "slug": "lamplit-ford"})
    catalogue = owner.post(f"{club}/catalogues", {"name": "Quernlight Reckoning"})
    owner.post(f"{catalogue}/versions", part("catalogue"))
    season = part("season")
    season["catalogue"] = catalogue.rsplit("/", 1)[1]
    season["calendar"]["first_day"] = (date.today() + timedelta(days=1)).isoformat()
    season["places"] = PLAYERS
    rules = ["list_rules", "scoring", "painting", "tie_breaks", "pairing"]
    season["policy"] = {name: part(name) for name in rules} | {"confirm_within_hours": 48}
    season = owner.post(f"{club}/seasons", season)
    invitation = {"role": "player", "uses": 100, "days": 90}
    code = owner.post(f"{club}/invitations", invitation)["code"]
    factions = [person["faction"] for person in part("players")]
    players = []
    for number in range(PLAYERS):
        person = Client(address).register(f"Lantern{number}")
        person.post("/api/v1/invitations/accept", {"code": code})
        place = {
            "handle": f"Lantern{number}",
            "faction": factions[number % len(factions)],
            "nights": ["first", "second"],
        }
        _, answer = person.ask("POST", f"{season}/players", place)
        players.append(json.loads(answer)["id"])
    owner.post(f"{season}/start", {})
    return owner, season, players


def give(owner, season, player, amount):
    body = {"player": player, "week": 1, "amount": amount, "reason": "Swept the hall"}
    owner.post(f"{season}/adjustments", body)


def wrk(url, seconds, headers):
    """Requests per second and the 99th percentile in milliseconds; no answer may be an error."""
    command = ["wrk", "-t1", f"-c{CONNECTIONS}", f"-d{seconds}s", "--latency"]
    for name, value in headers.items():
        command += ["-H", f"{name}: {value}"]
    said = subprocess.run(command + [url], check=True, capture_output=True, text=True).stdout
    assert "Non-2xx" not in said, said
    rate = float(re.search(r"Requests/sec:\s+([\d.]+)", said)[1])
    number, unit = re.search(r"99%\s+([\d.]+)(us|ms|s)\b", said).groups()
    return rate, float(number) * {"us": 0.001, "ms": 1.0, "s": 1000.0}[unit]


NGINX = """
worker_processes {threads};
pid {folder}/nginx.pid;
error_log {folder}/error.log;
events {{ worker_connections 1024; }}
http {{
    types {{ application/json json; }}
    access_log off;
    sendfile on;
    tcp_nopush on;
    keepalive_requests 100000000;
    open_file_cache max=16;
    gzip_static on;
    client_body_temp_path {folder}/body;
    proxy_temp_path {folder}/proxy;
    fastcgi_temp_path {folder}/fastcgi;
    uwsgi_temp_path {folder}/uwsgi;
    scgi_temp_path {folder}/scgi;
    server {{
        listen 127.0.0.1:{port};
        root {folder}/files;
        add_header Cache-Control no-cache;
    }}
}}
"""


def start_nginx(folder, port, body):
    files = folder / "files"
    files.mkdir()
    (files / "standings.json").write_bytes(body)
    (files / "standings.json.gz").write_bytes(gzip.compress(body, 6))
    for path in (folder, files):
        path.chmod(0o755)
    configuration = folder / "nginx.conf"
    configuration.write_text(NGINX.format(threads=THREADS, folder=folder, port=port))
    command = ["nginx", "-c", configuration, "-p", folder, "-g", "daemon off;"]
    return subprocess.Popen(command)


def start_tallyhost(folder):
    command = [ROOT / os.environ.get("CARGO_TARGET_DIR", "target") / "release" / "tallyhost", "serve"]
    command += ["--listen", "127.0.0.1:0", "--data", folder / "data", "--workers", str(THREADS)]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    return process, process.stdout.readline().removeprefix("listening on ").strip()


def etag_of(url, headers):
    request = urllib.request.Request(url, headers=headers)
    with urllib.request.urlopen(request) as answer:
        return answer.headers["ETag"], answer.read()


def compare(ours, theirs, seconds, repeats):
    """By kind of body: both sides' rates and percentiles."""
    print(f"{'body':<10}{'ours/s':>10}{'nginx/s':>10}{'ratio':>8}{'p99 ms':>9}{'nginx':>8}{'ratio':>8}")
    for kind, headers in [
        ("identity", {}),
        ("gzip", {"Accept-Encoding": "gzip"}),
        ("304", {"Accept-Encoding": "gzip", "unchanged": "yes"}),
    ]:
        unchanged = headers.pop("unchanged", None)
        sides = []
        for url in (ours, theirs):
            own = dict(headers)
            if unchanged:
                own["If-None-Match"] = etag_of(url, headers)[0]
            sides.append((url, own))
        measured = ([], [])
        for _ in range(repeats):
            for side, (url, own) in enumerate(sides):
                measured[side].append(wrk(url, seconds, own))
        (rate, late), (their_rate, their_late) = (
            [statistics.median(column) for column in zip(*side)] for side in measured
        )
        print(
            f"{kind:<10}{rate:>10.0f}{their_rate:>10.0f}{rate / their_rate:>8.2f}"
            f"{late:>9.2f}{their_late:>8.2f}{late / their_late:>8.2f}"
        )


def read_while_written(url, owner, season, players, per_second, seconds):
    """Our rate while points are given, against our rate in quiet just before; no stale table."""
    quiet, _ = wrk(url, seconds, {})
    over = threading.Event()
    told = {"writes": 0, "stale": 0}

    def write():
        due = time.monotonic()
        while not over.is_set():
            player = players[told["writes"] % len(players)]
            give(owner, season, player, 1)
            told["writes"] += 1
            table = json.loads(etag_of(url, {})[1])
            given = sum(row["total"] for row in table["rows"])
            told["stale"] += given != told["given_before"] + told["writes"]
            due += 1 / per_second
            over.wait(max(0.0, due - time.monotonic()))

    table = json.loads(etag_of(url, {})[1])
    told["given_before"] = sum(row["total"] for row in table["rows"])
    writer = threading.Thread(target=write)
    writer.start()
    busy, late = wrk(url, seconds, {})
    over.set()
    writer.join()
    print(
        f"while {told['writes'] / seconds:.1f} changes/s: {busy:.0f}/s, {busy / quiet:.2f} of quiet, "
        f"p99 {late:.2f} ms, {told['stale']} stale of {told['writes']}"
    )
    assert told["stale"] == 0


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--seconds", type=int, default=4, help="of each single measurement")
    options.add_argument("--repeats", type=int, default=3)
    options.add_argument("--port", type=int, default=18391, help="for nginx")
    options.add_argument("--changes", type=float, default=20, help="a second, in the last part")
    chosen = options.parse_args()
    folder = Path(tempfile.mkdtemp(prefix="tallyhost-load-", dir="/tmp"))
    folder.chmod(0o711)
    processes = []
    try:
        tallyhost, address = start_tallyhost(folder)
        processes.append(tallyhost)
        owner, season, players = set_up(address)
        for number, player in enumerate(players):
            give(owner, season, player, 1 + number % 7)
        ours = address + season.replace("/api/v1", "/public", 1) + "/standings"
        body = etag_of(ours, {})[1]
        processes.append(start_nginx(folder, chosen.port, body))
        theirs = f"http://127.0.0.1:{chosen.port}/standings.json"
        print(f"{len(body)} bytes, {len(json.loads(body)['rows'])} rows, nproc {os.cpu_count()}")
        compare(ours, theirs, chosen.seconds, chosen.repeats)
        read_while_written(ours, owner, season, players, chosen.changes, 2 * chosen.seconds)
    finally:
        for process in reversed(processes):
            process.send_signal(signal.SIGTERM)
            process.wait(timeout=60)
        shutil.rmtree(folder, ignore_errors=True)


if __name__ == "__main__":
    main()
