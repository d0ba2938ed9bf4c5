#include "plan/io.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <sys/stat.h>

using namespace gangway::plan;
using namespace gangway::plan::testing;

namespace {
std::string firstMessage(const std::filesystem::path& file) {
    const auto result = readFile(file);
    REQUIRE_FALSE(result);
    REQUIRE_FALSE(result.error().empty());
    CHECK(result.error().front().line == 0);
    return result.error().front().message;
}
} // namespace

TEST_CASE("a missing file is named with what to do") {
    const auto file = freshFolder("missing") / "none.plan.json";
    CHECK(firstMessage(file) == "there is no file '" + file.string() + "'; check the name and the folder");
}

TEST_CASE("a folder is no plan") {
    const auto folder = freshFolder("folder");
    CHECK(firstMessage(folder) ==
          "'" + folder.string() + "' is a folder; give a plan file in it, which ends in .plan.json");
}

TEST_CASE("a pipe is refused and not waited for") {
    const auto pipe = freshFolder("pipe") / "pipe.plan.json";
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    CHECK(firstMessage(pipe) == "'" + pipe.string() + "' is not an ordinary file; give a plan file");
    CHECK(firstMessage("/dev/zero") == "'/dev/zero' is not an ordinary file; give a plan file");
}

TEST_CASE("a gigabyte of zeros is refused without reading it") {
    const auto file = freshFolder("zeros") / "zeros.plan.json";
    spill(file, "");
    std::filesystem::resize_file(file, std::uintmax_t{1} << 30U); // sparse: takes no room on the disk
    const auto start = std::chrono::steady_clock::now();
    CHECK(firstMessage(file) == "the file is 1024 MiB large; at most 256 MiB are read, so divide the plan");
    // Reading a gigabyte takes longer than this on any machine; looking at its size takes microseconds.
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::milliseconds(100));
    std::filesystem::remove(file);
}

TEST_CASE("a file of zeros below the size limit is called no text") {
    CHECK(read(std::string(1000, '\0')).error().front().message ==
          "this is not a text file, so it is no plan; choose a file that ends in .plan.json");
}

TEST_CASE("a plan cut off anywhere is refused, never crashes, and says that it was cut off") {
    const std::string whole = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    REQUIRE(whole.size() > 3000);
    const std::size_t last_bracket = whole.rfind('}');
    for (std::size_t length = 1; length <= last_bracket; ++length) {
        const auto result = read(std::string_view(whole).substr(0, length));
        INFO("cut after " << length << " bytes");
        REQUIRE_FALSE(result);
        REQUIRE(result.error().size() == 1);
        CHECK(result.error().front().message.find("cut off") != std::string::npos);
    }
}

TEST_CASE("a UTF-8 byte order mark is stepped over") {
    const std::string whole = slurp(fixtures() / "fixtures" / "cottage.plan.json");
    const auto plain = read(whole);
    const auto marked = read("\xEF\xBB\xBF" + whole);
    REQUIRE(plain);
    REQUIRE(marked);
    CHECK(write(marked->plan) == write(plain->plan));
}

TEST_CASE("after a thousand problems the rest is counted") {
    std::string text = R"({"gangway": 1, "layers": [)";
    for (int i = 0; i < 1500; ++i)
        text += i == 0 ? "7" : ", 7";
    text += "]}";
    const auto result = read(text);
    REQUIRE_FALSE(result);
    CHECK(result.error().size() == 1001);
    CHECK(result.error().back().message == "and 500 more problems; mend these first");
}

TEST_CASE("a list of more than 100000 items is refused") {
    std::string text = R"({"gangway": 1, "agreements": [0)";
    for (int i = 0; i < 100'000; ++i)
        text += ",0";
    text += "]}";
    const auto result = read(text);
    REQUIRE_FALSE(result);
    REQUIRE(result.error().size() == 1);
    CHECK(result.error().front().message ==
          "'agreements' has 100001 items; at most 100000 are read, so divide the plan");
}
