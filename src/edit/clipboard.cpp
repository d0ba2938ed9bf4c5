#include "edit/clipboard.hpp"
#include "edit/room_outline.hpp"

#include "edit/kept_distances.hpp"
#include "edit/luminaire_edits.hpp"
#include "edit/part_check.hpp"
#include "edit/plate_edits.hpp"
#include "edit/wording.hpp"
#include "geometry/frames.hpp"
#include "plan/io.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <map>
#include <set>

namespace gangway::edit {
namespace {

using plan::Vec2;

/// Key of the plan that makes it a clip, and of a piece that is only there because plates are on it.
constexpr std::string_view kClip = "gangwayClip";
constexpr std::string_view kContext = "clipContext";

bool hasKey(const plan::UnknownKeys& keys, std::string_view key) {
    return std::ranges::any_of(keys, [&](const auto& entry) { return entry.first == key; });
}

template <class T>
bool holds(const std::vector<T>& list, const std::string& id) {
    return std::ranges::find(list, id, &T::id) != list.end();
}

/// Fills a clip with what was chosen of one list; the id that is missing, if one is.
template <class T>
std::string take(const std::vector<T>& all, const std::vector<std::string>& ids, std::vector<T>& into,
                 std::set<std::string>& rooms) {
    for (const std::string& id : ids) {
        const auto found = std::ranges::find(all, id, &T::id);
        if (found == all.end()) return fmt::format("'{}' is not in the plan", id);
        into.push_back(*found);
        rooms.insert(found->room);
    }
    return {};
}

template <class T>
void addHostPieces(const plan::Plan& plan, const std::vector<T>& mounted, plan::Plan& clip,
                   std::set<std::string>& rooms) {
    for (const T& element : mounted) {
        if (element.host.kind != plan::Host::Kind::Furniture || holds(clip.furniture, element.host.furniture))
            continue;
        const plan::Furniture* piece = plan::findFurniture(plan, element.host.furniture);
        if (piece == nullptr) continue;
        clip.furniture.push_back(*piece);
        clip.furniture.back().unknown.emplace_back(kContext, "true");
        rooms.insert(piece->room);
    }
}

bool refersOutside(const plan::Plan& clip, const std::optional<plan::KeptDistance>& kept) {
    using From = plan::KeptDistance::From;
    if (!kept) return false;
    return kept->from == From::Opening ||
           (kept->from == From::Furniture && !holds(clip.furniture, kept->id)) ||
           (kept->from == From::Plate && !holds(clip.plates, kept->id));
}

void cutLinks(plan::Plan& clip) {
    for (plan::Plate& plate : clip.plates) {
        if (!holds(clip.furniture, plate.anchor) && !holds(clip.luminaires, plate.anchor))
            plate.anchor.clear();
        if (refersOutside(clip, plate.kept_along)) plate.kept_along.reset();
        if (refersOutside(clip, plate.kept_height)) plate.kept_height.reset();
    }
}

std::string formatText(const plan::OwnFormat& format) {
    plan::Plan part;
    part.formats.push_back(format);
    return plan::write(part);
}

/// What a paste adds, and the plan as it will be.
class Pasting {
public:
    Pasting(const plan::Plan& plan, plan::Plan clip, const PasteTarget& target)
        : clip_(std::move(clip)), target_(target), now_(plan), formats_from_(plan.formats.size()),
          furniture_from_(plan.furniture.size()), plates_from_(plan.plates.size()),
          lamps_from_(plan.luminaires.size()) {}

    /// Empty when everything found its place, else the sentence of refusal.
    std::string run() {
        bringFormats();
        for (const plan::Furniture& piece : clip_.furniture)
            if (problem_.empty()) addPiece(piece);
        for (const plan::Plate& plate : clip_.plates)
            if (problem_.empty()) addPlate(plate);
        for (const plan::Luminaire& lamp : clip_.luminaires)
            if (problem_.empty()) addLamp(lamp);
        if (!problem_.empty()) return problem_;
        for (std::size_t i = plates_from_; i < now_.plates.size(); ++i)
            relink(now_.plates[i]);
        return whatReadingSays();
    }

    std::function<void(Draft&)> change() const {
        return [formats = tail(now_.formats, formats_from_),
                furniture = tail(now_.furniture, furniture_from_), plates = tail(now_.plates, plates_from_),
                lamps = tail(now_.luminaires, lamps_from_)](Draft& draft) {
            const auto add = [&](const auto& list) {
                for (const auto& element : list)
                    draft.add(element);
            };
            add(formats), add(furniture), add(plates), add(lamps);
        };
    }

    /// "a copy of K-04", "2 plates and 1 piece of furniture"
    std::string what() const {
        const std::size_t pieces = now_.furniture.size() - furniture_from_;
        if (clip_.plates.size() + clip_.luminaires.size() + pieces == 1) return onlyOne();
        std::vector<std::string> parts;
        const auto add = [&](std::size_t count, std::string_view one, std::string_view many) {
            if (count > 0) parts.push_back(detail::counted(count, one, many));
        };
        add(clip_.plates.size(), "plate", "plates");
        add(pieces, "piece of furniture", "pieces of furniture");
        add(clip_.luminaires.size(), "luminaire", "luminaires");
        return detail::listed(parts);
    }

private:
    template <class T>
    static std::vector<T> tail(const std::vector<T>& list, std::size_t from) {
        return {list.begin() + static_cast<std::ptrdiff_t>(from), list.end()};
    }

    std::string onlyOne() const {
        if (!clip_.plates.empty())
            return clip_.plates.front().tag.empty() ? clip_.plates.front().id : clip_.plates.front().tag;
        if (!clip_.luminaires.empty()) return detail::lampName(clip_.luminaires.front());
        return detail::pieceName(now_.furniture.back());
    }

    void bringFormats() {
        for (plan::OwnFormat format : clip_.formats) {
            const std::string before = format.id;
            const auto same = std::ranges::find(now_.formats, before, &plan::OwnFormat::id);
            if (same != now_.formats.end() && formatText(*same) == formatText(format)) continue;
            format.id = detail::freeId(before, "format",
                                       [&](const std::string& id) { return holds(now_.formats, id); });
            formats_[before] = format.id;
            now_.formats.push_back(std::move(format));
        }
    }

    /// The room something goes to; empty, with the problem noted, when it is not here.
    std::string roomFor(const std::string& from) {
        const std::string& room = target_.room.empty() ? from : target_.room;
        if (plan::findRoom(now_, room) != nullptr) return room;
        problem_ = target_.room.empty()
                       ? fmt::format("this plan has no room '{}'; choose the room to paste into", room)
                       : fmt::format("there is no room '{}'", room);
        return {};
    }

    void addPiece(plan::Furniture piece) {
        if (hasKey(piece.unknown, kContext)) return;
        const std::string before = piece.id;
        const std::string from = piece.room;
        piece.room = roomFor(from);
        if (piece.room.empty()) return;
        const plan::Room* source = plan::findRoom(clip_, from);
        const plan::Room* room = plan::findRoom(now_, piece.room);
        if (source && piece.room != from)
            piece.at_mm = piece.at_mm + detail::southWest(*room) - detail::southWest(*source);
        piece.at_mm = piece.at_mm + target_.offset_mm;
        if (plan::findLayer(now_, piece.layer) == nullptr) piece.layer = plan::kLayerFurniture;
        piece.id = detail::freeId(before, piece.kind,
                                  [&](const std::string& id) { return holds(now_.furniture, id); });
        pieces_[before] = piece.id;
        now_.furniture.push_back(std::move(piece));
    }

    /// Where something mounted goes; the first one sets the way for all when a host is named.
    bool place(std::string& room, plan::Host& host) {
        const plan::Host before = host;
        room = roomFor(room);
        if (room.empty()) return false;
        if (target_.host) {
            if (!first_) first_ = before;
            host = *target_.host;
            host.u_mm += before.u_mm - first_->u_mm;
            host.v_mm += before.v_mm - first_->v_mm;
        } else if (host.kind == plan::Host::Kind::Furniture && pieces_.contains(host.furniture)) {
            return true; // on the copy of its piece, which has moved already
        }
        host.u_mm += target_.offset_mm.x;
        host.v_mm += target_.offset_mm.y;
        if (host.kind == plan::Host::Kind::Furniture)
            if (const plan::Furniture* piece = plan::findFurniture(now_, host.furniture)) room = piece->room;
        host = detail::heldToWall(now_, room, host);
        if (const auto frame = geometry::hostFrame(now_, room, host); !frame) problem_ = frame.error();
        return problem_.empty();
    }

    void addPlate(plan::Plate plate) {
        if (!place(plate.room, plate.host)) return;
        const std::string before = plate.id;
        goOnCopy(plate);
        if (const auto renamed = formats_.find(plate.format); renamed != formats_.end())
            plate.format = renamed->second;
        plate.tag = nextTag(now_, plate.room);
        plate.id = freshPlateId(plate.tag);
        plates_[before] = plate.id;
        now_.plates.push_back(std::move(plate));
    }

    /// The tag in small letters. An answer outlives its plate, and a new plate must not inherit one.
    std::string freshPlateId(std::string tag) const {
        std::ranges::transform(tag, tag.begin(), [](unsigned char c) {
            return static_cast<char>(c < 128 ? std::tolower(c) : c);
        });
        std::string id = tag;
        for (int number = 2; holds(now_.plates, id) || plan::latestAgreement(now_, id) != nullptr; ++number)
            id = fmt::format("{}-{}", tag, number);
        return id;
    }

    void addLamp(plan::Luminaire lamp) {
        if (!place(lamp.room, lamp.host)) return;
        const std::string before = lamp.id;
        goOnCopy(lamp);
        lamp.tag = nextLampTag(now_, lamp.room);
        lamp.id = detail::freeId("", fmt::format("{}-lamp", lamp.room),
                                 [&](const std::string& id) { return holds(now_.luminaires, id); });
        lamps_[before] = lamp.id;
        now_.luminaires.push_back(std::move(lamp));
    }

    template <class T>
    void goOnCopy(T& mounted) {
        const auto copy = pieces_.find(mounted.host.furniture);
        if (mounted.host.kind != plan::Host::Kind::Furniture || target_.host || copy == pieces_.end()) return;
        mounted.host.furniture = copy->second;
        mounted.room = plan::findFurniture(now_, copy->second)->room;
    }

    /// Links lead to the copies, with the distance as it is there; those that lead nowhere are cut.
    void relink(plan::Plate& plate) {
        const auto piece = pieces_.find(plate.anchor);
        const auto lamp = lamps_.find(plate.anchor);
        plate.anchor = piece != pieces_.end() ? piece->second : lamp != lamps_.end() ? lamp->second : "";
        relinkKept(plate, plate.kept_along, Along::U);
        relinkKept(plate, plate.kept_height, Along::V);
    }
    void relinkKept(const plan::Plate& plate, std::optional<plan::KeptDistance>& kept, Along along) {
        using From = plan::KeptDistance::From;
        if (!kept) return;
        plan::KeptDistance linked = *kept;
        if (linked.from == From::Furniture || linked.from == From::Plate) {
            const auto& copies = linked.from == From::Furniture ? pieces_ : plates_;
            const auto copy = copies.find(linked.id);
            if (copy == copies.end()) return kept.reset();
            linked.id = copy->second;
        }
        const auto edge = keptEdge(now_, plate, linked, along);
        if (!edge) return kept.reset();
        linked.distance_mm = (along == Along::U ? plate.host.u_mm : plate.host.v_mm) - *edge;
        kept = linked;
    }

    std::string whatReadingSays() const {
        std::vector<std::string> rooms;
        plan::Plan added;
        added.furniture = tail(now_.furniture, furniture_from_);
        added.plates = tail(now_.plates, plates_from_);
        added.luminaires = tail(now_.luminaires, lamps_from_);
        const auto note = [&](const auto& list) {
            for (const auto& element : list)
                rooms.push_back(element.room);
        };
        note(added.furniture), note(added.plates), note(added.luminaires);
        plan::Plan part = detail::partOf(now_, rooms);
        part.formats = now_.formats;
        part.furniture = now_.furniture;
        std::erase_if(part.furniture, [&](const auto& piece) { return !holds(part.rooms, piece.room); });
        part.plates = added.plates;
        part.luminaires = added.luminaires;
        return detail::problemOf(part).value_or("");
    }

    plan::Plan clip_;
    PasteTarget target_;
    plan::Plan now_;
    std::size_t formats_from_, furniture_from_, plates_from_, lamps_from_; ///< what is behind them is new
    std::map<std::string, std::string> formats_, pieces_, plates_, lamps_; ///< ids in the clip to ids here
    std::optional<plan::Host> first_;
    std::string problem_;
};

std::expected<plan::Plan, std::string> clipFrom(std::string_view text) {
    auto read = plan::read(text);
    if (!read || !hasKey(read->plan.unknown, kClip))
        return std::unexpected("the clipboard holds nothing copied from a plan");
    return std::move(read->plan);
}

Refusable pasteAs(const plan::Plan& plan, std::string_view text, const PasteTarget& target,
                  std::string_view verb) {
    auto clip = clipFrom(text);
    if (!clip) return std::unexpected(clip.error());
    Pasting pasting(plan, std::move(*clip), target);
    if (std::string problem = pasting.run(); !problem.empty()) return std::unexpected(std::move(problem));
    return Command{fmt::format("{} {}", verb, pasting.what()), "", pasting.change()};
}

} // namespace

std::expected<std::string, std::string> copyToText(const plan::Plan& plan, const Selection& selection) {
    if (selection.empty()) return std::unexpected("choose what to copy");
    plan::Plan clip;
    std::set<std::string> rooms;
    for (const std::string& problem : {take(plan.plates, selection.plates, clip.plates, rooms),
                                       take(plan.furniture, selection.furniture, clip.furniture, rooms),
                                       take(plan.luminaires, selection.luminaires, clip.luminaires, rooms)})
        if (!problem.empty()) return std::unexpected(problem);
    addHostPieces(plan, clip.plates, clip, rooms);
    addHostPieces(plan, clip.luminaires, clip, rooms);
    cutLinks(clip);
    for (const plan::OwnFormat& format : plan.formats)
        if (std::ranges::find(clip.plates, format.id, &plan::Plate::format) != clip.plates.end())
            clip.formats.push_back(format);
    plan::Plan part = detail::partOf(plan, {rooms.begin(), rooms.end()});
    clip.layers = std::move(part.layers);
    clip.storeys = std::move(part.storeys);
    clip.rooms = std::move(part.rooms);
    clip.unknown.emplace_back(kClip, "1");
    return plan::write(clip);
}

bool isClip(std::string_view text) {
    return clipFrom(text).has_value();
}

Refusable paste(const plan::Plan& plan, std::string_view text, const PasteTarget& target) {
    return pasteAs(plan, text, target, "Paste");
}

Refusable duplicate(const plan::Plan& plan, const Selection& selection, Vec2 offset_mm) {
    const auto text = copyToText(plan, selection);
    if (!text) return std::unexpected(text.error());
    return pasteAs(plan, *text, {{}, std::nullopt, offset_mm}, "Duplicate");
}

} // namespace gangway::edit
