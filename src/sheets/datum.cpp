#include "sheets/datum.hpp"

#include "sheets/wall_view.hpp"

#include <fmt/format.h>

namespace gangway::sheets {

namespace {
std::string roomWords(const WallView& view) {
    return view.room->name.empty() ? view.room->id : view.room->name;
}

std::string faceProblem(WallView& view) {
    const Neighbour left = neighbourOf(*view.room, view.wall, End::Left);
    // An edge that turns away is in sight, and timber or no wall at all has no plaster: those are measured
    // from as they stand.
    const plan::WallStructure structure = view.room->walls[left.wall].structure;
    const bool bare = structure == plan::WallStructure::Timber || structure == plan::WallStructure::None;
    if (left.build_up_mm <= 0 && left.towards_viewer && !bare)
        return fmt::format(
            "the build-up of wall {} in {} is not stated, so distances can't start from its bare "
            "face; give its \"buildUp\", or draw from finished faces",
            view.room->walls[left.wall].id, roomWords(view));
    // At an inside corner the bare face lies behind the finished one, at an outside corner before it.
    view.u_datum_mm = left.towards_viewer ? -left.build_up_mm : left.build_up_mm;
    return {};
}

std::string levelProblem(WallView& view, Level level) {
    if (level == Level::Slab) {
        if (view.slab_mm() >= 0)
            return fmt::format(
                "the floor build-up of {} is not stated, so heights can't start from the slab; "
                "give its \"floorBuildUp\", or take heights from FFL",
                roomWords(view));
        view.v_datum_mm = view.slab_mm();
    }
    if (level == Level::Site) {
        const plan::Storey* storey = view.storey();
        if (storey == nullptr || !storey->site_line_mm)
            return fmt::format(
                "no site line is stated for the storey of {}, so heights can't start from it; give "
                "the storey's \"siteLine\", or take heights from FFL",
                roomWords(view));
        view.v_datum_mm = *storey->site_line_mm;
    }
    return {};
}
} // namespace

Datum datumOf(const plan::Issue& issue) {
    Datum datum;
    if (issue.face == plan::Issue::Face::Structural) datum.face = Face::Structural;
    if (issue.level == plan::Issue::Level::Slab) datum.level = Level::Slab;
    if (issue.level == plan::Issue::Level::Site) datum.level = Level::Site;
    return datum;
}

std::string countFrom(WallView& view, const Datum& datum) {
    view.datum = datum;
    if (datum.face == Face::Structural)
        if (std::string problem = faceProblem(view); !problem.empty()) return problem;
    return levelProblem(view, datum.level);
}

std::string levelWords(Level level) {
    switch (level) {
    case Level::Ffl:
        return "FFL";
    case Level::Slab:
        return "the slab";
    case Level::Site:
        return "the site line";
    }
    return {};
}

} // namespace gangway::sheets
