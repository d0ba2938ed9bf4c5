#include "edit/length_input.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace gangway::edit {

namespace {
constexpr double kInch = 25.4;
constexpr double kFoot = 12 * kInch;

/// A length in mm, or a bare number: which of them it is matters only once it is added to a length or read.
struct Quantity {
    double amount = 0;
    bool is_length = false;
};
using Read = std::expected<Quantity, std::string>;

/// Recursive descent over sum = product {(+|-) product}, product = factor {(*|/) factor}.
class LengthParser {
public:
    LengthParser(std::string_view text, BareLength bare) : text_(text), bare_(bare) {}

    std::expected<double, std::string> parse() {
        skipSpace();
        if (std::none_of(text_.begin(), text_.end(), [](unsigned char c) { return std::isdigit(c) != 0; }) &&
            !atEnd())
            return std::unexpected("can't read '" + std::string(text_.substr(0, 24)) +
                                   "' as a length; type one such as 1050 or 45 cm");
        if (atEnd()) return std::unexpected("type a length, such as 1050 or 3'-5 5/16\"");
        const auto value = sum();
        if (!value) return std::unexpected(value.error());
        skipSpace();
        if (!atEnd()) return problem("did not expect");
        const double length = length_mm(*value);
        if (!std::isfinite(length)) return std::unexpected("that sum has no finite result");
        return length;
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
    double length_mm(Quantity quantity) const {
        return quantity.is_length ? quantity.amount : quantity.amount * bare_.unit_mm;
    }

    Read sum() {
        auto value = product();
        while (value) {
            skipSpace();
            const char sign = peek();
            if (sign != '+' && sign != '-') break;
            ++at_;
            const auto next = product();
            if (!next) return next;
            const bool any_length = value->is_length || next->is_length;
            const double a = any_length ? length_mm(*value) : value->amount;
            const double b = any_length ? length_mm(*next) : next->amount;
            value = Quantity{sign == '+' ? a + b : a - b, any_length};
        }
        return value;
    }

    Read product() {
        auto value = factor();
        while (value) {
            skipSpace();
            const char sign = peek();
            if (sign != '*' && sign != '/') break;
            ++at_;
            const auto next = factor();
            if (!next) return next;
            value = sign == '*' ? times(*value, *next) : divided(*value, *next);
        }
        return value;
    }
    static Read times(Quantity a, Quantity b) {
        if (a.is_length && b.is_length) return std::unexpected("can't multiply a length by a length");
        return Quantity{a.amount * b.amount, a.is_length || b.is_length};
    }
    static Read divided(Quantity a, Quantity b) {
        if (b.amount == 0) return std::unexpected("can't divide by 0");
        if (b.is_length) return std::unexpected("can't divide by a length");
        return Quantity{a.amount / b.amount, a.is_length};
    }

    Read factor() {
        skipSpace();
        if (depth_ > 50) return std::unexpected("too many brackets");
        if (peek() == '-' || peek() == '+') {
            const bool minus = peek() == '-';
            ++at_;
            ++depth_;
            auto value = factor();
            --depth_;
            if (value && minus) value->amount = -value->amount;
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

    Read quantity() {
        const auto value = number();
        if (!value) return std::unexpected(value.error());
        skipSpace();
        const auto length = [](double mm) { return Quantity{mm, true}; };
        if (take("mm")) return length(*value);
        if (take("cm")) return length(*value * 10);
        if (take("m")) return length(*value * 1000);
        if (take("'")) return length(feet(*value));
        if (const auto inches = fractionInches(*value, AfterFeet::No)) return length(*inches);
        if (take("\"")) return length(*value * kInch);
        return Quantity{*value, false};
    }

    enum class AfterFeet { No, Yes };
    /// "7/16"" or "6 7/16"" after its whole part; leaves everything unread when no inch mark follows where
    /// one is wanted. A bare "7/16" on its own is a sum, which comes to the same.
    std::optional<double> fractionInches(double first, AfterFeet after_feet) {
        const std::size_t start = at_;
        double whole = 0;
        double top = first;
        const bool mixed = peek() != '/';
        if (mixed) {
            const auto next = number();
            if (!next) return at_ = start, std::nullopt;
            whole = first;
            top = *next;
            skipSpace();
        }
        if (!take("/")) return at_ = start, std::nullopt;
        const auto bottom = number();
        const std::size_t end = at_;
        skipSpace();
        if (!bottom || *bottom == 0) return at_ = start, std::nullopt;
        if (!take("\"")) {
            const bool may_lack_mark = bare_.inches && (mixed || after_feet == AfterFeet::Yes);
            at_ = may_lack_mark ? end : start;
            if (!may_lack_mark) return std::nullopt;
        }
        return (whole + top / *bottom) * kInch;
    }

    /// What may follow feet: "5'", "5' 6"", "5'-6 7/16"", and without the mark where inches are meant.
    double feet(double count) {
        const std::size_t start = at_;
        skipSpace();
        const bool spaced = at_ > start;
        const bool minus = peek() == '-';
        if (minus) ++at_;
        skipSpace();
        if (const auto inches = number()) {
            const std::size_t end = at_;
            skipSpace();
            const bool bare = bare_.inches && !(spaced && minus);
            if (const auto fraction = fractionInches(*inches, bare ? AfterFeet::Yes : AfterFeet::No))
                return count * kFoot + *fraction;
            if (take("\"")) return count * kFoot + *inches * kInch;
            if (bare && !unitFollows()) return at_ = end, count * kFoot + *inches * kInch;
        }
        at_ = start;
        return count * kFoot;
    }
    /// "3'-6mm" is a difference of two lengths.
    bool unitFollows() const { return peek() == 'm' || peek() == 'c' || peek() == '\''; }

    std::string_view text_;
    BareLength bare_;
    std::size_t at_ = 0;
    int depth_ = 0;
};
} // namespace

std::expected<double, std::string> parseLength(std::string_view text) {
    return LengthParser(text, {}).parse();
}

std::expected<double, std::string> parseLength(std::string_view text, BareLength bare) {
    return LengthParser(text, bare).parse();
}

} // namespace gangway::edit
