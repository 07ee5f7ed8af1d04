#!/usr/bin/env python3
"""Finds the army lists of the demo season and writes them to demo/lists.json.

For every player a chain of lists, one a week, that keeps the season's rules: each hits its cap to the
point, holds all of the list before it, and leaves the next cap within reach. The search tries random
growth from a fixed seed, so that it writes the same file every time. In week 5, the refit week, the
players named in SWAPS leave a unit behind.
"""

import json
import random
from pathlib import Path

DEMO = Path(__file__).resolve().parent.parent
CAPS = [300, 400, 500, 600, 600, 750]
LARGEST = [40, 40, 35, 35, 35, 30]  # share of the cap for one unit, in percent
LEADERS = [1, 1, 1, 1, 1, 2]
COPIES = [1, 1, 1, 2, 2, 2]  # of one unit that is not of the kind line
LINE_COPIES = 4
SWAP = 20  # percent of the points that may leave in week 5
SWAPS = {"Oskrel"}


def load(name):
    return json.loads((DEMO / name).read_text())


def price(units, entry):
    unit = units[entry["unit"]]
    size = next(size["points"] for size in unit["sizes"] if size["models"] == entry["models"])
    options = {option["key"]: option["points"] for option in unit["options"]}
    return size + sum(options[key] for key in entry.get("options", {}))


def total(units, entries):
    return sum(price(units, entry) for entry in entries)


def within_limits(units, entries, week):
    """Whether growth alone could still make the list legal."""
    kinds = [units[entry["unit"]]["kind"] for entry in entries]
    if kinds.count("leader") > LEADERS[week] or kinds.count("colossus") > (0 if week < 3 else 1):
        return False
    if any(price(units, entry) * 100 > LARGEST[week] * CAPS[week] for entry in entries):
        return False
    for key, unit in units.items():
        most = LINE_COPIES if unit["kind"] == "line" else COPIES[week]
        if sum(entry["unit"] == key for entry in entries) > most:
            return False
    return total(units, entries) <= CAPS[week]


def is_legal(units, entries, week):
    kinds = [units[entry["unit"]]["kind"] for entry in entries]
    enough = kinds.count("leader") >= 1 and kinds.count("line") >= CAPS[week] // 250
    return enough and within_limits(units, entries, week)


def growths(units, entries, week):
    """Every list that is one step larger."""
    for place, entry in enumerate(entries):
        unit = units[entry["unit"]]
        if any(size["models"] == entry["models"] + 1 for size in unit["sizes"]):
            yield replaced(entries, place, {**entry, "models": entry["models"] + 1})
        for option in unit["options"]:
            if option["key"] not in entry.get("options", {}):
                options = {**entry.get("options", {}), option["key"]: 1}
                yield replaced(entries, place, {**entry, "options": options})
    for key, unit in units.items():
        number = sum(entry["unit"] == key for entry in entries) + 1
        smallest = unit["sizes"][0]["models"]
        yield [*entries, {"key": f"{key}-{number}", "unit": key, "models": smallest}]


def replaced(entries, place, entry):
    return [*entries[:place], entry, *entries[place + 1 :]]


def grow(units, entries, week, chance):
    """One random way from `entries` to a legal list at the cap, or None."""
    while total(units, entries) < CAPS[week]:
        ways = [way for way in growths(units, entries, week) if within_limits(units, way, week)]
        if not ways:
            return None
        entries = chance.choice(ways)
    return entries if is_legal(units, entries, week) else None


def leave_one(units, entries, chance):
    """The list without one unit that the refit week lets go."""
    loose = [
        entry
        for entry in entries
        if units[entry["unit"]]["kind"] not in ("leader", "line")
        and price(units, entry) * 100 <= SWAP * total(units, entries)
    ]
    if not loose:
        return None
    gone = chance.choice(loose)
    return [entry for entry in entries if entry is not gone]


def chain(units, swaps, chance):
    """Lists of all weeks, or None where the growth led nowhere."""
    lists, entries = [], []
    for week in range(len(CAPS)):
        if week == 4 and swaps:
            before = {entry["key"] for entry in entries}
            kept = leave_one(units, entries, chance)
            entries = kept and grow(units, kept, week, chance)
            # A unit that comes in must not take the place of the one that left.
            if entries and {entry["key"] for entry in entries} == before:
                return None
        elif week == 4:
            entries = list(entries)
        else:
            entries = next(filter(None, (grow(units, entries, week, chance) for _ in range(60))), None)
        if not entries or not is_legal(units, entries, week):
            return None
        lists.append(entries)
    return lists


def main():
    catalogue = {
        faction["key"]: {unit["key"]: unit for unit in faction["units"]}
        for faction in load("catalogue.json")["factions"]
    }
    chance = random.Random("Lamplit Ford")
    found = {}
    for player in load("players.json"):
        units, lists = catalogue[player["faction"]], None
        while lists is None:
            lists = chain(units, player["handle"] in SWAPS, chance)
        lists = lists[player.get("joins_in_week", 1) - 1 :]
        faction = player["faction"]
        found[player["handle"]] = [{"faction": faction, "entries": entries} for entries in lists]
    lines = [
        f"  {json.dumps(handle)}: [\n"
        + ",\n".join(f"    {json.dumps(one)}" for one in lists)
        + "\n  ]"
        for handle, lists in found.items()
    ]
    (DEMO / "lists.json").write_text("{\n" + ",\n".join(lines) + "\n}\n")


if __name__ == "__main__":
    main()
