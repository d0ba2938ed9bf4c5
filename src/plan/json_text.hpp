// JSON text being written: indented, with small things kept on one line. Private to src/plan.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gangway::plan {

/// Quoted and escaped as RFC 8259 asks; bytes that are no UTF-8 become U+FFFD.
void appendQuoted(std::string& out, std::string_view text);

/// Lines, commas and brackets. Small containers stay on one line when they fit in kColumns.
class JsonText {
public:
    static constexpr std::size_t kColumns = 110;

    /// OneLine: however long it gets.
    enum class Shape { Lines, SmallIfItFits, OneLine };

    void key(std::string_view name);
    void value(std::string_view raw);
    void text(std::string_view value);

    /// Writes what `fill` writes between brackets. With SmallIfItFits it is first tried on one line.
    template <class Fill>
    void container(char opening, Shape shape, Fill fill) {
        separate();
        if (on_one_line_) return fillContainer(opening, fill);
        if (shape != Shape::Lines) {
            const std::size_t start = out_.size();
            const std::vector<Level> levels = levels_;
            on_one_line_ = true;
            fillContainer(opening, fill);
            on_one_line_ = false;
            if (shape == Shape::OneLine || out_.size() - line_start_ <= kColumns) return;
            out_.resize(start);
            levels_ = levels;
        }
        fillContainer(opening, fill);
    }

    std::string take() && { return std::move(out_); }

private:
    struct Level {
        bool empty = true;
        bool after_key = false;
    };

    template <class Fill>
    void fillContainer(char opening, Fill& fill) {
        out_ += opening;
        levels_.emplace_back();
        fill();
        const bool empty = levels_.back().empty;
        levels_.pop_back();
        if (!empty) breakLine(opening == '{');
        out_ += opening == '{' ? '}' : ']';
    }
    /// Comma and line break, or nothing behind a key.
    void separate();
    void breakLine(bool object);

    std::string out_;
    std::vector<Level> levels_{1};
    std::size_t line_start_ = 0;
    bool on_one_line_ = false;
};

} // namespace gangway::plan
