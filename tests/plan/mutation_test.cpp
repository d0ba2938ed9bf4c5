// A small fuzz run with a fixed seed: whatever is done to the bytes of a plan, reading it answers.
#include "plan/io.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gangway::plan;
using namespace gangway::plan::testing;

namespace {

std::string mutated(const std::string& whole, std::mt19937& dice) {
    constexpr std::string_view kTelling = "{}[]\",:\\0-9.eEnt \n\xC3\xFF";
    std::string text = whole;
    const std::size_t changes = 1 + dice() % 4;
    for (std::size_t i = 0; i < changes; ++i) {
        const std::size_t at = dice() % text.size();
        const std::size_t length = std::min<std::size_t>(1 + dice() % 30, text.size() - at);
        switch (dice() % 5) {
        case 0:
            text[at] = static_cast<char>(dice() % 256);
            break;
        case 1:
            text[at] = kTelling[dice() % kTelling.size()];
            break;
        case 2:
            text.erase(at, length);
            break;
        case 3:
            text.insert(at, text.substr(dice() % text.size(), length));
            break;
        default:
            text.insert(at, 1, kTelling[dice() % kTelling.size()]);
        }
        if (text.empty()) text = " ";
    }
    return text;
}

} // namespace

TEST_CASE("mutated plans are read or refused with a place, and what is read can be written and read again") {
    const std::string whole = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    REQUIRE_FALSE(whole.empty());
    std::mt19937 dice(2026);
    int accepted = 0;
    constexpr int kRuns = 4000;
    for (int run = 0; run < kRuns; ++run) {
        const std::string text = mutated(whole, dice);
        const auto result = read(text);
        if (result) {
            ++accepted;
            const std::string first = write(result->plan);
            const auto again = read(first);
            INFO(text);
            REQUIRE(again);
            REQUIRE(write(again->plan) == first);
        } else {
            REQUIRE(hasErrors(result.error()));
            for (const Diagnostic& d : result.error())
                REQUIRE_FALSE(d.message.empty());
        }
    }
    CHECK(accepted > kRuns / 100); // changes inside texts and numbers leave a plan
    CHECK(accepted < kRuns);
}
