#include "ui/shell/rail.h"

#include <QKeyEvent>
#include <QKeySequence>
#include <QPainter>
#include <QStyle>
#include <iterator>

#include "core/model/season_info.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/drawing/key_cap.h"

namespace combwright {

RailItem::RailItem(int number, const QString& text, Session& session, QWidget* parent)
    : QAbstractButton(parent), m_session(session), m_number(number) {
    setText(text);
    setAccessibleName(text);
    setToolTip(tr("%1 (Ctrl+%2)").arg(text).arg(number));
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
}

void RailItem::setWaiting(int waiting) {
    m_waiting = waiting;
    setAccessibleDescription(waiting ? tr("%n waiting", nullptr, waiting) : QString());
    update();
}

QSize RailItem::sizeHint() const {
    const Look& look = m_session.look();
    return {look.space(168), look.space(36)};
}

void RailItem::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    if (isChecked()) {
        painter.fillRect(rect(), look.tone(Tone::Surface));
        painter.fillRect(QRect(0, 0, look.space(4), height()), look.tone(Tone::Accent));
        painter.setPen(look.tone(Tone::Hairline));
        painter.drawLine(0, 0, width(), 0);
        painter.drawLine(0, height() - 1, width(), height() - 1);
    } else if (underMouse()) {
        painter.fillRect(rect(), look.tone(Tone::Selection));
    }
    const QRect line(look.space(20), 0, width() - look.space(36), look.space(36));
    // In a language that is read from the right all of it begins there.
    const auto placed = [this](const QRect& room) {
        return QStyle::visualRect(layoutDirection(), rect(), room);
    };
    painter.setFont(look.font(TextSize::Note));
    painter.setPen(look.tone(Tone::Muted));
    painter.drawText(placed(line), Qt::AlignVCenter | Qt::AlignLeft, QString::number(m_number));
    QRect room = line.adjusted(look.space(20), 0, 0, 0);
    if (m_waiting > 0) {
        painter.setFont(look.font(TextSize::Note, true));
        painter.setPen(look.tone(Tone::Ink));
        const QString waiting = QString::number(m_waiting);
        painter.drawText(placed(line), Qt::AlignVCenter | Qt::AlignRight, waiting);
        room.adjust(0, 0, -painter.fontMetrics().horizontalAdvance(waiting) - look.space(4), 0);
    } else {
        room.adjust(0, 0, look.space(12), 0);
    }
    painter.setPen(look.tone(isEnabled() ? Tone::Ink : Tone::Muted));
    painter.setFont(look.font(TextSize::Body, isChecked()));
    painter.drawText(placed(room), Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(text(), Qt::ElideRight, room.width()));
    if (hasFocus()) {
        painter.setPen(QPen(look.tone(Tone::Accent), 2));
        painter.drawRoundedRect(rect().adjusted(3, 3, -3, -3), look.corner(), look.corner());
    }
}

Rail::Rail(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setAccessibleName(tr("Places"));
    m_inAndOut = new QPushButton(tr("In and out…"), this);
    m_inAndOut->setObjectName(QStringLiteral("in_and_out"));
    m_inAndOut->setToolTip(tr("Tables in, the whole season out (Ctrl+I)"));
    m_inAndOut->setFlat(true);
    m_inAndOut->setFocusPolicy(Qt::TabFocus);
    connect(&session, &Session::lookChanged, this, [this] {
        layOut();
        update();
    });
}

void Rail::addPlace(const QString& text) {
    const int index = count();
    auto* item = new RailItem(index + 1, text, m_session, this);
    // It stands below the places, and a reader takes what is above as what was there before.
    m_inAndOut->raise();
    m_items.push_back(item);
    connect(item, &QAbstractButton::clicked, this, [this, index] { Q_EMIT chosen(index); });
    layOut();
}

void Rail::setCurrent(int index) {
    for (int i = 0; i < count(); ++i) {
        RailItem* item = m_items[static_cast<std::size_t>(i)];
        // Without a season none is chosen, which a group of which one always is would not allow.
        item->setAutoExclusive(false);
        item->setChecked(i == index);
        item->setAutoExclusive(true);
    }
    layOut();
}

void Rail::setWaiting(int index, int waiting) {
    m_items[static_cast<std::size_t>(index)]->setWaiting(waiting);
}

int Rail::waiting(int index) const { return m_items[static_cast<std::size_t>(index)]->waiting(); }

void Rail::readAnew() {
    m_title = tr("Combwright");
    m_under = tr("no season open");
    m_invented = false;
    if (m_session.hasSeason()) {
        const auto info = m_session.read().first<SeasonInfo>({});
        m_title = info ? fromUtf8(info->name.text())
                       : fromUtf8(m_session.season().path()).section(QLatin1Char('/'), -1);
        m_invented = info && info->invented.value_or(false);
        const auto colonies = coloniesAliveOn(m_session.read(), m_session.clock().today());
        m_under = tr("%n colonies", nullptr, static_cast<int>(colonies));
        if (colonies == 1) m_under = tr("1 colony");
        m_under.replace(QLatin1String("%n"), QString::number(colonies));
    }
    update();
}

void Rail::layOut() {
    const Look& look = m_session.look();
    setFixedWidth(look.space(168));
    int y = look.space(76);
    for (RailItem* item : m_items) {
        item->setGeometry(0, y, width(), item->sizeHint().height());
        y += item->sizeHint().height();
    }
    m_inAndOut->setFont(look.font(TextSize::Note));
    m_inAndOut->setGeometry(look.space(12), y + look.space(8), width() - look.space(24),
                            look.target());
}

void Rail::keyPressEvent(QKeyEvent* event) {
    const bool down = event->key() == Qt::Key_Down;
    if (!down && event->key() != Qt::Key_Up) return QWidget::keyPressEvent(event);
    for (std::size_t i = 0; i < m_items.size(); ++i) {
        if (!m_items[i]->hasFocus()) continue;
        const std::size_t next =
            down ? (i + 1) % m_items.size() : (i + m_items.size() - 1) % m_items.size();
        m_items[next]->setFocus(Qt::TabFocusReason);
        return;
    }
}

void Rail::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    // Caps and words are set one behind the other from the left, in every language.
    painter.setLayoutDirection(Qt::LeftToRight);
    painter.fillRect(rect(), look.tone(Tone::Ground));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(width() - 1, 0, width() - 1, height());
    painter.drawLine(0, look.space(68) - 1, width(), look.space(68) - 1);
    const int left = look.space(20);
    const int room = width() - left - look.space(8);

    painter.setPen(look.tone(Tone::Ink));
    painter.setFont(look.font(TextSize::Body, true));
    painter.drawText(QRect(left, look.space(14), room, look.space(20)),
                     Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(m_title, Qt::ElideRight, room));
    painter.setFont(look.font(TextSize::Note));
    painter.setPen(look.tone(Tone::Muted));
    painter.drawText(QRect(left, look.space(34), room, look.space(18)),
                     Qt::AlignVCenter | Qt::AlignLeft, m_under);

    using Key = std::pair<const char*, QString>;
    const std::vector<Key> keys =
        m_session.hasSeason()
            ? std::vector<Key>{{"Ctrl+1", tr("to 7: the places")},
                               {"Ctrl+P", tr("print")},
                               {"Ctrl+E", tr("explain figures")},
                               {"Ctrl+U",
                                shownUnits() == Units::Metric ? tr("pounds") : tr("kilograms")},
                               {"Ctrl+K", tr("find anything")},
                               {"F1", tr("about this place")},
                               {"Ctrl+Z", tr("take back")}}
            : std::vector<Key>{{"Ctrl+N", tr("new season file")},
                               {"Ctrl+O", tr("open")},
                               {"Ctrl+Shift+L", tr("language")}};
    double y =
        height() - look.space(16 + 20 * static_cast<int>(keys.size()) + (m_invented ? 20 : 0));
    // In large type the places need the room; the keys told there are told in the help too.
    const int below = m_inAndOut->geometry().bottom() + look.space(12);
    for (const auto& [key, what] : keys) {
        if (y < below) {
            y += look.space(20);
            continue;
        }
        const double end =
            paintKeyCap(painter, QPointF(left, y),
                        QKeySequence(QLatin1String(key)).toString(QKeySequence::NativeText), look);
        painter.setFont(look.font(TextSize::Note));
        painter.setPen(look.tone(Tone::Muted));
        const double from = end + look.space(6);
        painter.drawText(QRectF(from, y - look.space(10), width() - from, look.space(20)),
                         Qt::AlignVCenter | Qt::AlignLeft,
                         painter.fontMetrics().elidedText(what, Qt::ElideRight,
                                                          width() - static_cast<int>(from) - 2));
        y += look.space(20);
    }
    if (m_invented) {
        painter.setFont(look.font(TextSize::Note, false, true));
        painter.drawText(QRectF(left, y, room, look.space(20)), Qt::AlignVCenter | Qt::AlignLeft,
                         tr("invented sample season"));
    }
}

}  // namespace combwright
