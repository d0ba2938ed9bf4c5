#include "edit/length_input.hpp"

#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace gangway::edit {

namespace {
constexpr double kInch = 25.4;
constexpr double kFoot = 12 * kInch;

/// Recursive descent over sum = product {(+|-) product}, product = factor {(*|/) factor}.
class LengthParser {
public:
    explicit LengthParser(std::string_view text) : text_(text) {}

    std::expected<double, std::string> parse() {
        skipSpace();
        if (atEnd()) return std::unexpected("type a length, such as 1050 or 3'-5 5/16\"");
        auto value = sum();
        if (!value) return value;
        skipSpace();
        if (!atEnd()) return problem("did not expect");
        if (!std::isfinite(*value)) return std::unexpected("that sum has no finite result");
        return value;
    }

private:
    bool atEnd() const { return at_ >= text_.size(); }
    char peek() const { return atEnd() ? '\0' : text_[at_]; }
    void skipSpace() {
        while (!atEnd() && std::isspace(static_cast<unsigned char>(text_[at_])) != 0)
            ++at_;
    }
    std::unexpected<std::string> problem(const std::string& words) const {
        const std::string rest(text_.substr(at_, 12));
        return std::unexpected(rest.empty() ? "the length breaks off at its end" : words + " '" + rest + "'");
    }

    std::expected<double, std::string> sum() {
        auto value = product();
        while (value) {
            skipSpace();
            const char sign = peek();
            if (sign != '+' && sign != '-') break;
            ++at_;
            const auto next = product();
            if (!next) return next;
            *value += sign == '+' ? *next : -*next;
        }
        return value;
    }

    std::expected<double, std::string> product() {
        auto value = factor();
        while (value) {
            skipSpace();
            const char sign = peek();
            if (sign != '*' && sign != '/') break;
            ++at_;
            const auto next = factor();
            if (!next) return next;
            if (sign == '/' && *next == 0) return std::unexpected("can't divide by 0");
            *value = sign == '*' ? *value * *next : *value / *next;
        }
        return value;
    }

    std::expected<double, std::string> factor() {
        skipSpace();
        if (depth_ > 50) return std::unexpected("too many brackets");
        if (peek() == '-' || peek() == '+') {
            const bool minus = peek() == '-';
            ++at_;
            ++depth_;
            auto value = factor();
            --depth_;
            if (value && minus) *value = -*value;
            return value;
        }
        if (peek() == '(') {
            ++at_;
            ++depth_;
            auto value = sum();
            --depth_;
            if (!value) return value;
            skipSpace();
            if (peek() != ')') return problem("expected ) before");
            ++at_;
            return value;
        }
        return quantity();
    }

    std::expected<double, std::string> number() {
        // from_chars would take "nan" and "inf" too.
        if (std::isdigit(static_cast<unsigned char>(peek())) == 0 && peek() != '.')
            return problem("expected a number at");
        double value = 0;
        const char* const begin = text_.data() + at_;
        const auto [end, error] =
            std::from_chars(begin, text_.data() + text_.size(), value, std::chars_format::fixed);
        if (error != std::errc{} || end == begin) return problem("expected a number at");
        at_ += static_cast<std::size_t>(end - begin);
        return value;
    }

    bool take(std::string_view unit) {
        if (text_.substr(at_, unit.size()) != unit) return false;
        at_ += unit.size();
        return true;
    }

    std::expected<double, std::string> quantity() {
        auto value = number();
        if (!value) return value;
        skipSpace();
        if (take("mm")) return value;
        if (take("cm")) return *value * 10;
        if (take("m")) return *value * 1000;
        if (take("'")) return feet(*value);
        if (const auto inches = fractionInches(*value)) return *inches;
        if (take("\"")) return *value * kInch;
        return value;
    }

    /// "7/16"" or "6 7/16"" after its whole part; leaves everything unread when no inch mark follows.
    std::optional<double> fractionInches(double first) {
        const std::size_t start = at_;
        double whole = 0;
        double top = first;
        if (peek() != '/') {
            const auto next = number();
            if (!next) return at_ = start, std::nullopt;
            whole = first;
            top = *next;
            skipSpace();
        }
        if (!take("/")) return at_ = start, std::nullopt;
        const auto bottom = number();
        skipSpace();
        if (!bottom || *bottom == 0 || !take("\"")) return at_ = start, std::nullopt;
        return (whole + top / *bottom) * kInch;
    }

    /// What may follow feet: "5'", "5' 6"", "5'-6 7/16"".
    std::expected<double, std::string> feet(double count) {
        const std::size_t start = at_;
        skipSpace();
        if (peek() == '-') ++at_;
        skipSpace();
        const auto inches = number();
        if (inches) {
            skipSpace();
            if (const auto fraction = fractionInches(*inches)) return count * kFoot + *fraction;
            if (take("\"")) return count * kFoot + *inches * kInch;
        }
        at_ = start;
        return count * kFoot;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int depth_ = 0;
};
} // namespace

std::expected<double, std::string> parseLength(std::string_view text) {
    return LengthParser(text).parse();
}

} // namespace gangway::edit
