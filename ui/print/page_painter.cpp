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

/// All sheets of a page on a device whose size is set.
int paintSheets(QPagedPaintDevice& device, const Page& page, const Look& look, int sheets) {
    QPainter painter(&device);
    const double scale = device.logicalDpiX() / unitsPerInch;
    painter.scale(scale, scale);
    const PaintGround ground{painter, device.width() / scale, device.height() / scale,
                             [&device] { device.newPage(); }};
    return SheetPainter(ground, page, look, sheets).paint();
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

int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base) {
    const Look look = paperLook(base);
    if (const LabelsBlock* labels = labelsOf(page)) return paintLabels(device, *labels, look);
    // How many sheets there are is known only after painting them once, on a device that is thrown
    // away.
    int sheets = 1;
    {
        class Counting : public QIODevice {
          public:
            bool isSequential() const override { return true; }
            qint64 readData(char*, qint64) override { return -1; }
            qint64 writeData(const char*, qint64 size) override { return size; }
        } nowhere;
        nowhere.open(QIODevice::WriteOnly);
        QPdfWriter counter(&nowhere);
        counter.setResolution(device.logicalDpiX());
        counter.setPageLayout(device.pageLayout());
        sheets = paintSheets(counter, page, look, 1);
    }
    return paintSheets(device, page, look, sheets);
}

QString writePdf(const Page& page, const QString& path, const QFont& base, const QPageSize& size) {
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
    paintPage(writer, page, base);
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
