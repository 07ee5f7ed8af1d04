"""An independent computation of tie-breaks, Wilson intervals and Kendall's tau.

Tie-breaks: exact fractions, written from the definitions of the FIDE Handbook C.07 (Buchholz
art. 8.1, Cut-1 14.1, Median-1 14.3, Sonneborn-Berger 9.1, direct encounter 6; unplayed rounds as
of the editions to 2022 and from 2023; article texts from memory). Adjusted margin: Gaussian
elimination in exact fractions. Intervals: statsmodels,
proportion_confint(method="wilson"). Tau-b: scipy.stats.kendalltau.

The Rust test server/document/tests/standings_oracle.rs holds the league's own values against the
file.

    standings.py            compares the checked-in file with what this script computes
    standings.py --write    writes the file
"""

import json
import math
import random
import sys
from fractions import Fraction as F
from pathlib import Path

from scipy.stats import kendalltau
from statsmodels.stats.proportion import proportion_confint

FILE = Path(__file__).with_name("standings.json")
WIN, DRAW, LOSS = F(1), F(1, 2), F(0)
RESULT = {"first": (WIN, LOSS), "drawn": (DRAW, DRAW), "second": (LOSS, WIN)}


def draw_season(rng, players, weeks):
    """Random rounds without rematch rules: games, one bye when odd, some absences."""
    rounds = []
    for _ in range(weeks):
        order = list(range(players))
        rng.shuffle(order)
        games = []
        while len(order) > 1:
            first, second = order.pop(), order.pop()
            ending = rng.choice(["first", "first", "drawn", "second", "second", "no_show"])
            games.append({"first": first, "second": second, "ending": ending})
        rounds.append({"games": games, "byes": order})
    return rounds


def histories(players, rounds):
    """For each player and round: (opponent or None, own result, voluntary)."""
    history = [[] for _ in range(players)]
    for round_ in rounds:
        for game in round_["games"]:
            first, second = game["first"], game["second"]
            if game["ending"] == "no_show":  # the side named second stays away
                history[first].append((None, WIN, False))
                history[second].append((None, LOSS, True))
            else:
                a, b = RESULT[game["ending"]]
                history[first].append((second, a, False))
                history[second].append((first, b, False))
        for player in round_["byes"]:
            history[player].append((None, WIN, False))
    return history


def score_for_opponents(rounds_of_player, unplayed):
    score = sum((result for _, result, _ in rounds_of_player), F(0))
    if unplayed == "virtual_opponent":
        for opponent, result, _ in rounds_of_player:
            if opponent is None:
                score += DRAW - result
    if unplayed == "own_score":
        for opponent, result, voluntary in reversed(rounds_of_player):
            if opponent is not None or not voluntary:
                break
            score += DRAW - result
    return score


def met(history, player, unplayed):
    own = sum((result for _, result, _ in history[player]), F(0))
    rounds = len(history[player])
    before, found = F(0), []
    for number, (opponent, result, voluntary) in enumerate(history[player], start=1):
        if opponent is not None:
            found.append((score_for_opponents(history[opponent], unplayed), result, voluntary))
        elif unplayed == "virtual_opponent":
            found.append((before + (1 - result) + DRAW * (rounds - number), result, voluntary))
        elif unplayed == "own_score":
            found.append((own, result, voluntary))
        before += result
    return found


def without_lowest(found):
    voluntary = [one for one in found if one[2]]
    pool = voluntary or found
    if not pool:
        return []
    lowest = min(pool, key=lambda one: one[0])
    rest = list(found)
    rest.remove(lowest)
    return rest


def total(found):
    return sum((score for score, _, _ in found), F(0))


def direct_encounter(history, tied):
    points = {p: F(0) for p in tied}
    unmet = {p: set(tied) - {p} for p in tied}
    for player in tied:
        for opponent, result, _ in history[player]:
            if opponent in points:
                points[player] += result
                unmet[player].discard(opponent)
    if not any(unmet.values()):
        return dict(points)
    values, open_ = {p: None for p in tied}, set(tied)
    while len(open_) > 1:
        first = max(sorted(open_), key=lambda p: points[p])
        if any(points[p] + len(unmet[p]) >= points[first] for p in open_ - {first}):
            break
        values[first] = points[first]
        open_.remove(first)
    return values


def adjusted_margin(history):
    """Least squares with two drawn games against an average player each (Massey 1997 and Colley
    2002, from memory), solved exactly and given to the nearest thousandth. A win counts as a margin
    of one game point."""
    players = len(history)
    rows = [[F(0)] * (players + 1) for _ in range(players)]
    for player, rounds in enumerate(history):
        games = [(opponent, result) for opponent, result, _ in rounds if opponent is not None]
        rows[player][player] += len(games) + 2
        for opponent, result in games:
            rows[player][opponent] -= 1
            rows[player][players] += 2 * result - 1
    for at in range(players):  # diagonally dominant: no pivoting needed
        rows[at] = [value / rows[at][at] for value in rows[at]]
        for other in range(players):
            if other != at:
                factor = rows[other][at]
                rows[other] = [x - factor * y for x, y in zip(rows[other], rows[at])]
    strengths = [row[players] for row in rows]
    sign = lambda value: -1 if value < 0 else 1
    return [sign(s) * F(math.floor(abs(s) * 1000 + F(1, 2)), 1000) for s in strengths]


def tie_breaks(players, rounds, unplayed):
    history = histories(players, rounds)
    scores = [sum((result for _, result, _ in h), F(0)) for h in history]
    values = {"opponents_score": [], "opponents_score_cut": [], "opponents_score_median": [],
              "sonneborn_berger": [], "direct_encounter": [None] * players,
              "adjusted_margin": adjusted_margin(history)}
    for player in range(players):
        found = met(history, player, unplayed)
        values["opponents_score"].append(total(found))
        cut = without_lowest(found)
        values["opponents_score_cut"].append(total(cut))
        median = total(cut) - max((score for score, _, _ in cut), default=F(0))
        values["opponents_score_median"].append(median)
        values["sonneborn_berger"].append(sum((score * result for score, result, _ in found), F(0)))
    for score in set(scores):
        tied = [p for p in range(players) if scores[p] == score]
        if len(tied) > 1:
            for player, value in direct_encounter(history, tied).items():
                values["direct_encounter"][player] = value
    text = lambda value: None if value is None else f"{value.numerator}/{value.denominator}"
    return {name: [text(value) for value in of] for name, of in values.items()}


def seasons():
    rng = random.Random(20260301)
    for number in range(60):
        players, weeks = rng.randint(3, 9), rng.randint(1, 6)
        rounds = draw_season(rng, players, weeks)
        unplayed = ["left_out", "virtual_opponent", "own_score"][number % 3]
        yield {"players": players, "rounds": rounds, "unplayed": unplayed,
               "values": tie_breaks(players, rounds, unplayed)}


def intervals():
    for successes, trials in [(0, 1), (1, 1), (0, 10), (7, 12), (10, 10), (13, 40), (81, 263), (999, 1000)]:
        low, high = proportion_confint(successes, trials, alpha=0.05, method="wilson")
        yield {"successes": successes, "trials": trials, "low": float(low), "high": float(high)}


def taus():
    rng = random.Random(19380601)
    for size in [2, 3, 5, 8, 17, 40]:
        for spread in [size, max(2, size // 3)]:
            first = [rng.randint(1, spread) for _ in range(size)]
            second = [rng.randint(1, spread) for _ in range(size)]
            if len(set(first)) > 1 and len(set(second)) > 1:
                tau = kendalltau(first, second, variant="b").statistic
                yield {"ranks": list(zip(first, second)), "tau": float(tau)}


def close(a, b):
    if isinstance(a, float) and isinstance(b, float):
        return abs(a - b) < 1e-12
    if isinstance(a, dict) and isinstance(b, dict):
        return a.keys() == b.keys() and all(close(a[key], b[key]) for key in a)
    if isinstance(a, list) and isinstance(b, list):
        return len(a) == len(b) and all(map(close, a, b))
    return a == b


def main():
    computed = {"seasons": list(seasons()), "intervals": list(intervals()), "taus": list(taus())}
    computed = json.loads(json.dumps(computed))
    if sys.argv[1:] == ["--write"]:
        lines = (",\n".join(map(json.dumps, of)) for of in computed.values())
        parts = (f'"{name}": [\n{of}\n]' for name, of in zip(computed, lines))
        FILE.write_text("{" + ",\n".join(parts) + "}\n")
        return 0
    if not close(computed, json.loads(FILE.read_text())):
        print(f"{FILE.name} is not what this script computes")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
