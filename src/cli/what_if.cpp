// gangway what-if: what a change to the furniture or a door would break and mend, before it is decided.
#include "cli/commands.hpp"

#include "checks/accepted.hpp"
#include "checks/checks.hpp"
#include "checks/ripple.hpp"
#include "edit/edit.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/opening_edits.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <memory>

namespace gangway::cli {

namespace {
using Json = nlohmann::ordered_json;
using checks::Ripple;
constexpr int kNewFault = 1;

struct Arguments {
    std::string plan;
    std::string pack;
    std::string out;
    std::vector<std::string> move;
    std::vector<std::string> size;
    std::vector<std::string> turn;
    std::vector<std::string> rehang;
    bool json = false;
};

/// "bed=1800x2000x600" to "bed" and three numbers; nullopt when it is none.
struct Assigned {
    std::string id;
    std::vector<double> numbers;
};
std::optional<Assigned> assigned(const std::string& text, char between, std::size_t count) {
    const auto equals = text.find('=');
    if (equals == std::string::npos || equals == 0) return std::nullopt;
    Assigned result{text.substr(0, equals), {}};
    std::size_t at = equals + 1;
    while (at <= text.size()) {
        const std::size_t end = std::min(text.find(between, at), text.size());
        double number = 0;
        const auto read = std::from_chars(text.data() + at, text.data() + end, number);
        if (read.ec != std::errc{} || read.ptr != text.data() + end) return std::nullopt;
        result.numbers.push_back(number);
        at = end + 1;
    }
    return result.numbers.size() == count ? std::optional(result) : std::nullopt;
}

const plan::Furniture* pieceNamed(const plan::Plan& plan, const std::string& id) {
    if (const plan::Furniture* piece = plan::findFurniture(plan, id)) return piece;
    std::vector<std::string> ids;
    for (const plan::Furniture& piece : plan.furniture)
        ids.push_back(piece.id);
    const std::string nearest = plan::nearestWord(id, ids);
    fail(fmt::format("the plan has no piece of furniture '{}'{}", id,
                     nearest.empty() ? "" : fmt::format("; did you mean '{}'?", nearest)));
    return nullptr;
}

/// Runs a command, or says why it can't be done.
bool carryOut(edit::Document& document, const edit::Refusable& command) {
    if (!command) {
        fail(command.error());
        return false;
    }
    document.run(*command);
    return true;
}

template <class Change>
bool changePieces(edit::Document& document, const std::vector<std::string>& texts, char between,
                  std::size_t count, const std::string& form, const Change& change) {
    for (const std::string& text : texts) {
        const auto said = assigned(text, between, count);
        if (!said) {
            fail(fmt::format("'{}' is not of the form {}", text, form));
            return false;
        }
        const plan::Furniture* piece = pieceNamed(document.plan(), said->id);
        if (piece == nullptr || !carryOut(document, change(*piece, said->numbers))) return false;
    }
    return true;
}

bool change(edit::Document& document, const Arguments& arguments) {
    using Numbers = std::vector<double>;
    const auto move = [&](const plan::Furniture& piece, const Numbers& by) {
        return edit::moveFurniture(document.plan(), piece.id,
                                   {piece.at_mm + plan::Vec2{by[0], by[1]}, piece.turn_deg});
    };
    const auto resize = [&](const plan::Furniture& piece, const Numbers& size) {
        return edit::resizeFurniture(document.plan(), piece.id, {size[0], size[1], size[2]});
    };
    const auto turn = [&](const plan::Furniture& piece, const Numbers& by) {
        return edit::turnFurniture(document.plan(), piece.id, piece.turn_deg + by[0]);
    };
    if (!changePieces(document, arguments.move, ',', 2, "PIECE=EAST,NORTH in mm", move) ||
        !changePieces(document, arguments.size, 'x', 3, "PIECE=WIDTHxDEPTHxHEIGHT in mm", resize) ||
        !changePieces(document, arguments.turn, ',', 1, "PIECE=DEGREES", turn))
        return false;
    return std::ranges::all_of(arguments.rehang, [&](const std::string& door) {
        return carryOut(document, edit::swapHinge(document.plan(), door));
    });
}

const char* severityWord(plan::Severity severity) {
    switch (severity) {
    case plan::Severity::Fault:
        return "fault";
    case plan::Severity::Warn:
        return "warn";
    case plan::Severity::Hint:
        break;
    }
    return "hint";
}

/// Plates that followed what they are tied to.
std::vector<std::string> followed(const plan::Plan& before, const plan::Plan& after) {
    std::vector<std::string> tags;
    for (std::size_t i = 0; i < after.plates.size() && i < before.plates.size(); ++i) {
        const plan::Plate& plate = after.plates[i];
        if (!(plate.host == before.plates[i].host)) tags.push_back(plate.tag.empty() ? plate.id : plate.tag);
    }
    return tags;
}

void print(const std::vector<Ripple>& ripples, const std::vector<std::string>& moved, bool as_json) {
    if (as_json) {
        Json report = {
            {"gangwayWhatIf", 1}, {"lengths", "mm"}, {"followed", moved}, {"changes", Json::array()}};
        for (const Ripple& ripple : ripples)
            report["changes"].push_back({{"change", checks::word(ripple.change)},
                                         {"id", checks::findingId(ripple.finding)},
                                         {"rule", ripple.finding.rule},
                                         {"severity", severityWord(ripple.finding.severity)},
                                         {"message", ripple.finding.message}});
        fmt::print("{}\n", report.dump(2));
        return;
    }
    if (!moved.empty()) fmt::print("Goes along: {}\n", fmt::join(moved, ", "));
    if (ripples.empty()) fmt::print("Nothing newly fails, and nothing newly passes.\n");
    for (const Ripple& ripple : ripples)
        fmt::print("{:<12} {:<5} {}: {}\n", checks::word(ripple.change),
                   severityWord(ripple.finding.severity), ripple.finding.rule, ripple.finding.message);
}

int run(const Arguments& arguments) {
    auto plan = loadPlan(arguments.plan);
    if (!plan) return kBadInput;
    const auto catalogue = loadCatalogue(*plan);
    const auto pack = loadPack(*plan, arguments.pack, arguments.plan);
    if (!catalogue || !pack) return kBadInput;
    const std::filesystem::path base = std::filesystem::path(arguments.plan).parent_path();
    const auto check = [&](const plan::Plan& checked) {
        return checks::check(geometry::HouseIndex(checked), *catalogue, *pack, base);
    };
    edit::Document document(*plan);
    if (!change(document, arguments)) return kBadInput;
    const auto ripples = checks::compare(check(*plan), check(document.plan()));
    print(ripples, followed(*plan, document.plan()), arguments.json);
    if (!arguments.out.empty())
        if (const auto written = plan::writeFile(document.plan(), arguments.out); !written)
            return fail(written.error());
    const bool fault = std::ranges::any_of(ripples, [](const Ripple& ripple) {
        return ripple.change == Ripple::Change::NewlyFails &&
               ripple.finding.severity == plan::Severity::Fault;
    });
    return fault ? kNewFault : kDone;
}
} // namespace

Command addWhatIf(CLI::App& parser) {
    auto arguments = std::make_shared<Arguments>();
    CLI::App* app =
        parser.add_subcommand("what-if", "Say what a change to furniture or a door would break and mend");
    app->add_option("PLAN", arguments->plan, "Plan file (*.plan.json), which stays as it is")->required();
    app->add_option("--move", arguments->move, "PIECE=EAST,NORTH: by so many mm");
    app->add_option("--size", arguments->size, "PIECE=WIDTHxDEPTHxHEIGHT: to a size in mm");
    app->add_option("--turn", arguments->turn, "PIECE=DEGREES: counter-clockwise seen from above");
    app->add_option("--rehang", arguments->rehang, "DOOR: hung at its other side");
    app->add_option("-o,--output", arguments->out, "Write the changed plan to a file of its own");
    app->add_option("--pack", arguments->pack, "Country pack whose numbers count (default: the plan's)");
    app->add_flag("--json", arguments->json, "As JSON, lengths in mm");
    app->footer("Plates whose distances are kept from what moves go along, as in the window.\n"
                "Exit codes: 0 no new fault, 1 some new fault, 2 something can't be read or done.\n"
                "Examples:\n  gangway what-if house.plan.json --size bedroom-bed=1800x2100x600\n"
                "  gangway what-if house.plan.json --rehang bedroom-door --move kitchen-island=200,0");
    return {app, [arguments] { return run(*arguments); }};
}

} // namespace gangway::cli
