// Tables as a workbook through libxlsxwriter, which writes files only.
#include "export/files.hpp"
#include "export/tables.hpp"

#include <xlsxwriter.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <map>

#include <fmt/format.h>

namespace gangway::exporting {

namespace {

using sheets::Cell;
using sheets::Column;
using sheets::Row;
using sheets::Table;

constexpr std::uint8_t kPaperA4 = 9;        // ECMA-376 part 1, 18.3.1.63
constexpr std::size_t kNameLength = 31;     // of a worksheet, ECMA-376 part 1, 18.2.19
constexpr std::size_t kCellLength = 32'767; // Excel's limit, from memory
constexpr std::size_t kMarginLength = 80;   // what a page's head or foot takes of a name
constexpr double kWidest = 48;              // of a column, in figures; longer texts are wrapped
constexpr double kNarrowest = 6;
constexpr double kLineHeight_pt = 15;
constexpr std::chrono::year_month_day kNoDate{std::chrono::year(1980), std::chrono::January,
                                              std::chrono::day(1)}; // the first a ZIP file knows

/// Characters of a UTF-8 text.
std::size_t lengthOf(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// The text, or as many bytes of it as make whole characters, with the cut marked.
std::string cut(const std::string& text, std::size_t bytes) {
    if (text.size() <= bytes) return text;
    std::size_t end = bytes - 3;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
        --end;
    return text.substr(0, end) + "...";
}

/// "&" begins a code in heads and feet of pages.
std::string inMargin(const std::string& text) {
    std::string out;
    for (const char c : cut(text, kMarginLength))
        out += c == '&' ? std::string("&&") : std::string(1, c);
    return out;
}

/// Noon of the day, so that it is the same day in most time zones; any other text: a fixed day.
std::time_t timeOf(const std::string& date) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    const char* const text = date.data();
    const bool shaped = date.size() == 10 && date[4] == '-' && date[7] == '-' &&
                        std::from_chars(text, text + 4, year).ptr == text + 4 &&
                        std::from_chars(text + 5, text + 7, month).ptr == text + 7 &&
                        std::from_chars(text + 8, text + 10, day).ptr == text + 10;
    std::chrono::year_month_day given{std::chrono::year(year), std::chrono::month(month),
                                      std::chrono::day(day)};
    if (!shaped || !given.ok() || year < 1980) given = kNoDate;
    return std::chrono::system_clock::to_time_t(std::chrono::sys_days(given) + std::chrono::hours(12));
}

/// "0.0_0": this many decimals, and the room of those that others of the column have.
std::string numberFormat(int decimals, int most) {
    std::string code = "0";
    if (most > 0) code += decimals > 0 ? "." : "_.";
    for (int i = 0; i < most; ++i)
        code += i < decimals ? "0" : "_0";
    return code;
}

/// Looks of cells, each made once for a workbook.
class Looks {
public:
    explicit Looks(lxw_workbook* book) : book_(book) {
        head = workbook_add_format(book);
        format_set_bold(head);
        format_set_text_wrap(head);
        format_set_align(head, LXW_ALIGN_VERTICAL_TOP);
        format_set_bottom(head, LXW_BORDER_MEDIUM);
        number_head = workbook_add_format(book);
        format_set_bold(number_head);
        format_set_text_wrap(number_head);
        format_set_align(number_head, LXW_ALIGN_VERTICAL_TOP);
        format_set_align(number_head, LXW_ALIGN_RIGHT);
        format_set_bottom(number_head, LXW_BORDER_MEDIUM);
        text = workbook_add_format(book);
        format_set_text_wrap(text);
        format_set_align(text, LXW_ALIGN_VERTICAL_TOP);
        total = workbook_add_format(book);
        format_set_bold(total);
        format_set_top(total, LXW_BORDER_THIN);
    }

    lxw_format* number(const std::string& code, bool is_total) {
        lxw_format*& format = numbers_[{code, is_total}];
        if (format != nullptr) return format;
        format = workbook_add_format(book_);
        format_set_num_format(format, code.c_str());
        format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
        if (is_total) {
            format_set_bold(format);
            format_set_top(format, LXW_BORDER_THIN);
        }
        return format;
    }

    lxw_format* head = nullptr;
    lxw_format* number_head = nullptr;
    lxw_format* text = nullptr;
    lxw_format* total = nullptr;

private:
    lxw_workbook* book_;
    std::map<std::pair<std::string, bool>, lxw_format*> numbers_;
};

double longestWord(const std::string& text) {
    std::size_t longest = 0;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        longest = std::max(longest, lengthOf(std::string_view(text).substr(from, to - from)));
        from = to + 1;
    }
    return static_cast<double>(longest);
}

/// Width of a column in figures of the usual face, from what stands in it.
double widthOf(const Table& table, std::size_t column) {
    const int most = sheets::decimalsShown(table, column);
    double width = std::max(kNarrowest, longestWord(sheets::headText(table.columns[column])));
    const auto take = [&](const Cell& cell) {
        width = std::max(width, static_cast<double>(lengthOf(sheets::cellText(cell, most))));
    };
    for (const Row& row : table.rows)
        take(row[column]);
    for (const Row& row : {sheets::totalsOf(table)})
        if (!row.empty()) take(row[column]);
    return std::min(width, kWidest) + 1.5; // its margins
}

/// Writes one table on one worksheet.
class Page {
public:
    Page(lxw_worksheet* sheet, Looks& looks, const Table& table)
        : sheet_(sheet), looks_(looks), table_(table) {}

    void write(const TablesAbout& about) {
        for (std::size_t i = 0; i < table_.columns.size(); ++i)
            head(i);
        for (const Row& row : table_.rows)
            cells(row, false);
        if (const Row sums = sheets::totalsOf(table_); !sums.empty()) cells(sums, true);
        notes();
        print(about);
    }

private:
    static lxw_col_t at(std::size_t column) { return static_cast<lxw_col_t>(column); }

    void head(std::size_t i) {
        const Column& column = table_.columns[i];
        const double width = widthOf(table_, i);
        width_ += width;
        worksheet_set_column(sheet_, at(i), at(i), width, nullptr);
        worksheet_write_string(sheet_, 0, at(i), sheets::headText(column).c_str(),
                               column.kind == Column::Kind::Number ? looks_.number_head : looks_.head);
    }

    void cells(const Row& row, bool total) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            lxw_format* const look = total ? looks_.total : looks_.text;
            if (const auto* value = std::get_if<double>(&row[i])) {
                const int most = sheets::decimalsShown(table_, i);
                const auto code = numberFormat(sheets::decimalsOf(*value, most), most);
                worksheet_write_number(sheet_, next_, at(i), tidied(*value), looks_.number(code, total));
            } else if (const auto* text = std::get_if<std::string>(&row[i]); text && !text->empty()) {
                worksheet_write_string(sheet_, next_, at(i), cut(*text, kCellLength).c_str(), look);
            } else if (total) {
                worksheet_write_blank(sheet_, next_, at(i), look);
            }
        }
        ++next_;
    }

    /// Under the table over its whole width, as high as they take.
    void notes() {
        if (table_.notes.empty()) return;
        ++next_;
        for (const std::string& note : table_.notes) {
            const double lines = std::ceil(static_cast<double>(lengthOf(note)) / width_);
            worksheet_set_row(sheet_, next_, kLineHeight_pt * lines, nullptr);
            worksheet_merge_range(sheet_, next_, 0, next_, at(table_.columns.size() - 1), note.c_str(),
                                  looks_.text);
            ++next_;
        }
    }

    void print(const TablesAbout& about) {
        worksheet_freeze_panes(sheet_, 1, 0);
        worksheet_repeat_rows(sheet_, 0, 0);
        worksheet_print_area(sheet_, 0, 0, next_ - 1, at(table_.columns.size() - 1));
        worksheet_set_landscape(sheet_);
        worksheet_set_paper(sheet_, kPaperA4);
        worksheet_fit_to_pages(sheet_, 1, 0);
        const std::string where = about.room.empty() ? table_.title : table_.title + ", " + about.room;
        worksheet_set_header(sheet_, fmt::format("&L{}&C{}&R{}", inMargin(about.project), inMargin(where),
                                                 inMargin(about.date))
                                         .c_str());
        // In two lines, so that it keeps clear of the page's number.
        std::string caution = about.caution;
        if (const auto stop = caution.find(". "); stop != std::string::npos) caution[stop + 1] = '\n';
        worksheet_set_footer(sheet_, fmt::format("&L&8 {}&R&8 &P / &N", caution).c_str());
    }

    lxw_worksheet* sheet_;
    Looks& looks_;
    const Table& table_;
    lxw_row_t next_ = 1;
    double width_ = 0;
};

void setProperties(lxw_workbook* book, const TablesAbout& about) {
    std::string title = about.project;
    std::string subject = about.room.empty() ? "Schedules" : "Schedules, " + about.room;
    std::string author = about.author;
    std::string comments = about.caution;
    lxw_doc_properties properties{};
    properties.title = title.data();
    properties.subject = subject.data();
    properties.author = author.data();
    properties.comments = comments.data();
    properties.created = timeOf(about.date);
    workbook_set_properties(book, &properties);
}

/// Why the file can't be made, empty when it can; libxlsxwriter itself would only print it.
std::string whyNot(const std::filesystem::path& file) {
    std::FILE* const out = std::fopen(file.c_str(), "wb");
    if (out == nullptr) return std::strerror(errno);
    std::fclose(out);
    return {};
}

std::string fill(std::span<const Table> tables, const TablesAbout& about, const std::filesystem::path& part) {
    if (std::string why = whyNot(part); !why.empty()) return why;
    lxw_workbook* const book = workbook_new(part.c_str());
    if (book == nullptr) return "there is not enough memory";
    Looks looks(book);
    setProperties(book, about);
    for (const Table& table : tables) {
        lxw_worksheet* const sheet = workbook_add_worksheet(book, cut(table.title, kNameLength).c_str());
        if (sheet != nullptr) Page(sheet, looks, table).write(about);
    }
    const lxw_error error = workbook_close(book);
    return error == LXW_NO_ERROR ? "" : lxw_strerror(error);
}

} // namespace

std::expected<void, std::string> writeXlsx(std::span<const Table> tables, const TablesAbout& about,
                                           const std::filesystem::path& file) {
    return replaceFile(file, [&](const std::filesystem::path& part) { return fill(tables, about, part); });
}

} // namespace gangway::exporting
