// What other people's programs (poppler's tools, qpdf) find in our PDF files.
#include "sample_sheet.hpp"

#include "drawing/face.hpp"
#include "export/export.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <set>
#include <sstream>

using namespace gangway;
using Catch::Matchers::Contains;
using gangway::testing::fileBytes;
using gangway::testing::freshFolder;
using gangway::testing::output;
using gangway::testing::sampleDrawing;

namespace {

constexpr double kMillimetresPerPoint = 25.4 / 72;

std::filesystem::path written(const std::string& name, const drawing::Drawing& drawing = sampleDrawing()) {
    const std::filesystem::path file = freshFolder(name) / "sheets.pdf";
    const auto result = exporting::writePdf(drawing, file);
    INFO((result ? std::string() : result.error()));
    REQUIRE(result.has_value());
    return file;
}

// The file with its streams as text, by qpdf.
std::string readable(const std::filesystem::path& file) {
    return output("qpdf --qdf --object-streams=disable '" + file.string() + "' -");
}

struct Word {
    std::string text;
    double left_mm = 0, right_mm = 0, low_mm = 0, high_mm = 0; // paper, y up
};

std::vector<Word> words(const std::filesystem::path& file, double page_height_mm) {
    std::istringstream list(output("pdftotext -f 1 -l 1 -bbox '" + file.string() + "' -"));
    std::vector<Word> found;
    for (std::string line; std::getline(list, line);) {
        std::array<double, 4> box{};
        std::array<char, 200> text{};
        constexpr const char* kForm = R"( <word xMin="%lf" yMin="%lf" xMax="%lf" yMax="%lf">%199[^<])";
        if (std::sscanf(line.c_str(), kForm, &box[0], &box[1], &box[2], &box[3], text.data()) != 5) continue;
        for (double& side : box)
            side *= kMillimetresPerPoint;
        found.push_back({text.data(), box[0], box[2], page_height_mm - box[3], page_height_mm - box[1]});
    }
    return found;
}

// Every stretch of white space as one space, to find what qpdf spreads over lines.
std::string onOneLine(const std::string& text) {
    std::istringstream parts(text);
    std::string line;
    for (std::string part; parts >> part;) {
        line += part;
        line += ' ';
    }
    return line;
}

const Word& wordCalled(const std::vector<Word>& list, const std::string& text) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const Word& w) { return w.text == text; });
    INFO("word " << text);
    REQUIRE(found != list.end());
    return *found;
}

} // namespace

// Check values 3 and 4 (arithmetic): A3 landscape 1190.5512 x 841.8898 pt, A4 portrait 595.2756 x 841.8898.
TEST_CASE("a page is exactly its sheet") {
    drawing::Drawing drawing = sampleDrawing();
    drawing.sheets[1].width_mm = 210;
    const auto file = written("page-size", drawing);
    const std::string info = output("pdfinfo -box -f 1 -l 2 '" + file.string() + "'");
    CHECK_THAT(info, Contains("Page    1 size:  1190.55 x 841.89 pts (A3)"));
    CHECK_THAT(info, Contains("Page    2 size:  595.276 x 841.89 pts (A4)"));
    for (const char* box : {"MediaBox", "CropBox", "TrimBox"})
        CHECK_THAT(onOneLine(info), Contains(std::string("Page 1 ") + box + ": 0.00 0.00 1190.55 841.89 "));
    const std::string body = onOneLine(readable(file));
    CHECK_THAT(body, Contains("/MediaBox [ 0 0 1190.5512 841.8898 ]"));
    CHECK_THAT(body, Contains("/TrimBox [ 0 0 595.2756 841.8898 ]"));
}

TEST_CASE("a standards-minded reader finds nothing wrong") {
    int status = -1;
    const std::string report = output("qpdf --check '" + written("check").string() + "'", &status);
    INFO(report);
    CHECK(status == 0);
    CHECK_THAT(report, !Contains("WARNING"));
}

// Check value 50: PrintScaling none and version 1.6 at least; title, author, subject and the given date.
TEST_CASE("the file asks to be printed at its real size and carries the given date, not the clock's") {
    const auto file = written("catalog");
    CHECK_THAT(readable(file), Contains("/PrintScaling /None"));
    const std::string info = output("TZ=UTC pdfinfo -isodates '" + file.string() + "'");
    CHECK_THAT(info, Contains("PDF version:     1.7"));
    CHECK_THAT(info, Contains("Title:           Small house"));
    CHECK_THAT(info, Contains("Author:          An Invented Designer"));
    CHECK_THAT(info, Contains("Subject:         Wall elevations"));
    CHECK_THAT(info, Contains("CreationDate:    2026-03-01T00:00:00Z"));
    CHECK_THAT(info, Contains("Pages:           2"));
}

TEST_CASE("the drawing face is embedded") {
    const std::string fonts = output("pdffonts '" + written("fonts").string() + "'");
    CHECK_THAT(fonts, Contains("osifont"));
    std::istringstream lines(fonts);
    std::string line;
    std::getline(lines, line);
    const std::size_t column = line.find("emb");
    REQUIRE(column != std::string::npos);
    std::getline(lines, line);
    while (std::getline(lines, line))
        CHECK(line.substr(column, 3) == "yes");
}

// 1000 mm at 1:20 is 50.0 mm on paper (arithmetic), read from another program's reading of the page.
TEST_CASE("a line of one metre at 1:20 measures 50.0 mm") {
    const auto file = written("scale");
    const auto folder = file.parent_path();
    // On larger paper and unshrunk, poppler draws the page at 1:1; its paths are in points.
    output("pdftocairo -svg -noshrink -nocenter -paperw 1300 -paperh 900 -f 1 -l 1 '" + file.string() +
           "' '" + (folder / "page.svg").string() + "'");
    const std::string page = fileBytes(folder / "page.svg");
    // The line is the only open one 0.5 mm = 1.417323 pt wide.
    double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
    int read = 0;
    for (std::size_t at = page.find("stroke-width:1.417323"); at != std::string::npos && read != 4;
         at = page.find("stroke-width:1.417323", at + 1)) {
        const std::size_t data = page.find(" d=", at);
        REQUIRE(data != std::string::npos);
        read = std::sscanf(page.c_str() + data, R"( d="M %lf %lf L %lf %lf " transform="matrix(1,0,0,-1,)",
                           &x1, &y1, &x2, &y2);
    }
    REQUIRE(read == 4);
    const double length_pt = std::hypot(x2 - x1, y2 - y1);
    CHECK(length_pt * kMillimetresPerPoint == Approx(50.0).margin(0.01));
}

TEST_CASE("printed words stand where the display list put them") {
    const auto file = written("words");
    const auto found = words(file, 297);
    // Horizontal and centred: K-04 at (150, 117).
    const Word& tag = wordCalled(found, "K-04");
    const double width = drawing::measure("K-04", 3.5).width_mm;
    CHECK(tag.left_mm == Approx(150 - width / 2).margin(0.3));
    CHECK(tag.right_mm == Approx(150 + width / 2).margin(0.3));
    // poppler's box runs from descender to ascender; the baseline lies in it, the capitals' top too.
    CHECK(tag.low_mm <= 117.3);
    CHECK(tag.high_mm >= 117 + 3.5 - 0.3);
    // Right-aligned: ends at 150.
    CHECK(wordCalled(found, "after").right_mm == Approx(150).margin(0.3));
    // A linear value, centred over its line from 60 to 110.
    const Word& metre = wordCalled(found, "1000");
    CHECK((metre.left_mm + metre.right_mm) / 2 == Approx(85).margin(0.3));
}

TEST_CASE("every value of a running row is printed, turned by 90 degrees, where its mark is") {
    const auto file = written("turned");
    const auto found = words(file, 297);
    const drawing::Sheet sheet = sampleDrawing().sheets[0];
    int checked = 0;
    for (const drawing::Item& item : sheet.items) {
        const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive);
        if (!dimension || dimension->kind != drawing::Dimension::Kind::Running) continue;
        const drawing::Text& text = dimension->texts.at(0);
        const Word& word = wordCalled(found, text.text);
        // Right-aligned and turned: the word ends upwards at its anchor.
        CHECK(word.high_mm == Approx(text.at.y).margin(0.3));
        CHECK(word.high_mm - word.low_mm == Approx(drawing::measure(text.text, 3.5).width_mm).margin(0.3));
        CHECK(word.left_mm <= text.at.x - 3.5 + 0.3);
        CHECK(word.right_mm >= text.at.x - 0.3);
        ++checked;
    }
    CHECK(checked == 3);
}

TEST_CASE("letters beyond ASCII come out as they went in") {
    const std::string text = output("pdftotext -f 1 -l 1 '" + written("unicode").string() + "' -");
    CHECK_THAT(text, Contains("K\xC3\xBC"
                              "che \xE2\x80\x94 wall <A> & \xC2\xB1"
                              "5"));
}

TEST_CASE("each sheet has a bookmark that leads to its page") {
    const auto file = written("bookmarks");
    const std::string json = output("qpdf --json --json-key=outlines '" + file.string() + "'");
    CHECK_THAT(json, Contains("\"title\": \"E-01 Kitchen, wall A\""));
    CHECK_THAT(json, Contains("\"title\": \"E-02 Kitchen, wall A\""));
    CHECK_THAT(json, Contains("\"destpageposfrom1\": 1") && Contains("\"destpageposfrom1\": 2"));
    const std::string labels = output("qpdf --json --json-key=pagelabels '" + file.string() + "'");
    CHECK_THAT(labels, Contains("E-01") && Contains("E-02"));
}

TEST_CASE("each drawing layer is an optional layer of the file, once") {
    const std::string body = onOneLine(readable(written("layers")));
    std::multiset<std::string> names;
    for (std::size_t end = body.find(") /Type /OCG"); end != std::string::npos;
         end = body.find(") /Type /OCG", end + 1)) {
        const std::size_t start = body.rfind("/Name (", end) + 7;
        names.insert(body.substr(start, end - start));
    }
    CHECK(names == std::multiset<std::string>{"frame", "building", "plates", "openings", "furniture", "text",
                                              "dimensions"});
    CHECK_THAT(body, Contains("/OCProperties") && Contains("/BaseState /ON"));
    CHECK_THAT(body, !Contains("MCID") && !Contains("StructTreeRoot"));
}

TEST_CASE("the marks of layers open and close in turn, and a layer that comes up again is the same layer") {
    const std::string body = readable(written("marks"));
    std::vector<std::string> opened;
    int depth = 0;
    std::istringstream lines(body);
    for (std::string line; std::getline(lines, line);) {
        if (line.ends_with(" BDC")) {
            opened.push_back(line);
            CHECK(++depth == 1);
        }
        if (line == "EMC") CHECK(--depth == 0);
    }
    CHECK(depth == 0);
    // frame, building, plates, openings, furniture, text, dimensions, text: twice.
    const std::vector<std::string> page{"/OC /L0 BDC", "/OC /L1 BDC", "/OC /L2 BDC", "/OC /L3 BDC",
                                        "/OC /L4 BDC", "/OC /L5 BDC", "/OC /L6 BDC", "/OC /L5 BDC"};
    std::vector<std::string> both = page;
    both.insert(both.end(), page.begin(), page.end());
    CHECK(opened == both);
}

TEST_CASE("no printed text can pass for a mark of a layer") {
    drawing::Drawing drawing = sampleDrawing();
    std::string bait;
    for (int i = 0; i < 40; ++i)
        bait += "\n/Div << /MCID 8 >> BDC\n\\\nEMC ) Tj ";
    drawing.sheets[0].items.push_back(
        {"notes", "x", drawing::Text{{30, 30}, bait, 2.5, drawing::Align::Left, 0, drawing::kBlack, false}});
    const auto file = written("bait", drawing);
    int status = -1;
    output("qpdf --check '" + file.string() + "'", &status);
    CHECK(status == 0);
}

TEST_CASE("the same drawing gives the same bytes") {
    const auto first = written("same-a");
    const auto second = written("same-b");
    CHECK(fileBytes(first).size() > 1000);
    CHECK(fileBytes(first) == fileBytes(second));
}

TEST_CASE("every pen of the sheet arrives with its width in points and butt caps") {
    // Check value 16: 0.18 0.25 0.35 0.5 0.7 mm are 0.5102 0.7087 0.9921 1.4173 1.9843 pt.
    const std::string body = readable(written("pens"));
    for (const char* width : {"0.51023", "0.70866", "0.99212", "1.41732", "1.98425"})
        CHECK_THAT(body, Contains(std::string("\n") + width));
    CHECK_THAT(body, !Contains("\n1 J\n") && !Contains("\n2 J\n"));
}

TEST_CASE("what can't be written is said in a sentence, and nothing is left behind") {
    const auto folder = freshFolder("bad");
    const auto none = exporting::writePdf({}, folder / "none.pdf");
    REQUIRE_FALSE(none.has_value());
    CHECK_THAT(none.error(), Contains("there is no sheet to print"));
    drawing::Drawing drawing = sampleDrawing();
    const auto nowhere = exporting::writePdf(drawing, folder / "missing" / "sheets.pdf");
    REQUIRE_FALSE(nowhere.has_value());
    CHECK_THAT(nowhere.error(), Contains("cannot write '") && Contains("No such file or directory"));
    drawing.sheets[0].width_mm = 0;
    const auto flat = exporting::writePdf(drawing, folder / "flat.pdf");
    REQUIRE_FALSE(flat.has_value());
    CHECK_THAT(flat.error(), Contains("sheet 'E-01' is 0 x 297 mm"));
    std::filesystem::create_directory(folder / "taken.pdf");
    CHECK_FALSE(exporting::writePdf(sampleDrawing(), folder / "taken.pdf").has_value());
    CHECK(std::distance(std::filesystem::directory_iterator(folder), {}) == 1);
}

TEST_CASE("strange names and texts still give a sound file") {
    drawing::Drawing drawing = sampleDrawing();
    drawing.title = "\xFF\xFE broken \x01 (title) \\ <<>>";
    drawing.date = "yesterday";
    drawing.sheets[0].title = std::string("null\0in it", 10);
    drawing.sheets[0].items.push_back({"odd (layer) \xC3", "id", drawing::Line{{1, 1}, {2, 2}, {}}});
    drawing.sheets[0].items.push_back(
        {"", "", drawing::Text{{9, 9}, "\xE2\x98\x83 \xC3", 3.5, {}, 0, {}, true}});
    drawing.sheets[1].items.clear();
    int status = -1;
    const std::string report = output("qpdf --check '" + written("strange", drawing).string() + "'", &status);
    INFO(report);
    CHECK(status == 0);
}
