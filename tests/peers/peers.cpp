// LEMON and Boost on one cost matrix, solve only: `peers FILE NAME...` prints name, seconds of the
// processor, cost.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <fstream>
#include <vector>

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/maximum_weighted_matching.hpp>
#include <lemon/full_graph.h>
#include <lemon/list_graph.h>
#include <lemon/matching.h>
#include <lemon/smart_graph.h>

using Cost = std::int64_t;

// Processor time in seconds.
static double now() {
    timespec time;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return time.tv_sec + time.tv_nsec * 1e-9;
}

struct Instance {
    int places;
    std::vector<Cost> costs;
    Cost at(int a, int b) const {
        std::size_t x = std::min(a, b), y = std::max(a, b);
        return costs[x * (2 * places - x - 1) / 2 + (y - x - 1)];
    }
};

static Instance read(const char *file) {
    std::ifstream in(file, std::ios::binary);
    Cost places = 0;
    in.read(reinterpret_cast<char *>(&places), sizeof places);
    Instance instance{static_cast<int>(places), std::vector<Cost>(places * (places - 1) / 2)};
    in.read(reinterpret_cast<char *>(instance.costs.data()), instance.costs.size() * sizeof(Cost));
    return instance;
}

static void report(const char *name, std::vector<double> seconds, Cost cost) {
    std::sort(seconds.begin(), seconds.end());
    std::printf("%s %.6f %lld\n", name, seconds[seconds.size() / 2], static_cast<long long>(cost));
    std::fflush(stdout);
}

static void lemon_matching(const Instance &instance, const char *name, bool fractional, int runs) {
    lemon::SmartGraph graph;
    for (int at = 0; at < instance.places; ++at) graph.addNode();
    lemon::SmartGraph::EdgeMap<Cost> weight(graph);
    for (int a = 0; a < instance.places; ++a)
        for (int b = a + 1; b < instance.places; ++b)
            if (instance.at(a, b) >= 0)
                weight[graph.addEdge(graph.nodeFromId(a), graph.nodeFromId(b))] = -instance.at(a, b);
    std::vector<double> seconds;
    Cost cost = 0;
    for (int run = 0; run < runs; ++run) {
        lemon::MaxWeightedPerfectMatching<lemon::SmartGraph, lemon::SmartGraph::EdgeMap<Cost>> solver(
            graph, weight);
        double start = now();
        if (fractional) solver.fractionalInit(); else solver.init();
        solver.start();
        seconds.push_back(now() - start);
        cost = -solver.matchingWeight();
    }
    report(name, seconds, cost);
}

static void boost_matching(const Instance &instance, int runs) {
    using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                        boost::property<boost::edge_weight_t, Cost>>;
    Cost highest = 0;
    for (Cost cost : instance.costs) highest = std::max(highest, cost);
    Graph graph(instance.places);
    for (int a = 0; a < instance.places; ++a)
        for (int b = a + 1; b < instance.places; ++b)
            if (instance.at(a, b) >= 0) boost::add_edge(a, b, highest + 1 - instance.at(a, b), graph);
    std::vector<double> seconds;
    Cost cost = 0;
    for (int run = 0; run < runs; ++run) {
        std::vector<boost::graph_traits<Graph>::vertex_descriptor> mate(instance.places);
        double start = now();
        boost::maximum_weighted_matching(graph, &mate[0]);
        seconds.push_back(now() - start);
        cost = 0;
        for (int a = 0; a < instance.places; ++a)
            if (mate[a] != boost::graph_traits<Graph>::null_vertex() && a < static_cast<int>(mate[a]))
                cost += instance.at(a, static_cast<int>(mate[a]));
    }
    report("boost", seconds, cost);
}

int main(int count, char **words) {
    if (count < 3) return 2;
    Instance instance = read(words[1]);
    int runs = instance.places <= 64 ? 101 : instance.places <= 1024 ? 5 : 1;
    for (int at = 2; at < count; ++at) {
        if (!std::strcmp(words[at], "lemon")) lemon_matching(instance, "lemon", false, runs);
        if (!std::strcmp(words[at], "lemon-fractional")) lemon_matching(instance, "lemon-fractional", true, runs);
        if (!std::strcmp(words[at], "boost")) boost_matching(instance, runs);
    }
}
