// Writes LM-63 files for emitters whose light is known in closed form.
#pragma once

#include <cmath>
#include <functional>
#include <numbers>
#include <string>
#include <vector>

namespace gangway::test {

struct IesText {
    std::string head = "IESNA:LM-63-2002\n[TEST] closed form\n[MANUFAC] none\n";
    std::string tilt = "TILT=NONE\n";
    double lumens = -1;
    double multiplier = 1;
    double ballast = 1;
    std::vector<double> vertical;
    std::vector<double> horizontal{0};
    std::function<double(double, double)> candela; ///< of vertical and horizontal angle, degrees
};

inline std::vector<double> degrees(double from, double to, double step) {
    std::vector<double> list;
    for (int i = 0; from + i * step <= to + 1e-9; ++i)
        list.push_back(from + i * step);
    return list;
}

inline std::string written(const IesText& file) {
    std::string text = file.head + file.tilt;
    const auto add = [&](double value, char after = ' ') { text += std::to_string(value) + after; };
    text += "1 ";
    add(file.lumens);
    add(file.multiplier);
    text +=
        std::to_string(file.vertical.size()) + " " + std::to_string(file.horizontal.size()) + " 1 2 0 0 0\n";
    add(file.ballast);
    text += "1 10\n";
    for (double angle : file.vertical)
        add(angle);
    text += "\n";
    for (double angle : file.horizontal)
        add(angle);
    // Ten values a line: groups may break anywhere.
    int on_line = 0;
    for (double h : file.horizontal)
        for (double v : file.vertical)
            add(file.candela(v, h), ++on_line % 10 == 1 ? '\n' : ' ');
    return text + "\n";
}

/// 1200 lm alike in all directions: I = flux / 4 pi (trade-facts 8.5).
inline IesText uniformFile(double lumens, double step = 5) {
    IesText file;
    file.vertical = degrees(0, 180, step);
    file.candela = [=](double, double) { return lumens / (4 * std::numbers::pi); };
    return file;
}

/// A flat emitter: I = flux / pi cos t (8.5).
inline IesText cosineFile(double lumens, double step = 1) {
    IesText file;
    file.vertical = degrees(0, 90, step);
    file.candela = [=](double v, double) {
        return lumens / std::numbers::pi * std::max(0.0, std::cos(v * std::numbers::pi / 180));
    };
    return file;
}

} // namespace gangway::test
