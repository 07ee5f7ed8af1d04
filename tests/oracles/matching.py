"""Optimal costs of perfect matchings from networkx, for the solver's test.

Instances come from a generator that the Rust test repeats step by step, so the data file holds only
their names and the optimum. `matching.py` compares the checked-in file with a fresh computation;
`matching.py --write` makes it anew.
"""

import pathlib
import sys

import networkx

DATA = pathlib.Path(__file__).with_suffix(".csv")
KINDS = ["ties", "narrow", "wide", "holes", "nights", "chain"]
SIZES = [4, 6, 8, 10, 14, 20, 30, 40, 64]


class Numbers:
    """Knuth's 64-bit linear congruential generator (MMIX), upper 31 bits."""

    def __init__(self, seed):
        self.state = seed

    def below(self, limit):
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % 2**64
        return (self.state >> 33) % limit


def edges(kind, size, seed):
    """Pairs a < b with their cost, in order of a, then b."""
    numbers = Numbers(seed)
    for a in range(size):
        for b in range(a + 1, size):
            cost, dice = numbers.below(1_000_000), numbers.below(100)
            if kind == "ties":
                yield a, b, cost % 2
            elif kind == "narrow":
                yield a, b, cost % 10
            elif kind == "wide":
                yield a, b, cost
            elif kind == "holes" and dice * size < 300:
                yield a, b, cost % 50
            elif kind == "nights" and (a % 2 == b % 2 or dice < 2):
                yield a, b, cost % 20
            elif kind == "chain" and (b - a < 4 or dice < 3):
                yield a, b, (b - a) ** 2 * 100 + cost % 7


def optimum(kind, size, seed):
    graph = networkx.Graph()
    graph.add_nodes_from(range(size))
    graph.add_weighted_edges_from((a, b, -cost) for a, b, cost in edges(kind, size, seed))
    pairs = networkx.max_weight_matching(graph, maxcardinality=True)
    if 2 * len(pairs) < size:
        return "none"
    return str(-sum(graph[a][b]["weight"] for a, b in pairs))


def lines():
    yield "kind,size,seed,optimum"
    for kind in KINDS:
        for size in SIZES:
            for seed in range(3 if size > 30 else 8):
                yield f"{kind},{size},{seed},{optimum(kind, size, seed)}"


def main():
    fresh = "\n".join(lines()) + "\n"
    if "--write" in sys.argv:
        DATA.write_text(fresh)
    elif DATA.read_text() != fresh:
        sys.exit("matching.csv differs from what networkx computes")


main()
