// A real window of the built program on a display of its own (Xvfb), driven by xdotool as a person would.
#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

namespace gangway::testing {

class Window {
public:
    /// Plain: the picture grows no finer at rest, which takes seconds in software.
    enum class Quality { Plain, Fine };
    /// Starts a display, a window manager and `gangway open PLAN`, and waits until the window rests.
    explicit Window(const std::filesystem::path& folder, const std::filesystem::path& plan,
                    Quality quality = Quality::Plain);
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;
    ~Window();

    /// What the window says it shows; waits until it is newer than the last look and has stopped changing.
    nlohmann::json look();
    bool running() const;
    void click(double x, double y);
    void doubleClick(double x, double y);
    /// Clicks the middle of a place of the report; fails the test when it is not on screen.
    void click(const std::string& place);
    void key(const std::string& keys);
    void keyDown(const std::string& key);
    void keyUp(const std::string& key);
    void type(const std::string& text);
    /// Presses at one point, goes to another in steps as a hand would, and lets go there.
    void drag(double from_x, double from_y, double to_x, double to_y);
    /// kill -9, as when the power goes.
    void killProgram();
    /// Starts the program again with the same plan, on the same display.
    void startAgain(const std::filesystem::path& plan);
    /// Waits until the report says so, for at most `seconds`; false when it never did.
    bool waitFor(const std::string& report_key, const nlohmann::json& value, double seconds = 20);
    void picture(const std::string& name);
    void closeByManager();

private:
    std::string tool(const std::string& arguments) const;
    void startProgram(const std::filesystem::path& plan);
    std::filesystem::path folder_;
    Quality quality_;
    std::string display_;
    std::string window_id_;
    int display_pid_ = 0;
    int manager_pid_ = 0;
    int program_pid_ = 0;
};

/// The fixture most window tests start from: one room with five plates.
extern const std::filesystem::path kOneRoom;
/// A plan as house.plan.json in a folder of the test's own.
std::filesystem::path copyOf(const std::filesystem::path& plan, const std::filesystem::path& folder);
/// Types over what stands in a box, and Enter.
void typeInto(Window& window, const std::string& place, const std::string& text);
/// Saves with Ctrl+S and reads the file.
nlohmann::json saved(Window& window, const std::filesystem::path& plan);

} // namespace gangway::testing
