#include "sheets/view_scale.hpp"

#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kCrowded = 4.5; ///< neighbouring values nearer than this on paper have to be spread

Picture pictureOf(const WallView& view, double scale) {
    Picture picture{scale, drawElevation(view, OnPaper{scale}), {}, {}};
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
    if (view.length_mm() <= kShortWall) scales.push_back(10);
    scales.push_back(20);
    if (nearestValues(view, 50) < kCrowded || openingsCrowd(view, 50)) scales.push_back(25);
    scales.insert(scales.end(), {50, 100});
    return scales;
}

std::string doesNotFit(const WallView& view, double scale, const Picture& picture, const Layout& layout) {
    return fmt::format(
        "wall '{}' of room '{}' is {:g} long: at 1:{:g} its elevation takes {:.0f} x {:.0f} mm of "
        "paper, and {} has {:.0f} x {:.0f}; take a smaller scale or larger paper",
        view.data().id, view.room->id, std::round(view.length_mm()), scale, picture.extent.width(),
        heightNeeded(picture, layout), layout.paper.id, layout.view.width(), layout.view.height());
}

} // namespace

std::expected<Picture, std::string> pictureThatFits(const WallView& view, const Paper& paper,
                                                    const std::optional<double>& scale_asked) {
    const std::vector<double> scales = scale_asked ? std::vector<double>{*scale_asked} : scalesToTry(view);
    const std::array<Layout, 2> layouts{layoutOn(paper, Arrangement::SideColumn),
                                        layoutOn(paper, Arrangement::WholeWidth)};
    Picture picture;
    for (double scale : scales) {
        // The wall alone tells most misfits without drawing it.
        const bool hopeless = view.length_mm() / scale > layouts.back().view.width();
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
