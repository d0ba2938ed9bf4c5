// Finding room for words on a view: what is taken, tags of plates with their leaders, and names of things.
#pragma once

#include "sheets/canvas.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::sheets {

/// Paper that may not be written on.
class Occupancy {
public:
    /// Texts of a list (those of dimensions too) are taken with a margin around them.
    void takeTexts(const std::vector<Item>& items);
    void take(const Rect& rect) { taken_.push_back(rect); }
    /// Words that stand already: no leader runs over them either.
    void takeWords(const Rect& rect) {
        take(rect);
        words_.push_back(rect);
    }
    /// Lines that had better not be covered.
    void takeLine(Pt from, Pt to) { lines_.push_back({from, to}); }
    /// A tag's leader, which nothing may cover.
    void takeLeader(Pt from, Pt to) { leaders_.push_back({from, to}); }

    bool isFree(const Rect& rect) const;
    bool leaderIsFree(Pt from, Pt to) const;
    int linesUnder(const Rect& rect) const;

private:
    struct Segment {
        Pt from, to;
    };
    std::vector<Rect> taken_;
    std::vector<Rect> words_; ///< also in taken_
    std::vector<Segment> lines_;
    std::vector<Segment> leaders_;
};

/// A few lines of text to be put somewhere inside a region of the view.
struct Label {
    std::vector<std::string> lines;
    double height_mm = kNoteText;
    Rect within; ///< where it belongs; its centre is tried first
    std::string layer;
    std::string id;
    drawing::Colour colour = drawing::kBlack;
    enum class Need { MayBeLeftOut, Always } need = Need::MayBeLeftOut;
    double turn_deg = 0; ///< 0, or 90 for one line read from the right
};

/// Puts labels in the order given and takes their place. One that may not be left out is moved outside its
/// region when there is no room inside, with a leader to the region's middle.
void placeLabels(std::vector<Item>& items, Occupancy& occupancy, const std::vector<Label>& labels);

/// A plate's tag: a capsule with a leader to the plate's outline, and a line of small text under it.
struct Tag {
    std::string text;
    std::string note; ///< "behind wardrobe"; may be empty
    std::string id;
    Rect target; ///< the plate on paper
};

/// Puts tags near their plates inside `region`, above the plate when that is clear, and takes their place.
/// All are solved together: none touches another or its leader. Returns which found no room and stand over
/// something, as indexes.
std::vector<std::size_t> placeTags(std::vector<Item>& items, Occupancy& occupancy,
                                   const std::vector<Tag>& tags, const Rect& region);

/// A tag's capsule with its text centred at `centre`; returns its extent.
Rect drawCapsule(Ink& lines, Ink& texts, Pt centre, const std::string& text);
double capsuleWidth(const std::string& text);
inline constexpr double kCapsuleHeight = 5.4;

} // namespace gangway::sheets
