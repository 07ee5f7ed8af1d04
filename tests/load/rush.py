"""The minutes before a deadline: 2,000 signed-in players seal their lists from 64 connections.

Each list of nearly 2,000 points is checked against the rules and sealed with a receipt. Then pgbench
inserts the very same rows, bare, into the same table of the same database, with as many connections
and the same durability. The two take turns, each time with an empty table; what counts is the median
of the ratios of rows a second.
"""

import argparse
import os
import re
import selectors
import statistics
import subprocess
import time

import programs
import wire
from league import League, demo_policy
from programs import CONNECTIONS, THREADS
from report import Report

CAP = 2000
MINUTE = 60
# Every faction has its own units; a list of one faction serves all.
FACTION = "sluicebond-syndics"
# Unit, models, options; 1,996 points together.
ENTRIES = [
    ("sluicewarden", 1, ["lockstaff", "tide-bell"]),
    ("gaugemaster", 1, []),
    *[("pole-hands", 16, ["pennant"])] * 3,
    ("pole-hands", 16, []),
    *[("dredge-apprentices", 12, ["hook-ropes"])] * 2,
    *[("dredge-apprentices", 12, [])] * 2,
    *[("culvert-runners", 10, ["smoke-jars"])] * 2,
    *[("paddlegate-bulwarks", 8, ["gate-shields"])] * 2,
    ("bilge-mortar", 3, ["tar-shot"]),
    ("bilge-mortar", 3, []),
    ("the-long-pump", 1, []),
]


def army():
    entries = [
        {"key": f"{unit}-{number}", "unit": unit, "models": models, "options": dict.fromkeys(options, 1)}
        for number, (unit, models, options) in enumerate(ENTRIES, 1)
    ]
    return {"faction": FACTION, "entries": entries}


def late_rules():
    """The demo's rules of its sixth week, for every week; none looks back on an earlier list."""
    policy = demo_policy()
    backward = ("carry_over", "swap_allowance")
    rules = [
        {"rule": rule["rule"]}
        for rule in policy["list_rules"]
        if 6 in rule.get("weeks", [6]) and rule["rule"]["kind"] not in backward
    ]
    return policy | {"list_rules": rules}


class Connection:
    """Sends one request after the other, each when the last is answered."""

    def __init__(self, address, requests, selector):
        self.requests = requests
        self.socket = wire.connect(address)
        selector.register(self.socket, selectors.EVENT_READ, self)
        self.selector, self.said, self.answers = selector, b"", []
        self.send()

    def send(self):
        request = next(self.requests, None)
        if request is None:
            self.selector.unregister(self.socket)
            self.socket.close()
            return
        self.sent = time.perf_counter()
        self.socket.sendall(request)

    def receive(self):
        more = self.socket.recv(65536)
        assert more, "the server hung up"
        self.said += more
        answer = wire.answer(self.said)
        if answer:
            status, body = answer
            self.answers.append((status, time.perf_counter() - self.sent, body))
            self.said = b""
            self.send()


def seal_all(league, path):
    """Status, seconds and body of each answer, and the seconds of all together."""
    body = army()
    requests = [wire.request("POST", path, person.token, body) for person in league.people]
    waiting = iter(requests)
    with selectors.DefaultSelector() as selector:
        start = time.perf_counter()
        connections = [Connection(league.address, waiting, selector) for _ in range(CONNECTIONS)]
        while selector.get_map():
            for ready, _ in selector.select(MINUTE):
                ready.data.receive()
        seconds = time.perf_counter() - start
    return [answer for connection in connections for answer in connection.answers], seconds


# The rows as they were sealed, each under a number.
NUMBER = """
drop table if exists rush;
create table rush as select row_number() over () as number, lists.* from lists;
alter table rush add primary key (number);
analyze rush;
"""

# Once; plans made since hold for as long as nobody analyses again.
SETTLE = "vacuum analyze;"

EMPTY = """
truncate lists cascade;
checkpoint;
"""

# One sealed list: the statements of a seal that write, without those that look.
INSERT = """
\\set row :client_id * {each} + :done + 1
\\set done :done + 1
begin;
insert into lists
    select club_id, season_id, week_no, player_id, list_id, draft, draft_revision, sealed, sealed_points,
           catalogue_number, salt, digest, sealed_at, late_minutes, stands_in
    from rush where number = :row;
commit;
"""


def sql(server, statements):
    command = ["psql", "--no-psqlrc", "--quiet", "--tuples-only", "--no-align", server.database()]
    done = subprocess.run(command, input=statements, check=True, capture_output=True, text=True)
    return done.stdout.strip()


def insert_all(server, folder, players):
    """Rows a second of pgbench."""
    each = players // CONNECTIONS
    script = folder / "insert.sql"
    script.write_text(INSERT.format(each=each))
    command = ["pgbench", "--no-vacuum", "--protocol=prepared", "--define=done=0", f"--file={script}"]
    command += [f"--client={CONNECTIONS}", f"--jobs={THREADS}", f"--transactions={each}"]
    said = subprocess.run(
        [*command, server.database()], check=True, capture_output=True, text=True, timeout=MINUTE
    ).stdout
    assert int(sql(server, "select count(*) from lists")) == each * CONNECTIONS, said
    return float(re.search(r"tps = ([\d.]+) \(without", said)[1])


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--players", type=int, default=2000)
    options.add_argument("--repeats", type=int, default=7)
    chosen = options.parse_args()
    with programs.folder() as folder, programs.tallyhost(folder / "data") as server:
        league = League(
            server.address,
            chosen.players,
            policy=late_rules(),
            caps=[CAP] * 8,
            begins_in=-1,
            factions=[FACTION],
        )
        path = f"{league.season}/weeks/1/list/seal"
        sql(server, SETTLE)
        statuses, lates, longest, rates, inserted = [], [], 0.0, [], []
        for _ in range(chosen.repeats):
            sql(server, EMPTY)
            answers, seconds = seal_all(league, path)
            statuses += [status for status, _, _ in answers]
            lates += [late * 1000 for _, late, _ in answers]
            longest = max(longest, seconds)
            rates.append(len(answers) / seconds)
            for said in [said for status, _, said in answers if status != 201][:1]:
                print(said.decode()[:2000])
            rows = int(sql(server, f"{NUMBER} select count(*) from rush where sealed_points > 1900"))
            sql(server, EMPTY)
            inserted.append(insert_all(server, folder, chosen.players))
        lates.sort()

    report = Report(f"{chosen.players} players seal from {CONNECTIONS} connections, {os.cpu_count()} cores")
    report.at_least("lists sealed, each time", rows, chosen.players, "{}")
    report.at_most("seconds for all, the longest", longest, MINUTE, "{:.1f}")
    report.at_most("answers of 5xx", sum(status >= 500 for status in statuses), 0, "{}")
    report.note("ms, median", f"{lates[len(lates) // 2]:.0f}")
    report.note("ms, p99", f"{lates[len(lates) * 99 // 100]:.0f}")
    report.note("seals a second", f"{statistics.median(rates):.0f}")
    report.note("pgbench: rows a second", f"{statistics.median(inserted):.0f}")
    ratios = [seals / rows for seals, rows in zip(rates, inserted)]
    report.at_least("seals to pgbench's rows", statistics.median(ratios), 0.5)
    report.print()


if __name__ == "__main__":
    main()
