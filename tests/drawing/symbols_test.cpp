#include "drawing/bounds.hpp"
#include "drawing/symbols.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace gangway::drawing;

// Expected values: recipes of the symbol section of the project's drawing standards and its check values 56
// to 59 and 67, at M = 2.5. The IEC standard behind them was not read.

namespace {

constexpr double kModule = 2.5;

std::vector<Item> atOrigin(const char* id) {
    return symbol(id, {0, 0}, 0, kModule, "symbols");
}

bool near(Pt a, Pt b) {
    return std::hypot(a.x - b.x, a.y - b.y) < 1e-3;
}

bool hasLine(const std::vector<Item>& items, Pt from, Pt to) {
    return std::any_of(items.begin(), items.end(), [&](const Item& item) {
        const auto* line = std::get_if<Line>(&item.primitive);
        return line && ((near(line->from, from) && near(line->to, to)) ||
                        (near(line->from, to) && near(line->to, from)));
    });
}

// Every line of the symbol, mapped, is again a line of the symbol.
template <typename Map>
bool invariant(const std::vector<Item>& items, Map map) {
    return std::all_of(items.begin(), items.end(), [&](const Item& item) {
        const auto* line = std::get_if<Line>(&item.primitive);
        return !line || hasLine(items, map(line->from), map(line->to));
    });
}

} // namespace

TEST_CASE("the earthed socket is a half circle open to the room with a bar at its apex") {
    const auto items = atOrigin("socket-earth");
    const auto arc = std::find_if(items.begin(), items.end(), [](const Item& item) {
        return std::holds_alternative<Arc>(item.primitive);
    });
    REQUIRE(arc != items.end());
    const Arc& half = std::get<Arc>(arc->primitive);
    CHECK(near(half.centre, {0, 5}));
    CHECK(half.radius_mm == Approx(2.5));
    CHECK(half.start_deg == Approx(180));
    CHECK(half.end_deg == Approx(360));
    CHECK(hasLine(items, {0, 0}, {0, 2.5}));        // stem to the apex
    CHECK(hasLine(items, {-2.5, 2.5}, {2.5, 2.5})); // earth bar
}

TEST_CASE("the one-way switch is a circle on the wall with an arm at 60 degrees") {
    const auto items = atOrigin("switch-one-way");
    const Arc& circle = std::get<Arc>(items.at(0).primitive);
    CHECK(near(circle.centre, {0, 1}));
    CHECK(circle.radius_mm == Approx(1));
    const Line& arm = std::get<Line>(items.at(1).primitive);
    CHECK(near(arm.to, {3.000, 6.196}));
    // The tick turns off clockwise: the cross product of arm and tick is negative.
    const Line& tick = std::get<Line>(items.at(2).primitive);
    const double cross = (arm.to.x - arm.from.x) * (tick.to.y - tick.from.y) -
                         (arm.to.y - arm.from.y) * (tick.to.x - tick.from.x);
    CHECK(cross < 0);
}

TEST_CASE("the two-way switch is its own image under half a turn about its circle, stem aside") {
    auto items = atOrigin("switch-two-way");
    std::erase_if(items, [](const Item& item) {
        const auto* line = std::get_if<Line>(&item.primitive);
        return line && near(line->from, {0, 0});
    });
    CHECK(invariant(items, [](Pt p) { return Pt{-p.x, 13 - p.y}; })); // about (0, 2.6 M) = (0, 6.5)
}

TEST_CASE("the intermediate switch has four arms") {
    const auto items = atOrigin("switch-intermediate");
    const auto lines = std::count_if(items.begin(), items.end(), [](const Item& item) {
        return std::holds_alternative<Line>(item.primitive);
    });
    CHECK(lines == 1 + 4 * 2); // stem, arms with a tick each
}

TEST_CASE("the series switch is its own mirror image") {
    CHECK(invariant(atOrigin("switch-two-circuit"), [](Pt p) { return Pt{-p.x, p.y}; }));
    CHECK_FALSE(invariant(atOrigin("switch-one-way"), [](Pt p) { return Pt{-p.x, p.y}; }));
}

TEST_CASE("turning a symbol turns it and never mirrors it") {
    const auto plain = atOrigin("switch-one-way");
    for (const double turn_deg : {90.0, 180.0, 270.0, 33.0}) {
        const auto turned = symbol("switch-one-way", {10, 20}, turn_deg, kModule, "symbols");
        const double angle = turn_deg * 3.14159265358979 / 180;
        for (std::size_t i = 0; i < plain.size(); ++i) {
            const auto* line = std::get_if<Line>(&plain[i].primitive);
            if (!line) continue;
            const Pt p = line->to;
            const Pt expected{10 + p.x * std::cos(angle) - p.y * std::sin(angle),
                              20 + p.x * std::sin(angle) + p.y * std::cos(angle)};
            CHECK(near(std::get<Line>(turned[i].primitive).to, expected));
        }
    }
}

TEST_CASE("letters stay upright, 2.5 at least, and clear of the strokes") {
    for (const SymbolKind& kind : symbolKinds()) {
        for (const double turn_deg : {0.0, 90.0, 180.0, 270.0}) {
            const auto items = symbol(kind.id, {0, 0}, turn_deg, 1.8, "symbols");
            for (const Item& item : items) {
                const auto* text = std::get_if<Text>(&item.primitive);
                if (!text) continue;
                INFO(kind.id << " turned " << turn_deg);
                CHECK(text->turn_deg == 0);
                CHECK(text->height_mm >= 2.5);
                if (kind.id == "thermostat") continue; // its letter stands inside the circle
                const Bounds letters = bounds(item.primitive);
                for (const Item& other : items) {
                    const auto* line = std::get_if<Line>(&other.primitive);
                    if (!line) continue;
                    for (double part = 0; part <= 1; part += 0.05)
                        CHECK_FALSE(letters.contains({line->from.x + (line->to.x - line->from.x) * part,
                                                      line->from.y + (line->to.y - line->from.y) * part}));
                }
            }
        }
    }
}

TEST_CASE("every symbol of the table draws something, once, in the pen for symbols") {
    std::set<std::string_view> ids;
    for (const SymbolKind& kind : symbolKinds()) {
        INFO(kind.id);
        CHECK(ids.insert(kind.id).second);
        CHECK_FALSE(kind.name.empty());
        const auto items = symbol(kind.id, {0, 0}, 0, kModule, "legend");
        CHECK(items.size() >= 2);
        for (const Item& item : items) {
            CHECK(item.layer == "legend");
            if (const auto* line = std::get_if<Line>(&item.primitive)) CHECK(line->pen.width_mm == 0.25);
        }
    }
    for (const char* id : {"socket-earth",
                           "socket-switched",
                           "socket-double",
                           "socket-shaver",
                           "data",
                           "tv",
                           "telephone",
                           "switch-one-way",
                           "switch-double-pole",
                           "switch-two-circuit",
                           "switch-three-circuit",
                           "switch-blind",
                           "switch-two-way",
                           "switch-intermediate",
                           "pull-cord",
                           "push-button",
                           "dimmer",
                           "thermostat",
                           "sensor-motion",
                           "timer",
                           "blank",
                           "cord-outlet",
                           "usb",
                           "luminaire",
                           "luminaire-wall",
                           "luminaire-linear",
                           "luminaire-recessed",
                           "luminaire-pendant"})
        CHECK(ids.contains(id));
    CHECK(symbol("no-such-symbol", {0, 0}, 0, kModule, "legend").empty());
}
