#include "plan/json_text.hpp"

#include "plan/utf8.hpp"

namespace gangway::plan {

namespace {
void appendEscape(std::string& out, unsigned char c) {
    constexpr std::string_view kHex = "0123456789abcdef";
    switch (c) {
    case '"':
        out += "\\\"";
        return;
    case '\\':
        out += "\\\\";
        return;
    case '\n':
        out += "\\n";
        return;
    case '\r':
        out += "\\r";
        return;
    case '\t':
        out += "\\t";
        return;
    default:
        out += "\\u00";
        out += kHex[c >> 4U];
        out += kHex[c & 15U];
    }
}
} // namespace

void appendQuoted(std::string& out, std::string_view text) {
    out += '"';
    for (std::size_t at = 0; at < text.size();) {
        const auto c = static_cast<unsigned char>(text[at]);
        if (c < 0x20 || c == '"' || c == '\\') {
            appendEscape(out, c);
            ++at;
        } else if (const std::size_t length = utf8Length(text, at); length > 0) {
            out += text.substr(at, length);
            at += length;
        } else {
            out += "\xEF\xBF\xBD"; // U+FFFD
            ++at;
        }
    }
    out += '"';
}

void JsonText::separate() {
    Level& level = levels_.back();
    if (level.after_key) {
        level.after_key = false;
        return;
    }
    if (levels_.size() == 1) return;
    if (!level.empty) out_ += on_one_line_ ? ", " : ",";
    level.empty = false;
    if (!on_one_line_) {
        out_ += '\n';
        line_start_ = out_.size();
        out_.append(2 * (levels_.size() - 1), ' ');
    }
}

void JsonText::breakLine(bool object) {
    if (on_one_line_) {
        if (object) out_ += ' ';
        return;
    }
    out_ += '\n';
    line_start_ = out_.size();
    out_.append(2 * (levels_.size() - 1), ' ');
}

void JsonText::key(std::string_view name) {
    const bool first = levels_.back().empty;
    separate();
    if (on_one_line_ && first) out_ += ' ';
    appendQuoted(out_, name);
    out_ += ": ";
    levels_.back().after_key = true;
}

void JsonText::value(std::string_view raw) {
    separate();
    out_ += raw;
}

void JsonText::text(std::string_view value) {
    separate();
    appendQuoted(out_, value);
}

} // namespace gangway::plan
