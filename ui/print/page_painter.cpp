#include "ui/print/page_painter.h"

#include <QBuffer>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <utility>

#include "ui/print/keep_bytes.h"
#include "ui/print/label_painter.h"
#include "ui/print/pdf_outline.h"
#include "ui/print/sheet_painter.h"

namespace combwright {
namespace {

/// Around a picture, in the units of SheetPainter.
constexpr double pictureEdge = 16.0;

/// A wide page on paper that stands upright, as in a binder.
bool turnedOn(const QPagedPaintDevice& device, const Page& page) {
    return page.wide && device.pageLayout().orientation() == QPageLayout::Portrait;
}

/// All sheets of a page with a painter begun on the device.
int paintSheets(QPainter& painter, QPagedPaintDevice& device, const Page& page, const Look& look,
                double zoom, int sheets, int before) {
    painter.save();
    const double scale = device.logicalDpiX() / unitsPerInch * zoom;
    double width = device.width();
    double height = device.height();
    if (turnedOn(device, page)) {
        painter.translate(width, 0);
        painter.rotate(90);
        std::swap(width, height);
    }
    painter.scale(scale, scale);
    const PaintGround ground{painter, width / scale, height / scale,
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

/// A page that is to hang as one sheet is set closer where that saves the second one, but not as
/// small as to be hard to read; where large type is asked for, not at all.
double closeZoom(const QPagedPaintDevice& like, const Page& page, const Look& look, double zoom) {
    if (!page.oneSheet || zoom > 1) return zoom;
    for (const double closer : {1.0, 0.97, 0.94, 0.91})
        if (countSheets(like, page, look, zoom * closer) == 1) return zoom * closer;
    return zoom;
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

QPageLayout::Orientation orientationOf(const Page& page) {
    return page.wide ? QPageLayout::Landscape : QPageLayout::Portrait;
}

std::vector<PaintedPage> paintPages(QPagedPaintDevice& device, const Page& page, const QFont& base,
                                    double zoom) {
    const Look look = paperLook(base);
    if (const LabelsBlock* labels = labelsOf(page))
        return {{page.title, 1, paintLabels(device, *labels, look), false}};
    std::vector<const Page*> pages{&page};
    for (const Page& each : page.bound) pages.push_back(&each);
    std::vector<PaintedPage> painted;
    std::vector<double> zooms;
    int sheets = 0;
    for (const Page* each : pages) {
        zooms.push_back(closeZoom(device, *each, look, zoom));
        const int takes = countSheets(device, *each, look, zooms.back());
        painted.push_back({each->title, sheets + 1, takes, turnedOn(device, *each)});
        sheets += takes;
    }
    std::vector<int> begins;
    for (std::size_t n = 1; n < painted.size(); ++n) begins.push_back(painted[n].begins);
    QPainter painter(&device);
    for (std::size_t n = 0; n < pages.size(); ++n) {
        if (n > 0) device.newPage();
        paintSheets(painter, device, n > 0 ? *pages[n] : withNumbers(page, begins), look, zooms[n],
                    sheets, painted[n].begins - 1);
    }
    return painted;
}

int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base, double zoom) {
    const PaintedPage last = paintPages(device, page, base, zoom).back();
    return last.begins - 1 + last.sheets;
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
    writer.setPageLayout(
        QPageLayout(size, orientationOf(page), QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter));
    // Labels lie on the paper they are bought on.
    if (const LabelsBlock* labels = labelsOf(page))
        writer.setPageLayout(QPageLayout(
            QPageSize(QSizeF(labels->paperWidthMm, labels->paperHeightMm), QPageSize::Millimeter),
            QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
    const std::vector<PaintedPage> painted = paintPages(writer, page, base, zoom);
    return keepBytes(path, page.bound.empty() ? sheet.data() : withOutline(sheet.data(), painted));
}

QString writePicture(const Page& page, const QString& path, const Look& look, int width) {
    QImage measure(1, 1, QImage::Format_RGB32);
    const int height = static_cast<int>(paintPicture(measure, page, look, width));
    QBuffer drawn;
    drawn.open(QIODevice::WriteOnly);
    if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive)) {
        QSvgGenerator svg;
        svg.setOutputDevice(&drawn);
        svg.setSize(QSize(width, height));
        svg.setViewBox(QRect(0, 0, width, height));
        svg.setTitle(page.title);
        paintPicture(svg, page, look, width);
        return keepBytes(path, drawn.data());
    }
    QImage picture(QSize(width, height) * 2, QImage::Format_RGB32);
    picture.fill(look.tone(Tone::Ground));
    paintPicture(picture, page, look, width, 2);
    picture.save(&drawn, "PNG");
    return keepBytes(path, drawn.data());
}

}  // namespace combwright
