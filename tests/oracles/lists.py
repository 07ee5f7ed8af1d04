#!/usr/bin/env python3
"""Army lists checked a second time, naively, from the sentences of the rules alone.

Makes random catalogues, lists and rules from a fixed seed and says what a check must find. The
Rust test server/document/tests/list_oracle.rs holds the league's own check against the file.

    lists.py            compares the checked-in file with what this script makes
    lists.py --write    writes the file
"""

import json
import math
import pathlib
import random
import sys
from collections import Counter
from fractions import Fraction

FILE = pathlib.Path(__file__).with_suffix(".json")
KINDS = ["leader", "line", "heavy"]


# What a list has, looked up the slow way.


def unit_of(catalogue, faction, key):
    for f in catalogue["factions"]:
        if f["key"] == faction:
            return next((u for u in f["units"] if u["key"] == key), None)
    return None


def option_of(unit, key):
    return next((o for o in unit.get("options", []) if o["key"] == key), None)


def option_cost(option, models, taken):
    return option["points"] * (models if option.get("per_model") else 1) * taken


def cost(catalogue, faction, entry):
    unit = unit_of(catalogue, faction, entry["unit"])
    if unit is None:
        return 0
    fitting = [s for s in unit["sizes"] if s["models"] >= entry["models"]]
    size = min(fitting, key=lambda s: s["models"]) if fitting else max(unit["sizes"], key=lambda s: s["models"])
    known = [(option_of(unit, k), n) for k, n in entry.get("options", {}).items()]
    return size["points"] + sum(option_cost(o, entry["models"], n) for o, n in known if o)


def part_cost(catalogue, faction, key, models, options):
    """Points of a part of a unit: the largest size of no more models, and options."""
    priced = unit_of(catalogue, faction, key)
    if priced is None:
        return 0
    within = [s for s in priced["sizes"] if s["models"] <= models]
    body = max(within, key=lambda s: s["models"])["points"] if within else 0
    return body + sum(option_cost(option_of(priced, k), models, n) for k, n in options.items() if option_of(priced, k))


def common(before, now):
    """What two states of one unit have in common."""
    was, has = before.get("options", {}), now.get("options", {})
    return min(before["models"], now["models"]), {k: min(was[k], has[k]) for k in set(was) & set(has)}


def offered(catalogue, faction, before, now):
    """What a catalogue still offers of a unit as it was; of options that exclude each other, what stays."""
    unit = unit_of(catalogue, faction, before["unit"])
    sizes = [s["models"] for s in unit["sizes"] if s["models"] <= before["models"]] if unit else []
    if not sizes:
        return 0, {}
    stay = [k for k in before.get("options", {}) if now and k in now.get("options", {})]
    options = {}
    for k, n in before.get("options", {}).items():
        option = option_of(unit, k)
        groups = [option_of(unit, o).get("group") for o in stay if o != k and option_of(unit, o)]
        if option and not (option.get("group") and option["group"] in groups):
            options[k] = min(n, option.get("limit", 1))
    return max(sizes), options


# Findings as [code, limit, actual, about, entries].


def sound(case, catalogue):
    army, faction = case["list"], case["list"]["faction"]
    if all(f["key"] != faction for f in catalogue["factions"]):
        yield ["list.unknown-faction", None, None, faction, []]
        return
    by_key = {e["key"]: e for e in army["entries"]}
    for e in army["entries"]:
        unit = unit_of(catalogue, faction, e["unit"])
        if unit is None:
            yield ["list.unknown-unit", None, None, e["unit"], [e["key"]]]
            continue
        sizes = [s["models"] for s in unit["sizes"]]
        if e["models"] not in sizes:
            nearest = sorted(sizes, key=lambda m: (abs(m - e["models"]), m))[0]
            yield ["list.unit-size", nearest, e["models"], unit["key"], [e["key"]]]
        groups = Counter()
        for key, taken in e.get("options", {}).items():
            option = option_of(unit, key)
            if option is None:
                yield ["list.unknown-option", None, None, key, [e["key"]]]
                continue
            limit = option.get("limit", 1)
            if taken > limit:
                yield ["list.option-limit", limit, taken, key, [e["key"]]]
            groups[option.get("group")] += 1
        for group, n in groups.items():
            if group is not None and n > 1:
                yield ["list.option-group", 1, n, group, [e["key"]]]
        if "joins" in e:
            host = unit_of(catalogue, faction, by_key[e["joins"]]["unit"])
            wanted = unit.get("joins")
            if wanted is None or host is None or wanted not in host.get("keywords", []):
                yield ["list.joins", None, None, unit["key"], [e["key"], e["joins"]]]
    for key, n in Counter(e["unit"] for e in army["entries"]).items():
        unit = unit_of(catalogue, faction, key)
        if unit and n > unit.get("most_per_army", n):
            copies = [e["key"] for e in army["entries"] if e["unit"] == key]
            yield ["list.most-per-army", unit["most_per_army"], n, key, copies]


def share(document):
    return Fraction(document["part"], document["whole"])


def amount_most(document, whole):
    return document["points"] if document["kind"] == "points" else math.floor(share(document) * whole)


def amount_least(document, whole):
    return document["points"] if document["kind"] == "points" else math.ceil(share(document) * whole)


def count(document, cap):
    return document["count"] if document["kind"] == "fixed" else cap // document["points"]


def outside(actual, least, most):
    """The bound that is broken, the lower one first."""
    if least is not None and actual < least:
        return least
    if most is not None and actual > most:
        return most
    return None


def about_kinds(of, kind):
    if of["kind"] == "every":
        return True
    return (kind in of["unit_kinds"]) == (of["kind"] == "only")


def found(rule, case, catalogue, old_catalogue):
    army, previous, cap = case["list"], case["previous"], case["cap"]
    faction, entries = army["faction"], army["entries"]
    points = {e["key"]: cost(catalogue, faction, e) for e in entries}
    units = {e["key"]: unit_of(catalogue, faction, e["unit"]) for e in entries}
    total = sum(points.values())
    of_kind = [e["key"] for e in entries if units[e["key"]] and units[e["key"]]["kind"] == rule.get("unit_kind")]

    if previous:
        last = {e["key"]: e for e in previous["entries"]}
        price_then = {k: cost(old_catalogue, previous["faction"], e) for k, e in last.items()}
        stays = {
            e["key"]: e
            for e in entries
            if previous["faction"] == faction and e["key"] in last and last[e["key"]]["unit"] == e["unit"]
        }
        could = {k: offered(catalogue, previous["faction"], e, stays.get(k)) for k, e in last.items()}
        could_then = {
            k: min(price_then[k], part_cost(old_catalogue, previous["faction"], last[k]["unit"], *part) if part[0] else 0)
            for k, part in could.items()
        }
        both = {k: common(last[k], e) for k, e in stays.items()}
        kept = {
            k: min(could_then[k], part_cost(old_catalogue, faction, last[k]["unit"], *both[k])) if k in stays else 0
            for k in last
        }
        old = {
            k: min(points[k], part_cost(catalogue, faction, last[k]["unit"], *both[k])) if k in stays else 0
            for k in set(last) | set(points)
        }
        room = max(0, cap - sum(old.values()))
        for k, part in could.items():
            now = part_cost(catalogue, previous["faction"], last[k]["unit"], *part) if part[0] else 0
            if now - old[k] > room:  # What is missing would not fit beside what returns.
                could_then[k] = kept[k]
                could[k] = (stays[k]["models"], stays[k].get("options", {})) if k in stays else (0, {})
        losses = [k for k in last if kept[k] < could_then[k]]

    match rule["kind"]:
        case "minimum_spend":
            least = amount_least(rule["least"], cap)
            if total < least:
                yield ["list.minimum-spend", least, total, None, []]
        case "largest_unit":
            most = amount_most(rule["most"], cap)
            for e in entries:
                if points[e["key"]] > most:
                    yield ["list.largest-unit", most, points[e["key"]], e["unit"], [e["key"]]]
        case "kind_count":
            least, most = (count(rule[b], cap) if b in rule else None for b in ("least", "most"))
            limit = outside(len(of_kind), least, most)
            if limit is not None:
                yield ["list.kind-count", limit, len(of_kind), rule["unit_kind"], of_kind]
        case "kind_share":
            spent = sum(points[k] for k in of_kind)
            least = math.ceil(share(rule["least"]) * cap) if "least" in rule else None
            most = math.floor(share(rule["most"]) * cap) if "most" in rule else None
            limit = outside(spent, least, most)
            if limit is not None:
                yield ["list.kind-share", limit, spent, rule["unit_kind"], of_kind]
        case "copies":
            most = count(rule["most"], cap)
            for key, n in Counter(e["unit"] for e in entries).items():
                unit = unit_of(catalogue, faction, key)
                if unit and about_kinds(rule["of"], unit["kind"]) and n > most:
                    yield ["list.copies", most, n, key, [e["key"] for e in entries if e["unit"] == key]]
        case "banned_keywords":
            for e in entries:
                for word in rule["keywords"]:
                    if units[e["key"]] and word in units[e["key"]].get("keywords", []):
                        yield ["list.banned-keyword", None, None, word, [e["key"]]]
        case "army_size":
            n = len(entries) if rule["counted"] == "units" else sum(e["models"] for e in entries)
            limit = outside(n, rule.get("least"), rule.get("most"))
            if limit is not None:
                yield ["list.army-size", limit, n, None, []]
        case "faction_lock":
            if case["faction"] and case["faction"] != faction:
                yield ["list.faction-lock", None, None, case["faction"], []]
        case "painted_share":
            painted = case["painted"] or {}
            done = sum(
                Fraction(points[e["key"]] * min(painted.get(e["key"], 0), e["models"]), e["models"]) for e in entries
            )
            if done < share(rule["least"]) * total:
                yield ["list.painted-share", math.ceil(share(rule["least"]) * total), math.floor(done), None, []]
        case "carry_over" if previous:
            then, returning = sum(could_then.values()), sum(kept.values())
            least = math.ceil(share(rule["returning"]) * then)
            if returning < least:
                yield ["list.carry-over", least, returning, None, losses]
            for k, e in stays.items():
                models, options = could[k]
                if not rule.get("may_shrink") and e["models"] < models:
                    yield ["list.shrunk", models, e["models"], e["unit"], [k]]
                for o in last[k].get("options", {}):
                    has = e.get("options", {}).get(o, 0)
                    if not rule.get("may_drop_options") and has < options.get(o, 0):
                        yield ["list.option-dropped", options[o], has, o, [k]]
        case "swap_allowance" if previous:
            then = sum(could_then.values())
            left, most = then - sum(kept.values()), amount_most(rule["most"], then)
            if left > most:
                yield ["list.swap", most, left, None, losses]
        case "new_points" if previous:
            new, most = total - sum(old.values()), amount_most(rule["most"], cap)
            if new > most:
                yield ["list.new-points", most, new, None, [k for k in points if old[k] < points[k]]]
        case "new_units" if previous:
            fresh = [k for k in points if k not in stays or stays[k]["models"] > last[k]["models"]]
            if len(fresh) < rule["least"]:
                yield ["list.new-units", rule["least"], len(fresh), None, []]


def check(case, catalogues):
    catalogue = catalogues[case["catalogue"]]
    old = catalogues[case["previous_catalogue"]]
    total = sum(cost(catalogue, case["list"]["faction"], e) for e in case["list"]["entries"])
    findings = [["breach", *f] for f in sound(case, catalogue)]
    if total > case["cap"]:
        findings.append(["breach", "list.over-cap", case["cap"], total, None, []])
    for r in case["rules"]:
        if case["week"] in r.get("weeks", [case["week"]]):
            findings += [[r["severity"], *f] for f in found(r["rule"], case, catalogue, old)]
    for f in findings:
        f[-1] = sorted(f[-1])
    return {
        "total": total,
        "left": max(0, case["cap"] - total),
        "accepted": all(f[0] != "breach" for f in findings),
        "findings": sorted(findings, key=json.dumps),
    }


# Random material.


def make_catalogue(rng):
    def unit(i):
        models = sorted(rng.sample(range(1, 13), rng.randint(1, 4)))
        made = {
            "key": f"unit-{i}",
            "name": f"Unit {i}",
            "kind": rng.choice(KINDS),
            "keywords": rng.sample(["toughness-1", "toughness-4", "on-foot"], rng.randint(0, 2)),
            "sizes": [{"models": m, "points": rng.randint(0, 30) + 9 * m} for m in models],
            "options": [
                {
                    "key": f"option-{j}",
                    "name": f"option {j}",
                    "points": rng.randint(0, 15),
                    "per_model": rng.random() < 0.3,
                    "limit": rng.randint(1, 3),
                    **({"group": rng.choice("ab")} if rng.random() < 0.5 else {}),
                }
                for j in range(rng.randint(0, 3))
            ],
            "minutes_per_model": 20,
        }
        if rng.random() < 0.2:
            made["most_per_army"] = rng.randint(1, 2)
        return made

    factions = []
    for f in range(2):
        units = [unit(i) for i in range(6)]
        units[0]["keywords"] = ["on-foot"]
        units[1]["joins"] = "on-foot"
        factions.append({"key": f"faction-{f}", "name": f"Faction {f}", "units": units})
    return {"factions": factions}


def repriced(rng, catalogue):
    new = json.loads(json.dumps(catalogue))
    for f in new["factions"]:
        for u in f["units"]:
            for s in u["sizes"]:
                s["points"] = max(0, s["points"] + rng.choice([0, 0, -5, 7]))
            for part in ("sizes", "options"):
                if len(u[part]) > 1 and rng.random() < 0.3:
                    u[part].pop(rng.randrange(len(u[part])))
        f["units"].pop() if rng.random() < 0.3 else None
    return new


def make_entry(rng, faction, key):
    unit = rng.choice(faction["units"])
    sizes = [s["models"] for s in unit["sizes"]]
    options = {o["key"]: rng.randint(1, 2) for o in unit["options"] if rng.random() < 0.3}
    if rng.random() < 0.03:
        options["option-9"] = 1
    entry = {
        "key": key,
        "unit": unit["key"] if rng.random() < 0.97 else "unit-9",
        "models": rng.choice(sizes) if rng.random() < 0.95 else rng.randint(1, 15),
    }
    return {**entry, "options": options} if options else entry


def make_list(rng, catalogue, names):
    faction = rng.choice(catalogue["factions"])
    entries = [make_entry(rng, faction, k) for k in names]
    for e in entries:
        if len(entries) > 1 and rng.random() < 0.15:
            e["joins"] = rng.choice([o["key"] for o in entries if o is not e])
    return {"faction": faction["key"] if rng.random() < 0.98 else "faction-9", "entries": entries}


def next_list(rng, catalogue, army):
    """Most units return, some grow, shrink or change, some leave, some are new."""
    faction = next((f for f in catalogue["factions"] if f["key"] == army["faction"]), catalogue["factions"][0])
    entries = []
    for e in army["entries"]:
        if rng.random() < 0.15:
            continue
        e = {k: v for k, v in json.loads(json.dumps(e)).items() if k != "joins"}
        if rng.random() < 0.3:
            unit = unit_of(catalogue, army["faction"], e["unit"])
            e["models"] = rng.choice(unit["sizes"])["models"] if unit else e["models"]
        if rng.random() < 0.2:
            e.pop("options", None)
        if rng.random() < 0.05:
            e["unit"] = rng.choice(faction["units"])["key"]
        entries.append(e)
    entries += [make_entry(rng, faction, f"new-{i}") for i in range(rng.randint(0, 2))]
    rng.shuffle(entries)
    return {"faction": faction["key"], "entries": entries}


def make_rules(rng):
    def fraction(low, high):
        whole = rng.choice([3, 7, 20, 100])
        return {"part": rng.randint(math.ceil(low * whole), math.floor(high * whole)), "whole": whole}

    def amount(low, high, points):
        if rng.random() < 0.5:
            return {"kind": "points", "points": rng.randint(0, points)}
        return {"kind": "share", **fraction(low, high)}

    def number():
        if rng.random() < 0.5:
            return {"kind": "fixed", "count": rng.randint(0, 3)}
        return {"kind": "per_points", "points": rng.randint(80, 300)}

    def bounds(make):
        chosen = {b: make() for b in ("least", "most") if rng.random() < 0.7}
        return chosen or {"most": make()}

    def kinds():
        kind = rng.choice(["every", "only", "except"])
        return {"kind": kind} if kind == "every" else {"kind": kind, "unit_kinds": rng.sample(KINDS, rng.randint(1, 2))}

    makers = {
        "minimum_spend": lambda: {"least": amount(0.3, 1, 500)},
        "largest_unit": lambda: {"most": amount(0.1, 0.5, 150)},
        "kind_count": lambda: {"unit_kind": rng.choice(KINDS), **bounds(number)},
        "kind_share": lambda: {"unit_kind": rng.choice(KINDS), **bounds(lambda: fraction(0, 1))},
        "copies": lambda: {"most": number(), "of": kinds()},
        "banned_keywords": lambda: {"keywords": rng.sample(["toughness-4", "on-foot"], rng.randint(1, 2))},
        "army_size": lambda: {
            "counted": rng.choice(["units", "models"]),
            **bounds(lambda: rng.randint(1, 40)),
        },
        "faction_lock": lambda: {},
        "carry_over": lambda: {
            "returning": fraction(0.3, 1),
            "may_shrink": rng.random() < 0.5,
            "may_drop_options": rng.random() < 0.5,
        },
        "swap_allowance": lambda: {"most": amount(0, 0.5, 120)},
        "new_points": lambda: {"most": amount(0, 0.5, 150)},
        "new_units": lambda: {"least": rng.randint(0, 3)},
        "painted_share": lambda: {"least": fraction(0, 1)},
    }
    rules = []
    for kind in rng.sample(list(makers), rng.randint(2, 7)):
        rule = {"rule": {"kind": kind, **makers[kind]()}, "severity": rng.choice(["breach", "breach", "remark"])}
        if rng.random() < 0.3:
            rule["weeks"] = sorted(rng.sample(range(1, 9), 4))
        rules.append(rule)
    return rules


def make():
    rng = random.Random("army lists, second opinion")
    catalogues = []
    for _ in range(4):
        catalogues.append(make_catalogue(rng))
        catalogues.append(repriced(rng, catalogues[-1]))
    cases = []
    for _ in range(250):
        old = rng.randrange(4) * 2
        new = old + rng.randint(0, 1)
        names = [f"e{i}" for i in range(rng.randint(0, 7))]
        previous = make_list(rng, catalogues[old], names) if rng.random() < 0.7 else None
        army = next_list(rng, catalogues[new], previous) if previous else make_list(rng, catalogues[new], names)
        painted = {e["key"]: rng.randint(0, 12) for e in army["entries"] if rng.random() < 0.7}
        case = {
            "catalogue": new,
            "previous_catalogue": old,
            "week": rng.randint(1, 8),
            "cap": rng.choice([300, 400, 500, 613, 750]),
            "faction": rng.choice([None, "faction-0", "faction-1"]),
            "rules": make_rules(rng),
            "list": army,
            "previous": previous,
            "painted": painted if rng.random() < 0.8 else None,
        }
        case["expected"] = check(case, catalogues)
        cases.append(case)
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    heads = ",\n".join(json.dumps(catalogue, separators=(",", ":")) for catalogue in catalogues)
    return '{"catalogues": [\n' + heads + '\n],\n"cases": [\n' + lines + "\n]}\n", cases


def main():
    text, cases = make()
    codes = Counter(f[1] for case in cases for f in case["expected"]["findings"])
    if "--write" in sys.argv[1:]:
        FILE.write_text(text)
    same = FILE.exists() and FILE.read_text() == text
    print(f"{len(cases)} lists, {sum(codes.values())} findings of {len(codes)} codes")
    print(", ".join(f"{code} {n}" for code, n in sorted(codes.items())))
    print("the checked-in file is the same" if same else f"{FILE.name} differs; run with --write")
    return 0 if same else 1


if __name__ == "__main__":
    sys.exit(main())
