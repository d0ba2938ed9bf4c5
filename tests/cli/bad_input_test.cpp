#include "cli/program.hpp"

#include <catch2/catch.hpp>

#include <vector>

using namespace gangway::testing;
namespace fs = std::filesystem;

namespace {
struct Bad {
    std::string name;
    fs::path file;
    std::string says;
};

/// One file for each way in which a plan file can be bad (the list of the job's bad input).
std::vector<Bad> badFiles(const fs::path& folder) {
    const auto write = [&folder](const std::string& name, const std::string& text) {
        std::ofstream(folder / name, std::ios::binary) << text;
        return folder / name;
    };
    const std::string good = slurp(kOneRoom);
    const fs::path zeros = write("zeros.plan.json", "");
    fs::resize_file(zeros, 1'000'000'000); // sparse: takes no disk
    return {{"missing", folder / "nowhere.plan.json", "no"},
            {"a directory", folder, "folder"},
            {"empty", write("empty.plan.json", ""), "empty"},
            {"truncated", write("cut.plan.json", good.substr(0, good.size() / 2)), ":"},
            {"binary",
             write("binary.plan.json", std::string("\x7f"
                                                   "ELF\0\1\2\3\xff\xfe",
                                                   10)),
             "text"},
            {"1 GB of zeros", zeros, ""},
            {"valid JSON of the wrong shape", write("shape.plan.json", "[1, 2, 3]\n"), "1:1"},
            {"a newer format", write("newer.plan.json", "{\"gangway\": 99}\n"), "99"}};
}
} // namespace

TEST_CASE("every command answers a bad plan file with a message, exit 2, and writes nothing") {
    const fs::path folder = freshFolder("cli-bad");
    const fs::path out = folder / "out";
    const std::vector<std::string> commands = {"sheets {} -o '" + out.string() + "'",
                                               "shot {} -o '" + (out / "a.png").string() + "'",
                                               "inspect {}",
                                               "review {}",
                                               "review {} --agree A-01 --by Someone",
                                               "open {}"};
    for (const auto& bad : badFiles(folder)) {
        for (const auto& command : commands) {
            std::string line = command;
            line.replace(line.find("{}"), 2, "'" + bad.file.string() + "'");
            INFO(bad.name << ": " << line);
            const Ran ran = call(line);
            CHECK(ran.code == 2);
            CHECK(ran.out.empty());
            CHECK(ran.err.size() > 20);
            CHECK(has(ran.err, bad.says));
            CHECK_FALSE(fs::exists(out));
        }
    }
}

TEST_CASE("a plan with a missing glTF file is answered by its name, and no picture is written") {
    const fs::path folder = freshFolder("cli-gltf");
    std::string text = slurp(kOneRoom);
    const std::string room = "\"room\": \"";
    const auto at = text.find(room) + room.size();
    const std::string room_id = text.substr(at, text.find('"', at) - at);
    const auto list = text.find("\"furniture\": [");
    REQUIRE(list != std::string::npos);
    text.insert(list + 14, "\n{\"id\": \"vase\", \"kind\": \"gltf\", \"room\": \"" + room_id +
                               "\", \"at\": [900, 900], \"size\": [200, 200, 300], \"file\": \"vase.glb\"},");
    std::ofstream(folder / "vase.plan.json") << text;
    const Ran ran =
        call("shot '" + (folder / "vase.plan.json").string() + "' -o '" + (folder / "a.png").string() + "'");
    CHECK(ran.code == 2);
    CHECK(has(ran.err, "vase.glb"));
    CHECK_FALSE(fs::exists(folder / "a.png"));
}
