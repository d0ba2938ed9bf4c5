// Work beside the window, on real threads.
#include "app/background.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>
#include <string>

using namespace gangway::app;

namespace {
template <class Result>
Result waited(Background<Result>& background) {
    for (int i = 0; i < 2000; ++i) {
        if (auto result = background.take()) return *result;
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    FAIL("the work never ended");
    return {};
}
} // namespace

TEST_CASE("work on another thread gives its result once, and then there is room for the next") {
    Background<std::string> background;
    CHECK_FALSE(background.busy());
    std::atomic<int> ended = 0;
    const auto here = std::this_thread::get_id();
    background.start(
        [here](const std::stop_token&) {
            return std::string(std::this_thread::get_id() == here ? "here" : "elsewhere");
        },
        [&ended] { ++ended; });
    CHECK(background.busy());
    CHECK(waited(background) == "elsewhere");
    CHECK(ended == 1);
    CHECK_FALSE(background.busy());
    CHECK_FALSE(background.take().has_value());
    background.start([](const std::stop_token&) { return std::string("again"); }, {});
    CHECK(waited(background) == "again");
}

TEST_CASE("work that is asked to stop ends early and still gives its result") {
    Background<int> background;
    background.start(
        [](const std::stop_token& stop) {
            int rounds = 0;
            while (!stop.stop_requested() && rounds < 100000) {
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
                ++rounds;
            }
            return rounds;
        },
        {});
    background.askToStop();
    CHECK(waited(background) < 100000);
}

TEST_CASE("ending waits for the work and drops its result") {
    std::atomic<bool> finished = false;
    Background<int> background;
    background.start(
        [&finished](const std::stop_token& stop) {
            while (!stop.stop_requested())
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
            finished = true;
            return 1;
        },
        {});
    background.end();
    CHECK(finished);
    CHECK_FALSE(background.busy());
    CHECK_FALSE(background.take().has_value());
}
