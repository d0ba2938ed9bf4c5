#include "plan/json_syntax.hpp"

#include "plan/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <optional>
#include <vector>

namespace gangway::plan::json {

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

class SyntaxScan {
public:
    explicit SyntaxScan(std::string_view text) : text_(text) {}

    std::optional<SyntaxProblem> run() {
        value();
        while (!problem_ && !open_.empty())
            step();
        skipSpace();
        if (!problem_ && at_ < text_.size())
            fail(fmt::format("the plan ends before this {}; remove what follows its last bracket", shown()));
        return problem_;
    }

private:
    struct Open {
        char bracket = 0;
        std::size_t offset = 0;
        bool empty = true;
    };

    /// One element or member of the innermost container, or its end.
    void step() {
        Open& open = open_.back();
        const char closing = open.bracket == '{' ? '}' : ']';
        const bool object = open.bracket == '{';
        skipSpace();
        if (atEnd()) return;
        if (peek() == closing) {
            ++at_;
            open_.pop_back();
            return;
        }
        if (!open.empty) {
            if (peek() != ',')
                return fail(fmt::format("a comma or '{}' is missing before {}", closing, shown()));
            const std::size_t comma = at_++;
            skipSpace();
            if (!atEnd() && peek() == closing) {
                at_ = comma;
                return fail(fmt::format("a comma stands before '{}'; remove the comma", closing));
            }
        }
        open.empty = false;
        if (object)
            member();
        else
            value();
    }

    void member() {
        skipSpace();
        if (atEnd()) return;
        if (peek() != '"')
            return fail(fmt::format("a key in double quotes is expected, but here is {}", shown()));
        string();
        if (problem_) return;
        skipSpace();
        if (atEnd()) return;
        if (peek() != ':')
            return fail(fmt::format("a colon is expected after the key, but here is {}", shown()));
        ++at_;
        value();
    }

    void value() {
        skipSpace();
        if (atEnd()) return;
        const char c = peek();
        if (c == '{' || c == '[') {
            open_.push_back({c, at_, true});
            ++at_;
        } else if (c == '"') {
            string();
        } else if (c == '-' || isDigit(c)) {
            number();
        } else {
            word();
        }
    }

    void word() {
        const std::size_t start = at_;
        std::size_t end = at_;
        while (end < text_.size() && (isLetter(text_[end]) || isDigit(text_[end])))
            ++end;
        const std::string_view word = text_.substr(start, end - start);
        if (word == "true" || word == "false" || word == "null") {
            at_ = end;
            return;
        }
        if (end == text_.size() && !word.empty()) { // cut off in the middle of it
            at_ = end;
            atEnd();
            return;
        }
        if (word == "NaN" || word == "Infinity" || word == "nan" || word == "inf")
            return fail(fmt::format("{} is no number a plan can hold; give a number", word));
        if (!word.empty())
            return fail(fmt::format(
                "{} is no value; put texts in double quotes, or give true, false or a number", shown()));
        if (peek() == '}' || peek() == ']' || peek() == ',')
            return fail(fmt::format("a value is missing before {}", shown()));
        fail(fmt::format(
            "a value is expected, but here is {}; give a number, a text in double quotes, true, false, "
            "a list or an object",
            shown()));
    }

    void number() {
        const std::size_t start = at_;
        if (peek() == '-') ++at_;
        const std::size_t whole = at_;
        digits();
        const std::size_t count = at_ - whole;
        bool good = count > 0 && (count == 1 || text_[whole] != '0');
        if (good && at_ < text_.size() && text_[at_] == '.') {
            const std::size_t point = ++at_;
            digits();
            good = at_ > point;
        }
        if (good && at_ < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E')) {
            ++at_;
            if (at_ < text_.size() && (text_[at_] == '+' || text_[at_] == '-')) ++at_;
            const std::size_t exponent = at_;
            digits();
            good = at_ > exponent;
        }
        if (good) return;
        if (at_ >= text_.size()) {
            atEnd();
            return;
        }
        at_ = start;
        if (text_.substr(start).starts_with("-Infinity") || text_.substr(start).starts_with("-inf"))
            return fail("-Infinity is no number a plan can hold; give a number");
        fail("this number is not written as JSON wants it; write 0.5, -12 or 1200, without extra zeros or "
             "signs");
    }

    void digits() {
        while (at_ < text_.size() && isDigit(text_[at_]))
            ++at_;
    }

    void string() {
        const std::size_t start = at_++;
        while (at_ < text_.size() && text_[at_] != '"') {
            const auto c = static_cast<unsigned char>(text_[at_]);
            if (c == '\n' || c == '\r') {
                at_ = start;
                return fail(
                    "the closing quote of this text is missing on its line; line breaks inside a text are "
                    "written \\n");
            }
            if (c < 0x20)
                return fail(
                    fmt::format("a text holds the control character {}; remove it or write \\u{:04x}", c, c));
            if (c == '\\') {
                if (!escape()) return;
                continue;
            }
            const std::size_t length = utf8Length(text_, at_);
            if (length == 0 && text_.size() - at_ >= 4)
                return fail("this is not UTF-8; save the file with the UTF-8 encoding");
            at_ = length == 0 ? text_.size() : at_ + length;
        }
        if (!atEnd()) ++at_;
    }

    /// The number of the \u escape at `at`, 0 when there is none.
    unsigned escapedUnit(std::size_t at) const {
        unsigned unit = 0;
        if (text_.substr(at, 2) != "\\u" || at + 6 > text_.size()) return 0;
        std::from_chars(text_.data() + at + 2, text_.data() + at + 6, unit, 16);
        return unit;
    }

    /// UTF-16 halves come in pairs: D800 to DBFF, then DC00 to DFFF (RFC 8259, section 8.2).
    bool loneHalf() const {
        const unsigned unit = escapedUnit(at_);
        if (unit >= 0xDC00 && unit <= 0xDFFF) return true;
        if (unit < 0xD800 || unit > 0xDBFF) return false;
        const unsigned next = escapedUnit(at_ + 6);
        return next < 0xDC00 || next > 0xDFFF;
    }

    bool escape() {
        constexpr std::string_view kEscapes = "\"\\/bfnrtu";
        if (at_ + 1 >= text_.size()) {
            at_ = text_.size();
            return true;
        }
        const char kind = text_[at_ + 1];
        const bool known = kEscapes.find(kind) != std::string_view::npos;
        std::size_t length = 2;
        bool good = known;
        if (kind == 'u') {
            for (; length < 6 && at_ + length < text_.size(); ++length)
                good = good && std::isxdigit(static_cast<unsigned char>(text_[at_ + length])) != 0;
        }
        if (!good) {
            fail("a backslash begins \\\", \\\\, \\/, \\b, \\f, \\n, \\r, \\t or \\u and four hex digits; "
                 "write \\\\ "
                 "for the backslash itself");
            return false;
        }
        if (loneHalf() && at_ + 12 <= text_.size()) {
            fail("this \\u escape is half of a character; write both halves, or the character itself");
            return false;
        }
        const bool pair = escapedUnit(at_) >= 0xD800 && escapedUnit(at_) <= 0xDBFF;
        at_ = std::min(at_ + (pair ? 2 * length : length), text_.size());
        return true;
    }

    void skipSpace() {
        while (at_ < text_.size() &&
               (text_[at_] == ' ' || text_[at_] == '\t' || text_[at_] == '\n' || text_[at_] == '\r'))
            ++at_;
    }

    char peek() const { return text_[at_]; }

    /// Notes a truncated file when the text is over.
    bool atEnd() {
        if (at_ < text_.size()) return false;
        if (open_.empty()) {
            fail("the file ends in the middle of a value; it was cut off, so take a whole copy");
        } else {
            const Open& open = open_.back();
            const auto line =
                1 + std::count(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(open.offset), '\n');
            fail(fmt::format(
                "the file ends too early: the '{}' of line {} is not closed{}; it was cut off, so take "
                "a whole copy or add the missing brackets",
                open.bracket, line,
                open_.size() > 1 ? fmt::format(" (and {} more around it)", open_.size() - 1) : ""));
        }
        return true;
    }

    /// What stands at the place, for a message.
    std::string shown() const {
        const auto c = static_cast<unsigned char>(text_[at_]);
        if (c < 0x20 || c == 0x7F) return fmt::format("the control character {}", c);
        if (c == '"') return "a text in double quotes";
        if (c == '\'') return "a single quote";
        if (isLetter(text_[at_])) {
            std::size_t end = at_;
            while (end < text_.size() && end - at_ < 20 && (isLetter(text_[end]) || isDigit(text_[end])))
                ++end;
            return fmt::format("'{}'", text_.substr(at_, end - at_));
        }
        if (text_.substr(at_).starts_with("//") || text_.substr(at_).starts_with("/*"))
            return "a comment, which JSON does not have (remove it)";
        const std::size_t length = utf8Length(text_, at_);
        return length == 0 ? fmt::format("the byte {}", c) : fmt::format("'{}'", text_.substr(at_, length));
    }

    void fail(std::string message) {
        if (!problem_) problem_ = SyntaxProblem{at_, std::move(message)};
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<Open> open_;
    std::optional<SyntaxProblem> problem_;
};

} // namespace

SyntaxProblem findSyntaxProblem(std::string_view text, std::size_t fallback_offset) {
    if (auto problem = SyntaxScan(text).run()) return std::move(*problem);
    return {
        std::min(fallback_offset, text.size()),
        "what stands before this place is not written as JSON wants it; compare it with the lines around it"};
}

} // namespace gangway::plan::json
