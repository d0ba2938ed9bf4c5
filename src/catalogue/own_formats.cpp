#include "catalogue/catalogue.hpp"

#include <algorithm>

namespace gangway::catalogue {

PlateFormat toFormat(const plan::OwnFormat& own) {
    PlateFormat format;
    format.id = own.id;
    format.name = own.name;
    format.pitch_mm = own.pitch_mm;
    format.single_width_mm = own.plate_width_mm;
    format.single_height_mm = own.plate_height_mm;
    format.corner_mm = own.corner_mm;
    format.relief_mm = own.relief_mm;
    format.aperture_width_mm = own.module_width_mm;
    format.aperture_height_mm = own.module_height_mm;
    format.max_gangs = own.max_gangs;
    BoxSpec box;
    box.shape = own.box_height_mm > 0 ? BoxSpec::Shape::Rect : BoxSpec::Shape::Round;
    box.width_mm = own.box_width_mm;
    box.height_mm = own.box_height_mm > 0 ? own.box_height_mm : own.box_width_mm;
    box.depth_mm = own.box_depth_mm;
    box.drill_mm = own.drill_mm;
    box.fixing_mm = 0;
    format.boxes = {box};
    format.height_habit = "centre";
    format.source = "the designer's own format";
    return format;
}

Catalogue withOwn(const Catalogue& catalogue, const plan::Plan& plan) {
    Catalogue with = catalogue;
    for (const plan::OwnFormat& own : plan.formats) {
        std::erase_if(with.formats, [&](const PlateFormat& format) { return format.id == own.id; });
        with.formats.push_back(toFormat(own));
    }
    return with;
}

} // namespace gangway::catalogue
