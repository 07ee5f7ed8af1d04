"""A table of 64 rows from the read service, against nginx serving the same bytes as a file.

Both have two threads, 64 connections and the same two cores as wrk. The two take turns, several
times for each kind of body; what counts is the median of the ratios of neighbours. Then the same
while an organiser gives points at a steady rate, in turns with quiet: after each acknowledgement the
table is read, and must be of the version that was acknowledged.
"""

import argparse
import json
import os
import statistics
import threading
import time

import programs
import wire
from league import Client, League, ruling, version_of
from programs import wrk
from report import Report

PLAYERS = 64


def tag_of(address, path, headers):
    return Client(address).ask("GET", path, headers=headers)[1]["ETag"]


def compare(report, ours, theirs, chosen):
    for kind, accepts, unchanged in [
        ("as it is", {}, False),
        ("gzip", {"Accept-Encoding": "gzip"}, False),
        ("304", {"Accept-Encoding": "gzip"}, True),
    ]:
        sides = []
        for address, path in (ours, theirs):
            headers = dict(accepts)
            if unchanged:
                headers["If-None-Match"] = tag_of(address, path, accepts)
            sides.append((address + path, headers))
        turns = [[wrk(url, chosen.seconds, headers) for url, headers in sides] for _ in range(chosen.repeats)]
        rates, lates = ([[side[of] for side in turn] for turn in turns] for of in (0, 1))
        ratio = [statistics.median(ours / nginx for ours, nginx in pairs) for pairs in (rates, lates)]
        here, there = (statistics.median(side) for side in zip(*rates))
        report.note(f"{kind}: requests/s here, nginx", f"{here:.0f}, {there:.0f}")
        report.at_least(f"{kind}: requests/s to nginx's", ratio[0], 1.0)
        here, there = (statistics.median(side) for side in zip(*lates))
        report.note(f"{kind}: p99 ms here, nginx", f"{here:.2f}, {there:.2f}")
        report.at_most(f"{kind}: p99 to nginx's", ratio[1], 1.2)


class Writers:
    """Give points at a steady rate, and read after each acknowledgement.

    Each change raises the version by one, and nobody else changes anything: whoever reads after so
    many acknowledgements must find a version at least so much higher.
    """

    AT_ONCE = 4

    def __init__(self, league, per_second):
        self.league, self.pause = league, self.AT_ONCE / per_second
        self.written = self.stale = 0
        self.lock, self.over = threading.Lock(), threading.Event()
        self.threads = [threading.Thread(target=self._write, args=[number]) for number in range(self.AT_ONCE)]

    def __enter__(self):
        self.first = self.league.version()
        for thread in self.threads:
            thread.start()
        return self

    def __exit__(self, *_):
        self.over.set()
        for thread in self.threads:
            thread.join()

    def _write(self, number):
        league, token = self.league, self.league.owner.token
        change = wire.request("POST", league.rulings, token, ruling(league.players[number], 1))
        look = wire.request("GET", f"{league.public}/standings", token)
        due = time.monotonic() + self.pause * number / self.AT_ONCE
        with wire.connect(league.address) as line:
            self._write_over(line, change, look, due)

    def _write_over(self, line, change, look, due):
        while not self.over.wait(max(0.0, due - time.monotonic())):
            wire.ask(line, change)
            with self.lock:
                self.written += 1
                expected = self.first + self.written
            is_stale = version_of(wire.ask(line, look)) < expected
            with self.lock:
                self.stale += is_stale
            due += self.pause


def read_while_written(report, league, url, chosen):
    turns, written, stale = [], 0, 0
    for _ in range(chosen.repeats):
        quiet, _ = wrk(url, chosen.seconds)
        with Writers(league, chosen.changes) as writers:
            busy, _ = wrk(url, chosen.seconds)
        turns.append(busy / quiet)
        written, stale = written + writers.written, stale + writers.stale
    rate = written / (chosen.seconds * chosen.repeats)
    report.at_least("changes/s acknowledged", rate, 0.95 * chosen.changes, "{:.1f}")
    report.at_least("requests/s meanwhile, to quiet", statistics.median(turns), 0.9)
    report.at_most(f"stale after an acknowledgement, of {written}", stale, 0, "{}")


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--seconds", type=int, default=4, help="of each single measurement")
    options.add_argument("--repeats", type=int, default=9)
    options.add_argument("--port", type=int, default=18391, help="for nginx")
    options.add_argument("--changes", type=float, default=20, help="a second, in the last part")
    chosen = options.parse_args()
    with programs.folder() as folder, programs.tallyhost(folder / "data") as server:
        league = League(server.address, PLAYERS)
        for number, player in enumerate(league.players):
            league.give(player, 1 + number % 7)
        path = f"{league.public}/standings"
        body = league.owner.read(path)
        report = Report(f"{len(json.loads(body)['rows'])} rows, {len(body)} bytes, {os.cpu_count()} cores")
        with programs.nginx(folder, chosen.port, body) as file:
            host, _, name = file.rpartition("/")
            compare(report, (server.address, path), (host, f"/{name}"), chosen)
        read_while_written(report, league, server.address + path, chosen)
        report.print()


if __name__ == "__main__":
    main()
