#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <thread>
#include <vector>

namespace gangway::testing {

namespace {
void rest(double seconds) {
    std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
}

int start(const std::vector<std::string>& words, const std::string& display,
          const std::filesystem::path& folder, const std::string& log) {
    const int pid = ::fork();
    if (pid != 0) return pid;
    ::setenv("DISPLAY", display.c_str(), 1);
    ::setenv("XDG_STATE_HOME", (folder / "state").c_str(), 1);
    ::setenv("LIBGL_ALWAYS_SOFTWARE", "1", 1);
    ::unsetenv("WAYLAND_DISPLAY");
    const int file = ::open((folder / log).c_str(), O_WRONLY | O_CREAT | O_APPEND, 0644);
    ::dup2(file, 1);
    ::dup2(file, 2);
    std::vector<char*> raw;
    for (const auto& word : words)
        raw.push_back(const_cast<char*>(word.c_str()));
    raw.push_back(nullptr);
    ::execvp(raw[0], raw.data());
    ::_exit(127);
}

void stop(int pid) {
    if (pid <= 0) return;
    ::kill(pid, SIGTERM);
    for (int i = 0; i < 40; ++i) {
        if (::waitpid(pid, nullptr, WNOHANG) != 0) return;
        rest(0.05);
    }
    ::kill(pid, SIGKILL);
    ::waitpid(pid, nullptr, 0);
}

std::string firstLine(std::string text) {
    return text.substr(0, text.find('\n'));
}
} // namespace

Window::Window(const std::filesystem::path& folder, const std::filesystem::path& plan, Quality quality)
    : folder_(folder), quality_(quality) {
    // A display of its own for each window: the process number keeps two runs of the tests apart.
    static int opened = 0;
    display_ = ":" + std::to_string(200 + (::getpid() * 7 + ++opened) % 5000);
    display_pid_ = start({"Xvfb", display_, "-screen", "0", "1440x900x24", "-nolisten", "tcp"}, display_,
                         folder_, "xvfb.log");
    for (int i = 0; i < 100 && run("DISPLAY=" + display_ + " xdpyinfo").code != 0; ++i)
        rest(0.1);
    manager_pid_ = start({"openbox"}, display_, folder_, "openbox.log");
    rest(0.3);
    startProgram(plan);
    // A click gives the window the keyboard whatever the window manager thinks; one walks already.
    click("walk");
    look();
}

void Window::startProgram(const std::filesystem::path& plan) {
    std::vector<std::string> words = {GANGWAY_BINARY, "open",     plan.string(),
                                      "--size",       "1400x860", "--user",
                                      "R. Fern",      "--report", (folder_ / "report.json").string()};
    if (quality_ == Quality::Plain) words.emplace_back("--plain");
    program_pid_ = start(words, display_, folder_, "gangway.log");
    for (int i = 0; i < 300 && !std::filesystem::exists(folder_ / "report.json"); ++i)
        rest(0.1);
    INFO(slurp(folder_ / "gangway.log"));
    REQUIRE(std::filesystem::exists(folder_ / "report.json"));
    window_id_ = firstLine(tool("search --onlyvisible --name Gangway"));
    REQUIRE_FALSE(window_id_.empty());
    tool("windowmove --sync " + window_id_ + " 10 20");
    tool("windowfocus --sync " + window_id_);
}

Window::~Window() {
    stop(program_pid_);
    stop(manager_pid_);
    stop(display_pid_);
}

std::string Window::tool(const std::string& arguments) const {
    return run("DISPLAY=" + display_ + " xdotool " + arguments).out;
}

nlohmann::json Window::look() {
    // At rest, and still the same a moment later.
    std::string before;
    nlohmann::json report;
    for (int i = 0; i < 700; ++i) {
        rest(0.12);
        const std::string now = slurp(folder_ / "report.json");
        report = nlohmann::json::parse(now, nullptr, false);
        if (!report.is_discarded() && report.value("resting", false) && now == before) return report;
        before = now;
    }
    FAIL("the window never came to rest");
    return report;
}

bool Window::running() const {
    return program_pid_ > 0 && ::kill(program_pid_, 0) == 0 && ::waitpid(program_pid_, nullptr, WNOHANG) == 0;
}

void Window::click(double x, double y) {
    tool("mousemove --sync --window " + window_id_ + " " + std::to_string(static_cast<int>(x)) + " " +
         std::to_string(static_cast<int>(y)));
    rest(0.25);
    tool("mousedown 1");
    rest(0.12);
    tool("mouseup 1");
    rest(0.25);
}

void Window::drag(double from_x, double from_y, double to_x, double to_y) {
    constexpr int kSteps = 10;
    const auto go = [this](double x, double y) {
        tool("mousemove --sync --window " + window_id_ + " " + std::to_string(static_cast<int>(x)) + " " +
             std::to_string(static_cast<int>(y)));
    };
    go(from_x, from_y);
    rest(0.25);
    tool("mousedown 1");
    rest(0.25);
    for (int i = 1; i <= kSteps; ++i) {
        const double part = static_cast<double>(i) / kSteps;
        go(from_x + (to_x - from_x) * part, from_y + (to_y - from_y) * part);
        rest(0.08);
    }
    rest(0.2);
    tool("mouseup 1");
    rest(0.25);
}

void Window::killProgram() {
    ::kill(program_pid_, SIGKILL);
    ::waitpid(program_pid_, nullptr, 0);
    program_pid_ = 0;
}

void Window::startAgain(const std::filesystem::path& plan) {
    std::filesystem::remove(folder_ / "report.json");
    startProgram(plan);
}

void Window::doubleClick(double x, double y) {
    tool("mousemove --sync --window " + window_id_ + " " + std::to_string(static_cast<int>(x)) + " " +
         std::to_string(static_cast<int>(y)));
    rest(0.25);
    tool("click --repeat 2 --delay 130 1");
    rest(0.25);
}

void Window::click(const std::string& place) {
    auto report = look();
    for (int i = 0; i < 60 && !report["places"].contains(place); ++i)
        report = look();
    INFO("place " << place << " in " << report["places"].dump());
    REQUIRE(report["places"].contains(place));
    const auto rect = report["places"][place].get<std::vector<double>>();
    click(rect[0] + rect[2] / 2, rect[1] + rect[3] / 2);
}

void Window::key(const std::string& keys) {
    tool("key --clearmodifiers " + keys);
    rest(0.2);
}
void Window::keyDown(const std::string& key) {
    tool("keydown " + key);
}
void Window::keyUp(const std::string& key) {
    tool("keyup " + key);
}
void Window::type(const std::string& text) {
    tool("type --delay 40 '" + text + "'");
    rest(0.2);
}

bool Window::waitFor(const std::string& report_key, const nlohmann::json& value, double seconds) {
    for (double waited = 0; waited < seconds; waited += 0.25) {
        const auto report = nlohmann::json::parse(slurp(folder_ / "report.json"), nullptr, false);
        if (!report.is_discarded() && report.contains(report_key) && report[report_key] == value) return true;
        rest(0.25);
    }
    return false;
}

void Window::picture(const std::string& name) {
    run("import -display " + display_ + " -window root '" + (folder_ / (name + ".png")).string() + "'");
}

void Window::closeByManager() {
    // What the window manager's close button does: _NET_CLOSE_WINDOW to the manager (EWMH), which sends the
    // window a polite WM_DELETE_WINDOW (ICCCM 4.2.8.1).
    run("DISPLAY=" + display_ + " wmctrl -i -c " + window_id_);
    rest(0.4);
}

const std::filesystem::path kOneRoom =
    std::filesystem::path(GANGWAY_TESTS_DIR) / "fixtures" / "one-room.plan.json";

std::filesystem::path copyOf(const std::filesystem::path& plan, const std::filesystem::path& folder) {
    std::filesystem::path copy = folder / "house.plan.json";
    std::filesystem::copy_file(plan, copy, std::filesystem::copy_options::overwrite_existing);
    return copy;
}

void typeInto(Window& window, const std::string& place, const std::string& text) {
    window.click(place);
    window.key("ctrl+a");
    window.type(text);
    window.key("Return");
}

nlohmann::json saved(Window& window, const std::filesystem::path& plan) {
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));
    return nlohmann::json::parse(slurp(plan));
}

} // namespace gangway::testing
