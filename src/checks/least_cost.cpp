#include "checks/least_cost.hpp"

#include <lemon/network_simplex.h>
#include <lemon/smart_graph.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace gangway::checks {

namespace {
using Graph = lemon::SmartDigraph;

struct Network {
    Graph graph;
    Graph::ArcMap<std::int64_t> room{graph};
    Graph::ArcMap<std::int64_t> cost{graph};

    Graph::Arc add(Graph::Node from, Graph::Node to, std::int64_t capacity, std::int64_t price) {
        const Graph::Arc arc = graph.addArc(from, to);
        room[arc] = capacity;
        cost[arc] = price;
        return arc;
    }
};
} // namespace

std::vector<std::optional<std::size_t>> leastCost(std::size_t count, const std::vector<int>& room,
                                                  const std::vector<Choice>& choices) {
    std::vector<std::optional<std::size_t>> places(count);
    if (choices.empty()) return places;
    Network network;
    const Graph::Node source = network.graph.addNode();
    const Graph::Node sink = network.graph.addNode();
    std::vector<Graph::Node> who;
    std::vector<Graph::Node> where;
    // Going without costs more than all others together, so that nobody does who need not.
    std::int64_t all = 1;
    for (const Choice& choice : choices)
        all += std::llround(choice.cost * 10) + 1;
    for (std::size_t i = 0; i < count; ++i) {
        who.push_back(network.graph.addNode());
        network.add(source, who.back(), 1, 0);
        network.add(who.back(), sink, 1, all);
    }
    for (const int each : room) {
        where.push_back(network.graph.addNode());
        network.add(where.back(), sink, std::max(each, 0), 0);
    }
    std::vector<Graph::Arc> chosen;
    for (const Choice& choice : choices)
        chosen.push_back(
            network.add(who[choice.who], where[choice.where], 1, std::llround(choice.cost * 10)));
    lemon::NetworkSimplex<Graph, std::int64_t> simplex(network.graph);
    simplex.upperMap(network.room).costMap(network.cost);
    simplex.stSupply(source, sink, static_cast<std::int64_t>(count));
    if (simplex.run() != lemon::NetworkSimplex<Graph, std::int64_t>::OPTIMAL) return places;
    for (std::size_t i = 0; i < choices.size(); ++i)
        if (simplex.flow(chosen[i]) > 0) places[choices[i].who] = choices[i].where;
    return places;
}

} // namespace gangway::checks
