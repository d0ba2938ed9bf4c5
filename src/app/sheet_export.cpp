#include "app/sheet_export.hpp"

#include "export/export.hpp"
#include "export/tables.hpp"
#include "sheets/schedules.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <unistd.h>

namespace gangway::app {

namespace fs = std::filesystem;

void ExportProgress::tell(std::string words, std::size_t done, std::size_t of) {
    {
        const std::lock_guard lock(mutex_);
        words_ = std::move(words);
        done_ = done;
        of_ = std::max<std::size_t>(1, of);
    }
    if (changed_) changed_();
}

std::pair<std::string, float> ExportProgress::now() const {
    const std::lock_guard lock(mutex_);
    return {words_, static_cast<float>(done_) / static_cast<float>(of_)};
}

namespace {

/// A folder that is gone at the end with all that is still in it, and so is what had to be made for it.
class Staging {
public:
    explicit Staging(const fs::path& target) : target_(target) {
        std::error_code error;
        for (fs::path missing = fs::absolute(target, error); !missing.empty() && !fs::exists(missing, error);
             missing = missing.parent_path())
            made_.push_back(missing);
        folder_ = target / fmt::format(".gangway-part-{}", ::getpid());
        fs::create_directories(folder_, error);
        if (!fs::is_directory(folder_))
            problem_ = fmt::format("cannot write into '{}': {}", target.string(), error.message());
    }
    Staging(const Staging&) = delete;
    Staging& operator=(const Staging&) = delete;
    ~Staging() {
        std::error_code error;
        fs::remove_all(folder_, error);
        // Only what is empty goes: a folder that has files in place stays.
        for (const fs::path& folder : made_)
            fs::remove(folder, error);
    }
    const fs::path& folder() const { return folder_; }
    const std::string& problem() const { return problem_; }

    /// Moves the files to their places; a sentence, or empty.
    std::string put(std::vector<fs::path>& files) const {
        for (fs::path& file : files) {
            const fs::path place = target_ / file.filename();
            std::error_code error;
            fs::rename(file, place, error);
            if (error) return fmt::format("cannot write '{}': {}", place.string(), error.message());
            file = place;
        }
        return {};
    }

private:
    fs::path target_;
    fs::path folder_;
    std::vector<fs::path> made_; // deepest first
    std::string problem_;
};

using Written = std::expected<std::vector<fs::path>, std::string>;
struct SheetFormat {
    const char* ending;
    bool ExportFormats::* wanted;
    Written (*write)(const drawing::Drawing& one, const fs::path& folder, double dpi);
};
constexpr SheetFormat kSheetFormats[] = {
    {"svg", &ExportFormats::svg,
     [](const drawing::Drawing& one, const fs::path& folder, double) {
         return exporting::writeSvgs(one, folder);
     }},
    {"dxf", &ExportFormats::dxf,
     [](const drawing::Drawing& one, const fs::path& folder, double) {
         return exporting::writeDxfs(one, folder);
     }},
    {"png", &ExportFormats::png, [](const drawing::Drawing& one, const fs::path& folder, double dpi) {
         return exporting::writePngs(one, folder, dpi);
     }}};

constexpr std::string_view kSchedules = "schedule"; ///< the kind that has a workbook beside its sheets

struct Kind {
    const sheets::SheetKind* kind = nullptr;
    std::shared_ptr<const drawing::Drawing> drawing;
};

class Export {
public:
    Export(const ExportOrder& order, ExportProgress& progress, const std::stop_token& stop)
        : order_(order), progress_(progress), stop_(stop) {}

    Exported run() {
        const Staging staging(order_.folder);
        if (!staging.problem().empty()) return failed(staging.problem());
        if (!drawAll()) return failed({});
        count();
        if (!writeAll(staging.folder())) return failed({});
        if (done_.files.empty()) return failed("there is nothing to draw of what was chosen");
        if (const std::string problem = staging.put(done_.files); !problem.empty()) return failed(problem);
        return std::move(done_);
    }

private:
    Exported failed(const std::string& problem) {
        done_.cancelled = stop_.stop_requested();
        done_.files.clear();
        done_.sheets = 0;
        if (!problem.empty()) done_.problem = problem;
        if (done_.cancelled) done_.problem.clear();
        return std::move(done_);
    }
    bool fails(const std::string& problem) {
        done_.problem = problem;
        return false;
    }

    bool drawAll() {
        for (const std::string& word : order_.kinds)
            if (word != sheets::kCoverWord && !draw(word)) return false;
        // Last, for it has the others in its index; then to the front.
        const auto cover = std::ranges::find(order_.kinds, sheets::kCoverWord);
        if (cover == order_.kinds.end()) return true;
        const std::size_t others = kinds_.size();
        if (!draw(*cover)) return false;
        if (kinds_.size() > others) std::ranges::rotate(kinds_, kinds_.end() - 1);
        return true;
    }

    bool draw(const std::string& word) {
        if (stop_.stop_requested()) return false;
        const sheets::SheetKind* kind = sheets::findSheetKind(word);
        if (kind == nullptr) return fails(fmt::format("there is no kind of sheets called '{}'", word));
        progress_.tell(fmt::format("Drawing: {}", kind->name), 0, 1);
        const auto drawing = drawingOf(*kind);
        if (!drawing) return false;
        if (drawing->sheets.empty())
            done_.left_out.push_back(fmt::format("{}: {}", kind->name, kind->nothing));
        else
            kinds_.push_back({kind, drawing});
        return true;
    }

    /// nullptr: it could not be drawn, which was said.
    std::shared_ptr<const drawing::Drawing> drawingOf(const sheets::SheetKind& kind) {
        const bool cover = kind.word == sheets::kCoverWord;
        const auto known = order_.drawn.find(std::string(kind.word));
        if (!cover && known != order_.drawn.end()) return known->second;
        std::vector<drawing::Drawing> set;
        if (cover)
            for (const Kind& other : kinds_)
                set.push_back(*other.drawing);
        auto drawn = drawnFrom(*order_.source, kind, set.empty() ? nullptr : &set);
        if (!drawn) {
            fails(fmt::format("{}: {}", kind.name, drawn.error()));
            return nullptr;
        }
        return std::make_shared<drawing::Drawing>(std::move(*drawn));
    }

    void count() {
        std::size_t formats = order_.formats.pdf ? 1 : 0;
        for (const SheetFormat& format : kSheetFormats)
            formats += order_.formats.*format.wanted ? 1 : 0;
        for (const Kind& kind : kinds_)
            all_ += kind.drawing->sheets.size() * formats;
    }

    /// Says what comes next; false when it shall not be done.
    bool next(const std::string& what) {
        progress_.tell(fmt::format("Writing {}, {} of {}", what, written_ + 1, all_), written_, all_);
        ++written_;
        return !stop_.stop_requested();
    }

    /// The same documents as the command line writes.
    bool writeAll(const fs::path& folder) {
        std::vector<std::pair<const sheets::SheetKind*, drawing::Drawing>> drawn;
        for (const Kind& kind : kinds_)
            drawn.emplace_back(kind.kind, *kind.drawing);
        for (const sheets::Document& document : sheets::documentsOf(std::move(drawn))) {
            if (order_.formats.pdf && !writePdf(document, folder)) return false;
            for (const SheetFormat& format : kSheetFormats)
                if (order_.formats.*format.wanted && !writeEach(document.drawing, format, folder))
                    return false;
            done_.sheets += document.drawing.sheets.size();
        }
        const bool schedules =
            std::ranges::any_of(kinds_, [](const Kind& kind) { return kind.kind->word == kSchedules; });
        return !schedules || !order_.formats.xlsx || writeWorkbook(folder);
    }

    bool writePdf(const sheets::Document& document, const fs::path& folder) {
        const fs::path file = folder / fmt::format("{}-{}.pdf", order_.stem, document.word);
        const auto written = exporting::writePdf(document.drawing, file, [&](std::size_t drawn) {
            return next(
                fmt::format("{} of {}", document.drawing.sheets[drawn].number, file.filename().string()));
        });
        if (!written) return fails(inPlace(written.error(), folder));
        done_.files.push_back(file);
        return true;
    }

    bool writeEach(const drawing::Drawing& drawing, const SheetFormat& format, const fs::path& folder) {
        drawing::Drawing one = drawing;
        one.sheets.clear();
        for (const drawing::Sheet& sheet : drawing.sheets) {
            if (!next(fmt::format("{}.{}", sheet.number, format.ending))) return false;
            one.sheets.assign(1, sheet);
            const auto files = format.write(one, folder, order_.dpi);
            if (!files) return fails(inPlace(files.error(), folder));
            for (const fs::path& file : *files) {
                if (std::ranges::find(done_.files, file) != done_.files.end())
                    return fails(fmt::format("two sheets would be written to '{}'",
                                             (order_.folder / file.filename()).string()));
                done_.files.push_back(file);
            }
        }
        return true;
    }

    bool writeWorkbook(const fs::path& folder) {
        const SheetSource& source = *order_.source;
        if (!source.pack) return true; // no schedule is drawn without one
        const auto tables = sheets::schedules(source.plan, source.catalogue, *source.pack);
        const auto& project = source.plan.project;
        const exporting::TablesAbout about{
            project.name, project.number, project.designer, project.date, "", sheets::scheduleCaution()};
        const fs::path file = folder / fmt::format("{}-{}.xlsx", order_.stem, kSchedules);
        const auto written = exporting::writeXlsx(tables, about, file);
        if (!written) return fails(inPlace(written.error(), folder));
        done_.files.push_back(file);
        return true;
    }

    /// A sentence that names the staging folder names the folder that was asked for instead.
    std::string inPlace(std::string sentence, const fs::path& folder) const {
        const std::string staged = folder.string();
        if (const auto at = sentence.find(staged); at != std::string::npos)
            sentence.replace(at, staged.size(), order_.folder.string());
        return sentence;
    }

    const ExportOrder& order_;
    ExportProgress& progress_;
    const std::stop_token& stop_;
    std::vector<Kind> kinds_;
    std::size_t all_ = 0, written_ = 0;
    Exported done_;
};

} // namespace

Exported exportSheets(const ExportOrder& order, ExportProgress& progress, const std::stop_token& stop) {
    return Export(order, progress, stop).run();
}

} // namespace gangway::app
