#include "ui/print/label_painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

/// From the edge of a label to its print: what a sheet may lie askew.
constexpr double insetMm = 2.0;
constexpr double codeGapMm = 1.0;
/// A telephone reads a module of a third of a millimetre. Common practice, no source.
constexpr double leastModuleMm = 0.33;
constexpr double mostQrMm = 22.0;
/// Body type on a label, largest first; the least is what most can still read.
constexpr double largestTypeMm = 3.4;
constexpr double leastTypeMm = 1.0;
constexpr double typeStep = 0.94;

class LabelPainter {
  public:
    LabelPainter(QPainter& painter, const Look& look, const LabelDrawn& label, const QRectF& room)
        : m_painter(painter), m_look(look), m_label(label), m_room(room) {}

    void paint() {
        const double qr = qrSide();
        if (qr > 0) paintQr(QRectF(m_room.right() - qr, m_room.top(), qr, qr));
        double type = largestTypeMm;
        while (type > leastTypeMm && height(type, qr) > m_room.height()) type *= typeStep;
        write(type, qr, true);
    }

  private:
    double qrSide() const {
        if (m_label.qr.side == 0) return 0;
        const int modules = m_label.qr.side + 2 * m_label.qr.rim;
        const double room = std::min(m_room.width() * 0.42, m_room.height() * 0.7);
        return std::clamp(room, std::min(modules * leastModuleMm, room), mostQrMm);
    }

    void paintQr(const QRectF& box) {
        const int side = m_label.qr.side;
        const double module = box.width() / (side + 2 * m_label.qr.rim);
        const PainterState state(m_painter);
        m_painter.setRenderHint(QPainter::Antialiasing, false);
        m_painter.fillRect(box, m_look.tone(Tone::Ground));
        for (int y = 0; y < side; ++y)
            for (int x = 0; x < side; ++x)
                if (m_label.qr.dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
                                    static_cast<std::size_t>(x)])
                    m_painter.fillRect(
                        QRectF(box.left() + (x + m_label.qr.rim) * module,
                               box.top() + (y + m_label.qr.rim) * module, module, module),
                        m_look.tone(Tone::Ink));
    }

    double height(double type, double qr) { return write(type, qr, false); }

    /// Lays the text out, and paints it where asked; returns how high it is, mm.
    double write(double type, double qr, bool paint) {
        double y = m_room.top();
        const auto line = [&](const QString& words, TextSize size, bool bold, double toRight) {
            if (words.isEmpty()) return;
            y += text(words, size, bold, type, QRectF(m_room.left(), y, toRight, m_room.height()),
                      paint);
        };
        // Beside the code the lines are short, below it as wide as the label.
        const auto wide = [&] {
            return y < m_room.top() + qr ? m_room.width() - qr - codeGapMm : m_room.width();
        };
        line(m_label.head, TextSize::Title, true, wide());
        line(m_label.net, TextSize::Head, true, wide());
        for (const QString& each : m_label.lines) line(each, TextSize::Body, false, wide());
        const double caution = text(m_label.caution, TextSize::Body, true, type,
                                    QRectF(m_room.left(), y, m_room.width(), 0), false);
        // The caution stands at the foot, over the whole width.
        const double foot = std::max(y, m_room.bottom() - caution);
        if (paint)
            text(m_label.caution, TextSize::Body, true, type,
                 QRectF(m_room.left(), std::max(foot, m_room.top() + qr), m_room.width(), caution),
                 true);
        return std::max(y, m_room.top() + qr) + caution - m_room.top();
    }

    /// One paragraph in the look's own type, scaled so that body is `type` mm high.
    double text(const QString& words, TextSize size, bool bold, double type, const QRectF& box,
                bool paint) {
        const QFont font = m_look.font(size, bold);
        const double scale = type / QFontMetricsF(m_look.font(TextSize::Body)).height();
        const QRectF room(0, 0, box.width() / scale, 1e5);
        constexpr int flags = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
        const QRectF needed = QFontMetricsF(font).boundingRect(room, flags, words);
        if (paint) {
            const PainterState state(m_painter);
            m_painter.translate(box.topLeft());
            m_painter.scale(scale, scale);
            m_painter.setFont(font);
            m_painter.setPen(m_look.tone(Tone::Ink));
            m_painter.drawText(room, flags, words);
        }
        return needed.height() * scale;
    }

    QPainter& m_painter;
    const Look& m_look;
    const LabelDrawn& m_label;
    QRectF m_room;
};

/// Where print may stand on a label: within its edges, on a round one within the circle.
QRectF printRoom(const LabelsBlock& block, const QRectF& cell) {
    if (!block.round) return cell.adjusted(insetMm, insetMm, -insetMm, -insetMm);
    const double side = (cell.width() - 2 * insetMm) / std::numbers::sqrt2;
    return {cell.center().x() - side / 2, cell.center().y() - side / 2, side, side};
}

void paintOutline(QPainter& painter, const Look& look, const LabelsBlock& block,
                  const PlacedCell& at, const QRectF& cell) {
    const PainterState state(painter);
    painter.setPen(QPen(look.tone(Tone::Ink), 0.15));
    painter.setBrush(Qt::NoBrush);
    if (block.round)
        painter.drawEllipse(cell);
    else
        painter.drawRect(cell);
    const QPointF middle = cell.center();
    painter.drawLine(middle - QPointF(3, 0), middle + QPointF(3, 0));
    painter.drawLine(middle - QPointF(0, 3), middle + QPointF(0, 3));
    // A scale of ten millimetres along the upper and the left edge.
    for (int mm = 0; mm <= 10; ++mm) {
        const double tick = mm % 5 == 0 ? 1.6 : 0.8;
        painter.drawLine(cell.topLeft() + QPointF(mm, 0), cell.topLeft() + QPointF(mm, tick));
        painter.drawLine(cell.topLeft() + QPointF(0, mm), cell.topLeft() + QPointF(tick, mm));
    }
    LabelDrawn number;
    number.head = at.corner;
    LabelPainter(painter, look, number,
                 QRectF(cell.left() + 3, cell.top() + 2.4, cell.width() - 6, cell.height() - 4))
        .paint();
}

void paintAbout(QPainter& painter, const Look& look, const LabelsBlock& block) {
    LabelDrawn about;
    about.lines = block.about;
    const double wide = block.paperWidthMm * 0.6;
    const QRectF box((block.paperWidthMm - wide) / 2, block.paperHeightMm * 0.4, wide,
                     block.paperHeightMm * 0.13);
    painter.fillRect(box, look.tone(Tone::Ground));
    painter.setPen(QPen(look.tone(Tone::Line), 0.2));
    painter.drawRect(box);
    LabelPainter(painter, look, about, box.adjusted(3, 3, -3, -3)).paint();
}

}  // namespace

const LabelsBlock* labelsOf(const Page& page) {
    return page.blocks.size() == 1 ? std::get_if<LabelsBlock>(&page.blocks.front()) : nullptr;
}

void paintLabelSheet(QPainter& painter, const Look& look, const LabelsBlock& block,
                     std::size_t sheet) {
    if (sheet >= block.sheets.size()) return;
    for (const PlacedCell& at : block.sheets[sheet]) {
        const QRectF cell(at.leftMm, at.topMm, block.cellWidthMm, block.cellHeightMm);
        if (block.outlines)
            paintOutline(painter, look, block, at, cell);
        else if (at.label < block.labels.size())
            LabelPainter(painter, look, block.labels[at.label], printRoom(block, cell)).paint();
    }
    if (block.outlines && !block.about.isEmpty()) paintAbout(painter, look, block);
}

int paintLabels(QPagedPaintDevice& device, const LabelsBlock& block, const Look& look) {
    QPainter painter(&device);
    const QMarginsF margins = device.pageLayout().margins(QPageLayout::Millimeter);
    const double perMm = device.logicalDpiX() / 25.4;
    painter.scale(perMm, perMm);
    painter.translate(-margins.left(), -margins.top());
    for (std::size_t sheet = 0; sheet < block.sheets.size(); ++sheet) {
        if (sheet > 0) device.newPage();
        paintLabelSheet(painter, look, block, sheet);
    }
    return static_cast<int>(block.sheets.size());
}

}  // namespace combwright
