#include "ui/drawing/frame_row.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

double rowFrameHeight(const FrameRowView& row, const Look& look) {
    double tallest = 0.0;
    for (const auto* frames : {&row.pointed, &row.counted}) {
        for (const auto& frame : *frames) {
            tallest = std::max(tallest, frameSize(frame, look.px(row.frameWidth), look).height());
        }
    }
    return tallest;
}

/// Words of this file, where the translators' tools find them.
struct FrameRowTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::FrameRow)
};

}  // namespace

double frameGap(const Look& look) { return look.px(3.0); }
double countedGap(const Look& look) { return look.px(9.0); }

void paintCountedRule(QPainter& painter, QPointF topLeft, double right, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const double y = topLeft.y() - look.px(3.0), left = topLeft.x();
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.0)));
    painter.drawPolyline(
        QPolygonF({{left, y + look.px(3.0)}, {left, y}, {right, y}, {right, y + look.px(3.0)}}));
}

double frameRowHeight(const FrameRowView& row, const Look& look) {
    return rowFrameHeight(row, look) + look.px(4.0);
}

std::vector<QRectF> frameRowPlaces(const QRectF& box, const FrameRowView& row, const Look& look) {
    std::vector<QRectF> places;
    const double width = look.px(row.frameWidth), height = rowFrameHeight(row, look);
    double x = box.left();
    const auto stand = [&](std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) {
            places.emplace_back(x, box.bottom() - height, width, height);
            x += width + frameGap(look);
        }
    };
    stand(row.pointed.size());
    if (!row.pointed.empty() && !row.counted.empty()) x += countedGap(look);
    stand(row.counted.size());
    return places;
}

void paintFrameRow(QPainter& painter, const QRectF& box, const FrameRowView& row,
                   const Look& look) {
    const auto places = frameRowPlaces(box, row, look);
    const std::size_t pointed = row.pointed.size();
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto& frame = i < pointed ? row.pointed[i] : row.counted[i - pointed];
        paintFrame(painter, places[i], frame, look);
    }
    if (row.counted.empty()) return;
    // The rule covers what was found; one that should be there and is not stands outside it.
    std::size_t last = places.size();
    while (last > pointed && !row.counted[last - 1 - pointed].found) --last;
    if (last == pointed) return;
    paintCountedRule(painter, places[pointed].topLeft(), places[last - 1].right(), look);
}

QString spoken(const FrameRowView& row) {
    QStringList sentences;
    for (const auto& frame : row.pointed) sentences << spoken(frame);
    // Alike frames are said once, with how many.
    for (std::size_t i = 0; i < row.counted.size();) {
        const QString words = spoken(row.counted[i]);
        std::size_t end = i + 1;
        while (end < row.counted.size() && spoken(row.counted[end]) == words) ++end;
        sentences << FrameRowTexts::tr("%1 counted: %2").arg(end - i).arg(words);
        i = end;
    }
    const QString box = row.mark.isEmpty() ? FrameRowTexts::tr("Box without a mark") : row.mark;
    return box + QStringLiteral(": ") + sentences.join(QLatin1Char(' '));
}

}  // namespace combwright
