#include "export/pdf_finish.hpp"

#include <fmt/format.h>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include <algorithm>
#include <exception>
#include <stdexcept>
#include <string_view>

namespace gangway::exporting {

namespace {

using Handle = QPDFObjectHandle;

Handle unicode(const std::string& utf8) {
    return Handle::newUnicodeString(utf8);
}

// Replaces "/Div << /MCID n >> BDC" by "/OC /Ln BDC", n-th stretch by n-th layer. Only whole lines count, and
// no line that carries on a string, so no printed text can pass for a mark; a count that differs is refused.
std::string layered(std::string_view content, const std::vector<std::size_t>& layer_runs) {
    std::string out;
    out.reserve(content.size());
    std::size_t next = 0;
    std::string mark = fmt::format("/{} << /MCID {} >> BDC", kLayerTag, next);
    bool carried_on = false;
    while (!content.empty()) {
        const std::size_t end = content.find('\n');
        const std::string_view line = content.substr(0, end);
        if (!carried_on && line == mark) {
            if (next >= layer_runs.size()) throw std::runtime_error("more layer marks than layers drawn");
            out += fmt::format("/OC /L{} BDC", layer_runs[next]);
            mark = fmt::format("/{} << /MCID {} >> BDC", kLayerTag, ++next);
        } else {
            out += line;
        }
        if (end == std::string_view::npos) break;
        out += '\n';
        carried_on = !line.empty() && line.back() == '\\';
        content.remove_prefix(end + 1);
    }
    if (next != layer_runs.size()) throw std::runtime_error("fewer layer marks than layers drawn");
    return out;
}

Handle box(const PdfPage& page) {
    return Handle::newArray({Handle::newInteger(0), Handle::newInteger(0), Handle::newReal(page.width_pt, 4),
                             Handle::newReal(page.height_pt, 4)});
}

void finishPage(QPDF& pdf, QPDFPageObjectHelper& helper, const PdfPage& page,
                const std::vector<Handle>& groups) {
    Handle object = helper.getObjectHandle();
    const auto buffer = object.getKey("/Contents").getStreamData(qpdf_dl_generalized);
    const std::string_view content(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
    object.replaceKey("/Contents", pdf.newStream(layered(content, page.layer_runs)));

    Handle properties = Handle::newDictionary();
    for (const std::size_t layer : page.layer_runs)
        properties.replaceKey(fmt::format("/L{}", layer), groups[layer]);
    Handle resources = helper.getAttribute("/Resources", true);
    if (!page.layer_runs.empty()) resources.replaceKey("/Properties", properties);

    for (const char* name : {"/MediaBox", "/CropBox", "/TrimBox"})
        object.replaceKey(name, box(page));
    // cairo's structure tree went with its tags; its transparency group has nothing transparent in it.
    for (const char* name : {"/StructParents", "/Tabs", "/Group"})
        object.removeKey(name);
}

void addLayers(Handle root, const std::vector<Handle>& groups) {
    if (groups.empty()) return;
    Handle settings = Handle::newDictionary();
    settings.replaceKey("/Name", Handle::newString("Sheets"));
    settings.replaceKey("/BaseState", Handle::newName("/ON"));
    settings.replaceKey("/ON", Handle::newArray(groups));
    settings.replaceKey("/OFF", Handle::newArray());
    settings.replaceKey("/Order", Handle::newArray(groups));
    Handle optional_content = Handle::newDictionary();
    optional_content.replaceKey("/OCGs", Handle::newArray(groups));
    optional_content.replaceKey("/D", settings);
    root.replaceKey("/OCProperties", optional_content);
}

/// Bookmarks of one level: chained, counted, under their parent.
void chain(Handle parent, std::vector<Handle>& entries) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
        entries[i].replaceKey("/Parent", parent);
        if (i == 0) continue;
        entries[i].replaceKey("/Prev", entries[i - 1]);
        entries[i - 1].replaceKey("/Next", entries[i]);
    }
    parent.replaceKey("/First", entries.front());
    parent.replaceKey("/Last", entries.back());
    parent.replaceKey("/Count", Handle::newInteger(static_cast<long long>(entries.size())));
}

Handle bookmark(QPDF& pdf, QPDFPageObjectHelper page, const std::string& title) {
    Handle entry = pdf.makeIndirectObject(Handle::newDictionary());
    entry.replaceKey("/Title", unicode(title));
    entry.replaceKey("/Dest", Handle::newArray({page.getObjectHandle(), Handle::newName("/Fit")}));
    return entry;
}

void addBookmarks(QPDF& pdf, Handle root, const std::vector<QPDFPageObjectHelper>& pages,
                  const PdfDocument& document) {
    Handle outlines = pdf.makeIndirectObject(Handle::newDictionary());
    outlines.replaceKey("/Type", Handle::newName("/Outlines"));
    std::vector<Handle> top;
    std::vector<Handle> below;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const PdfPage& page = document.pages[i];
        Handle entry = bookmark(pdf, pages[i], page.bookmark);
        if (page.group.empty()) {
            top.push_back(entry);
            continue;
        }
        if (i == 0 || document.pages[i - 1].group != page.group)
            top.push_back(bookmark(pdf, pages[i], page.group));
        below.push_back(entry);
        const bool last = i + 1 == document.pages.size() || document.pages[i + 1].group != page.group;
        if (!last) continue;
        chain(top.back(), below);
        below.clear();
    }
    chain(outlines, top);
    root.replaceKey("/Outlines", outlines);
    root.replaceKey("/PageMode", Handle::newName("/UseOutlines"));
}

/// Link annotations without a border (ISO 32000-1 12.5.6.5).
void addLinks(QPDF& pdf, const std::vector<QPDFPageObjectHelper>& pages, const PdfDocument& document) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        Handle annotations = Handle::newArray();
        for (const PdfLink& link : document.pages[i].links) {
            Handle annotation = Handle::newDictionary();
            annotation.replaceKey("/Type", Handle::newName("/Annot"));
            annotation.replaceKey("/Subtype", Handle::newName("/Link"));
            Handle rectangle = Handle::newArray();
            for (const double side : {link.left_pt, link.bottom_pt, link.right_pt, link.top_pt})
                rectangle.appendItem(Handle::newReal(side, 3));
            annotation.replaceKey("/Rect", rectangle);
            annotation.replaceKey("/Border", Handle::newArray({Handle::newInteger(0), Handle::newInteger(0),
                                                               Handle::newInteger(0)}));
            annotation.replaceKey("/Dest",
                                  Handle::newArray({QPDFPageObjectHelper(pages[link.page]).getObjectHandle(),
                                                    Handle::newName("/Fit")}));
            annotations.appendItem(pdf.makeIndirectObject(annotation));
        }
        if (!document.pages[i].links.empty())
            QPDFPageObjectHelper(pages[i]).getObjectHandle().replaceKey("/Annots", annotations);
    }
}

void addPageLabels(Handle root, const PdfDocument& document) {
    Handle numbers = Handle::newArray();
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        Handle label = Handle::newDictionary();
        label.replaceKey("/P", unicode(document.pages[i].label));
        numbers.appendItem(Handle::newInteger(static_cast<long long>(i)));
        numbers.appendItem(label);
    }
    Handle labels = Handle::newDictionary();
    labels.replaceKey("/Nums", numbers);
    root.replaceKey("/PageLabels", labels);
}

bool isDate(const std::string& date) {
    static constexpr std::string_view kForm = "0000-00-00";
    return date.size() == kForm.size() &&
           std::equal(date.begin(), date.end(), kForm.begin(),
                      [](char c, char form) { return form == '0' ? c >= '0' && c <= '9' : c == form; });
}

void addInfo(QPDF& pdf, const PdfDocument& document) {
    Handle info = Handle::newDictionary();
    const auto put = [&](const char* name, const std::string& value) {
        if (!value.empty()) info.replaceKey(name, unicode(value));
    };
    put("/Title", document.title);
    put("/Subject", document.subject);
    put("/Author", document.author);
    put("/Creator", "Gangway");
    if (isDate(document.date)) {
        const std::string stamp = fmt::format("D:{}{}{}000000Z", document.date.substr(0, 4),
                                              document.date.substr(5, 2), document.date.substr(8, 2));
        info.replaceKey("/CreationDate", Handle::newString(stamp));
        info.replaceKey("/ModDate", Handle::newString(stamp));
    }
    pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(info));
}

void finish(QPDF& pdf, const PdfDocument& document) {
    auto pages = QPDFPageDocumentHelper(pdf).getAllPages();
    if (pages.size() != document.pages.size())
        throw std::runtime_error("cairo wrote another number of pages");

    std::vector<Handle> groups;
    for (const std::string& layer : document.layers) {
        Handle group = Handle::newDictionary();
        group.replaceKey("/Type", Handle::newName("/OCG"));
        group.replaceKey("/Name", unicode(layer));
        groups.push_back(pdf.makeIndirectObject(group));
    }
    for (std::size_t i = 0; i < pages.size(); ++i)
        finishPage(pdf, pages[i], document.pages[i], groups);

    Handle root = pdf.getRoot();
    for (const char* name : {"/StructTreeRoot", "/MarkInfo"})
        root.removeKey(name);
    addLayers(root, groups);
    addBookmarks(pdf, root, pages, document);
    addLinks(pdf, pages, document);
    addPageLabels(root, document);
    // Paper must come out full size: no fitting to the printer's page (ISO 32000-1 table 150).
    Handle preferences = Handle::newDictionary();
    preferences.replaceKey("/PrintScaling", Handle::newName("/None"));
    preferences.replaceKey("/DisplayDocTitle", Handle::newBool(true));
    root.replaceKey("/ViewerPreferences", preferences);
    addInfo(pdf, document);
}

} // namespace

FinishedPdf finishPdf(const std::string& drawn, const PdfDocument& document) {
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        pdf.processMemoryFile("sheets", drawn.data(), drawn.size());
        finish(pdf, document);
        QPDFWriter writer(pdf);
        writer.setOutputMemory();
        writer.setMinimumPDFVersion("1.7");
        writer.setDeterministicID(true);
        writer.setObjectStreamMode(qpdf_o_disable);
        writer.setDecodeLevel(qpdf_dl_none);
        writer.setCompressStreams(true);
        writer.write();
        const auto bytes = writer.getBufferSharedPointer();
        return {std::string(reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()), {}};
    } catch (const std::exception& problem) {
        return {{}, fmt::format("the PDF could not be finished: {}", problem.what())};
    }
}

} // namespace gangway::exporting
