#include "ui/drawing/gallery.h"

#include <QPainter>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/drawing/gallery_samples.h"
#include "ui/drawing/key_cap.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Width and height of the sheet and its left and right edge, at the base font.
constexpr double sheetWidth = 1280.0;
constexpr double sheetHeight = 1664.0;
constexpr double sheetEdge = 48.0;

/// The sheet while it is painted; all positions are at the base font.
struct Gallery {
    QPainter& painter;
    const Look& look;

    double px(double at) const { return look.px(at); }
    QRectF box(double x, double y, double width, double height) const {
        return {px(x), px(y), px(width), px(height)};
    }
    void text(double x, double y, const TextLine& line, TextSize size = TextSize::Note,
              Qt::Alignment align = Qt::AlignLeft) const {
        paintLine(painter, {px(x), px(y)}, line, size, look, align);
    }
    void caption(double x, double y, const QString& title, const QString& words) const;
    void head(double y, const QString& title, const QString& words) const;

    void frames() const;
    void kinds() const;
    void sides() const;
    void stacks() const;
    void buckets() const;
    void rows() const;
    void extractors() const;
    void extractorLegend() const;
    void ribbon() const;
    void balance() const;
    void figures() const;
};

void Gallery::caption(double x, double y, const QString& title, const QString& words) const {
    text(x, y, {{title, true}}, TextSize::Note, Qt::AlignHCenter);
    for (const auto& line : words.split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        y += 15.5;
        text(x, y, {{line, false, Tone::Muted}}, TextSize::Note, Qt::AlignHCenter);
    }
}

void Gallery::head(double y, const QString& title, const QString& words) const {
    const double right = sheetWidth - sheetEdge;
    painter.setPen(plainPen(look.tone(Tone::Ink), px(1.4)));
    painter.drawLine(QPointF(px(sheetEdge), px(y)), QPointF(px(right), px(y)));
    text(sheetEdge, y + 20.0, {{title, true}}, TextSize::Head);
    text(right, y + 20.0, {{words, false, Tone::Muted}}, TextSize::Note, Qt::AlignRight);
}

void Gallery::frames() const {
    head(57.0, "Frame, from the side",
         "medium, 482.6 × 158.8 mm; shares filled and capped true by area; a letter for what one "
         "sees");
    const auto samples = frameSamples();
    const double feet[] = {140.0, 244.0, 344.0};
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double x = sheetEdge + 150.6 * static_cast<double>(i % 8);
        const double foot = feet[i / 8];
        paintFrame(painter, box(x, foot - 70.0, 130.0, 70.0), samples[i].view, look);
        caption(x + 65.0, foot + 17.0, samples[i].title, samples[i].words);
    }
    text(sheetEdge, 402.0,
         {{"Verdicts are digits:  ", false, Tone::Muted},
          {"1", true},
          {" keep  "},
          {"2", true},
          {" scrape  "},
          {"3", true},
          {" repair  "},
          {"4", true},
          {" refit  "},
          {"5", true},
          {" freeze  "},
          {"6", true},
          {" melt  "},
          {"7", true},
          {" hold  "},
          {"8", true},
          {" burn  "}});
}

void Gallery::kinds() const {
    head(420.0, "Kinds at one scale", "heights in mm; the same comb, 70 % filled, half capped");
    double x = sheetEdge;
    for (const auto& [frame, name, height] : kindSamples()) {
        const QSizeF size = frameSize(frame, px(130.0), look);
        const QRectF place(px(x), px(462.0), size.width(), size.height());
        paintFrame(painter, place, frame, look);
        const double ruler = place.right() + px(8.0), half = px(3.0);
        painter.setPen(plainPen(look.tone(Tone::Line), px(1.0)));
        painter.drawLine(QPointF(ruler, place.top()), QPointF(ruler, place.bottom()));
        for (const double y : {place.top(), place.bottom()}) {
            painter.drawLine(QPointF(ruler - half, y), QPointF(ruler + half, y));
        }
        const PainterState state(painter);
        painter.translate(ruler + px(13.0), place.center().y());
        painter.rotate(-90.0);
        paintLine(painter, {0.0, 0.0}, {{height, false, Tone::Muted}}, TextSize::Letter, look,
                  Qt::AlignHCenter);
        painter.rotate(90.0);
        painter.translate(-ruler - px(13.0), -place.center().y());
        text(x + 65.0, 545.0, {{name}}, TextSize::Note, Qt::AlignHCenter);
        x += 160.0;
    }
}

void Gallery::sides() const {
    text(700.0, 462.0, {{"Both sides, then one", true}});
    const FrameView frame = twoSidedSample();
    double x = 718.0;
    for (const double width : {96.0, 56.0, 44.0}) {
        const QSizeF size = frameSize(frame, px(width), look);
        const QRectF place(px(x), px(472.0), size.width(), size.height());
        paintFrame(painter, place, frame, look);
        const auto lying = frameSides(place, frame, look);
        if (width > 90.0) {
            for (std::size_t i = 0; i < lying.size(); ++i) {
                paintTextIn(painter, lying[i].translated(-px(18.0), 0.0), i == 0 ? "A" : "B",
                            look.font(TextSize::Letter, true), look.tone(Tone::Muted),
                            Qt::AlignLeft);
            }
        }
        const double middle = x + width / 2.0;
        const QString words =
            width < 56.0 ? QStringLiteral("mean") : QString::number(width) + " px";
        text(middle, 558.0, {{words, false, Tone::Muted}}, TextSize::Note, Qt::AlignHCenter);
        x += width + 34.0;
    }
    const char* const lines[] = {"under 56 px one side stands for the",
                                 "mean of both; on the board the letter", "stands on the frame"};
    double y = 486.0;
    for (const char* line : lines) {
        text(1000.0, y, {{line, false, Tone::Muted}});
        y += 16.0;
    }
}

void Gallery::stacks() const {
    head(576.0, "Stack, from the front",
         "plain boxes to scale; painted mark, one chalk line at the height of what is in the box");
    double x = sheetEdge - 5.0;
    const double scale = px(116.0) / 412.8;
    for (const auto& [stack, title, words] : stackSamples()) {
        paintStack(painter, box(x, 600.0, 140.0, 242.0), stack, look, scale);
        caption(x + 65.0, 860.0, title, words);
        x += 142.0;
    }
}

void Gallery::buckets() const {
    text(800.0, 620.0,
         {{"Bucket", true},
          {"   level, water % in figures, a caret under the gate", false, Tone::Muted}});
    double x = 800.0;
    for (const auto& [bucket, title, words] : bucketSamples()) {
        paintBucket(painter, box(x, 624.0, 64.0, 84.0), bucket, look);
        caption(x + 32.0, 726.0, title, words);
        x += 90.0;
    }
}

void Gallery::rows() const {
    text(800.0, 772.0,
         {{"A box as a row", true},
          {"   under the rule: counted, so without a place", false, Tone::Muted}});
    double y = 786.0;
    for (const auto& [row, title, words] : rowSamples()) {
        text(800.0, y + 15.0, {{title, true}}, TextSize::Note);
        const double height = frameRowHeight(row, look);
        paintFrameRow(painter, {px(846.0), px(y), px(386.0), height}, row, look);
        y += 27.0;
    }
    text(800.0, y + 18.0,
         {{"Letters on the frame; D and Q also in the warning red.", false, Tone::Muted}});
}

void Gallery::extractors() const {
    head(912.0, "Extractor, from above",
         "bar length is mass: wood and wet comb inside, honey outward; rings at 1 and 2 kg");
    double x = sheetEdge + 6.0;
    for (const auto& [extractor, title, words] : extractorSamples()) {
        paintExtractor(painter, box(x, 948.0, 246.0, 246.0), extractor, look);
        caption(x + 123.0, 1216.0, title, words);
        x += 262.0;
    }
    extractorLegend();
}

void Gallery::extractorLegend() const {
    const std::pair<ExtractorSign, QStringList> signs[] = {
        {ExtractorSign::Start, {"at the start"}},
        {ExtractorSign::End, {"at the end"}},
        {ExtractorSign::DoubtStart, {"doubt at start", "9 in 10"}},
        {ExtractorSign::DoubtEnd, {"doubt at end"}},
        {ExtractorSign::Ring, {"ran smooth", "or allowed"}},
        {ExtractorSign::NotAsPlanned, {"not as planned"}},
    };
    double y = 972.0;
    for (const auto& [sign, words] : signs) {
        paintExtractorSign(painter, box(1108.0, y - 10.0, 26.0, 20.0), sign, look);
        double line = y + 4.0;
        for (const auto& text_ : words) {
            text(1144.0, line, {{text_, false, line > y + 4.0 ? Tone::Muted : Tone::Ink}});
            line += 15.0;
        }
        y += words.size() > 1 ? 44.0 : 30.0;
    }
}

void Gallery::ribbon() const {
    head(1256.0, "Ribbon of the year", "done is solid, planned is open; the line is today");
    const RibbonView view = ribbonSample();
    paintRibbon(
        painter,
        {px(sheetEdge), px(1278.0), px(sheetWidth - 2.0 * sheetEdge), ribbonHeight(view, look)},
        view, look);
}

void Gallery::balance() const {
    head(1438.0, "Mass balance",
         "width is mass, left in, right out; what is missing stays an open end");
    paintBalance(painter, box(sheetEdge, 1470.0, 760.0, 160.0), balanceSample(), look);
}

void Gallery::figures() const {
    text(862.0, 1486.0, {{"How a number is known", true}});
    std::vector<FigureText> all;
    for (const auto& [figure, words] : figureSamples()) all.push_back(figure);
    const FigureColumns columns = measureFigures(all, {}, look);
    double y = 1508.0;
    for (const auto& [figure, words] : figureSamples()) {
        paintFigure(painter, {px(880.0), px(y)}, figure, columns, {}, look);
        paintLine(painter, {px(900.0) + columns.width(), px(y)}, {{words, false, Tone::Muted}},
                  TextSize::Note, look);
        y += 20.0;
    }
    double x = px(862.0);
    for (const char* key : {"Ctrl+P", "Ctrl+K", "F1", "↵"}) {
        x = paintKeyCap(painter, {x, px(1636.0)}, QString::fromUtf8(key), look) + px(8.0);
    }
    text(x / px(1.0) + 4.0, 1640.0, {{"keys as they look", false, Tone::Muted}});
}

}  // namespace

QSize gallerySize(const Look& look) {
    return {static_cast<int>(std::ceil(look.px(sheetWidth))),
            static_cast<int>(std::ceil(look.px(sheetHeight)))};
}

void paintGallery(QPainter& painter, const Look& look) {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const Gallery gallery{painter, look};
    gallery.text(sheetEdge, 40.0, {{"Drawing vocabulary", true}}, TextSize::Big);
    gallery.text(sheetWidth - sheetEdge, 40.0,
                 {{"an invented season; every picture is a pure function of recorded values", false,
                   Tone::Muted}},
                 TextSize::Note, Qt::AlignRight);
    gallery.frames();
    gallery.kinds();
    gallery.sides();
    gallery.stacks();
    gallery.buckets();
    gallery.rows();
    gallery.extractors();
    gallery.ribbon();
    gallery.balance();
    gallery.figures();
}

QImage drawingGallery(const Look& look, QSize size, double pixelRatio) {
    QImage image(size * pixelRatio, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(look.tone(Tone::Ground));
    QPainter painter(&image);
    paintGallery(painter, look);
    return image;
}

}  // namespace combwright
