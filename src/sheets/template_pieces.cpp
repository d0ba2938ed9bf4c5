#include "sheets/template_pieces.hpp"

#include "drawing/dimensions.hpp"
#include "sheets/plan_clip.hpp"
#include "sheets/template_captions.hpp"
#include "sheets/template_words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kEdge = 1.5;       ///< from the plate's outline to the cutting line
constexpr double kCross = 5;        ///< arm of a centre cross
constexpr double kFromCentre = 3;   ///< words from the lines of a cross
constexpr double kClearAcross = 44; ///< boxes nearer to each other have no room for words between them
constexpr double kClearUp = 34;
constexpr double kRegister = 2.5; ///< radius of a register mark
constexpr double kFromEnd = 4;    ///< a register mark from the end of its join
constexpr double kArrow = 4.8;    ///< length of the arrow that says how it is held
/// Words at a centre reach this far: a number and a size to the left, a height with two lines over the level.
constexpr JoinRoom kAcross{26, 26};
constexpr JoinRoom kUp{11, 18};
constexpr Pen kJoin{0.25, drawing::LineType::LongDashDoubleDot, drawing::kBlack};

bool isSame(double a, double b) {
    return std::abs(a - b) < 0.01;
}

std::vector<double> distinct(std::vector<double> values) {
    std::ranges::sort(values);
    const auto rest = std::ranges::unique(values, isSame);
    values.erase(rest.begin(), rest.end());
    return values;
}

/// Pieces between joins, each with the overlap.
std::vector<std::pair<double, double>> stretches(double low, double high, const std::vector<double>& joins) {
    std::vector<std::pair<double, double>> parts;
    double from = low;
    for (const double join : joins) {
        parts.emplace_back(from, join + kTemplateOverlap / 2);
        from = join - kTemplateOverlap / 2;
    }
    parts.emplace_back(from, high);
    return parts;
}

/// One box where the template shows it.
struct Place {
    Pt centre;
    const catalogue::BoxSpec* spec = nullptr; ///< nullptr: a plate without boxes
    Vec2 at_mm;                               ///< its (u, v) on the surface
};

class Maker {
public:
    Maker(const House& house, const plan::Room& room, const Surface& surface, const Mounted& item)
        : house_(house), room_(room), surface_(surface), item_(item), line_(lineWords(surface)) {
        // A ceiling is drawn as seen from below with north up, so that east is at the left.
        const double across = surface.kind == Surface::Kind::Ceiling ? -1 : 1;
        for (std::size_t i = 0; i < item.box_centres_mm.size(); ++i) {
            const Vec2 offset = item.box_centres_mm[i] - item.at_mm;
            const auto& boxes = item.face.boxes;
            places_.push_back({{across * offset.x, offset.y},
                               i < boxes.size() ? &boxes[i].spec : nullptr,
                               item.box_centres_mm[i]});
        }
        plate_ = {-item.width_mm / 2, -item.height_mm / 2, item.width_mm / 2, item.height_mm / 2};
        core_ = plate_;
        for (const Place& place : places_)
            core_ = united(core_, outlineOf(place));
        core_ = core_.grown(kEdge);
        const double short_by = kLeastPiece - core_.width();
        if (short_by > 0) {
            core_.left -= short_by / 2;
            core_.right += short_by / 2;
        }
        columns_ = axis(&Pt::x);
        rows_ = axis(&Pt::y);
        roomy_ = hasRoomForWords();
    }

    std::vector<TemplatePiece> make(double width_mm, double height_mm) {
        Layout straight = layoutFor(width_mm, height_mm);
        Layout turned = layoutFor(height_mm, width_mm);
        const bool turn = turned.pieces() < straight.pieces();
        layout_ = std::move(turn ? turned : straight);
        std::vector<TemplatePiece> pieces;
        const auto across = stretches(core_.left, core_.right, layout_.across);
        const auto up = stretches(core_.bottom, core_.top, layout_.up);
        // As they are read: from the top left.
        for (std::size_t row = up.size(); row-- > 0;)
            for (std::size_t column = 0; column < across.size(); ++column) {
                const Rect window{across[column].first, up[row].first, across[column].second, up[row].second};
                pieces.push_back(piece(window, column, row));
                if (!turn) continue;
                TemplatePiece& made = pieces.back();
                turnQuarter(made.marks);
                turnQuarter(made.words);
                const Rect was = made.extent;
                made.extent = {-was.top, was.left, -was.bottom, was.right};
            }
        double tallest = 0;
        for (const TemplatePiece& made : pieces)
            tallest = std::max(tallest, made.extent.height());
        for (TemplatePiece& made : pieces)
            made.tallest_mm = tallest;
        return pieces;
    }

private:
    struct Layout {
        std::vector<double> across; ///< x of upright joins
        std::vector<double> up;     ///< y of level ones
        TemplateCaptions captions;
        std::size_t pieces() const { return (across.size() + 1) * (up.size() + 1); }
    };

    static Rect outlineOf(const Place& place) {
        if (place.spec == nullptr)
            return Rect{place.centre.x, place.centre.y, place.centre.x, place.centre.y};
        const bool round = place.spec->shape == catalogue::BoxSpec::Shape::Round;
        const double wide =
            round ? std::max(place.spec->width_mm, place.spec->drill_mm) : place.spec->width_mm;
        const double high = round ? wide : place.spec->height_mm;
        return {place.centre.x - wide / 2, place.centre.y - high / 2, place.centre.x + wide / 2,
                place.centre.y + high / 2};
    }

    std::vector<double> axis(double Pt::* coordinate) const {
        std::vector<double> values;
        for (const Place& place : places_)
            values.push_back(place.centre.*coordinate);
        return distinct(std::move(values));
    }

    bool hasRoomForWords() const {
        for (std::size_t i = 0; i < places_.size(); ++i)
            for (std::size_t k = i + 1; k < places_.size(); ++k)
                if (std::abs(places_[i].centre.x - places_[k].centre.x) < kClearAcross &&
                    std::abs(places_[i].centre.y - places_[k].centre.y) < kClearUp)
                    return false;
        return true;
    }

    CaptionTexts captionTexts() const {
        CaptionTexts texts{item_.tag, room_.name + ", " + surface_.name, boxesInWords(item_), "", ""};
        texts.notes = datumInWords(house_, room_, surface_, item_.at_mm.y + rows_.back(), rows_.size());
        if (roomy_) return texts;
        texts.notes += " u of the boxes:";
        for (std::size_t i = 0; i < places_.size(); ++i)
            texts.notes +=
                fmt::format("{} {} {}", i == 0 ? "" : ",", i + 1, drawing::number(places_[i].at_mm.x));
        texts.notes += ". v:";
        for (std::size_t i = 0; i < places_.size(); ++i)
            texts.notes +=
                fmt::format("{} {} {}", i == 0 ? "" : ",", i + 1, drawing::number(places_[i].at_mm.y));
        texts.notes += ".";
        return texts;
    }

    /// How high the captions are depends on how wide the parts are, and how high a part may be on them.
    Layout layoutFor(double width_mm, double height_mm) const {
        Layout layout;
        layout.across = joinsOf(core_.left, core_.right, width_mm, columns_, kAcross);
        double narrowest = core_.width();
        for (const auto& [from, to] : stretches(core_.left, core_.right, layout.across))
            narrowest = std::min(narrowest, std::max(to - from, kLeastPiece));
        CaptionTexts texts = captionTexts();
        const auto setUp = [&] {
            layout.captions = TemplateCaptions(texts, narrowest);
            const double most = height_mm - layout.captions.above_mm() - layout.captions.below_mm();
            layout.up = joinsOf(core_.bottom, core_.top, most, rows_, kUp);
        };
        if (!layout.across.empty()) texts.part = longestPart(layout);
        setUp();
        if (layout.up.empty()) return layout;
        texts.part = longestPart(layout);
        setUp();
        return layout;
    }

    TemplatePiece piece(const Rect& window, std::size_t column, std::size_t row) const {
        TemplatePiece piece;
        const std::size_t count = layout_.pieces();
        const std::size_t number = (layout_.up.size() - row) * (layout_.across.size() + 1) + column + 1;
        piece.name = item_.tag;
        if (count > 1) piece.name += fmt::format(", part {} of {}", number, count);
        piece.marks = clipped(marks(window), window);
        Rect cell = window;
        cell.right = std::max(cell.right, cell.left + kLeastPiece);
        cell.top += layout_.captions.above_mm();
        cell.bottom -= layout_.captions.below_mm();
        piece.extent = cell;
        Ink(piece.words, "notes", item_.id).rect(cell, kThin);
        layout_.captions.draw(piece.words, item_.id, cell,
                              count > 1 ? partInWords(number, count, lettersAt(column, row)) : "");
        drawArrow(piece.words, piece.marks, window);
        return piece;
    }

    /// Letters of the joins around a part.
    std::vector<std::string> lettersAt(std::size_t column, std::size_t row) const {
        std::vector<std::string> letters;
        if (column > 0) letters.push_back(letterOf(column - 1));
        if (column < layout_.across.size()) letters.push_back(letterOf(column));
        if (row > 0) letters.push_back(letterOf(layout_.across.size() + row - 1));
        if (row < layout_.up.size()) letters.push_back(letterOf(layout_.across.size() + row));
        return letters;
    }

    /// "part 1 of 2, join at the mark A".
    static std::string partInWords(std::size_t number, std::size_t count,
                                   const std::vector<std::string>& letters) {
        return fmt::format("part {} of {}, join at the mark{} {}", number, count,
                           letters.size() > 1 ? "s" : "", fmt::join(letters, ", "));
    }

    /// The words of the part in the middle, which has the most joins.
    static std::string longestPart(const Layout& layout) {
        const std::size_t joins = layout.across.size() + layout.up.size();
        std::vector<std::string> letters(std::min<std::size_t>(layout.across.size(), 2) +
                                             std::min<std::size_t>(layout.up.size(), 2),
                                         letterOf(joins - 1));
        return partInWords(layout.pieces(), layout.pieces(), letters);
    }

    static std::string letterOf(std::size_t join) {
        const std::string letter(1, static_cast<char>('A' + static_cast<char>(join % 26)));
        return join < 26 ? letter : letter + std::to_string(join / 26);
    }

    std::vector<Item> marks(const Rect& window) const {
        std::vector<Item> items;
        Ink plates(items, "plates", item_.id);
        plates.rect(plate_, kHidden);
        for (const Place& place : places_)
            drawBox(plates, place);
        for (const double x : columns_)
            plates.line({x, plate_.bottom}, {x, plate_.top}, kCentre);
        Ink lines(items, "dimensions", item_.id);
        for (const double y : rows_)
            lines.line({window.left, y}, {window.right, y}, kNarrow);
        Ink texts(items, "text", item_.id);
        for (std::size_t i = 0; i < places_.size(); ++i)
            if (inside({places_[i].centre.x, places_[i].centre.y, places_[i].centre.x, places_[i].centre.y},
                       window))
                drawWords(texts, i);
        if (roomy_)
            for (const double y : rows_)
                drawLineWords(texts, y, window);
        drawJoins(items);
        return items;
    }

    static void drawBox(Ink& ink, const Place& place) {
        const Pt c = place.centre;
        if (place.spec != nullptr && place.spec->shape == catalogue::BoxSpec::Shape::Rect)
            ink.rect(outlineOf(place), kOutline);
        if (place.spec != nullptr && place.spec->shape == catalogue::BoxSpec::Shape::Round) {
            const double drill = place.spec->drill_mm > 0 ? place.spec->drill_mm : place.spec->width_mm;
            ink.circle(c, drill / 2, kOutline);
            if (!isSame(drill, place.spec->width_mm)) ink.circle(c, place.spec->width_mm / 2, kThin);
        }
        ink.line({c.x - kCross, c.y}, {c.x + kCross, c.y}, kCut);
        ink.line({c.x, c.y - kCross}, {c.x, c.y + kCross}, kCut);
    }

    /// Number above left of the centre, what is cut below left, u below right.
    void drawWords(Ink& ink, std::size_t index) const {
        const Place& place = places_[index];
        const Pt c = place.centre;
        const double left = c.x - kFromCentre;
        const double right = c.x + kFromCentre;
        if (places_.size() > 1)
            ink.text({left, c.y + kFromCentre}, std::to_string(index + 1), roomy_ ? kTitleText : kNoteText,
                     drawing::Align::Right);
        if (!roomy_) return;
        if (place.spec != nullptr)
            ink.text({left, c.y - kFromCentre - kValueText}, cutInWords(*place.spec), kValueText,
                     drawing::Align::Right);
        const auto u = lengthLines(place.at_mm.x, house_.plan().units);
        double y = c.y - kFromCentre - kValueText;
        ink.text({right, y}, "u " + u.front(), kValueText);
        y -= kNoteText + 1.8;
        if (u.size() > 1) ink.text({right, y}, u[1], kNoteText);
    }

    /// Words on a line that runs right across: at its first box in the window, above it and to the right.
    void drawLineWords(Ink& ink, double row_y, const Rect& window) const {
        const auto first = std::ranges::find_if(columns_, [&](double x) {
            return x >= window.left && x <= window.right &&
                   std::ranges::any_of(places_, [&](const Place& place) {
                       return isSame(place.centre.x, x) && isSame(place.centre.y, row_y);
                   });
        });
        if (first == columns_.end()) return;
        const double x = *first + kFromCentre;
        double y = row_y + 1.6;
        ink.text({x, y}, line_.suffix, kNoteText);
        y += kNoteText + 1.6;
        const auto v = lengthLines(item_.at_mm.y + row_y, house_.plan().units);
        if (v.size() > 1) {
            ink.text({x, y}, v[1], kNoteText);
            y += kNoteText + 1.8;
        }
        ink.text({x, y}, v.front(), kValueText);
        ink.text({x, y + kValueText + 1.6}, line_.name, kNoteText);
    }

    struct JoinMark {
        Pt at;
        std::size_t join = 0;
    };

    /// A join is drawn by both pieces, so that its marks can be laid on each other.
    void drawJoins(std::vector<Item>& items) const {
        constexpr double kInset = kFromEnd + kCross;
        Ink ink(items, "notes", item_.id);
        std::vector<JoinMark> marks;
        for (std::size_t i = 0; i < layout_.across.size(); ++i) {
            const double x = layout_.across[i];
            ink.line({x, core_.bottom}, {x, core_.top}, kJoin);
            for (const double y : {core_.bottom + kInset, core_.top - kInset})
                marks.push_back({{x, y}, i});
        }
        for (std::size_t i = 0; i < layout_.up.size(); ++i) {
            const double y = layout_.up[i];
            ink.line({core_.left, y}, {core_.right, y}, kJoin);
            for (const double x : {core_.left + kInset, core_.right - kInset})
                marks.push_back({{x, y}, layout_.across.size() + i});
        }
        for (const JoinMark& mark : marks) {
            ink.circle(mark.at, kRegister, kThin);
            ink.line({mark.at.x - kCross, mark.at.y}, {mark.at.x + kCross, mark.at.y}, kThin);
            ink.line({mark.at.x, mark.at.y - kCross}, {mark.at.x, mark.at.y + kCross}, kThin);
        }
        for (const JoinMark& mark : marks)
            drawLetter(items, mark);
    }

    /// In the first corner around its mark that others leave free, the same one on both pieces.
    void drawLetter(std::vector<Item>& items, const JoinMark& mark) const {
        const std::string letter = letterOf(mark.join);
        const double width = drawing::measure(letter, kValueText).width_mm;
        constexpr double kAside = 0.8;
        Pt at{mark.at.x + kRegister + kAside, mark.at.y + kAside};
        const auto take = [&](Pt corner) {
            if (!isFree(items, {corner.x, corner.y, corner.x + width, corner.y + kValueText})) return false;
            at = corner;
            return true;
        };
        for (const double aside : {kRegister + kAside, kCross + kAside, kCross + 2 * kRegister}) {
            const double right = mark.at.x + aside;
            const double left = mark.at.x - aside - width;
            const double over = mark.at.y + kAside;
            const double under = mark.at.y - kAside - kValueText;
            if (take({right, over}) || take({left, over}) || take({right, under}) || take({left, under}))
                break;
        }
        Ink(items, "notes", item_.id).text(at, letter, kValueText);
    }

    /// Where the marks leave room for it.
    void drawArrow(std::vector<Item>& items, const std::vector<Item>& marks, const Rect& window) const {
        constexpr double kHead = 3;
        constexpr double kHalfHead = 1.4;
        const double width = drawing::measure(line_.arrow, kValueText).width_mm + 1 + 2 * kHalfHead;
        const Pt place = freePlace(marks, window, width, kArrow);
        const Pt tip{place.x + width - kHalfHead, place.y + kArrow};
        Ink ink(items, "notes", item_.id);
        ink.line({tip.x, place.y}, {tip.x, tip.y - kHead + 1}, kCut);
        ink.fill({tip, {tip.x - kHalfHead, tip.y - kHead}, {tip.x + kHalfHead, tip.y - kHead}},
                 drawing::kBlack);
        ink.text({place.x, place.y + (kArrow - kValueText) / 2}, line_.arrow, kValueText);
    }

    const House& house_;
    const plan::Room& room_;
    const Surface& surface_;
    const Mounted& item_;
    TemplateLine line_;
    std::vector<Place> places_;
    Rect plate_;                  ///< its outline
    Rect core_;                   ///< what is at true size, with the edge around it
    std::vector<double> columns_; ///< x of box centres, ascending
    std::vector<double> rows_;    ///< y of box centres, ascending
    bool roomy_ = true;           ///< words have room at each centre
    Layout layout_;
};

} // namespace

std::vector<double> joinsOf(double low, double high, double most, std::vector<double> centres,
                            JoinRoom words) {
    constexpr double kHalf = kTemplateOverlap / 2;
    constexpr double kStep = 0.5;
    centres = distinct(std::move(centres));
    // A centre stands in one part only, with all its words.
    const double before = std::max(words.before_mm - kHalf, kHalf + kStep);
    const double behind = std::max(words.behind_mm - kHalf, kHalf + kStep);
    const auto clear = [&](double x) {
        return std::ranges::all_of(
            centres, [&](double centre) { return x <= centre - before || x >= centre + behind; });
    };
    const double step = most - kTemplateOverlap;
    std::vector<double> joins;
    double from = low;
    while (high - from > most + 1e-6) {
        const double last = from + most - kHalf;
        // As few parts as there can be, so what is left over must fit into the others.
        const double others = std::ceil((high - from - most) / step - 1e-9);
        const double first = std::min(last, std::max(high - others * step - kHalf, from + most / 3));
        double join = last;
        bool found = false;
        for (std::size_t i = 1; i < centres.size(); ++i) {
            const double middle = (centres[i - 1] + centres[i]) / 2;
            if (middle < first || middle > last) continue;
            join = middle;
            found = true;
        }
        for (double x = last; !found && x >= first; x -= kStep) {
            if (!clear(x)) continue;
            join = x;
            found = true;
        }
        joins.push_back(join);
        from = join - kHalf;
    }
    return joins;
}

std::vector<TemplatePiece> templatePieces(const House& house, const plan::Room& room, const Surface& surface,
                                          const Mounted& item, double width_mm, double height_mm) {
    return Maker(house, room, surface, item).make(width_mm, height_mm);
}

} // namespace gangway::sheets
