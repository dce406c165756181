#include "ui/yard/yard_board.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

namespace combwright {
namespace {

constexpr double boardPxPerMm = 0.255;  // a box 105 px wide at the base font, as marks still read
constexpr int cellWidth = 136;
constexpr int wordsHeight = 58;  // a mark and two lines …
constexpr int thirdLine = 16;    // … and one more in a row that needs it

}  // namespace

YardBoard::YardBoard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("yard_board"));
    setAccessibleName(tr("Hives in walking order"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] {
        setMinimumHeight(heightForWidth(width()));
        updateGeometry();
        update();
    });
}

void YardBoard::setHives(std::vector<HiveOnBoard> hives) {
    const auto keptBox = currentBox();
    const auto kept = currentHive() ? std::optional(currentHive()->id) : std::nullopt;
    const int before = m_current;
    m_hives = std::move(hives);
    // A hive that has gone leaves the cursor where it stood.
    m_current = m_hives.empty() ? -1 : std::clamp(before, 0, static_cast<int>(m_hives.size()) - 1);
    m_box = -1;
    for (std::size_t i = 0; i < m_hives.size(); ++i) {
        if (!kept || m_hives[i].id != *kept) continue;
        m_current = static_cast<int>(i);
        const auto& boxes = m_hives[i].boxes;
        const auto box = keptBox ? std::find(boxes.begin(), boxes.end(), *keptBox) : boxes.end();
        if (box != boxes.end()) m_box = static_cast<int>(box - boxes.begin());
    }
    setMinimumHeight(heightForWidth(width()));
    updateGeometry();
    speak();
    update();
}

const HiveOnBoard* YardBoard::currentHive() const {
    return m_current < 0 || m_current >= static_cast<int>(m_hives.size())
               ? nullptr
               : &m_hives[static_cast<std::size_t>(m_current)];
}

std::optional<Id<Box>> YardBoard::currentBox() const {
    const HiveOnBoard* hive = currentHive();
    if (!hive || m_box < 0 || m_box >= static_cast<int>(hive->boxes.size())) return std::nullopt;
    return hive->boxes[static_cast<std::size_t>(m_box)];
}

void YardBoard::setCurrent(int index) {
    if (index < 0 || index >= static_cast<int>(m_hives.size()) || index == m_current) return;
    m_current = index;
    m_box = -1;
    speak();
    update();
    askToBeSeen();
    Q_EMIT currentChanged(index);
    Q_EMIT boxChanged();
}

void YardBoard::choose(Id<Hive> hive) {
    for (std::size_t i = 0; i < m_hives.size(); ++i)
        if (m_hives[i].id == hive) setCurrent(static_cast<int>(i));
}

void YardBoard::chooseBox(int level) {
    const HiveOnBoard* hive = currentHive();
    if (!hive || level < -1 || level >= static_cast<int>(hive->boxes.size()) || level == m_box)
        return;
    m_box = level;
    speak();
    update();
    askToBeSeen();
    Q_EMIT boxChanged();
}

void YardBoard::askToBeSeen() {
    const auto places = slotsFor(width());
    if (m_current < 0 || m_current >= static_cast<int>(places.size())) return;
    Q_EMIT shown(places[static_cast<std::size_t>(m_current)].cell.toAlignedRect());
}

void YardBoard::speak() {
    const HiveOnBoard* hive = currentHive();
    if (!hive) return;
    QStringList said;
    if (m_box >= 0) {
        const std::size_t fromTop = hive->stack.boxes.size() - 1 - static_cast<std::size_t>(m_box);
        const BoxView& box = hive->stack.boxes[fromTop];
        said << tr("Box %1 of %2 from the floor: %3, %4.")
                    .arg(m_box + 1)
                    .arg(hive->boxes.size())
                    .arg(box.mark.isEmpty() ? tr("no mark") : box.mark,
                         box.lookedInto ? box.words.join(QStringLiteral(", "))
                                        : tr("never looked into"));
    }
    said << spoken(hive->stack);
    for (const WordsUnder& words : hive->words)
        if (!words.ways.empty()) said << plainText(words.ways.front()) + QLatin1Char('.');
    setAccessibleDescription(said.join(QLatin1Char(' ')));
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

int YardBoard::rowWordsHeight(std::size_t first, int perRow) const {
    const std::size_t end = std::min(m_hives.size(), first + static_cast<std::size_t>(perRow));
    bool third = false;
    for (std::size_t i = first; i < end; ++i) third = third || m_hives[i].words.size() > 2;
    return m_session.look().space(third ? wordsHeight + thirdLine : wordsHeight);
}

std::vector<YardBoard::Slot> YardBoard::slotsFor(int width) const {
    const Look& look = m_session.look();
    const int perRow = hivesPerRow(width);
    const double cell = static_cast<double>(width) / perRow;
    std::vector<Slot> found;
    double y = look.space(8);
    for (std::size_t first = 0; first < m_hives.size(); first += static_cast<std::size_t>(perRow)) {
        const double high = rowStackHeight(first, perRow);
        const int under = rowWordsHeight(first, perRow);
        const std::size_t end = std::min(m_hives.size(), first + static_cast<std::size_t>(perRow));
        for (std::size_t i = first; i < end; ++i) {
            const double x = cell * static_cast<double>(i - first);
            found.push_back({QRectF(x, y, cell, high + under), QRectF(x, y, cell, high)});
        }
        y += high + under + look.space(8);
    }
    return found;
}

QRectF YardBoard::stackRect(const Slot& slot, const HiveOnBoard& hive) const {
    const Look& look = m_session.look();
    const double room = hive.stack.widthMm * look.px(boardPxPerMm);
    const double x = slot.stack.center().x() - room / 2 - stackLeftRoom(look);
    return {x, slot.stack.y(), room + stackLeftRoom(look) + stackRightRoom(hive.stack, look),
            slot.stack.height()};
}

int YardBoard::heightForWidth(int width) const {
    const auto found = slotsFor(std::max(width, 1));
    return found.empty() ? 100 : static_cast<int>(found.back().cell.bottom()) + 4;
}

void YardBoard::resizeEvent(QResizeEvent*) { setMinimumHeight(heightForWidth(width())); }

void YardBoard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const auto places = slotsFor(width());
    for (std::size_t i = 0; i < places.size(); ++i) paintHive(painter, i, places[i]);
}

void YardBoard::paintHive(QPainter& painter, std::size_t index, const Slot& slot) {
    const Look& look = m_session.look();
    const double scale = look.px(boardPxPerMm);
    const HiveOnBoard& hive = m_hives[index];
    const bool chosen = static_cast<int>(index) == m_current;
    const QPen ring(look.tone(Tone::Accent), hasFocus() ? 2 : 1);
    if (chosen) {
        QRectF around = slot.cell.adjusted(2, 0, -2, 0);
        around.setTop(slot.stack.bottom() - stackHeight(hive.stack, scale, look) - look.space(8));
        painter.setPen(m_box < 0 ? ring : QPen(look.tone(Tone::Line), 1));
        painter.setBrush(look.tone(Tone::Surface));
        painter.drawRoundedRect(around, look.corner(), look.corner());
    }
    painter.setPen(QPen(look.tone(Tone::Line), 1));
    painter.drawLine(slot.stack.bottomLeft(), slot.stack.bottomRight());
    // The way one walks, from hive to hive.
    const QPointF tip(slot.cell.right(), slot.stack.bottom());
    painter.drawLine(tip, tip + QPointF(-4, -3));
    painter.drawLine(tip, tip + QPointF(-4, 3));
    const QRectF stack = stackRect(slot, hive);
    paintStack(painter, stack, hive.stack, look, scale);
    if (chosen && m_box >= 0) {
        const StackLayout laid = layoutStack(stack, hive.stack, look, scale);
        const std::size_t fromTop = laid.boxes.size() - 1 - static_cast<std::size_t>(m_box);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.tone(Tone::Accent), look.px(hasFocus() ? 3.0 : 1.6)));
        painter.drawRoundedRect(laid.boxes[fromTop].adjusted(-2, -2, 2, 2), look.corner(),
                                look.corner());
    }
    paintWords(painter, hive, slot);
}

void YardBoard::paintWords(QPainter& painter, const HiveOnBoard& hive, const Slot& slot) {
    const Look& look = m_session.look();
    const double middle = slot.cell.center().x();
    double base = slot.stack.bottom() + look.space(20);
    paintText(painter, {middle, base}, hive.mark, look.font(TextSize::Body, true),
              look.tone(Tone::Ink), Qt::AlignHCenter);
    const double room = slot.cell.width() - look.px(6.0);
    for (const WordsUnder& words : hive.words) {
        base += look.space(16);
        if (words.ways.empty()) continue;
        const auto fitting = std::find_if(
            words.ways.begin(), words.ways.end(),
            [&](const TextLine& line) { return lineWidth(line, TextSize::Note, look) <= room; });
        if (fitting != words.ways.end()) {
            paintLine(painter, {middle, base}, *fitting, TextSize::Note, look, Qt::AlignHCenter);
            continue;
        }
        const TextLine& last = words.ways.back();
        const QFont font = look.font(TextSize::Note, last.front().bold);
        paintText(painter, {middle, base}, fitted(plainText(last), font, room), font,
                  look.tone(last.front().tone), Qt::AlignHCenter);
    }
}

bool YardBoard::walk(int key, bool shift) {
    const int perRow = hivesPerRow(width());
    const int last = static_cast<int>(m_hives.size()) - 1;
    switch (key) {
        case Qt::Key_Left:
        case Qt::Key_Right: {
            const int step = key == Qt::Key_Left ? -1 : 1;
            if (shift)
                Q_EMIT moveAsked(step);
            else
                setCurrent(m_current + step);
            return true;
        }
        case Qt::Key_PageUp:
            setCurrent(std::max(m_current - perRow, 0));
            return true;
        case Qt::Key_PageDown:
            setCurrent(std::min(m_current + perRow, last));
            return true;
        case Qt::Key_Home:
            setCurrent(0);
            return true;
        case Qt::Key_End:
            setCurrent(last);
            return true;
        default:
            return false;
    }
}

bool YardBoard::climb(int key, bool shift) {
    if (key != Qt::Key_Up && key != Qt::Key_Down) return false;
    const int step = key == Qt::Key_Up ? 1 : -1;
    if (shift) {
        if (m_box >= 0) Q_EMIT boxMoveAsked(step);
    } else if (m_box < 0 && step < 0) {
        // From the ground one can only go on to the row below.
        setCurrent(
            std::min(m_current + hivesPerRow(width()), static_cast<int>(m_hives.size()) - 1));
    } else {
        chooseBox(m_box + step);
    }
    return true;
}

void YardBoard::keyPressEvent(QKeyEvent* event) {
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier))
        return QWidget::keyPressEvent(event);
    const bool shift = event->modifiers() & Qt::ShiftModifier;
    if (walk(event->key(), shift) || climb(event->key(), shift)) return;
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (m_box >= 0)
                Q_EMIT boxActivated();
            else if (m_current >= 0)
                Q_EMIT activated();
            return;
        case Qt::Key_Escape:
            if (m_box >= 0)
                leaveBox();
            else
                Q_EMIT left();
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void YardBoard::mousePressEvent(QMouseEvent* event) {
    const auto places = slotsFor(width());
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!places[i].cell.contains(event->position())) continue;
        setCurrent(static_cast<int>(i));
        const Look& look = m_session.look();
        const StackLayout laid = layoutStack(stackRect(places[i], m_hives[i]), m_hives[i].stack,
                                             look, look.px(boardPxPerMm));
        int level = -1;
        for (std::size_t b = 0; b < laid.boxes.size(); ++b)
            if (laid.boxes[b].contains(event->position()))
                level = static_cast<int>(laid.boxes.size() - 1 - b);
        chooseBox(level);
    }
}

void YardBoard::mouseDoubleClickEvent(QMouseEvent*) {
    if (m_box >= 0)
        Q_EMIT boxActivated();
    else if (m_current >= 0)
        Q_EMIT activated();
}

}  // namespace combwright
