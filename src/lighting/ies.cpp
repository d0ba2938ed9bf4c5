#include "lighting/ies.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iterator>
#include <numbers>
#include <optional>
#include <span>

#include <fmt/format.h>

namespace gangway::lighting {

namespace {

constexpr std::uintmax_t kMostBytes = 8u << 20;
constexpr int kMostAngles = 1000;
constexpr double kMostCandela = 1e9;
constexpr double kAngleTolerance_deg = 1e-3;

/// What is wrong, caught at the end of parseIes; never leaves this file.
struct Refusal {
    int line;
    std::string reason;
};

/// The text line by line, then number by number: groups of numbers may break anywhere.
class Source {
public:
    explicit Source(std::string_view text) : text_(text) {}

    int line() const { return line_; }

    std::optional<std::string_view> nextLine() {
        if (at_ >= text_.size()) return std::nullopt;
        const std::size_t end = std::min(text_.find_first_of("\r\n", at_), text_.size());
        const std::string_view whole = text_.substr(at_, end - at_);
        at_ = end;
        skipBreak();
        return whole;
    }

    std::optional<std::string_view> nextToken() {
        while (at_ < text_.size() && isGap(text_[at_])) {
            if (text_[at_] == '\n' || text_[at_] == '\r')
                skipBreak();
            else
                ++at_;
        }
        if (at_ >= text_.size()) return std::nullopt;
        const std::size_t from = at_;
        while (at_ < text_.size() && !isGap(text_[at_]))
            ++at_;
        return text_.substr(from, at_ - from);
    }

private:
    // Ctrl-Z ends files of the time the format is from.
    static bool isGap(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == ',' || c == '\x1a';
    }
    void skipBreak() {
        if (at_ < text_.size() && text_[at_] == '\r') ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++at_;
        ++line_;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int line_ = 1;
};

double number(Source& source, const std::string& what) {
    const auto token = source.nextToken();
    if (!token) throw Refusal{source.line(), fmt::format("the file ends where {} should stand", what)};
    std::string_view digits = *token;
    if (digits.starts_with('+')) digits.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value))
        throw Refusal{source.line(),
                      fmt::format("'{}' is not a number; {} should stand here", token->substr(0, 20), what)};
    return value;
}

int count(Source& source, const std::string& what, int most) {
    const double value = number(source, what);
    if (value < 1 || value > most || value != std::floor(value))
        throw Refusal{source.line(),
                      fmt::format("{} is {:g}; give a whole number from 1 to {}", what, value, most)};
    return static_cast<int>(value);
}

double notNegative(Source& source, const std::string& what, double most) {
    const double value = number(source, what);
    if (value < 0 || value > most)
        throw Refusal{source.line(), fmt::format("{} is {:g}; give 0 to {:g}", what, value, most)};
    return value;
}

std::vector<double> angles(Source& source, int size, const std::string& kind) {
    std::vector<double> list;
    for (int i = 0; i < size; ++i) {
        const double angle = number(source, fmt::format("{} angle {} of {}", kind, i + 1, size));
        if (!list.empty() && angle <= list.back())
            throw Refusal{source.line(), fmt::format("{} angle {:g} follows {:g}; angles must ascend", kind,
                                                     angle, list.back())};
        list.push_back(angle);
    }
    return list;
}

bool isAngle(double angle, double wanted) {
    return std::abs(angle - wanted) <= kAngleTolerance_deg;
}

void checkVertical(const std::vector<double>& vertical, int line) {
    const bool from = isAngle(vertical.front(), 0) || isAngle(vertical.front(), 90);
    const bool to = isAngle(vertical.back(), 90) || isAngle(vertical.back(), 180);
    if (!from || !to || vertical.size() < 2)
        throw Refusal{line,
                      fmt::format("vertical angles run from {:g} to {:g}; type C has 0 to 90, 90 to 180 "
                                  "or 0 to 180",
                                  vertical.front(), vertical.back())};
}

IesFile::Symmetry symmetryOf(const std::vector<double>& horizontal, int line) {
    const double first = horizontal.front();
    const double last = horizontal.back();
    if (horizontal.size() == 1 && isAngle(first, 0)) return IesFile::Symmetry::Axial;
    if (isAngle(first, 0) && isAngle(last, 90)) return IesFile::Symmetry::Quadrant;
    if (isAngle(first, 0) && isAngle(last, 180)) return IesFile::Symmetry::Bilateral;
    if (isAngle(first, 90) && isAngle(last, 270)) return IesFile::Symmetry::BilateralAcross;
    if (isAngle(first, 0) && isAngle(last, 360)) return IesFile::Symmetry::None;
    throw Refusal{line,
                  fmt::format("horizontal angles run from {:g} to {:g}; they must be 0 alone, or end at "
                              "90, 180 or 360 from 0",
                              first, last)};
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    return text;
}

void keyword(IesFile& file, std::string_view line) {
    const std::size_t close = line.find(']');
    if (!line.starts_with('[') || close == std::string_view::npos) return;
    file.keywords.emplace_back(line.substr(1, close - 1), trimmed(line.substr(close + 1)));
}

/// Reads up to the TILT line and returns what it says.
std::string_view head(Source& source, IesFile& file) {
    file.standard = "LM-63-1986";
    for (int i = 0; auto whole = source.nextLine(); ++i) {
        const std::string_view line = trimmed(*whole);
        if (line.find('\0') != std::string_view::npos)
            throw Refusal{source.line() - 1, "this is not text, so it is no LM-63 file"};
        if (i == 0 && line.starts_with("IES")) file.standard = line;
        if (line.starts_with("TILT=")) return trimmed(line.substr(5));
        keyword(file, line);
    }
    throw Refusal{source.line(), "the file ends without a line TILT="};
}

void tilt(Source& source, std::string_view value) {
    if (value == "NONE") return;
    if (value != "INCLUDE")
        throw Refusal{source.line() - 1,
                      fmt::format("TILT={} names a file of its own, which is not read; put the factors here "
                                  "(TILT=INCLUDE) or write TILT=NONE",
                                  value)};
    count(source, "the lamp's position in the luminaire", 3);
    const int size = count(source, "the number of tilt angles", kMostAngles);
    angles(source, size, "tilt");
    for (int i = 0; i < size; ++i)
        notNegative(source, fmt::format("tilt factor {} of {}", i + 1, size), 100);
}

void checkType(int type, int line) {
    if (type == 1) return;
    throw Refusal{line, fmt::format("this is type {} photometry; only type C (1), as for indoor luminaires, "
                                    "is read",
                                    type == 2 ? 'B' : 'A')};
}

struct Counts {
    int vertical = 0;
    int horizontal = 0;
    double factor = 1;
};

/// The ten numbers and the three after them.
Counts numbers(Source& source, IesFile& file) {
    Counts counts;
    file.lamps = count(source, "the number of lamps", 10000);
    file.lumens_per_lamp = number(source, "lumens per lamp");
    if (file.lumens_per_lamp != -1 && (file.lumens_per_lamp < 0 || file.lumens_per_lamp > kMostCandela))
        throw Refusal{source.line(),
                      fmt::format("lumens per lamp is {:g}; give 0 or more, or -1 for absolute "
                                  "photometry",
                                  file.lumens_per_lamp)};
    counts.factor = notNegative(source, "the candela multiplier", kMostCandela);
    counts.vertical = count(source, "the number of vertical angles", kMostAngles);
    counts.horizontal = count(source, "the number of horizontal angles", kMostAngles);
    checkType(count(source, "the photometric type", 3), source.line());
    count(source, "the kind of units", 2);
    for (const char* what : {"the width", "the length", "the height"})
        number(source, what); // negative for round ones
    counts.factor *= notNegative(source, "the ballast factor", 100);
    counts.factor *= notNegative(source, "the ballast-lamp factor", 100);
    file.watts = notNegative(source, "the input watts", kMostCandela);
    return counts;
}

void table(Source& source, IesFile& file, const Counts& counts) {
    file.vertical_deg = angles(source, counts.vertical, "vertical");
    checkVertical(file.vertical_deg, source.line());
    file.horizontal_deg = angles(source, counts.horizontal, "horizontal");
    file.symmetry = symmetryOf(file.horizontal_deg, source.line());
    const int all = counts.vertical * counts.horizontal;
    file.candela.reserve(static_cast<std::size_t>(all));
    for (int i = 0; i < all; ++i)
        file.candela.push_back(counts.factor * notNegative(source,
                                                           fmt::format("candela value {} of {}", i + 1, all),
                                                           kMostCandela));
    if (source.nextToken())
        throw Refusal{source.line(),
                      fmt::format("more follows the {} candela values that were announced", all)};
}

/// Place of a value among ascending ones: the index before it and how far on to the next. Angles are mostly
/// evenly spaced, so a guess by proportion is right or nearly so.
struct Place {
    std::size_t index = 0;
    double part = 0;
};
Place placeIn(std::span<const double> list, double value) {
    if (list.size() < 2 || value <= list.front()) return {};
    const std::size_t last = list.size() - 2;
    const double share = (value - list.front()) / (list.back() - list.front());
    std::size_t index = std::min(last, static_cast<std::size_t>(share * static_cast<double>(last + 1)));
    while (index > 0 && list[index] > value)
        --index;
    while (index < last && list[index + 1] <= value)
        ++index;
    return {index, std::min(1.0, (value - list[index]) / (list[index + 1] - list[index]))};
}

/// Integral of I(g) sin(g) over the vertical angles of one horizontal angle, I linear between them:
/// the integral of (a + b g) sin(g) is b sin(g) - (a + b g) cos(g).
double overVertical(const IesFile& file, std::size_t horizontal) {
    const double* row = file.candela.data() + horizontal * file.vertical_deg.size();
    double sum = 0;
    for (std::size_t i = 0; i + 1 < file.vertical_deg.size(); ++i) {
        const double from = file.vertical_deg[i] * std::numbers::pi / 180;
        const double to = file.vertical_deg[i + 1] * std::numbers::pi / 180;
        const double slope = (row[i + 1] - row[i]) / (to - from);
        sum += slope * (std::sin(to) - std::sin(from)) - row[i + 1] * std::cos(to) + row[i] * std::cos(from);
    }
    return sum;
}

} // namespace

std::expected<IesFile, std::string> parseIes(std::string_view text, const std::string& name) {
    try {
        IesFile file;
        Source source(text);
        tilt(source, head(source, file));
        const Counts counts = numbers(source, file);
        table(source, file, counts);
        return file;
    } catch (const Refusal& refusal) {
        return std::unexpected(fmt::format("{}:{}: {}", name, refusal.line, refusal.reason));
    }
}

std::expected<IesFile, std::string> readIes(const std::filesystem::path& file) {
    const std::string name = file.filename().string();
    std::error_code error;
    if (!std::filesystem::is_regular_file(file, error))
        return std::unexpected(fmt::format("{}: there is no such file", name));
    if (std::filesystem::file_size(file, error) > kMostBytes || error)
        return std::unexpected(
            fmt::format("{}: larger than {} MiB, so it is no LM-63 file", name, kMostBytes >> 20));
    std::ifstream stream(file, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(stream)), std::istreambuf_iterator<char>());
    if (!stream) return std::unexpected(fmt::format("{}: can't be read", name));
    return parseIes(text, name);
}

double foldedAngle(const IesFile& file, double horizontal_deg) {
    double angle = std::abs(horizontal_deg) <= 360 ? horizontal_deg : std::fmod(horizontal_deg, 360);
    if (angle < 0) angle += 360;
    switch (file.symmetry) {
    case IesFile::Symmetry::Axial:
        return 0;
    case IesFile::Symmetry::Quadrant:
        angle = angle > 180 ? 360 - angle : angle;
        return angle > 90 ? 180 - angle : angle;
    case IesFile::Symmetry::Bilateral:
        return angle > 180 ? 360 - angle : angle;
    case IesFile::Symmetry::BilateralAcross:
        if (angle < 90) return 180 - angle;
        return angle > 270 ? 540 - angle : angle;
    case IesFile::Symmetry::None:
        return angle;
    }
    return angle;
}

double intensityAt(const IesFile& file, double vertical_deg, double horizontal_deg) {
    if (vertical_deg < file.vertical_deg.front() - kAngleTolerance_deg ||
        vertical_deg > file.vertical_deg.back() + kAngleTolerance_deg)
        return 0;
    const std::size_t size = file.vertical_deg.size();
    const Place v = placeIn(file.vertical_deg, vertical_deg);
    const Place h = placeIn(file.horizontal_deg, foldedAngle(file, horizontal_deg));
    const double* row = file.candela.data() + h.index * size + v.index;
    const double here = row[0] + (row[1] - row[0]) * v.part;
    if (h.part == 0) return here;
    const double next = row[size] + (row[size + 1] - row[size]) * v.part;
    return here + (next - here) * h.part;
}

double luminousFlux(const IesFile& file) {
    if (file.symmetry == IesFile::Symmetry::Axial) return 2 * std::numbers::pi * overVertical(file, 0);
    double sum = 0;
    double before = overVertical(file, 0);
    for (std::size_t i = 1; i < file.horizontal_deg.size(); ++i) {
        const double here = overVertical(file, i);
        const double width = (file.horizontal_deg[i] - file.horizontal_deg[i - 1]) * std::numbers::pi / 180;
        sum += width * (before + here) / 2;
        before = here;
    }
    const double listed = file.horizontal_deg.back() - file.horizontal_deg.front();
    return sum * 360 / listed;
}

} // namespace gangway::lighting
