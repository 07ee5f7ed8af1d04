"""rustworkx and networkx on one cost matrix, solve only: `peers.py FILE NAME...`."""

import array
import itertools
import statistics
import sys
import time


def read(file):
    numbers = array.array("q")
    with open(file, "rb") as source:
        numbers.frombytes(source.read())
    places, costs = numbers[0], numbers[1:]
    return places, dict(zip(itertools.combinations(range(places), 2), costs))


def measure(name, solve, costs, runs):
    seconds = []
    for _ in range(runs):
        start = time.process_time()
        pairs = solve()
        seconds.append(time.process_time() - start)
    total = sum(costs[min(pair), max(pair)] for pair in pairs)
    print(f"{name} {statistics.median(seconds):.6f} {total}", flush=True)


def main():
    places, costs = read(sys.argv[1])
    edges = [(a, b, -cost) for (a, b), cost in costs.items() if cost >= 0]
    runs = 5 if places <= 256 else 1
    if "rustworkx" in sys.argv:
        import rustworkx

        graph = rustworkx.PyGraph()
        graph.add_nodes_from(range(places))
        graph.add_edges_from(edges)
        measure(
            "rustworkx",
            lambda: rustworkx.max_weight_matching(graph, True, weight_fn=lambda weight: weight),
            costs,
            runs,
        )
    if "networkx" in sys.argv:
        import networkx

        graph = networkx.Graph()
        graph.add_weighted_edges_from(edges)
        measure("networkx", lambda: networkx.max_weight_matching(graph, True), costs, min(runs, 3))


main()
