#!/usr/bin/env python3
"""Plans who has painted what by which week of the demo and writes it to demo/painting_log.json.

Everybody paints the models of their lists in the order in which they joined the army, for the hours a
week that demo/players.json gives, and began one week before the season. Whoever began with half a
finished army has half of the first list painted beforehand.
"""

import json
from pathlib import Path

DEMO = Path(__file__).resolve().parent.parent
WEEKS_BEFORE = 1
PLAYED = 5


def load(name):
    return json.loads((DEMO / name).read_text())


def log_of(player, lists, minutes_per_model):
    """For each week the units that were painted on: key, models finished, models still bare."""
    first = player.get("joins_in_week", 1)
    left = player["hours_per_week"] * 60 * WEEKS_BEFORE
    if player.get("half_painted"):
        left += sum(entry["models"] * minutes_per_model[entry["unit"]] for entry in lists[0]["entries"]) // 2
    done, weeks = {}, []
    for week in range(1, PLAYED + 1):
        claims = []
        if week >= first:
            left += player["hours_per_week"] * 60
            for entry in lists[week - first]["entries"]:
                minutes = minutes_per_model[entry["unit"]]
                before = done.get(entry["key"], 0)
                now = min(entry["models"], before + left // minutes)
                if now > before:
                    left -= (now - before) * minutes
                    done[entry["key"]] = now
                    stages = {"bare": entry["models"] - now, "finished": now}
                    claims.append({"unit": entry["key"], "stages": stages})
        weeks.append(claims)
    return weeks


def main():
    minutes_per_model = {
        unit["key"]: unit["minutes_per_model"]
        for faction in load("catalogue.json")["factions"]
        for unit in faction["units"]
    }
    lists = load("lists.json")
    logs = {
        player["handle"]: log_of(player, lists[player["handle"]], minutes_per_model)
        for player in load("players.json")
    }
    lines = [
        f"  {json.dumps(handle)}: [\n"
        + ",\n".join(f"    {json.dumps(claims)}" for claims in weeks)
        + "\n  ]"
        for handle, weeks in logs.items()
    ]
    (DEMO / "painting_log.json").write_text("{\n" + ",\n".join(lines) + "\n}\n")


if __name__ == "__main__":
    main()
