// Labels on paper: the square code of every one is read back by a library that knows nothing of us,
// print stays within its cell, and what a printer is off is taken back on the paper itself.
#include "ui/print/label_painter.h"

#include <gtest/gtest.h>
#include <zbar.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QTemporaryDir>
#include <map>

#include "core/exchange/qr_code.h"
#include "ui/print/page_painter.h"

namespace combwright {
namespace {

constexpr double testDotsPerMm = 12;  // about 300 an inch

LabelDrawn jarLabelDrawn(const QString& code) {
    LabelDrawn label;
    label.head = QStringLiteral("Honey");
    label.net = QStringLiteral("454 g");
    label.lines =
        QStringList{QStringLiteral("Hill Bees, 1 Lane, Hill"), QStringLiteral("origin: Ireland"),
                    QStringLiteral("lot ") + code, QStringLiteral("best before 10 Sep 2029")};
    label.caution = QStringLiteral("Not for babies under 12 months.");
    const auto made = qrCode(code.toStdString());
    EXPECT_TRUE(made);
    if (made) label.qr = {made->side, made->dark, qrRim};
    return label;
}

/// Two kinds of labels in turn over a sheet of 3 by 7.
LabelsBlock labelBlock(bool round = false) {
    LabelsBlock block;
    block.paper = QStringLiteral("A4");
    block.cellWidthMm = round ? 60 : 63.5;
    block.cellHeightMm = round ? 60 : 38.1;
    block.round = round;
    block.labels = {jarLabelDrawn(QStringLiteral("L27-4-2")),
                    jarLabelDrawn(QStringLiteral("L27-5-1"))};
    block.sheets.resize(1);
    const int rows = round ? 4 : 7;
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < 3; ++column)
            block.sheets[0].push_back({round ? 10.0 + 65 * column : 7.25 + 66 * column,
                                       round ? 18.0 + 67 * row : 15.15 + 38.1 * row,
                                       static_cast<std::size_t>((row * 3 + column) % 2),
                                       {}});
    return block;
}

QImage sheetPainted(const LabelsBlock& block) {
    QImage image(static_cast<int>(block.paperWidthMm * testDotsPerMm),
                 static_cast<int>(block.paperHeightMm * testDotsPerMm), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(testDotsPerMm, testDotsPerMm);
    paintLabelSheet(painter, paperLook(QApplication::font()), block, 0);
    return image;
}

/// How often each text was read in a picture.
std::map<QString, int> codesRead(const QImage& picture) {
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    QByteArray bytes;
    for (int y = 0; y < grey.height(); ++y)
        bytes.append(reinterpret_cast<const char*>(grey.constScanLine(y)), grey.width());
    zbar::zbar_image_scanner_t* scanner = zbar::zbar_image_scanner_create();
    zbar::zbar_image_scanner_set_config(scanner, zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    zbar::zbar_image_scanner_set_config(scanner, zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    zbar::zbar_image_t* image = zbar::zbar_image_create();
    zbar::zbar_image_set_format(image, 0x30303859);  // "Y800": one byte of grey a dot
    zbar::zbar_image_set_size(image, static_cast<unsigned>(grey.width()),
                              static_cast<unsigned>(grey.height()));
    zbar::zbar_image_set_data(image, bytes.constData(), static_cast<unsigned long>(bytes.size()),
                              nullptr);
    zbar::zbar_scan_image(scanner, image);
    std::map<QString, int> codes;
    for (const zbar::zbar_symbol_t* symbol = zbar::zbar_image_first_symbol(image); symbol;
         symbol = zbar::zbar_symbol_next(symbol))
        ++codes[QString::fromUtf8(zbar::zbar_symbol_get_data(symbol))];
    zbar::zbar_image_destroy(image);
    zbar::zbar_image_scanner_destroy(scanner);
    return codes;
}

/// Whether anything dark stands in a stretch of the picture, mm.
bool isBlank(const QImage& image, const QRectF& mm) {
    const QRect dots(static_cast<int>(mm.left() * testDotsPerMm),
                     static_cast<int>(mm.top() * testDotsPerMm),
                     static_cast<int>(mm.width() * testDotsPerMm),
                     static_cast<int>(mm.height() * testDotsPerMm));
    const QRect within = dots.intersected(image.rect());
    for (int y = within.top(); y <= within.bottom(); ++y)
        for (int x = within.left(); x <= within.right(); ++x)
            if (qGray(image.pixel(x, y)) < 128) return false;
    return true;
}

/// What is read of each label held before the camera alone; empty where that is not one code.
QStringList readOneByOne(const LabelsBlock& block) {
    const QImage sheet = sheetPainted(block);
    QStringList read;
    for (const PlacedCell& at : block.sheets[0]) {
        const QRectF cell(at.leftMm * testDotsPerMm, at.topMm * testDotsPerMm,
                          block.cellWidthMm * testDotsPerMm, block.cellHeightMm * testDotsPerMm);
        const auto codes = codesRead(sheet.copy(cell.toRect()));
        read << (codes.size() == 1 ? codes.begin()->first : QString());
    }
    return read;
}

TEST(LabelPainter, EveryCodeIsReadBack) {
    for (const bool round : {false, true}) {
        const LabelsBlock block = labelBlock(round);
        const QStringList read = readOneByOne(block);
        ASSERT_EQ(read.size(), round ? 12 : 21);
        for (int i = 0; i < read.size(); ++i)
            EXPECT_EQ(read[i].toStdString(), i % 2 == 0 ? "L27-4-2" : "L27-5-1") << i;
    }
}

TEST(LabelPainter, PrintStaysWithinItsCell) {
    const LabelsBlock block = labelBlock();
    const QImage image = sheetPainted(block);
    EXPECT_TRUE(isBlank(image, QRectF(0, 0, 210, 15.15 + 1)));
    EXPECT_TRUE(isBlank(image, QRectF(0, 0, 7.25 + 1, 297)));
    EXPECT_TRUE(isBlank(image, QRectF(7.25 + 63.5 - 1, 0, 2.5 + 2, 297))) << "between columns";
    for (int row = 1; row < 7; ++row)
        EXPECT_TRUE(isBlank(image, QRectF(0, 15.15 + 38.1 * row - 1, 210, 2))) << row;
    EXPECT_FALSE(isBlank(image, QRectF(7.25, 15.15, 63.5, 38.1)));
}

TEST(LabelPainter, APdfOfLabelsHasItsPaperAndNoMargins) {
    QTemporaryDir folder;
    const QString pdf = folder.filePath(QStringLiteral("labels.pdf"));
    Page page;
    page.title = QStringLiteral("Labels");
    page.blocks.emplace_back(labelBlock());
    // Whatever paper is in the printer's settings, labels keep their own.
    ASSERT_EQ(writePdf(page, pdf, QApplication::font(), QPageSize(QPageSize::Letter)), QString());
    QProcess toPicture;
    toPicture.start(
        QStringLiteral("pdftoppm"),
        {QStringLiteral("-r"), QStringLiteral("300"), QStringLiteral("-png"),
         QStringLiteral("-singlefile"), pdf, folder.filePath(QStringLiteral("labels"))});
    ASSERT_TRUE(toPicture.waitForFinished(30000));
    const QImage image(folder.filePath(QStringLiteral("labels.png")));
    ASSERT_FALSE(image.isNull());
    EXPECT_NEAR(image.width(), 210 / 25.4 * 300, 3);
    EXPECT_NEAR(image.height(), 297 / 25.4 * 300, 3);
    EXPECT_EQ(codesRead(image).size(), 2U);
    // The first label's code stands where its cell ends, 7.25 + 63.5 - 2 mm from the left.
    const double perMm = 300 / 25.4;
    const auto darkIn = [&](double fromMm, double toMm) {
        for (int y = static_cast<int>(15.15 * perMm); y < static_cast<int>(53 * perMm); ++y)
            for (int x = static_cast<int>(fromMm * perMm); x < static_cast<int>(toMm * perMm); ++x)
                if (qGray(image.pixel(x, y)) < 128) return true;
        return false;
    };
    EXPECT_TRUE(darkIn(60, 68.7));
    EXPECT_FALSE(darkIn(69, 73));
}

TEST(LabelPainter, ACalibrationPageDrawsEdgesAndAScale) {
    LabelsBlock block = labelBlock();
    block.outlines = true;
    block.about = QStringList{QStringLiteral("Hold it against a window.")};
    const QImage image = sheetPainted(block);
    EXPECT_FALSE(isBlank(image, QRectF(7.0, 15.0, 0.5, 20))) << "the left edge";
    EXPECT_FALSE(isBlank(image, QRectF(7.25 + 4.9, 15.2, 0.3, 1.5))) << "the tick at 5 mm";
    EXPECT_TRUE(codesRead(image).empty());
}

TEST(LabelPainter, OnlyAPageOfNothingElseIsASheetOfLabels) {
    Page page;
    page.blocks.emplace_back(labelBlock());
    EXPECT_NE(labelsOf(page), nullptr);
    page.blocks.emplace_back(TextBlock{});
    EXPECT_EQ(labelsOf(page), nullptr);
}

}  // namespace
}  // namespace combwright
