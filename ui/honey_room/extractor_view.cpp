#include "ui/honey_room/extractor_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// The same frames in the same slots, whatever they are reckoned to weigh.
bool sameFrames(const SheetLoad& a, const SheetLoad& b) {
    return a.number == b.number &&
           std::equal(a.places.begin(), a.places.end(), b.places.begin(), b.places.end(),
                      [](const auto& x, const auto& y) {
                          return x.has_value() == y.has_value() &&
                                 (!x || (x->entry == y->entry && x->emptied == y->emptied &&
                                         x->heft == y->heft));
                      });
}

/// What a frame weighs is reckoned anew when its box was weighed.
void reckonAnew(SheetLoad& load, const SheetLoad& from) {
    for (auto& place : load.places) {
        if (!place || place->emptied) continue;
        for (const auto& fresh : from.places)
            if (fresh && fresh->entry == place->entry && fresh->heft == place->heft) place = fresh;
    }
    weighOffsets(load);
}

}  // namespace

QChar heftLetter(FrameHeft heft) {
    const auto words = Choices<FrameHeft>::words;
    return QLatin1Char(words[static_cast<std::size_t>(heft)].front());
}

LoadView::LoadView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("extractor"));
    setAccessibleName(tr("Extractor from above"));
    connect(&session, &Session::lookChanged, this, [this] { update(); });
}

void LoadView::show(const SheetLoad& load, const LoadSheet& sheet) {
    m_ringG = sheet.ringG();
    m_ringRan = sheet.ranSmoothG.has_value();
    if (m_hasLoad && sameFrames(load, m_base)) {
        m_base = load;
        reckonAnew(m_planned, load);
        reckonAnew(m_load, load);
    } else {
        m_base = load;
        m_planned = load;
        m_load = load;
        m_held.reset();
        m_selected = 1;
    }
    m_hasLoad = true;
    speak();
    update();
}

void LoadView::take(const SheetLoad& advised) {
    m_planned = advised;
    m_load = advised;
    m_held.reset();
    speak();
    update();
    Q_EMIT changed();
}

void LoadView::putBack() {
    if (!m_hasLoad) return;
    take(m_base);
}

void LoadView::clear() {
    m_hasLoad = false;
    m_held.reset();
    setAccessibleDescription(tr("No frames wait to be spun."));
    update();
}

bool LoadView::isChanged() const { return m_hasLoad && !sameFrames(m_load, m_base); }

bool LoadView::outOfPlace(std::size_t slot) const {
    const auto& frame = m_load.places[slot];
    const auto& planned = m_planned.places[slot];
    if (frame.has_value() != planned.has_value()) return true;
    return frame && (frame->entry != planned->entry || frame->emptied != planned->emptied ||
                     frame->heft != planned->heft);
}

ExtractorView LoadView::view() const {
    ExtractorView extractor;
    extractor.numbered = true;
    extractor.ringGrams = m_ringG;
    extractor.ringRan = m_ringRan;
    extractor.marker = m_marker;
    if (!m_hasLoad) return extractor;
    for (std::size_t i = 0; i < m_load.places.size(); ++i) {
        SlotView slot;
        const auto& frame = m_load.places[i];
        slot.inUse = frame.has_value();
        if (frame) {
            slot.startGrams = frame->startG;
            slot.endGrams = frame->endG;
            slot.label = frame->emptied ? tr("empty") : fromUtf8(frame->box);
            if (frame->heft) slot.letter = heftLetter(*frame->heft);
            extractor.fullGrams = std::max(extractor.fullGrams, frame->startG);
        }
        slot.ringed = outOfPlace(i);
        extractor.slotViews.push_back(slot);
    }
    extractor.start = OffsetView{m_load.offset.startG, m_load.startAngle, m_load.doubtG};
    extractor.end = OffsetView{m_load.offset.endG, m_load.endAngle, m_load.endDoubtG};
    if (hasFocus() || m_held) extractor.selected = m_selected;
    return extractor;
}

QRectF LoadView::drumBox() const { return QRectF(rect()).adjusted(2, 0, -2, 0); }

QRect LoadView::slotRect() const {
    const auto count = m_hasLoad ? static_cast<int>(m_load.places.size()) : 0;
    if (count == 0) return rect();
    const double angle = 2 * M_PI * (m_selected - 1) / count;
    const QRectF box = drumBox();
    const double reach = std::min(box.width(), box.height()) * 0.4;
    const double side = reach * 0.4;
    const QPointF middle = box.center() + reach * QPointF(std::sin(angle), -std::cos(angle));
    return QRectF(middle.x() - side / 2, middle.y() - side / 2, side, side).toAlignedRect();
}

void LoadView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = m_session.look();
    if (!m_hasLoad) {
        painter.setPen(look.tone(Tone::Muted));
        painter.setFont(look.font(TextSize::Head));
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("No frames wait to be spun."));
    } else {
        paintExtractor(painter, drumBox(), view(), look);
    }
    if (hasFocus()) {
        painter.setPen(QPen(look.tone(Tone::Accent), look.px(2)));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(rect().adjusted(1, 1, -2, -2), look.corner(), look.corner());
    }
}

QString LoadView::slotText(int slot) const {
    if (!m_hasLoad || slot < 1 || slot > static_cast<int>(m_load.places.size())) return {};
    const auto& frame = m_load.places[static_cast<std::size_t>(slot - 1)];
    if (!frame) return tr("Slot %1 is empty").arg(slot);
    if (frame->emptied) return tr("Slot %1: an empty frame").arg(slot);
    return tr("Slot %1: a frame of %2, %3")
        .arg(QString::number(slot), fromUtf8(frame->box), massText(frame->startG, How::Weighed));
}

void LoadView::speak() {
    QString text = slotText(m_selected);
    if (m_held) text += tr(", the frame of slot %1 is in the hand").arg(*m_held);
    setAccessibleDescription(text + QStringLiteral(". ") + spoken(view()));
}

void LoadView::swapPlaces(int a, int b) {
    const auto count = static_cast<int>(m_load.places.size());
    if (a < 1 || b < 1 || a > count || b > count || a == b) return;
    std::swap(m_load.places[static_cast<std::size_t>(a - 1)],
              m_load.places[static_cast<std::size_t>(b - 1)]);
    weighOffsets(m_load);
    speak();
    update();
    Q_EMIT changed();
}

void LoadView::keyPressEvent(QKeyEvent* event) {
    // With Ctrl a key is the room's.
    if (event->modifiers() & Qt::ControlModifier) return QWidget::keyPressEvent(event);
    if (event->key() == Qt::Key_PageUp) return Q_EMIT otherLoadAsked(-1);
    if (event->key() == Qt::Key_PageDown) return Q_EMIT otherLoadAsked(+1);
    if (!m_hasLoad) return QWidget::keyPressEvent(event);
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
        case Qt::Key_Home:
            m_selected = 1;
            break;
        case Qt::Key_Space:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            // Taken up here, put down there: the two frames change places.
            if (m_held) {
                const int from = *m_held;
                m_held.reset();
                swapPlaces(from, m_selected);
                m_session.tell(from == m_selected
                                   ? tr("The frame is back in slot %1.").arg(from)
                                   : tr("The frames of slots %1 and %2 have changed places.")
                                         .arg(from)
                                         .arg(m_selected));
            } else {
                m_held = m_selected;
                m_session.tell(
                    tr("Frame of slot %1 in the hand; go to another slot and press Space.")
                        .arg(m_selected));
            }
            break;
        case Qt::Key_Escape:
            if (!m_held) return QWidget::keyPressEvent(event);
            m_session.tell(tr("The frame is back in slot %1.").arg(*m_held));
            m_held.reset();
            break;
        case Qt::Key_R:
            return putBack();
        case Qt::Key_Asterisk: {
            const auto& frame = m_load.places[static_cast<std::size_t>(m_selected - 1)];
            if (frame && !frame->emptied) Q_EMIT setAsideAsked(frame->entry);
            return;
        }
        case Qt::Key_L:
            return Q_EMIT leaveOutAsked();
        case Qt::Key_A:
            return Q_EMIT addEmptyAsked();
        default:
            return QWidget::keyPressEvent(event);
    }
    speak();
    update();
    Q_EMIT slotChosen(slotRect());
}

void LoadView::mousePressEvent(QMouseEvent* event) {
    if (!m_hasLoad) return;
    m_held = slotAt(drumBox(), view(), m_session.look(), event->position());
    if (m_held) m_selected = *m_held;
    update();
}

void LoadView::mouseMoveEvent(QMouseEvent* event) {
    if (!m_held) return;
    // While it is dragged the slot it would go to is ringed.
    if (const auto over = slotAt(drumBox(), view(), m_session.look(), event->position()))
        m_selected = *over;
    update();
}

void LoadView::mouseReleaseEvent(QMouseEvent* event) {
    if (!m_held) return;
    const int from = *m_held;
    m_held.reset();
    if (const auto target = slotAt(drumBox(), view(), m_session.look(), event->position()))
        swapPlaces(from, *target);
    update();
}

}  // namespace combwright
