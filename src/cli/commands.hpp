// The subcommands of `gangway`, one file each. A command adds itself to the parser and is run when named;
// it prints results on standard output, messages on standard error, and returns the exit code.
#pragma once

#include "catalogue/catalogue.hpp"
#include "catalogue/pack.hpp"
#include "plan/io.hpp"
#include "plan/plan.hpp"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gangway::cli {

inline constexpr int kDone = 0;
inline constexpr int kBadInput = 2;

/// A subcommand as the parser knows it and what to do when it was named.
struct Command {
    CLI::App* app = nullptr;
    std::function<int()> run;
};

Command addOpen(CLI::App& parser);
Command addSheets(CLI::App& parser);
Command addShot(CLI::App& parser);
Command addInspect(CLI::App& parser);
Command addReview(CLI::App& parser);
Command addIssue(CLI::App& parser);
Command addCheck(CLI::App& parser);
Command addSchedule(CLI::App& parser);
Command addDevices(CLI::App& parser);
Command addPack(CLI::App& parser);
Command addFree(CLI::App& parser);
Command addWhatIf(CLI::App& parser);

/// A plan file read for a command: its problems go to standard error one a line; nullopt when it can't be
/// read.
std::optional<plan::Plan> loadPlan(const std::filesystem::path& file);
/// The catalogue of assets/ with the plan's own formats; says on standard error what is wrong with it.
std::optional<catalogue::Catalogue> loadCatalogue(const plan::Plan& plan);
/// The shipped country packs, the user's own and those beside a plan file (empty: no plan); what is wrong with
/// the packs' files goes to standard error.
std::optional<catalogue::CountryPacks> loadPacks(const std::filesystem::path& plan_file);
/// The country pack of this id (empty: the plan's); says on standard error which there are when it is none of
/// them.
std::optional<catalogue::CountryPack> loadPack(const plan::Plan& plan, const std::string& named,
                                               const std::filesystem::path& plan_file);
/// The pack of this id; says on standard error which there are, and where one's own are looked for, when it is
/// none of them.
const catalogue::CountryPack* packNamed(const catalogue::CountryPacks& packs, const std::string& id,
                                        const std::filesystem::path& plan_file);
/// Prints "gangway: MESSAGE" on standard error and returns kBadInput.
int fail(const std::string& message);
/// "no KIND 'word'; did you mean 'near'? The plan has: a, b, c".
std::string noSuch(const std::string& kind, const std::string& word, const std::vector<std::string>& known);
/// Finds a room by id, letter or name; says the nearest when there is none. nullptr: said so.
const plan::Room* roomNamed(const plan::Plan& plan, const std::string& word);
/// "1280x720" to two numbers from 16 to 16384.
std::optional<std::pair<int, int>> parseSize(const std::string& text);

} // namespace gangway::cli
