// What cairo's PDF lacks, added with qpdf: layers, bookmarks, page labels, actual-size printing, exact boxes,
// a date that is given and an id that depends on nothing but the content. Private to export/.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace gangway::exporting {

/// The structure tag that brackets a stretch of one layer in cairo's page content.
inline constexpr const char* kLayerTag = "Div";

/// A rectangle of a page that leads to another.
struct PdfLink {
    double left_pt = 0, bottom_pt = 0, right_pt = 0, top_pt = 0;
    std::size_t page = 0; ///< from 0
};

struct PdfPage {
    double width_pt = 0;
    double height_pt = 0;
    std::string label; ///< the sheet's number
    std::string bookmark;
    std::string group; ///< bookmarks of pages in a row with the same one stand under it; empty: on their own
    std::vector<PdfLink> links;
    std::vector<std::size_t> layer_runs; ///< for each stretch of content in order: index of its layer
};

struct PdfDocument {
    std::string title, subject, author;
    std::string date; ///< YYYY-MM-DD; anything else leaves the file without a date
    std::vector<std::string> layers;
    std::vector<PdfPage> pages;
};

struct FinishedPdf {
    std::string bytes;
    std::string problem; ///< a sentence, empty when all went well
};

/// A finished PDF from one that cairo wrote. Texts are valid UTF-8. This pair of files is C++17: under newer
/// standards clang rejects qpdf 11.3's headers (a vector of an incomplete class).
FinishedPdf finishPdf(const std::string& drawn, const PdfDocument& document);

} // namespace gangway::exporting
