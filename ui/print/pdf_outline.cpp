#include "ui/print/pdf_outline.h"

#include <exception>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace combwright {
namespace {

QPDFObjectHandle nameObject(const char* name) { return QPDFObjectHandle::newName(name); }

/// Where a line of contents leads: to the top of a sheet, as large as it is shown.
QPDFObjectHandle topOf(const QPDFObjectHandle& sheet) {
    QPDFObjectHandle at = QPDFObjectHandle::newArray();
    at.appendItem(sheet);
    at.appendItem(nameObject("/XYZ"));
    for (int i = 0; i < 3; ++i) at.appendItem(QPDFObjectHandle::newNull());
    return at;
}

void addOutline(QPDF& file, const std::vector<PaintedPage>& pages) {
    std::vector<QPDFPageObjectHelper> sheets = QPDFPageDocumentHelper(file).getAllPages();
    QPDFObjectHandle outline = file.makeIndirectObject(QPDFObjectHandle::newDictionary());
    std::vector<QPDFObjectHandle> lines;
    for (const PaintedPage& page : pages) {
        const auto first = static_cast<std::size_t>(page.begins - 1);
        for (std::size_t n = first;
             page.turned && n < first + static_cast<std::size_t>(page.sheets); ++n)
            sheets.at(n).getObjectHandle().replaceKey("/Rotate", QPDFObjectHandle::newInteger(270));
        QPDFObjectHandle line = file.makeIndirectObject(QPDFObjectHandle::newDictionary());
        line.replaceKey("/Title", QPDFObjectHandle::newUnicodeString(page.title.toStdString()));
        line.replaceKey("/Parent", outline);
        line.replaceKey("/Dest", topOf(sheets.at(first).getObjectHandle()));
        if (!lines.empty()) {
            line.replaceKey("/Prev", lines.back());
            lines.back().replaceKey("/Next", line);
        }
        lines.push_back(line);
    }
    if (lines.empty()) return;
    outline.replaceKey("/Type", nameObject("/Outlines"));
    outline.replaceKey("/First", lines.front());
    outline.replaceKey("/Last", lines.back());
    outline.replaceKey("/Count",
                       QPDFObjectHandle::newInteger(static_cast<long long>(lines.size())));
    file.getRoot().replaceKey("/Outlines", outline);
    file.getRoot().replaceKey("/PageMode", nameObject("/UseOutlines"));
}

}  // namespace

QByteArray withOutline(const QByteArray& pdf, const std::vector<PaintedPage>& pages) {
    try {
        QPDF file;
        file.processMemoryFile("sheets", pdf.constData(), static_cast<std::size_t>(pdf.size()));
        addOutline(file, pages);
        QPDFWriter writer(file);
        writer.setOutputMemory();
        // As PDF/A-1 wants it: no objects in streams, a line's end before each stream's end, and
        // what Qt wrote of itself left readable.
        writer.setObjectStreamMode(qpdf_o_disable);
        writer.setNewlineBeforeEndstream(true);
        writer.setStreamDataMode(qpdf_s_preserve);
        writer.setDeterministicID(true);
        writer.write();
        const auto written = writer.getBufferSharedPointer();
        return {reinterpret_cast<const char*>(written->getBuffer()),
                static_cast<qsizetype>(written->getSize())};
    } catch (const std::exception&) {
        // A binder without contents is better than none.
        return pdf;
    }
}

}  // namespace combwright
