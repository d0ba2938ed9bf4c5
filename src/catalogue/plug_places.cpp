#include "catalogue/plug_places.hpp"

#include "catalogue/plug_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

namespace gangway::catalogue {

using plan::Vec2;
using Kind = plan::Device::Plug;
using State = OutletPlace::State;

namespace {
/// Plates with more outlets are filled from the first: the ways to fill them are too many to try.
constexpr std::size_t kMostTried = 10;
constexpr double kSameMm = 0.01;

struct Rect {
    Vec2 low;
    Vec2 high;
    bool cuts(const Rect& other) const {
        return low.x < other.high.x && other.low.x < high.x && low.y < other.high.y && other.low.y < high.y;
    }
    Rect moved(Vec2 by) const { return {low + by, high + by}; }
};

Rect outlineOf(const PlugShape& shape, Vec2 centre) {
    const Vec2 half{shape.width_mm / 2, shape.height_mm / 2};
    return {centre - half, centre + half};
}

/// A catalogue's modules are called "socket-LETTER-...".
std::string typeOf(const ModuleType& module) {
    constexpr std::string_view kStart = "socket-";
    if (!module.id.starts_with(kStart)) return {};
    const std::string rest = module.id.substr(kStart.size());
    const bool letter = rest.size() == 1 || (rest.size() > 1 && rest[1] == '-');
    return letter ? std::string(1, static_cast<char>(rest[0] - 'a' + 'A')) : std::string();
}

/// Whether a run of pins is the first `size` of them moved.
bool sameAsFirst(std::span<const FrontShape> pins, std::size_t from, std::size_t size) {
    const Vec2 by = pins[from].centre_mm - pins[0].centre_mm;
    for (std::size_t i = 0; i < size; ++i) {
        const FrontShape& a = pins[i];
        const FrontShape& b = pins[from + i];
        if (length(b.centre_mm - a.centre_mm - by) > kSameMm || std::abs(a.width_mm - b.width_mm) > kSameMm ||
            std::abs(a.height_mm - b.height_mm) > kSameMm)
            return false;
    }
    return true;
}

Vec2 middleOf(std::span<const FrontShape> pins) {
    constexpr double kFar = std::numeric_limits<double>::infinity();
    Rect around{{kFar, kFar}, {-kFar, -kFar}};
    for (const FrontShape& pin : pins) {
        const Vec2 half{pin.width_mm / 2, pin.height_mm / 2};
        around.low = {std::min(around.low.x, pin.centre_mm.x - half.x),
                      std::min(around.low.y, pin.centre_mm.y - half.y)};
        around.high = {std::max(around.high.x, pin.centre_mm.x + half.x),
                       std::max(around.high.y, pin.centre_mm.y + half.y)};
    }
    return (around.low + around.high) * 0.5;
}

/// The outlets that a socket's front shows: equal groups of pins, as many as it has outlets or fewer.
void addSocket(const Gang& gang, std::vector<OutletPlace>& outlets) {
    std::vector<FrontShape> pins;
    std::vector<FrontShape> recesses;
    for (const FrontShape& shape : gang.module->front) {
        if (shape.role == FrontShape::Role::Pin) pins.push_back(shape);
        if (shape.role == FrontShape::Role::Well && shape.kind == FrontShape::Kind::Circle)
            recesses.push_back(shape);
    }
    const auto fits = [&](std::size_t groups) {
        if (pins.size() % groups != 0) return false;
        const std::size_t size = pins.size() / groups;
        for (std::size_t from = size; from < pins.size(); from += size)
            if (!sameAsFirst(pins, from, size)) return false;
        return true;
    };
    auto groups = static_cast<std::size_t>(std::max(gang.module->outlets, 1));
    while (groups > 1 && (pins.empty() || !fits(groups)))
        --groups;
    for (std::size_t i = 0; i < groups; ++i) {
        OutletPlace outlet;
        outlet.type = typeOf(*gang.module);
        const std::size_t size = pins.size() / groups;
        Vec2 middle = size == 0 ? Vec2{} : middleOf(std::span(pins).subspan(i * size, size));
        for (const FrontShape& recess : recesses)
            if (length(recess.centre_mm - middle) < recess.width_mm / 2) {
                middle = recess.centre_mm;
                outlet.recess_mm = recess.width_mm;
            }
        outlet.centre_mm = gang.centre_mm + middle;
        outlets.push_back(outlet);
    }
}

std::vector<OutletPlace> outletsOf(const plan::Plate& plate, const ComposedPlate& composed) {
    std::vector<OutletPlace> outlets;
    for (const Gang& gang : composed.gangs) {
        if (gang.module == nullptr) continue;
        if (gang.module->kind == ModuleKind::Socket && gang.module->outlets > 0) addSocket(gang, outlets);
        if (gang.module->kind != ModuleKind::CordOutlet) continue;
        outlets.emplace_back().centre_mm = gang.centre_mm;
        outlets.back().fixed = true;
    }
    for (std::size_t i = 0; i < outlets.size(); ++i) {
        outlets[i].plate = plate.id;
        outlets[i].number = static_cast<int>(i) + 1;
    }
    return outlets;
}

/// What stands before an outlet: the body in it, else a straight plug that would go there.
Rect outlineAt(const OutletPlace& outlet) {
    const bool taken = outlet.state == State::Taken;
    const std::string& type =
        taken && !outlet.plugged.plug_type.empty() ? outlet.plugged.plug_type : outlet.type;
    return outlineOf(plugShape(taken ? outlet.plugged.plug : Kind::Straight, type), outlet.centre_mm);
}

bool standsOut(const OutletPlace& outlet) {
    return outlet.state == State::Taken && !outlet.fixed;
}

/// Plugs in each other's way, then free outlets hidden.
std::pair<int, int> harm(const std::vector<OutletPlace>& outlets) {
    std::pair<int, int> count{0, 0};
    for (const OutletPlace& outlet : outlets) {
        if (outlet.fixed) continue;
        for (const OutletPlace& body : outlets) {
            if (&body == &outlet || !standsOut(body) || !outlineAt(body).cuts(outlineAt(outlet))) continue;
            ++(outlet.state == State::Taken ? count.first : count.second);
        }
    }
    return count;
}

/// Puts plugs into outlets by a list that has for each outlet the plug's number, or one past the last.
void put(const std::vector<const PluggedIn*>& plugs, const std::vector<std::size_t>& order,
         std::vector<OutletPlace>& outlets) {
    for (std::size_t i = 0; i < outlets.size(); ++i) {
        const bool taken = order[i] < plugs.size();
        outlets[i].state = taken ? State::Taken : State::Free;
        outlets[i].plugged = taken ? *plugs[order[i]] : PluggedIn{};
    }
}

/// Finds the outlets for a plate's plugs, which are not more than it has.
void seat(const std::vector<const PluggedIn*>& plugs, std::vector<OutletPlace>& outlets) {
    // Plugs of one size are one to another: only orders that look different are tried.
    std::vector<std::size_t> order(outlets.size(), plugs.size());
    for (std::size_t i = 0; i < plugs.size(); ++i) {
        order[i] = i;
        for (std::size_t j = 0; j < i; ++j)
            if (plugs[j]->plug == plugs[i]->plug && plugs[j]->plug_type == plugs[i]->plug_type) {
                order[i] = order[j];
                break;
            }
    }
    std::ranges::sort(order);
    std::vector<std::size_t> best = order;
    if (outlets.size() <= kMostTried) {
        auto least = std::pair{std::numeric_limits<int>::max(), 0};
        do {
            put(plugs, order, outlets);
            if (const auto now = harm(outlets); now < least) {
                least = now;
                best = order;
            }
        } while (std::ranges::next_permutation(order).found);
    }
    // Each outlet of a kind of plug gets a device of its own, in the devices' order.
    std::vector<bool> given(plugs.size(), false);
    for (std::size_t& at : best) {
        if (at >= plugs.size()) continue;
        for (std::size_t i = at; i < plugs.size(); ++i)
            if (!given[i] && plugs[i]->plug == plugs[at]->plug &&
                plugs[i]->plug_type == plugs[at]->plug_type) {
                given[i] = true;
                at = i;
                break;
            }
    }
    put(plugs, best, outlets);
}

/// Outlets of plates on one wall or face see each other's bodies.
using Surface = std::tuple<std::string, int, std::string, std::string, std::string>;
Surface surfaceOf(const plan::Plate& plate) {
    const plan::Host& host = plate.host;
    return {plate.room, static_cast<int>(host.kind), host.wall, host.furniture, host.face};
}

struct OnSurface {
    std::size_t outlet = 0; ///< in the list of all
    Rect outline;
};

void blockOn(const std::vector<OnSurface>& places, std::vector<OutletPlace>& outlets) {
    for (const OnSurface& place : places) {
        OutletPlace& outlet = outlets[place.outlet];
        if (outlet.fixed) continue;
        for (const OnSurface& other : places) {
            const OutletPlace& body = outlets[other.outlet];
            if (&body == &outlet || !standsOut(body) || !other.outline.cuts(place.outline)) continue;
            outlet.blocked_by = body.plugged.device;
            if (outlet.state == State::Free) outlet.state = State::Blocked;
            break;
        }
    }
}
} // namespace

namespace {
/// The outlets of a plate with its plugs in them; those beyond its outlets are left over.
std::vector<OutletPlace> filled(const plan::Plate& plate, const ComposedPlate& composed,
                                std::vector<const PluggedIn*> plugs, std::vector<PluggedIn>& left_over) {
    auto outlets = outletsOf(plate, composed);
    while (plugs.size() > outlets.size()) {
        left_over.push_back(*plugs.back());
        plugs.pop_back();
    }
    if (!plugs.empty()) seat(plugs, outlets);
    return outlets;
}
} // namespace

PlugPlaces plugPlaces(const plan::Plan& plan, const Catalogue& catalogue,
                      std::span<const PluggedIn> plugged) {
    PlugPlaces places;
    std::map<std::string_view, std::vector<const PluggedIn*>> by_plate;
    for (const PluggedIn& one : plugged)
        by_plate[one.plate].push_back(&one);
    std::map<Surface, std::vector<OnSurface>> surfaces;
    for (const plan::Plate& plate : plan.plates) {
        std::vector<const PluggedIn*> plugs;
        if (auto found = by_plate.extract(plate.id)) plugs = std::move(found.mapped());
        for (const OutletPlace& outlet :
             filled(plate, compose(catalogue, plate), std::move(plugs), places.left_over)) {
            const Vec2 at{plate.host.u_mm, plate.host.v_mm};
            surfaces[surfaceOf(plate)].push_back({places.outlets.size(), outlineAt(outlet).moved(at)});
            places.outlets.push_back(outlet);
        }
    }
    for (const auto& [id, plugs] : by_plate)
        for (const PluggedIn* plug : plugs)
            places.left_over.push_back(*plug);
    for (const auto& [surface, on_it] : surfaces)
        blockOn(on_it, places.outlets);
    return places;
}

PlugPlaces plugPlaces(const plan::Plate& plate, const ComposedPlate& composed,
                      std::span<const PluggedIn> plugged) {
    PlugPlaces places;
    std::vector<const PluggedIn*> plugs;
    for (const PluggedIn& one : plugged)
        plugs.push_back(&one);
    places.outlets = filled(plate, composed, std::move(plugs), places.left_over);
    std::vector<OnSurface> on_it;
    for (std::size_t i = 0; i < places.outlets.size(); ++i)
        on_it.push_back({i, outlineAt(places.outlets[i])});
    blockOn(on_it, places.outlets);
    return places;
}

} // namespace gangway::catalogue
