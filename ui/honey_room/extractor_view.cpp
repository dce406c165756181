#include "ui/honey_room/extractor_view.h"

#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "core/words/words.h"

namespace combwright {

LoadView::LoadView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("extractor"));
    setAccessibleName(tr("Extractor from above"));
    connect(&session, &Session::lookChanged, this, [this] { update(); });
}

void LoadView::show(const SheetLoad& load, double allowedG) {
    m_load = load;
    m_planned = load;
    m_allowedG = allowedG;
    m_hasLoad = true;
    m_changed = false;
    m_held.reset();
    m_selected = 1;
    speak();
    update();
}

void LoadView::clear() {
    m_hasLoad = false;
    setAccessibleDescription(tr("No frames wait to be spun."));
    update();
}

ExtractorView LoadView::view() const {
    ExtractorView extractor;
    extractor.numbered = true;
    extractor.ringGrams = m_allowedG;
    extractor.ringRan = false;
    if (!m_hasLoad) return extractor;
    for (std::size_t i = 0; i < m_load.places.size(); ++i) {
        SlotView slot;
        const auto& frame = m_load.places[i];
        slot.inUse = frame.has_value();
        if (frame) {
            slot.startGrams = frame->startG;
            slot.endGrams = frame->endG;
            slot.label = fromUtf8(frame->box);
        }
        const auto& planned = m_planned.places[i];
        slot.ringed =
            m_changed && (planned.has_value() != frame.has_value() ||
                          (frame && planned &&
                           (frame->box != planned->box || frame->startG != planned->startG)));
        extractor.slotViews.push_back(slot);
    }
    extractor.start = OffsetView{m_load.offset.startG, m_load.startAngle, m_load.doubtG};
    extractor.end = OffsetView{m_load.offset.endG, m_load.endAngle, m_load.endDoubtG};
    extractor.selected = m_held.value_or(m_selected);
    return extractor;
}

QRectF LoadView::drumBox() const { return QRectF(rect()).adjusted(4, 4, -4, -4); }

void LoadView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = m_session.look();
    if (!m_hasLoad) {
        painter.setPen(look.tone(Tone::Muted));
        painter.setFont(look.font(TextSize::Body));
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("No frames wait to be spun."));
        return;
    }
    paintExtractor(painter, drumBox(), view(), look);
    if (hasFocus()) {
        painter.setPen(QPen(look.tone(Tone::Accent), 1, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(rect().adjusted(1, 1, -2, -2), look.corner(), look.corner());
    }
}

QString LoadView::offsetText() const {
    if (!m_hasLoad) return {};
    const auto kilos = [](double grams) { return QLocale().toString(grams / 1000.0, 'f', 1); };
    return tr("start %1 kg off, may be %2; end %3, may be %4; allowed at that speed %5 kg")
        .arg(kilos(m_load.offset.startG), kilos(m_load.offset.startG + m_load.doubtG),
             kilos(m_load.offset.endG), kilos(m_load.offset.endG + m_load.endDoubtG),
             kilos(m_allowedG));
}

void LoadView::speak() {
    setAccessibleDescription(spoken(view()) + QLatin1Char(' ') + offsetText());
}

void LoadView::swapPlaces(int a, int b) {
    const auto count = static_cast<int>(m_load.places.size());
    if (a < 1 || b < 1 || a > count || b > count || a == b) return;
    std::swap(m_load.places[static_cast<std::size_t>(a - 1)],
              m_load.places[static_cast<std::size_t>(b - 1)]);
    weighOffsets(m_load);
    m_changed = true;
    speak();
    update();
    Q_EMIT changed();
}

void LoadView::keyPressEvent(QKeyEvent* event) {
    const int count = std::max(1, static_cast<int>(m_load.places.size()));
    switch (event->key()) {
        case Qt::Key_Right:
        case Qt::Key_Down:
            m_selected = m_selected % count + 1;
            break;
        case Qt::Key_Left:
        case Qt::Key_Up:
            m_selected = (m_selected + count - 2) % count + 1;
            break;
        case Qt::Key_Space:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            // Taken up here, put down there: the two frames change places.
            if (m_held) {
                swapPlaces(*m_held, m_selected);
                m_held.reset();
            } else {
                m_held = m_selected;
                m_session.tell(
                    tr("Frame of slot %1 in the hand; go to another slot and press Enter.")
                        .arg(m_selected));
            }
            break;
        case Qt::Key_Escape:
            m_held.reset();
            break;
        default:
            return QWidget::keyPressEvent(event);
    }
    speak();
    update();
}

void LoadView::mousePressEvent(QMouseEvent* event) {
    if (!m_hasLoad) return;
    m_held = slotAt(drumBox(), view(), m_session.look(), event->position());
    if (m_held) m_selected = *m_held;
    update();
}

void LoadView::mouseReleaseEvent(QMouseEvent* event) {
    if (!m_held) return;
    const auto target = slotAt(drumBox(), view(), m_session.look(), event->position());
    if (target) swapPlaces(*m_held, *target);
    m_held.reset();
    update();
}

}  // namespace combwright
