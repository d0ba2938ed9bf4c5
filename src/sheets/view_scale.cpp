#include "sheets/view_scale.hpp"

#include "sheets/elevation_view.hpp"
#include "sheets/portions.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kCrowded = 4.5; ///< neighbouring values nearer than this on paper have to be spread

Picture pictureOf(const WallView& view, double scale) {
    Picture picture{scale, {}, {}, {}, {}};
    picture.items = drawElevation(view, OnPaper{scale}, &picture.crowded);
    picture.extent = extentOf(picture.items);
    return picture;
}

double heightNeeded(const Picture& picture, const Layout& layout) {
    return picture.extent.height() + kHeading + footnoteOf(layout);
}

bool fits(const Picture& picture, const Layout& layout) {
    return picture.extent.width() <= layout.view.width() &&
           heightNeeded(picture, layout) <= layout.view.height();
}

/// Least distance on paper of two different set-outs of the wall's boxes.
double nearestValues(const WallView& view, double scale) {
    std::vector<double> us;
    for (const Mounted& item : view.mounted)
        for (Vec2 box : item.box_centres_mm)
            us.push_back(box.x);
    std::sort(us.begin(), us.end());
    double nearest = 1e9;
    for (std::size_t i = 1; i < us.size(); ++i)
        if (us[i] - us[i - 1] > 1) nearest = std::min(nearest, (us[i] - us[i - 1]) / scale);
    return nearest;
}

/// True when some opening is too narrow on paper for its size to stand inside it.
bool openingsCrowd(const WallView& view, double scale) {
    const double needed = drawing::measure("(1000 × 2100)", kValueText).width_mm;
    return std::any_of(view.holes.begin(), view.holes.end(), [&](const geometry::FaceHole& hole) {
        return (hole.right_mm - hole.left_mm) / scale < needed;
    });
}

/// Scales in the order they are tried when none is asked for.
std::vector<double> scalesToTry(const WallView& view) {
    constexpr double kShortWall = 1500;
    std::vector<double> scales;
    if (view.right_mm() - view.left_mm() <= kShortWall) scales.push_back(10);
    scales.push_back(20);
    if (nearestValues(view, 50) < kCrowded || openingsCrowd(view, 50)) scales.push_back(25);
    scales.push_back(50);
    return scales;
}

std::string doesNotFit(const WallView& view, double scale, const Picture& picture, const Layout& layout) {
    return fmt::format(
        "wall '{}' of room '{}' is {:g} long: at 1:{:g} its elevation takes {:.0f} x {:.0f} mm of "
        "paper, and {} has {:.0f} x {:.0f}; take a smaller scale or larger paper",
        view.data().id, view.room->id, std::round(view.length_mm()), scale, picture.extent.width(),
        heightNeeded(picture, layout), layout.paper.id, layout.view.width(), layout.view.height());
}

constexpr double kMostDetail = 110; ///< height of a detail's picture on paper
constexpr std::array<double, 3> kDetailScales{20, 10, 5};
constexpr std::array<double, 3> kPartScales{20, 25, 50};
constexpr std::size_t kMostParts = 8;
constexpr std::size_t kMostForRoom = 3;

bool fitsColumn(const Picture& detail, double width_mm) {
    return detail.crowded.empty() && detail.extent.width() <= width_mm &&
           detail.extent.height() <= kMostDetail;
}

/// The first scale at which a detail has room for everything; 0: none has.
double detailScale(const WallView& view, const Portion& detail, double larger_than, double width_mm) {
    for (const double scale : kDetailScales)
        if (scale < larger_than && fitsColumn(pictureOf(detailView(view, detail), scale), width_mm))
            return scale;
    return 0;
}

/// What is crowded, drawn apart; nullopt where that does not settle it.
std::optional<Shown> detailsApart(const Shown& whole) {
    const double width = whole.picture.layout.note_width_mm;
    auto view = withDetails(whole.view, whole.picture.crowded, width * kDetailScales.front(),
                            kMostDetail * kDetailScales.front());
    if (!view) return std::nullopt;
    for (Portion& detail : view->details)
        if ((detail.scale = detailScale(*view, detail, whole.picture.scale, width)) == 0) return std::nullopt;
    Picture picture = pictureOf(*view, whole.picture.scale);
    picture.layout = whole.picture.layout;
    if (!picture.crowded.empty() || !fits(picture, picture.layout)) return std::nullopt;
    return Shown{std::move(*view), std::move(picture)};
}

/// One picture, with details where it is crowded without.
std::expected<Shown, std::string> shownWhole(const WallView& view, const Paper& paper,
                                             const std::optional<double>& scale_asked) {
    auto picture = pictureThatFits(view, paper, scale_asked);
    if (!picture) return std::unexpected(std::move(picture.error()));
    Shown whole{view, std::move(*picture)};
    if (whole.picture.crowded.empty()) return whole;
    if (auto apart = detailsApart(whole)) return std::move(*apart);
    return whole;
}

std::expected<std::vector<Shown>, std::string> shownInParts(const WallView& view, const Paper& paper,
                                                            std::size_t parts, double scale) {
    std::vector<Shown> shown;
    for (const WallView& part : parted(view, parts)) {
        auto one = shownWhole(part, paper, scale);
        if (!one) return std::unexpected(std::move(one.error()));
        shown.push_back(std::move(*one));
    }
    return shown;
}

std::size_t crowdIn(const std::vector<Shown>& shown) {
    std::size_t count = 0;
    for (const Shown& one : shown)
        count += one.picture.crowded.size();
    return count;
}

} // namespace

std::expected<std::vector<Shown>, std::string> picturesOf(const WallView& view, const Paper& paper,
                                                          const std::optional<double>& scale_asked) {
    auto whole = shownWhole(view, paper, scale_asked);
    if (whole && whole->picture.crowded.empty()) return std::vector{std::move(*whole)};
    std::vector<Shown> best;
    if (whole) best.push_back(*whole);
    std::vector<double> scales(kPartScales.begin(), kPartScales.end());
    if (scale_asked) scales = {*scale_asked};
    // Crowding alone is not worth more sheets than a few.
    const std::size_t most = whole ? kMostForRoom : kMostParts;
    for (std::size_t parts = 2; parts <= most; ++parts)
        for (const double scale : scales) {
            if (whole && scale > whole->picture.scale) continue;
            auto shown = shownInParts(view, paper, parts, scale);
            if (!shown) continue;
            if (crowdIn(*shown) == 0) return shown;
            // Sheets that do not settle it are not worth their paper.
            if (best.empty()) best = std::move(*shown);
        }
    if (!best.empty()) return best;
    return std::unexpected(std::move(whole.error()));
}

std::vector<Block> detailBlocks(const WallView& view, double width_mm) {
    std::vector<Block> blocks;
    for (const Portion& detail : view.details) {
        blocks.push_back(
            headingBlock(fmt::format("Detail {}, 1:{:g}", detail.number, detail.scale), width_mm));
        const Picture picture = pictureOf(detailView(view, detail), detail.scale);
        Block block;
        block.items = picture.items;
        move(block.items, (width_mm - picture.extent.width()) / 2 - picture.extent.left,
             -picture.extent.top - 1);
        block.height_mm = picture.extent.height() + 2;
        block.gap_after_mm = 3;
        blocks.push_back(std::move(block));
    }
    return blocks;
}

std::expected<Picture, std::string> pictureThatFits(const WallView& view, const Paper& paper,
                                                    const std::optional<double>& scale_asked) {
    const std::vector<double> scales = scale_asked ? std::vector<double>{*scale_asked} : scalesToTry(view);
    const std::array<Layout, 2> layouts{layoutOn(paper, Arrangement::SideColumn),
                                        layoutOn(paper, Arrangement::WholeWidth)};
    Picture picture;
    for (double scale : scales) {
        // The wall alone tells most misfits without drawing it.
        const bool hopeless = (view.right_mm() - view.left_mm()) / scale > layouts.back().view.width();
        if (hopeless && scale != scales.back()) continue;
        picture = pictureOf(view, scale);
        for (const Layout& layout : layouts) {
            picture.layout = layout;
            if (fits(picture, layout)) return picture;
        }
    }
    return std::unexpected(doesNotFit(view, picture.scale, picture, picture.layout));
}

} // namespace gangway::sheets
