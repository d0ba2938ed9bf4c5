// gangway review: the agreement list, and answers given without the window.
#include "cli/commands.hpp"

#include "edit/edit.hpp"
#include "export/export.hpp"
#include "review/review.hpp"
#include "sheets/sheets.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;

struct Arguments {
    std::string plan;
    bool json = false;
    std::string agree;
    std::string query;
    std::string by;
    std::string note;
    std::string folder;
};

std::string nowUtc() {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(std::chrono::system_clock::to_time_t(now)));
}

const plan::Plate* plateNamed(const plan::Plan& plan, const std::string& word) {
    if (const auto* plate = plan::findPlateByName(plan, word)) return plate;
    std::vector<std::string> known;
    for (const auto& plate : plan.plates) {
        known.push_back(plate.id);
        if (!plate.tag.empty()) known.push_back(plate.tag);
    }
    const std::string nearest = plan::nearestWord(word, known);
    fail("no plate '" + word + "'" + (nearest.empty() ? "" : "; did you mean '" + nearest + "'?"));
    return nullptr;
}

int giveAnswer(plan::Plan plan, const Arguments& arguments) {
    const bool agrees = !arguments.agree.empty();
    if (agrees && !arguments.query.empty()) return fail("give --agree or --query, not both at once");
    if (arguments.by.empty()) return fail("an answer needs a name: give --by NAME");
    if (!agrees && arguments.note.empty()) return fail("a query needs words: give --note TEXT");
    const plan::Plate* plate = plateNamed(plan, agrees ? arguments.agree : arguments.query);
    if (plate == nullptr) return kBadInput;
    const auto command = agrees ? edit::agreePlate(plan, plate->id, arguments.by, nowUtc())
                                : edit::queryPlate(plan, plate->id, arguments.by, nowUtc(), arguments.note);
    const std::string what = command.name;
    edit::Document document(std::move(plan), arguments.plan);
    document.run(command);
    if (const auto saved = document.save(); !saved) return fail(saved.error());
    fmt::print("{}, {}\n", what, arguments.by);
    return kDone;
}

using Row = std::array<std::string, 5>;

/// Columns as wide as their longest word, so that nothing is cut and everything lines up.
void printRows(const std::vector<Row>& rows) {
    std::array<std::size_t, 5> widths{};
    for (const Row& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], fmt::formatted_size("{}", row[i]));
    for (const Row& row : rows) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i)
            line += fmt::format("{:<{}}  ", row[i], widths[i]);
        line.erase(line.find_last_not_of(' ') + 1);
        fmt::print("{}\n", line);
    }
}

int list(const plan::Plan& plan, bool as_json) {
    const review::Count count = review::count(plan);
    Json out = {{"open", count.open},
                {"agreed", count.agreed},
                {"queried", count.queried},
                {"reopened", count.reopened},
                {"plates", Json::array()}};
    std::vector<Row> rows;
    for (const auto& plate : plan.plates) {
        const auto* last = plan::latestAgreement(plan, plate.id);
        const std::string state(review::word(review::stateOf(plan, plate)));
        const plan::Room* room = plan::findRoom(plan, plate.room);
        if (as_json) {
            Json entry = {{"id", plate.id},     {"tag", plate.tag},
                          {"room", plate.room}, {"for", plate.purpose},
                          {"state", state},     {"fingerprint", review::fingerprint(plan, plate)}};
            if (last != nullptr) entry.update({{"by", last->by}, {"at", last->at}, {"note", last->note}});
            out["plates"].push_back(entry);
        } else {
            rows.push_back({plate.tag.empty() ? plate.id : plate.tag,
                            room != nullptr ? room->name : plate.room, state, plate.purpose,
                            last != nullptr
                                ? last->by + " " + last->at + (last->note.empty() ? "" : ": " + last->note)
                                : ""});
        }
    }
    if (as_json) {
        fmt::print("{}\n", out.dump(2));
        return kDone;
    }
    printRows(rows);
    fmt::print("\n{} plates: {} open, {} agreed, {} queried, {} reopened\n", plan.plates.size(), count.open,
               count.agreed, count.queried, count.reopened);
    return kDone;
}

/// The sign-off booklet as <stem>-agreements.pdf.
int writeBooklet(const plan::Plan& plan, const Arguments& arguments) {
    const auto catalogue = loadCatalogue(plan);
    if (!catalogue) return kBadInput;
    if (plan.plates.empty()) return fail("the plan has no plates, so there is nothing to sign");
    sheets::Options options;
    options.base = std::filesystem::path(arguments.plan).parent_path();
    const auto booklet = sheets::agreementBooklet(plan, *catalogue, options);
    std::error_code error;
    std::filesystem::create_directories(arguments.folder, error);
    if (error) return fail("cannot make the folder " + arguments.folder + ": " + error.message());
    const auto stem = std::filesystem::path(arguments.plan).filename().stem().stem().string();
    const auto file = std::filesystem::path(arguments.folder) / (stem + "-agreements.pdf");
    if (const auto written = exporting::writePdf(booklet, file); !written) return fail(written.error());
    fmt::print("{}\n", file.string());
    return kDone;
}

int run(const Arguments& arguments) {
    const bool answers = !arguments.agree.empty() || !arguments.query.empty();
    if (answers && !arguments.folder.empty())
        return fail("an answer and the booklet are two steps: give -o without --agree or --query");
    auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    if (!arguments.folder.empty()) return writeBooklet(*plan, arguments);
    if (!arguments.agree.empty() || !arguments.query.empty()) return giveAnswer(std::move(*plan), arguments);
    return list(*plan, arguments.json);
}
} // namespace

Command addReview(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app =
        parser.add_subcommand("review", "List what the homeowner agreed or queried, or record an answer");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json)")->required();
    app->add_flag("--json", arguments->json, "The list as JSON");
    app->add_option("--agree", arguments->agree, "Agree this plate (id or tag), saved into the plan");
    app->add_option("--query", arguments->query, "Query this plate (id or tag), saved into the plan");
    app->add_option("--by", arguments->by, "Who answers");
    app->add_option("--note", arguments->note, "What to talk about");
    app->add_option("-o,--output", arguments->folder,
                    "Write the sign-off booklet (PDF) into this folder; made when it is not there");
    app->footer(
        "Exit codes: 0 done, 2 the plan or an option can't be used (nothing is written).\n"
        "Examples:\n  gangway review house.plan.json\n"
        "  gangway review house.plan.json -o out\n"
        "  gangway review house.plan.json --query K-04 --by \"R. Fern\" --note \"too near the sink?\"");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
