#include "ui/print/page_painter.h"

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include "ui/print/keep_bytes.h"
#include "ui/print/label_painter.h"
#include "ui/print/sheet_painter.h"

namespace combwright {
namespace {

/// Around a picture, in the units of SheetPainter.
constexpr double pictureEdge = 16.0;

/// All sheets of a page with a painter begun on the device.
int paintSheets(QPainter& painter, QPagedPaintDevice& device, const Page& page, const Look& look,
                double zoom, int sheets, int before) {
    painter.save();
    const double scale = device.logicalDpiX() / unitsPerInch * zoom;
    painter.scale(scale, scale);
    const PaintGround ground{painter, device.width() / scale, device.height() / scale,
                             [&device] { device.newPage(); }};
    const int took = SheetPainter(ground, page, look, sheets, before).paint();
    painter.restore();
    return took;
}

/// How many sheets a page takes is known only after painting it once, on a device that is thrown
/// away.
int countSheets(const QPagedPaintDevice& like, const Page& page, const Look& look, double zoom) {
    class Counting : public QIODevice {
      public:
        bool isSequential() const override { return true; }
        qint64 readData(char*, qint64) override { return -1; }
        qint64 writeData(const char*, qint64 size) override { return size; }
    } nowhere;
    nowhere.open(QIODevice::WriteOnly);
    QPdfWriter counter(&nowhere);
    counter.setResolution(like.logicalDpiX());
    counter.setPageLayout(like.pageLayout());
    QPainter painter(&counter);
    return paintSheets(painter, counter, page, look, zoom, 1, 0);
}

/// The list of what is bound, with the sheets they begin on.
Page withNumbers(Page list, const std::vector<int>& begins) {
    for (Block& block : list.blocks) {
        auto* table = std::get_if<TableBlock>(&block);
        if (!table) continue;
        for (std::size_t n = 0; n < table->rows.size() && n < begins.size(); ++n)
            table->rows[n].cells.back().text = QString::number(begins[n]);
        break;
    }
    return list;
}

double paintPicture(QPaintDevice& device, const Page& page, const Look& look, double width,
                    double factor = 1) {
    QPainter painter(&device);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(factor, factor);
    painter.translate(pictureEdge, pictureEdge);
    const PaintGround ground{painter, width - 2 * pictureEdge, std::nullopt, {}};
    SheetPainter picture(ground, page, look, 1);
    picture.paint();
    return picture.height() + 2 * pictureEdge;
}

}  // namespace

int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base, double zoom) {
    const Look look = paperLook(base);
    if (const LabelsBlock* labels = labelsOf(page)) return paintLabels(device, *labels, look);
    int sheets = countSheets(device, page, look, zoom);
    std::vector<int> begins;
    for (const Page& each : page.bound) {
        begins.push_back(sheets + 1);
        sheets += countSheets(device, each, look, zoom);
    }
    QPainter painter(&device);
    int before = paintSheets(painter, device, withNumbers(page, begins), look, zoom, sheets, 0);
    for (const Page& each : page.bound) {
        device.newPage();
        before += paintSheets(painter, device, each, look, zoom, sheets, before);
    }
    return before;
}

QString writePdf(const Page& page, const QString& path, const QFont& base, const QPageSize& size,
                 double zoom) {
    // Into memory first: a full disk is noticed, and half a sheet never lies there.
    QBuffer sheet;
    sheet.open(QIODevice::WriteOnly);
    QPdfWriter writer(&sheet);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setTitle(page.title);
    writer.setResolution(300);
    writer.setPageLayout(QPageLayout(size, QPageLayout::Portrait, QMarginsF(15, 14, 15, 12),
                                     QPageLayout::Millimeter));
    // Labels lie on the paper they are bought on.
    if (const LabelsBlock* labels = labelsOf(page))
        writer.setPageLayout(QPageLayout(
            QPageSize(QSizeF(labels->paperWidthMm, labels->paperHeightMm), QPageSize::Millimeter),
            QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
    paintPage(writer, page, base, zoom);
    return keepBytes(path, sheet.data());
}

QString writePicture(const Page& page, const QString& path, const Look& look, int width) {
    QImage measure(1, 1, QImage::Format_RGB32);
    const int height = static_cast<int>(paintPicture(measure, page, look, width));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return file.errorString();
    if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive)) {
        QSvgGenerator svg;
        svg.setOutputDevice(&file);
        svg.setSize(QSize(width, height));
        svg.setViewBox(QRect(0, 0, width, height));
        svg.setTitle(page.title);
        paintPicture(svg, page, look, width);
        return {};
    }
    QImage picture(QSize(width, height) * 2, QImage::Format_RGB32);
    picture.fill(look.tone(Tone::Ground));
    paintPicture(picture, page, look, width, 2);
    if (picture.save(&file, "PNG")) return {};
    return file.errorString();
}

}  // namespace combwright
