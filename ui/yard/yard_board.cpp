#include "ui/yard/yard_board.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

namespace combwright {
namespace {

constexpr double boardPxPerMm = 0.255;  // a box 105 px wide at the base font, as marks still read
constexpr int cellWidth = 124;
constexpr int wordsHeight = 58;

}  // namespace

YardBoard::YardBoard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("yard_board"));
    setAccessibleName(tr("Hives in walking order"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void YardBoard::setHives(std::vector<HiveOnBoard> hives) {
    std::optional<Id<Hive>> kept;
    if (m_current >= 0 && m_current < static_cast<int>(m_hives.size()))
        kept = m_hives[static_cast<std::size_t>(m_current)].id;
    m_hives = std::move(hives);
    m_current = m_hives.empty() ? -1 : 0;
    for (std::size_t i = 0; i < m_hives.size(); ++i)
        if (kept && m_hives[i].id == *kept) m_current = static_cast<int>(i);
    updateGeometry();
    setMinimumHeight(heightForWidth(width()));
    speak();
    update();
}

void YardBoard::setCurrent(int index) {
    if (index < 0 || index >= static_cast<int>(m_hives.size()) || index == m_current) return;
    m_current = index;
    speak();
    update();
    Q_EMIT currentChanged(index);
}

void YardBoard::speak() {
    if (m_current < 0) return;
    const HiveOnBoard& hive = m_hives[static_cast<std::size_t>(m_current)];
    setAccessibleDescription(spoken(hive.stack) + QLatin1Char(' ') +
                             hive.words.join(QStringLiteral(". ")));
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

int YardBoard::hivesPerRow(int width) const {
    return std::max(1, width / m_session.look().space(cellWidth));
}

double YardBoard::rowStackHeight(std::size_t first, int perRow) const {
    const Look& look = m_session.look();
    double tallest = look.space(80);
    const std::size_t end = std::min(m_hives.size(), first + static_cast<std::size_t>(perRow));
    for (std::size_t i = first; i < end; ++i)
        tallest = std::max(tallest, stackHeight(m_hives[i].stack, look.px(boardPxPerMm), look));
    return tallest;
}

std::vector<YardBoard::Slot> YardBoard::slotsFor(int width) const {
    const Look& look = m_session.look();
    const int perRow = hivesPerRow(width);
    const double cell = static_cast<double>(width) / perRow;
    std::vector<Slot> found;
    double y = look.space(8);
    for (std::size_t first = 0; first < m_hives.size(); first += static_cast<std::size_t>(perRow)) {
        const double high = rowStackHeight(first, perRow);
        const std::size_t end = std::min(m_hives.size(), first + static_cast<std::size_t>(perRow));
        for (std::size_t i = first; i < end; ++i) {
            const double x = cell * static_cast<double>(i - first);
            found.push_back(
                {QRectF(x, y, cell, high + look.space(wordsHeight)), QRectF(x, y, cell, high)});
        }
        y += high + look.space(wordsHeight + 8);
    }
    return found;
}

int YardBoard::heightForWidth(int width) const {
    const auto found = slotsFor(std::max(width, 1));
    return found.empty() ? 100 : static_cast<int>(found.back().cell.bottom()) + 4;
}

void YardBoard::resizeEvent(QResizeEvent*) { setMinimumHeight(heightForWidth(width())); }

void YardBoard::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = look.px(boardPxPerMm);
    const auto places = slotsFor(width());
    for (std::size_t i = 0; i < places.size(); ++i) {
        const HiveOnBoard& hive = m_hives[i];
        const Slot& slot = places[i];
        if (static_cast<int>(i) == m_current) {
            QRectF ring = slot.cell.adjusted(2, 0, -2, 0);
            ring.setTop(slot.stack.bottom() - stackHeight(hive.stack, scale, look) - look.space(8));
            painter.setPen(QPen(look.tone(Tone::Accent), hasFocus() ? 2 : 1));
            painter.setBrush(look.tone(Tone::Surface));
            painter.drawRoundedRect(ring, look.corner(), look.corner());
        }
        painter.setPen(QPen(look.tone(Tone::Line), 1));
        painter.drawLine(slot.stack.bottomLeft(), slot.stack.bottomRight());
        // The way one walks, from hive to hive.
        const QPointF tip(slot.cell.right(), slot.stack.bottom());
        painter.drawLine(tip, tip + QPointF(-4, -3));
        painter.drawLine(tip, tip + QPointF(-4, 3));

        const double room = hive.stack.widthMm * scale;
        const double x = slot.stack.center().x() - room / 2 - stackLeftRoom(look);
        paintStack(
            painter,
            QRectF(x, slot.stack.y(), room + stackLeftRoom(look) + stackRightRoom(hive.stack, look),
                   slot.stack.height()),
            hive.stack, look, scale);

        QRectF words(slot.cell.x() + 2, slot.stack.bottom() + look.space(6), slot.cell.width() - 4,
                     look.space(18));
        painter.setPen(look.tone(Tone::Ink));
        painter.setFont(look.font(TextSize::Body, true));
        painter.drawText(words, Qt::AlignCenter, hive.mark);
        for (qsizetype line = 0; line < std::min<qsizetype>(hive.words.size(), 2); ++line) {
            words.translate(0, look.space(16));
            const bool last = line + 1 == std::min<qsizetype>(hive.words.size(), 2);
            const bool warns = last && hive.lastTone != Tone::Muted;
            painter.setFont(look.font(TextSize::Note, warns));
            painter.setPen(look.tone(warns ? hive.lastTone : Tone::Muted));
            painter.drawText(words, Qt::AlignCenter,
                             painter.fontMetrics().elidedText(hive.words[line], Qt::ElideRight,
                                                              static_cast<int>(words.width())));
        }
    }
}

void YardBoard::keyPressEvent(QKeyEvent* event) {
    const int perRow = hivesPerRow(width());
    switch (event->key()) {
        case Qt::Key_Left:
            return setCurrent(m_current - 1);
        case Qt::Key_Right:
            return setCurrent(m_current + 1);
        case Qt::Key_Up:
            return setCurrent(m_current - perRow);
        case Qt::Key_Down:
            return setCurrent(std::min(m_current + perRow, static_cast<int>(m_hives.size()) - 1));
        case Qt::Key_Home:
            return setCurrent(0);
        case Qt::Key_End:
            return setCurrent(static_cast<int>(m_hives.size()) - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            Q_EMIT activated(m_current);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void YardBoard::mousePressEvent(QMouseEvent* event) {
    const auto places = slotsFor(width());
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i].cell.contains(event->position())) setCurrent(static_cast<int>(i));
}

}  // namespace combwright
