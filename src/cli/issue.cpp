// gangway issue: freezes the plan into its next issue and says what changed since the last.
#include "cli/commands.hpp"

#include "edit/issue_edits.hpp"
#include "review/changes.hpp"
#include "sheets/sheet_prints.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

namespace gangway::cli {

namespace {
struct Arguments {
    std::string plan;
    std::string date;
    std::string by;
    std::string note;
    std::string face;   ///< empty: as in the last issue, else finished
    std::string level;  ///< empty: as in the last issue, else ffl
    std::string output; ///< empty: the plan itself
};

/// The datum that the set is drawn from goes into its particulars; without a word for it, it stays as it was
/// in the last issue. False, with a sentence, for an unknown word.
bool takeDatum(const Arguments& arguments, const plan::Plan& plan, review::Particulars& particulars) {
    using Issue = plan::Issue;
    if (!plan.issues.empty()) {
        particulars.level = plan.issues.back().level;
        particulars.face = plan.issues.back().face;
    }
    if (arguments.face == "finished")
        particulars.face = Issue::Face::Finished;
    else if (arguments.face == "structural")
        particulars.face = Issue::Face::Structural;
    else if (!arguments.face.empty())
        return fail("--face " + arguments.face + " is not known; give finished or structural"), false;
    if (arguments.level == "ffl")
        particulars.level = Issue::Level::Ffl;
    else if (arguments.level == "sfl")
        particulars.level = Issue::Level::Slab;
    else if (arguments.level == "site")
        particulars.level = Issue::Level::Site;
    else if (!arguments.level.empty())
        return fail("--datum " + arguments.level + " is not known; give ffl, sfl or site"), false;
    return true;
}

/// Of the sheets, those that read as they did in the issue before.
std::size_t unchangedSheets(const plan::Plan& plan) {
    return static_cast<std::size_t>(
        std::ranges::count_if(plan.issues.back().sheets, [&](const plan::IssuedSheet& sheet) {
            return review::sheetRevision(plan, sheet.number, sheet.print) != plan.issues.back().letter;
        }));
}

void tell(const plan::Plan& plan) {
    const plan::Issue& issue = plan.issues.back();
    fmt::print("issue {} of {}, by {}{}{}\n", issue.letter, issue.date, issue.by,
               issue.note.empty() ? "" : ": ", issue.note);
    fmt::print("fingerprint {}\n", review::fingerprint(issue));
    if (plan.issues.size() == 1) {
        fmt::print("{} sheets; the first issue\n", issue.sheets.size());
        return;
    }
    const plan::Issue& last = plan.issues[plan.issues.size() - 2];
    fmt::print("{} sheets, {} unchanged since {}\n", issue.sheets.size(), unchangedSheets(plan), last.letter);
    const auto changes = review::changesInWords(review::stateAt(plan, last), review::stateAt(plan, issue));
    for (const std::string& words : changes)
        fmt::print("changed: {}\n", words);
    if (changes.empty()) fmt::print("no box, lamp or floor has changed since {}\n", last.letter);
}

int run(const Arguments& arguments) {
    auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    review::Particulars particulars;
    particulars.date = arguments.date;
    particulars.by = arguments.by;
    particulars.note = arguments.note;
    if (!takeDatum(arguments, *plan, particulars)) return kBadInput;
    // What can be refused without drawing the set is refused before it is drawn.
    if (const auto may = edit::issueSet(*plan, particulars); !may) return fail(may.error());
    const auto catalogue = loadCatalogue(*plan);
    const auto pack = catalogue ? loadPack(*plan, {}, arguments.plan) : std::nullopt;
    if (!pack) return kBadInput;
    sheets::SetInput input;
    input.plan = &*plan;
    input.catalogue = &*catalogue;
    input.pack = &*pack;
    input.options.base = std::filesystem::path(arguments.plan).parent_path();
    plan::Issue counted;
    counted.level = particulars.level;
    counted.face = particulars.face;
    input.options.datum = sheets::datumOf(counted);
    auto prints = sheets::setPrints(input);
    if (!prints) return fail(prints.error());
    particulars.sheets = std::move(*prints);
    const auto command = edit::issueSet(*plan, particulars);
    if (!command) return fail(command.error());
    edit::Document document(std::move(*plan), arguments.plan);
    document.run(*command);
    if (const auto saved = document.save(arguments.output); !saved) return fail(saved.error());
    tell(document.plan());
    return kDone;
}
} // namespace

Command addIssue(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app =
        parser.add_subcommand("issue", "Freeze the plan as the next issue of its set: letter, date, "
                                       "what every box was, a print of every sheet");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_option("--date", arguments->date, "Date of issue, YYYY-MM-DD")->required();
    app->add_option("--by", arguments->by, "Who issues it")->required();
    app->add_option("--note", arguments->note, "What it is for, such as \"for first fix\"");
    app->add_option(
        "--face", arguments->face,
        "Where distances along walls of the set start: finished, or structural (the bare face); left "
        "out: as in the last issue, else finished");
    app->add_option(
           "--datum", arguments->level,
           "Where heights of the set start: ffl (finished floor), sfl (the slab) or site (site line)")
        ->capture_default_str();
    app->add_option("-o,--output", arguments->output,
                    "Plan file to write instead of PLAN, which then stays as it is");
    app->footer(
        "Refused while the floor build-up of a room with boxes is not stated, or when nothing has changed.\n"
        "Prints the letter, the fingerprint that stands on the cover, and what changed since the last "
        "issue.\n"
        "Exit codes: 0 issued and saved, 2 the plan or an option can't be used (nothing is written).\n"
        "Examples:\n  gangway issue house.plan.json --date 2026-05-02 --by \"R. Fern\" --note \"for first "
        "fix\"\n"
        "  gangway issue house.plan.json --date 2026-05-02 --by \"R. Fern\" -o house-B.plan.json");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
