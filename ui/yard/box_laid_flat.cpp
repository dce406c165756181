#include "ui/yard/box_laid_flat.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/places/pages/yard/yard_story_text.h"
#include "ui/common/flat_row.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

// A top bar at the base font, px: at most so that both sides can be told, at least so that it is
// still a frame.
constexpr double widestFrame = 72.0;
constexpr double narrowestFrame = 18.0;

}  // namespace

BoxLaidFlat::BoxLaidFlat(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("box_laid_flat"));
    connect(&session, &Session::lookChanged, this, [this] { fit(); });
}

void BoxLaidFlat::show(const BoxInside& inside) {
    m_row = flatRow(QString::fromStdString(inside.box.mark), inside.frames,
                    frameShapeOf(inside.frameKind));
    m_words = boxInsideText(inside);
    setAccessibleName(tr("Box laid flat"));
    setAccessibleDescription(m_words + QLatin1Char(' ') + spoken(m_row));
    fit();
    setVisible(true);
}

double BoxLaidFlat::headHeight() const {
    const Look& look = m_session.look();
    const QFontMetrics metrics(look.font(TextSize::Note));
    return metrics.boundingRect(QRect(0, 0, std::max(width(), 1), 10000), Qt::TextWordWrap, m_words)
               .height() +
           look.px(10.0);
}

void BoxLaidFlat::fit() {
    const Look& look = m_session.look();
    const auto frames = static_cast<double>(m_row.pointed.size() + m_row.counted.size());
    const double gaps = look.px(3.0) * frames + look.px(9.0);
    const double each = frames > 0 ? (width() - gaps) / frames / look.px(1.0) : widestFrame;
    m_row.frameWidth = std::clamp(std::floor(each), narrowestFrame, widestFrame);
    const double row = frames > 0 ? frameRowHeight(m_row, look) + look.px(20.0) : 0.0;
    setFixedHeight(static_cast<int>(std::ceil(headHeight() + row)));
    update();
}

void BoxLaidFlat::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
    painter.drawLine(QPointF(0, look.px(1.0)), QPointF(width(), look.px(1.0)));
    painter.setPen(look.tone(Tone::Ink));
    painter.setFont(look.font(TextSize::Note));
    const double head = headHeight();
    painter.drawText(QRectF(0, look.px(5.0), width(), head), Qt::TextWordWrap | Qt::AlignTop,
                     m_words);
    const QRectF box(0, head, width(), height() - head - look.px(2.0));
    paintFrameRow(painter, box, m_row, look);
    if (m_row.counted.empty()) return;
    // The one mark over all frames that are known only as a count.
    const auto places = frameRowPlaces(box, m_row, look);
    const QRectF first = places[m_row.pointed.size()];
    const QString mark = tr("%1 counted").arg(m_row.counted.size());
    paintText(painter, {first.left(), first.top() - look.px(6.0)}, mark,
              look.font(TextSize::Letter, false, true), look.tone(Tone::Muted));
}

}  // namespace combwright
