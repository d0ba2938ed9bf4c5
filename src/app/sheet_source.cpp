#include "app/sheet_source.hpp"

namespace gangway::app {

sheets::Drawn drawnFrom(const SheetSource& source, const sheets::SheetKind& kind) {
    sheets::SetInput input;
    input.plan = &source.plan;
    input.catalogue = &source.catalogue;
    input.pack = source.pack ? &*source.pack : nullptr;
    input.options.base = source.base;
    input.options.pack = input.pack;
    input.options.since = source.since ? &*source.since : nullptr;
    return sheets::drawKind(kind, input);
}

} // namespace gangway::app
