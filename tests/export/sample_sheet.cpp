#include "sample_sheet.hpp"

#include "drawing/dimensions.hpp"

#include <array>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <sys/wait.h>

namespace gangway::testing {

using namespace drawing;

Sheet sampleSheet(const std::string& number) {
    Sheet sheet;
    sheet.number = number;
    sheet.title = "Kitchen, wall A";
    sheet.file_stem = number + "-kitchen-A";
    const auto add = [&](const char* layer, const char* id, Primitive primitive) {
        sheet.items.push_back({layer, id, std::move(primitive)});
    };
    add("frame", "",
        Polyline{{{20, 10}, {410, 10}, {410, 287}, {20, 287}}, true, {0.7, LineType::Continuous, kBlack}});
    add("building", "", Line{{60, 100}, {110, 100}, {0.5, LineType::Continuous, kBlack}}); // 1 m at 1:20
    add("plates", "K-01",
        Polyline{
            {{80, 115}, {84.3, 115}, {84.3, 119.3}, {80, 119.3}}, true, {0.25, LineType::Dashed, kBlack}});
    add("plates", "K-01", Arc{{82.15, 117.15}, 1.5, 0, 360, {0.18, LineType::Continuous, kBlack}});
    add("openings", "door", Arc{{200, 100}, 40, 90, 180, {0.18, LineType::LongDashDot, kBlack}});
    add("furniture", "bed",
        Fill{{{300, 100}, {340, 100}, {340, 120}, {300, 120}},
             {{{310, 105}, {320, 105}, {320, 115}, {310, 115}}},
             {0x56, 0xB4, 0xE9}});
    add("text", "",
        Text{{60, 250},
             "K\xC3\xBC"
             "che \xE2\x80\x94 wall <A> & \xC2\xB1"
             "5",
             5,
             Align::Left,
             0,
             kBlack,
             false});
    add("text", "K-01", Text{{150, 117}, "K-04", 3.5, Align::Centre, 0, kBlack, true});
    std::vector<RunningMark> marks{{{82.15, 117.15}, 82.15, 443, "K-01"},
                                   {{85.7, 117.15}, 85.7, 514, "K-02"}};
    for (Item& item : runningRow(60, 88, marks, {}, "dimensions"))
        sheet.items.push_back(std::move(item));
    add("dimensions", "wall", linear({60, 200}, {110, 200}, 10, 1000, 3.5, "wall"));
    add("text", "K-02",
        Text{{150, 140}, "after", 2.5, Align::Right, 0, kGhost, false}); // a layer that comes up again
    return sheet;
}

Drawing sampleDrawing() {
    Drawing drawing;
    drawing.title = "Small house";
    drawing.subject = "Wall elevations";
    drawing.author = "An Invented Designer";
    drawing.date = "2026-03-01";
    drawing.sheets = {sampleSheet("E-01"), sampleSheet("E-02")};
    return drawing;
}

std::filesystem::path freshFolder(const std::string& name) {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "export" / name;
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

std::string output(const std::string& command, int* status) {
    std::string text;
    std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) return text;
    std::array<char, 4096> part{};
    while (const std::size_t read = std::fread(part.data(), 1, part.size(), pipe))
        text.append(part.data(), read);
    const int ended = pclose(pipe);
    if (status != nullptr) *status = WIFEXITED(ended) ? WEXITSTATUS(ended) : -1;
    return text;
}

std::string fileBytes(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

} // namespace gangway::testing
