// The system's viewer. A program of the name xdg-open on a path of the test's own stands where the system's
// does; exit codes by xdg-open(1) of xdg-utils.
#include "app/viewer.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <thread>

using namespace gangway::app;
using namespace gangway::testing;
namespace fs = std::filesystem;

namespace {
/// Only this folder is looked for programs in while it lives.
class OnlyPath {
public:
    explicit OnlyPath(const fs::path& folder) : before_(std::getenv("PATH")) {
        ::setenv("PATH", folder.c_str(), 1);
    }
    OnlyPath(const OnlyPath&) = delete;
    OnlyPath& operator=(const OnlyPath&) = delete;
    ~OnlyPath() { ::setenv("PATH", before_.c_str(), 1); }

private:
    std::string before_;
};

fs::path withViewer(const std::string& name, const std::string& script) {
    const fs::path folder = freshFolder(name);
    std::ofstream(folder / "xdg-open") << "#!/bin/sh\n" << script << "\n";
    fs::permissions(folder / "xdg-open", fs::perms::owner_all);
    return folder;
}
} // namespace

TEST_CASE("where there is no xdg-open, the sentence says so") {
    const OnlyPath none(freshFolder("viewer-none"));
    const auto opened = openInViewer("/tmp/a.pdf");
    REQUIRE_FALSE(opened.has_value());
    CHECK(opened.error() == "xdg-open is not installed on this computer (Debian package xdg-utils)");
}

TEST_CASE("the viewer is given the file by its full path") {
    const fs::path folder = withViewer("viewer-opens", "echo \"$1\" > \"${0%/*}/seen\"");
    const OnlyPath only(folder);
    CHECK(openInViewer("sheets/with a blank.pdf").has_value());
    CHECK(slurp(folder / "seen") == (fs::current_path() / "sheets/with a blank.pdf").string() + "\n");
}

TEST_CASE("what xdg-open could not do is said") {
    for (const auto& [code, words] : {std::pair{2, "the file is not there any more"},
                                      {3, "no program that opens PDF files was found on this computer"},
                                      {4, "the program that opens PDF files could not be started"}}) {
        const OnlyPath only(withViewer("viewer-fails", "exit " + std::to_string(code)));
        const auto opened = openInViewer("/tmp/a.pdf");
        REQUIRE_FALSE(opened.has_value());
        CHECK(opened.error() == words);
    }
}

TEST_CASE("a viewer that stays in the foreground counts as opened") {
    const OnlyPath only(withViewer("viewer-stays", "exec /bin/sleep 6"));
    const auto began = std::chrono::steady_clock::now();
    CHECK(openInViewer("/tmp/a.pdf").has_value());
    CHECK(std::chrono::steady_clock::now() - began < std::chrono::seconds(6));
}
