"""What one process needs: memory while it serves 1,000 seasons of 64 players under load, and the time
from its start to its first answer, with a new data folder and with one that is there.

One season is made over HTTP; the others are copies of its rows, each under a key of its own.
"""

import argparse
import os
import statistics
import subprocess
import time
import urllib.request
from pathlib import Path

import programs
from league import League
from programs import wrk
from report import Report

# Parents before children.
COPY = """
with copies as (select gen_random_uuid() as season_id from generate_series(2, {seasons}))
select set_config('load.copies', json_agg(season_id)::text, false) from copies;
do $$
declare
    name text;
begin
    foreach name in array array['seasons', 'season_seeds', 'weeks', 'nights', 'players', 'adjustments'] loop
        execute format(
            'insert into %1$I select (jsonb_populate_record(null::%1$I,
                to_jsonb(one) || jsonb_build_object(''season_id'', copy))).*
            from %1$I one, jsonb_array_elements_text(current_setting(''load.copies'')::jsonb) copy', name);
    end loop;
end
$$;
analyze;
select '/public/clubs/' || club_id || '/seasons/' || season_id from seasons;
"""

SCRIPT = Path(__file__).with_name("seasons.lua")


def copy_seasons(server, seasons):
    """The public paths of all seasons."""
    command = ["psql", "--no-psqlrc", "--quiet", "--tuples-only", "--no-align", server.database()]
    statements = COPY.format(seasons=seasons)
    said = subprocess.run(command, input=statements, check=True, capture_output=True, text=True).stdout
    return [line for line in said.splitlines() if line.startswith("/public/")]


def first_answer(data):
    """Seconds from the start of the process to its first answer."""
    start = time.monotonic()
    with programs.tallyhost(data) as server:
        urllib.request.urlopen(f"{server.address}/health/ready", timeout=10).read()
        return time.monotonic() - start


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--seasons", type=int, default=1000)
    options.add_argument("--seconds", type=int, default=10, help="of load for each coding")
    chosen = options.parse_args()
    report = Report(f"{chosen.seasons} seasons of 64 players, {os.cpu_count()} cores")
    with programs.folder() as folder:
        data = folder / "data"
        cold = first_answer(data)
        warm = statistics.median(first_answer(data) for _ in range(5))
        report.note("seconds to the first answer, new data folder", f"{cold:.2f}")
        report.note("seconds to the first answer, data folder there", f"{warm:.2f}")
        with programs.tallyhost(data) as server:
            league = League(server.address, 64)
            for number, player in enumerate(league.players):
                league.give(player, 1 + number % 7)
            paths = copy_seasons(server, chosen.seasons)
            assert len(paths) == chosen.seasons
            (folder / "paths").write_text("\n".join(f"{path}/standings" for path in paths))
            report.note("MiB before anybody reads", f"{server.memory()[0] / 1024:.0f}")
            os.environ["PATHS"] = str(folder / "paths")
            for coding in ("identity", "gzip", "br"):
                rate, late = wrk(server.address, chosen.seconds, {"Accept-Encoding": coding}, SCRIPT)
                report.note(f"{coding}: requests/s, p99 ms", f"{rate:.0f}, {late:.1f}")
                report.note(f"{coding}: MiB after it", f"{server.memory()[0] / 1024:.0f}")
            report.note("MiB at most", f"{server.memory()[1] / 1024:.0f}")
    report.print()


if __name__ == "__main__":
    main()
