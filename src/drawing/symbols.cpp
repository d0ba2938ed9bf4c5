#include "drawing/symbols.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gangway::drawing {

namespace {

constexpr Pen kPen{0.25, LineType::Continuous, kBlack};
constexpr double kLeastLetters_mm = 2.5; // ISO 3098: no lettering under 2.5

Pt polar(Pt from, double angle_deg, double length) {
    const double angle = angle_deg * std::numbers::pi / 180;
    return {from.x + length * std::cos(angle), from.y + length * std::sin(angle)};
}

// Draws in modules, y into the room, onto paper.
class Pencil {
public:
    Pencil(Pt at, double turn_deg, double module_mm, const std::string& layer)
        : at_(at), turn_deg_(turn_deg), module_mm_(module_mm), layer_(layer) {
        const double angle = turn_deg * std::numbers::pi / 180;
        cosine_ = std::cos(angle);
        sine_ = std::sin(angle);
    }

    void line(Pt from, Pt to) { add(Line{paper(from), paper(to), kPen}); }
    void path(const std::vector<Pt>& points, bool closed = false) {
        add(Polyline{papers(points), closed, kPen});
    }
    void rectangle(Pt low, Pt high) { path({low, {high.x, low.y}, high, {low.x, high.y}}, true); }
    void arc(Pt centre, double radius, double start_deg, double end_deg) {
        add(Arc{paper(centre), radius * module_mm_, start_deg + turn_deg_, end_deg + turn_deg_, kPen});
    }
    void circle(Pt centre, double radius) { add(Arc{paper(centre), radius * module_mm_, 0, 360, kPen}); }
    void fill(const std::vector<Pt>& outline) { add(Fill{papers(outline), {}, kBlack}); }

    // Letters centred on a point of the symbol, upright to the sheet.
    void letters(Pt centre, const std::string& text, double share = 1) {
        const double height = std::max(module_mm_ * share, kLeastLetters_mm);
        const Pt middle = paper(centre);
        add(Text{{middle.x, middle.y - height / 2}, text, height, Align::Centre, 0, kBlack, false});
    }
    // Letters outside the symbol: their box just clears `edge` in the given direction, whichever way the
    // symbol is turned.
    void lettersBeyond(Pt edge, double direction_deg, const std::string& text) {
        constexpr double kClear_mm = 0.8;
        const double height = std::max(module_mm_, kLeastLetters_mm);
        const double half_width = measure(text, height).width_mm / 2;
        const Pt out = polar({0, 0}, direction_deg + turn_deg_, 1);
        const double reach = kClear_mm + std::abs(out.x) * half_width + std::abs(out.y) * height / 2;
        const Pt from = paper(edge);
        const Pt middle{from.x + out.x * reach, from.y + out.y * reach};
        add(Text{{middle.x, middle.y - height / 2}, text, height, Align::Centre, 0, kBlack, false});
    }

    std::vector<Item> items;

private:
    void add(Primitive primitive) { items.push_back({layer_, "", std::move(primitive)}); }
    Pt paper(Pt p) const {
        return {at_.x + module_mm_ * (p.x * cosine_ - p.y * sine_),
                at_.y + module_mm_ * (p.x * sine_ + p.y * cosine_)};
    }
    std::vector<Pt> papers(const std::vector<Pt>& points) const {
        std::vector<Pt> out;
        for (const Pt& p : points)
            out.push_back(paper(p));
        return out;
    }

    Pt at_;
    double turn_deg_;
    double module_mm_;
    std::string layer_;
    double cosine_ = 1;
    double sine_ = 0;
};

// --- socket outlets and data ------------------------------------------------------------------------------

void socket(Pencil& p) {
    p.line({0, 0}, {0, 1});
    p.arc({0, 2}, 1, 180, 360);
}

void socketEarth(Pencil& p) {
    socket(p);
    p.line({-1, 1}, {1, 1});
}

void socketSwitched(Pencil& p) {
    socketEarth(p);
    // The arm leaves the stem low and flat enough to pass under the earth bar.
    const Pt root{0, 0.4};
    const Pt end = polar(root, 12, 2.2);
    p.line(root, end);
    p.line(end, polar(end, 12 - 90, 0.7));
}

void socketDouble(Pencil& p) {
    socketEarth(p);
    p.lettersBeyond({1, 1.6}, 0, "2");
}

void socketShaver(Pencil& p) {
    socket(p);
    p.circle({0, 2}, 0.35);
    p.circle({0, 2.45}, 0.35);
}

void usb(Pencil& p) {
    socketEarth(p);
    p.lettersBeyond({0, 2}, 90, "USB");
}

void bracket(Pencil& p, const std::string& letters) {
    p.line({0, 0}, {0, 1});
    p.path({{-1, 2}, {-1, 1}, {1, 1}, {1, 2}});
    p.lettersBeyond({0, 2}, 90, letters);
}

void data(Pencil& p) {
    bracket(p, "DATA");
}
void tv(Pencil& p) {
    bracket(p, "TV");
}
void telephone(Pencil& p) {
    bracket(p, "TP");
}

void blank(Pencil& p) {
    p.line({0, 0}, {0, 0.6});
    p.rectangle({-0.8, 0.6}, {0.8, 2.2});
}

void cordOutlet(Pencil& p) {
    blank(p);
    p.arc({0.5, 2.2}, 0.5, 90, 180);
    p.line({0.5, 2.7}, {1.4, 2.7});
}

// --- switches and controls --------------------------------------------------------------------------------

constexpr double kRim = 0.4;
constexpr double kArm = 2.4;
constexpr double kTick = 0.8;
constexpr Pt kOnWall{0, kRim};
constexpr Pt kOnStem{0, 2.6}; // where arms leave both sides; the stem is a leader, not part of the symbol

// An arm from the rim outwards; its tick stands square to it, clockwise (-90) or counter-clockwise (+90).
Pt arm(Pencil& p, Pt centre, double angle_deg, double tick_deg = -90, int ticks = 1) {
    const Pt end = polar(centre, angle_deg, kArm);
    p.line(polar(centre, angle_deg, kRim), end);
    for (int i = 0; i < ticks; ++i) {
        const Pt root = polar(end, angle_deg + 180, 0.5 * i);
        p.line(root, polar(root, angle_deg + tick_deg, kTick));
    }
    return end;
}

void switchOne(Pencil& p) {
    p.circle(kOnWall, kRim);
    arm(p, kOnWall, 60);
}

void switchTwoPole(Pencil& p) {
    p.circle(kOnWall, kRim);
    arm(p, kOnWall, 60, -90, 2);
}

void switchSeries(Pencil& p) {
    p.circle(kOnWall, kRim);
    arm(p, kOnWall, 60, -90);
    arm(p, kOnWall, 120, 90);
}

// A proposal of our own: the two-circuit switch with a third arm between the two.
void switchThreeCircuit(Pencil& p) {
    switchSeries(p);
    arm(p, kOnWall, 90);
}

// A proposal of our own: a switch with an arrow each way, up and down.
void switchBlind(Pencil& p) {
    p.circle(kOnWall, kRim);
    p.line({0, 2 * kRim}, {0, 3.4});
    p.fill({{-0.4, 2.7}, {0.4, 2.7}, {0, 3.4}});
    p.fill({{-0.4, 2.1}, {0.4, 2.1}, {0, 1.4}});
}

void onStem(Pencil& p) {
    p.line({0, 0}, {0, kOnStem.y - kRim});
    p.circle(kOnStem, kRim);
}

void switchTwoWay(Pencil& p) {
    onStem(p);
    arm(p, kOnStem, 60);
    arm(p, kOnStem, 240);
}

void switchIntermediate(Pencil& p) {
    onStem(p);
    for (const double angle_deg : {60.0, 120.0, 240.0, 300.0})
        arm(p, kOnStem, angle_deg);
}

void pullCord(Pencil& p) {
    switchOne(p);
    constexpr double kEnd = 3.0;
    p.line({0, 2 * kRim}, {0, kEnd - 0.6});
    p.fill({{-0.2, kEnd - 0.6}, {0.2, kEnd - 0.6}, {0, kEnd}});
}

void push(Pencil& p) {
    p.circle({0, 0.8}, 0.8);
    p.circle({0, 0.8}, 0.4);
}

void dimmer(Pencil& p) {
    switchOne(p);
    // A narrow wedge beside the arm, thin end at the circle: the mark of something variable.
    const Pt tip = polar(kOnWall, 86, 0.7);
    p.path({tip, polar(kOnWall, 76, 2.3), polar(kOnWall, 90, 2.3)}, true);
    p.lettersBeyond({0.5, 2.6}, 90, "DIM");
}

void lettered(Pencil& p, const std::string& text) {
    p.circle({0, 1}, 1);
    p.letters({0, 1}, text, 0.9);
}

void thermostat(Pencil& p) {
    lettered(p, "T");
}

void sensor(Pencil& p) {
    p.circle({0, 1}, 1);
    p.lettersBeyond({0, 2}, 90, "PIR");
}

void timer(Pencil& p) {
    p.rectangle({-1, 0}, {1, 2});
    p.circle({0, 1}, 0.7);
    p.line({0, 1}, {0, 1.5});
    p.line({0, 1}, {0.35, 1});
    p.lettersBeyond({0, 2}, 90, "TS");
}

// --- luminaires -------------------------------------------------------------------------------------------

void cross(Pencil& p, Pt centre, double reach) {
    const double half = reach * std::numbers::sqrt2 / 2;
    p.line({centre.x - half, centre.y - half}, {centre.x + half, centre.y + half});
    p.line({centre.x - half, centre.y + half}, {centre.x + half, centre.y - half});
}

void luminaire(Pencil& p) {
    p.circle({0, 0}, 1);
    cross(p, {0, 0}, 1);
}

void luminaireWall(Pencil& p) {
    p.line({-1, 0}, {1, 0});
    p.line({0, 0}, {0, 1.3});
    cross(p, {0, 1.3}, 1);
}

void luminaireLinear(Pencil& p) {
    p.line({-2, 0}, {2, 0});
    for (const double x : {-2.0, 2.0})
        p.line({x, -0.5}, {x, 0.5});
}

void luminaireRecessed(Pencil& p) {
    luminaire(p);
    p.lettersBeyond({0.7, 0.7}, 45, "R");
}

void luminairePendant(Pencil& p) {
    luminaire(p);
    p.lettersBeyond({0.7, 0.7}, 45, "P");
}

struct Recipe {
    SymbolKind kind;
    void (*draw)(Pencil&);
};

constexpr std::array kRecipes{
    Recipe{{"socket-earth", "Socket outlet with protective contact"}, socketEarth},
    Recipe{{"socket-double", "Double socket outlet with protective contacts"}, socketDouble},
    Recipe{{"socket-switched", "Switched socket outlet"}, socketSwitched},
    Recipe{{"socket-shaver", "Shaver outlet with isolating transformer"}, socketShaver},
    Recipe{{"usb", "Socket outlet with USB charging"}, usb},
    Recipe{{"data", "Data outlet"}, data},
    Recipe{{"tv", "Television outlet"}, tv},
    Recipe{{"telephone", "Telephone outlet"}, telephone},
    Recipe{{"cord-outlet", "Cord outlet"}, cordOutlet},
    Recipe{{"blank", "Blank plate"}, blank},
    Recipe{{"switch-one-way", "Switch, one way"}, switchOne},
    Recipe{{"switch-double-pole", "Switch, two poles"}, switchTwoPole},
    Recipe{{"switch-two-circuit", "Switch, two circuits"}, switchSeries},
    Recipe{{"switch-three-circuit", "Switch, three circuits (proposal)"}, switchThreeCircuit},
    Recipe{{"switch-blind", "Switch for a blind (proposal)"}, switchBlind},
    Recipe{{"switch-two-way", "Two-way switch"}, switchTwoWay},
    Recipe{{"switch-intermediate", "Intermediate switch"}, switchIntermediate},
    Recipe{{"pull-cord", "Pull-cord switch"}, pullCord},
    Recipe{{"push-button", "Push-button"}, push},
    Recipe{{"dimmer", "Dimmer"}, dimmer},
    Recipe{{"thermostat", "Thermostat"}, thermostat},
    Recipe{{"sensor-motion", "Presence sensor"}, sensor},
    Recipe{{"timer", "Time switch"}, timer},
    Recipe{{"luminaire", "Luminaire"}, luminaire},
    Recipe{{"luminaire-wall", "Wall luminaire"}, luminaireWall},
    Recipe{{"luminaire-linear", "Linear luminaire"}, luminaireLinear},
    Recipe{{"luminaire-recessed", "Recessed luminaire"}, luminaireRecessed},
    Recipe{{"luminaire-pendant", "Pendant luminaire"}, luminairePendant},
};

constexpr auto kKinds = [] {
    std::array<SymbolKind, kRecipes.size()> kinds{};
    for (std::size_t i = 0; i < kRecipes.size(); ++i)
        kinds[i] = kRecipes[i].kind;
    return kinds;
}();

} // namespace

std::span<const SymbolKind> symbolKinds() {
    return kKinds;
}

std::vector<Item> symbol(std::string_view id, Pt at, double turn_deg, double module_mm,
                         const std::string& layer) {
    const auto recipe =
        std::find_if(kRecipes.begin(), kRecipes.end(), [&](const Recipe& r) { return r.kind.id == id; });
    if (recipe == kRecipes.end()) return {};
    Pencil pencil(at, turn_deg, module_mm, layer);
    recipe->draw(pencil);
    return std::move(pencil.items);
}

} // namespace gangway::drawing
