#include "app/sheet_preview.hpp"

#include "app/panels.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {

KindPages& kindAt(State& state) {
    return state.preview->kinds[state.preview->kind];
}

bool stale(const State& state, const KindPages& pages) {
    return pages.version != state.document.version();
}

void make(State& state, std::size_t index) {
    SheetPreview& preview = *state.preview;
    preview.making.start(
        [source = sheetSource(state), kind = preview.kinds[index].kind, index,
         generation = preview.generation, version = state.document.version()](const std::stop_token&) {
            MadeSheets made{index, generation, version, nullptr, {}};
            if (auto drawn = drawnFrom(*source, *kind))
                made.drawing = std::make_shared<drawing::Drawing>(std::move(*drawn));
            else
                made.problem = drawn.error();
            return made;
        },
        state.wake);
}

/// The kind one looks at first, then the others that are listed.
void makeNext(State& state) {
    SheetPreview& preview = *state.preview;
    if (preview.making.busy() || state.panel != Panel::Sheets) return;
    if (stale(state, kindAt(state))) {
        make(state, preview.kind);
        return;
    }
    for (std::size_t i = 0; i < preview.kinds.size(); ++i)
        if (preview.kinds[i].open && stale(state, preview.kinds[i])) {
            make(state, i);
            return;
        }
}

std::size_t pageCount(const KindPages& pages) {
    return pages.drawing ? pages.drawing->sheets.size() : 0;
}

/// On the page one looked at before its kind was drawn anew, or one wanted to come to.
void land(State& state) {
    SheetPreview& preview = *state.preview;
    const KindPages& pages = kindAt(state);
    const std::size_t count = pageCount(pages);
    const auto landing = std::exchange(preview.landing, SheetPreview::Landing::Stay);
    if (count == 0) {
        preview.sheet = 0;
        return;
    }
    if (landing != SheetPreview::Landing::Stay) {
        showPage(state, preview.kind, landing == SheetPreview::Landing::Last ? count - 1 : 0);
        return;
    }
    const auto& sheets = pages.drawing->sheets;
    const auto same = std::ranges::find(sheets, preview.stem, &drawing::Sheet::file_stem);
    showPage(state, preview.kind,
             same == sheets.end() ? std::min(preview.sheet, count - 1)
                                  : static_cast<std::size_t>(same - sheets.begin()));
}

void take(State& state, MadeSheets made) {
    SheetPreview& preview = *state.preview;
    if (made.generation != preview.generation) return;
    KindPages& pages = preview.kinds[made.kind];
    pages.version = made.version;
    pages.problem = std::move(made.problem);
    pages.drawing = std::move(made.drawing);
    pages.changed.clear();
    if (pages.drawing)
        for (const drawing::Sheet& sheet : pages.drawing->sheets)
            pages.changed.push_back(marksChange(sheet));
    if (made.kind == preview.kind) land(state);
}

void findObjects(State& state) {
    SheetPreview& preview = *state.preview;
    const PageOf page = pageOf(state);
    if (preview.objects.page == page) return;
    preview.objects = {};
    preview.objects.page = page;
    preview.pointed.clear();
    preview.chosen.clear();
    if (!page.drawing) return;
    std::set<std::string> plates, luminaires;
    for (const auto& plate : state.plan().plates)
        plates.insert(plate.id);
    for (const auto& lamp : state.plan().luminaires)
        luminaires.insert(lamp.id);
    PageObjects& objects = preview.objects;
    objects.in_order = objectsOn(
        page.get(), [&](const std::string& id) { return plates.contains(id) || luminaires.contains(id); });
    for (const std::string& id : objects.in_order)
        (plates.contains(id) ? objects.plates : objects.luminaires).insert(id);
    if (isA3(page.get())) objects.on_a4 = smallTexts(page.get(), kA3OnA4);
}

} // namespace

std::string shortName(const sheets::SheetKind& kind) {
    return std::string(kind.name.substr(0, kind.name.find_first_of(",:")));
}

std::shared_ptr<const SheetSource> sheetSource(const State& state) {
    auto source = std::make_shared<SheetSource>();
    source->plan = state.plan();
    source->catalogue = catalogue::withOwn(state.shipped, state.plan());
    // The plan's own, nothing in its place: what is printed must not go by another country's numbers unsaid.
    if (const auto* pack = state.packs.pack(state.plan().pack)) source->pack = *pack;
    source->base = state.document.file().parent_path();
    return source;
}

void openSheets(State& state) {
    SheetPreview& preview = *state.preview;
    if (preview.kinds.empty()) {
        for (const sheets::SheetKind& kind : sheets::sheetKinds())
            preview.kinds.push_back({&kind, preview.wanted.contains(std::string(kind.word)), 0, {}, {}, {}});
        const auto first = std::ranges::find(preview.kinds, true, &KindPages::open);
        if (first != preview.kinds.end())
            preview.kind = static_cast<std::size_t>(first - preview.kinds.begin());
        kindAt(state).open = true;
    }
    state.panel = Panel::Sheets;
    preview.show_row = true;
    state.frames_wanted = std::max(state.frames_wanted, 2);
}

void closeSheets(State& state) {
    if (state.panel == Panel::Sheets) state.panel = Panel::None;
}

void forgetSheets(State& state) {
    SheetPreview& preview = *state.preview;
    ++preview.generation;
    for (KindPages& pages : preview.kinds) {
        pages.version = 0;
        pages.drawing.reset();
        pages.problem.clear();
        pages.changed.clear();
    }
    preview.stem.clear();
    preview.sheet = 0;
    preview.folder.clear();
    preview.view = {};
}

void endSheets(State& state) {
    SheetPreview& preview = *state.preview;
    preview.making.end();
    preview.picturing.end();
    preview.writing.end();
    preview.printing.end();
}

void tendSheets(State& state) {
    SheetPreview& preview = *state.preview;
    if (auto made = preview.making.take()) take(state, std::move(*made));
    tendOutput(state);
    if (preview.kinds.empty() || state.panel != Panel::Sheets) return;
    makeNext(state);
    findObjects(state);
}

void showPage(State& state, std::size_t kind, std::size_t sheet) {
    SheetPreview& preview = *state.preview;
    preview.kind = kind;
    preview.sheet = sheet;
    preview.landing = SheetPreview::Landing::Stay;
    KindPages& pages = kindAt(state);
    pages.open = true;
    if (sheet < pageCount(pages)) preview.stem = pages.drawing->sheets[sheet].file_stem;
    preview.show_row = true;
    findObjects(state);
}

void showKind(State& state, std::size_t kind) {
    if (state.preview->kinds.empty() || state.panel != Panel::Sheets) openSheets(state);
    showPage(state, kind, 0);
    if (stale(state, kindAt(state))) state.preview->landing = SheetPreview::Landing::First;
}

void stepPage(State& state, Step step) {
    SheetPreview& preview = *state.preview;
    const std::size_t count = pageCount(kindAt(state));
    const bool back = step == Step::Before || step == Step::Last;
    if (step == Step::First || step == Step::Last) {
        if (count > 0) showPage(state, preview.kind, step == Step::First ? 0 : count - 1);
        return;
    }
    if (!back && preview.sheet + 1 < count) {
        showPage(state, preview.kind, preview.sheet + 1);
        return;
    }
    if (back && preview.sheet > 0) {
        showPage(state, preview.kind, preview.sheet - 1);
        return;
    }
    // Into the next kind; those known to have nothing are passed over.
    const auto past = [&](std::size_t at) {
        const KindPages& pages = preview.kinds[at];
        return !stale(state, pages) && pageCount(pages) == 0;
    };
    auto at = static_cast<std::ptrdiff_t>(preview.kind);
    const auto kinds = static_cast<std::ptrdiff_t>(preview.kinds.size());
    do
        at += back ? -1 : 1;
    while (at >= 0 && at < kinds && past(static_cast<std::size_t>(at)));
    if (at < 0 || at >= kinds) return;
    const auto kind = static_cast<std::size_t>(at);
    const std::size_t pages = pageCount(preview.kinds[kind]);
    showPage(state, kind, back && pages > 0 ? pages - 1 : 0);
    if (stale(state, preview.kinds[kind]))
        preview.landing = back ? SheetPreview::Landing::Last : SheetPreview::Landing::First;
}

PageOf pageOf(const State& state) {
    const SheetPreview& preview = *state.preview;
    if (preview.kinds.empty()) return {};
    const KindPages& pages = preview.kinds[preview.kind];
    if (preview.sheet >= pageCount(pages)) return {};
    return {pages.drawing, preview.sheet};
}

void goToObject(State& state, const std::string& id) {
    constexpr const char* kBack = "Ctrl+P: back to the sheet";
    if (plan::findPlate(state.plan(), id) != nullptr) {
        closeSheets(state);
        choosePlate(state, id, false);
        showPlate(state, id);
        say(state, kBack);
        return;
    }
    const auto& lamps = state.plan().luminaires;
    const auto lamp = std::ranges::find(lamps, id, &plan::Luminaire::id);
    if (lamp == lamps.end()) return;
    const std::string room = lamp->room;
    closeSheets(state);
    choosePlate(state, {}, false);
    enterRoom(state, room);
    chooseThing(state, {sheets::PlanThing::Luminaire, id, {}});
    say(state, kBack);
}

} // namespace gangway::app
