#include "plan/io.hpp"
#include "plan/sample_plans.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <csignal>
#include <limits>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

using namespace gangway::plan;
using namespace gangway::plan::testing;
namespace fs = std::filesystem;

namespace {

std::size_t filesIn(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

/// While it lives, no file may grow past a size: the closest to a full disk that a test can have.
class SmallDisk {
public:
    explicit SmallDisk(rlim_t bytes) {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &before_);
        rlimit limit = before_;
        limit.rlim_cur = bytes;
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~SmallDisk() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, SIG_DFL);
    }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;

private:
    rlimit before_{};
};

} // namespace

TEST_CASE("a plan is written whole, with nothing left beside it") {
    const fs::path folder = freshFolder("whole");
    const Plan plan = samples::house(2);
    REQUIRE(writeFile(plan, folder / "house.plan.json"));
    CHECK(slurp(folder / "house.plan.json") == write(plan));
    CHECK(filesIn(folder) == 1);
}

TEST_CASE("when writing fails half way the old file is untouched and nothing is left beside it") {
    const fs::path folder = freshFolder("full");
    spill(folder / "house.plan.json", "the old one");
    std::expected<void, std::string> result;
    {
        const SmallDisk disk(4096);
        result = writeFile(samples::house(20), folder / "house.plan.json");
    }
    REQUIRE_FALSE(result);
    CHECK(result.error() ==
          "'" + (folder / "house.plan.json").string() +
              "' cannot be written: it would be larger than files may be there; choose another place");
    CHECK(slurp(folder / "house.plan.json") == "the old one");
    CHECK(filesIn(folder) == 1);
}

TEST_CASE("a device is not written to") {
    const auto result = writeBytesAtomically("text", "/dev/full");
    REQUIRE_FALSE(result);
    CHECK(result.error() == "'/dev/full' is not an ordinary file; choose another name");
}

TEST_CASE("the rights of the old file stay") {
    const fs::path file = freshFolder("rights") / "house.plan.json";
    spill(file, "old");
    REQUIRE(chmod(file.c_str(), 0640) == 0);
    REQUIRE(writeBytesAtomically("new", file));
    struct stat about{};
    REQUIRE(stat(file.c_str(), &about) == 0);
    CHECK((about.st_mode & 0777) == 0640);
    CHECK(slurp(file) == "new");
}

TEST_CASE("a new file has the rights that other new files have") {
    const fs::path folder = freshFolder("new-rights");
    const mode_t old = umask(027);
    REQUIRE(writeBytesAtomically("new", folder / "a"));
    umask(old);
    struct stat about{};
    REQUIRE(stat((folder / "a").c_str(), &about) == 0);
    CHECK((about.st_mode & 0777) == 0640);
}

TEST_CASE("a symbolic link stays a link and the file behind it changes") {
    const fs::path folder = freshFolder("link");
    fs::create_directories(folder / "real");
    spill(folder / "real" / "house.plan.json", "old");
    fs::create_symlink("real/house.plan.json", folder / "link.plan.json");
    fs::create_symlink("link.plan.json", folder / "link-to-link.plan.json");
    REQUIRE(writeBytesAtomically("new", folder / "link-to-link.plan.json"));
    CHECK(fs::is_symlink(folder / "link.plan.json"));
    CHECK(fs::is_symlink(folder / "link-to-link.plan.json"));
    CHECK(slurp(folder / "real" / "house.plan.json") == "new");
}

TEST_CASE("places where nothing can be written are named") {
    const fs::path folder = freshFolder("places");
    spill(folder / "file", "x");
    const auto message = [](const fs::path& file) {
        const auto result = writeBytesAtomically("text", file);
        return result ? std::string("written") : result.error();
    };
    CHECK(message(folder / "none" / "a") == "'" + (folder / "none" / "a").string() +
                                                "' cannot be written: there is no folder '" +
                                                (folder / "none").string() + "'; make it or choose another");
    CHECK(message(folder / "file" / "a") == "'" + (folder / "file" / "a").string() +
                                                "' cannot be written: '" + (folder / "file").string() +
                                                "' is no folder; choose another place");
    CHECK(message(folder) == "'" + folder.string() + "' is a folder; give a file name in it");
    CHECK(message("") == "'' is no file name; add one");
}

TEST_CASE("a write-protected file is not stepped over") {
    if (geteuid() == 0) return; // root may write everything
    const fs::path file = freshFolder("protected") / "a";
    spill(file, "old");
    REQUIRE(chmod(file.c_str(), 0444) == 0);
    const auto result = writeBytesAtomically("new", file);
    REQUIRE_FALSE(result);
    CHECK(result.error() ==
          "'" + file.string() + "' is write-protected; save under another name or take the protection off");
    CHECK(slurp(file) == "old");
}

TEST_CASE("a plan with a number that JSON cannot hold is not written over a good one") {
    const fs::path file = freshFolder("nan") / "house.plan.json";
    spill(file, "old");
    Plan plan = samples::house(1);
    plan.plates[3].host.u_mm = std::numeric_limits<double>::quiet_NaN();
    const auto result = writeFile(plan, file);
    REQUIRE_FALSE(result);
    CHECK(result.error() ==
          "'" + file.string() +
              "' was not written: /plates/3/setOut is no finite number; undo the last change");
    CHECK(slurp(file) == "old");
}
