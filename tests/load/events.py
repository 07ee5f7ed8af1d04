"""Many idle subscribers of one season's events on one process: what each costs, and how soon a
change has reached them all.

The subscribers are spread over source addresses of the loopback, each address with far fewer than
the system has ports. They come in waves, so that the server's queue of new connections holds them.
"""

import argparse
import re
import select
import socket
import statistics
import time

import programs
from league import League
from report import Report

PER_ADDRESS = 5000
WAVE = 250
PATIENCE = 60
EVENT = re.compile(rb"id: (\d+)\n")


class Crowd:
    """Subscribers, each with the newest version it has heard."""

    def __init__(self, server, path):
        host, port = server.address.removeprefix("http://").split(":")
        self.to = (host, int(port))
        self.greeting = f"GET {path} HTTP/1.1\r\nHost: {host}\r\nAccept: text/event-stream\r\n\r\n".encode()
        self.poll = select.epoll()
        self.sockets, self.heard = {}, {}

    def grow(self, by):
        """More subscribers, who have heard the version of this moment when this returns."""
        before = len(self.sockets)
        for number in range(before, before + by):
            one = socket.socket()
            one.bind((f"127.0.1.{1 + number // PER_ADDRESS}", 0))
            one.connect(self.to)
            one.sendall(self.greeting)
            one.setblocking(False)
            self.poll.register(one, select.EPOLLIN)
            self.sockets[one.fileno()] = one
        self.listen_until(lambda: len(self.heard) == len(self.sockets))

    def listen_until(self, enough):
        end = time.monotonic() + PATIENCE
        while not enough():
            assert time.monotonic() < end, f"{len(self.heard)} of {len(self.sockets)} heard in time"
            for place, _ in self.poll.poll(1):
                said = self.sockets[place].recv(4096)
                assert said, "the server ended a stream"
                versions = EVENT.findall(said)
                if versions:
                    self.heard[place] = int(versions[-1])

    def hear(self, version):
        """Waits until all have heard of a version."""
        left = [place for place, heard in self.heard.items() if heard < version]

        def all_have():
            left[:] = [place for place in left if self.heard[place] < version]
            return not left

        self.listen_until(all_have)

    def leave(self):
        for one in self.sockets.values():
            one.close()


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--subscribers", type=int, default=10_000)
    options.add_argument("--changes", type=int, default=9)
    chosen = options.parse_args()
    allowed = programs.allow_many_files()
    assert allowed > chosen.subscribers + 100, f"only {allowed} files may be open here (ulimit -Hn)"
    report = Report(f"{chosen.subscribers} subscribers of one process")
    with programs.folder() as folder, programs.tallyhost(folder / "data") as server:
        league = League(server.address, 64)
        crowd = Crowd(server, f"{league.public}/events")
        crowd.grow(WAVE)
        before, count = server.memory()[0], len(crowd.sockets)
        start = time.monotonic()
        while len(crowd.sockets) < chosen.subscribers:
            crowd.grow(min(WAVE, chosen.subscribers - len(crowd.sockets)))
        report.note("seconds for all to come", f"{time.monotonic() - start:.1f}")
        each = (server.memory()[0] - before) / (len(crowd.sockets) - count)
        report.note("resident memory of the server, MiB", f"{server.memory()[0] / 1024:.0f}")
        report.note("of it for each subscriber, KiB", f"{each:.1f}")
        took = []
        for number in range(chosen.changes):
            version = league.version("weeks")
            start = time.monotonic()
            league.give(league.players[number], 1)
            crowd.hear(version + 1)
            took.append(time.monotonic() - start)
        report.note("seconds until all heard of a change, median", f"{statistics.median(took):.3f}")
        report.at_most("the same, the slowest of all changes", max(took), 1.0, "{:.3f}")
        report.note("resident memory after the changes, MiB", f"{server.memory()[0] / 1024:.0f}")
        crowd.leave()
        report.print()


if __name__ == "__main__":
    main()
