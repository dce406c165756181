#include "ui/shell/find/find_box.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "ui/drawing/key_cap.h"

namespace combwright {
namespace {

enum FindRole { ContextRole = Qt::UserRole, KeyRole, HeadRole };

/// A head, or a title with what it is behind it and its key at the end, in one line.
class FindLinePainter : public QStyledItemDelegate {
  public:
    FindLinePainter(const Look& look, QObject* parent)
        : QStyledItemDelegate(parent), m_look(look) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        return {m_look.space(200), m_look.space(index.data(HeadRole).toBool() ? 24 : 28)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        painter->save();
        const QString title = index.data(Qt::DisplayRole).toString();
        QRect row = option.rect.adjusted(m_look.space(12), 0, -m_look.space(12), 0);
        if (index.data(HeadRole).toBool()) {
            painter->setFont(m_look.font(TextSize::Note, true));
            painter->setPen(m_look.tone(Tone::Muted));
            painter->drawText(row, Qt::AlignLeft | Qt::AlignBottom, title);
            painter->restore();
            return;
        }
        if (option.state & QStyle::State_Selected) {
            painter->fillRect(option.rect, m_look.tone(Tone::Selection));
            painter->fillRect(
                QRect(option.rect.topLeft(), QSize(m_look.space(4), option.rect.height())),
                m_look.tone(Tone::Accent));
        }
        if (const QString key = index.data(KeyRole).toString(); !key.isEmpty()) {
            const int wide = static_cast<int>(keyCapSize(key, m_look).width()) + 1;
            paintKeyCap(*painter, QPointF(row.right() - wide, row.center().y() + 0.5), key, m_look);
            row.setRight(row.right() - wide - m_look.space(12));
        }
        const QString context = index.data(ContextRole).toString();
        const QFont bold = m_look.font(TextSize::Body, true);
        const int most = context.isEmpty() ? row.width() : row.width() * 3 / 5;
        const QString shown = QFontMetrics(bold).elidedText(title, Qt::ElideRight, most);
        painter->setFont(bold);
        painter->setPen(m_look.tone(Tone::Ink));
        painter->drawText(row, Qt::AlignLeft | Qt::AlignVCenter, shown);
        row.setLeft(row.left() + QFontMetrics(bold).horizontalAdvance(shown) + m_look.space(12));
        const QFont plain = m_look.font(TextSize::Note);
        painter->setFont(plain);
        painter->setPen(m_look.tone(Tone::Muted));
        painter->drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                          QFontMetrics(plain).elidedText(context, Qt::ElideRight, row.width()));
        painter->restore();
    }

  private:
    Look m_look;
};

QLabel* mutedLabel(const Look& look, const char* name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setObjectName(QLatin1String(name));
    label->setTextFormat(Qt::PlainText);
    label->setFont(look.font(TextSize::Note));
    QPalette palette = label->palette();
    palette.setColor(QPalette::WindowText, look.tone(Tone::Muted));
    label->setPalette(palette);
    return label;
}

}  // namespace

FindBox::FindBox(const Look& look, QWidget* from) : QFrame(from, Qt::Popup), m_look(look) {
    setObjectName(QStringLiteral("find_box"));
    setAttribute(Qt::WA_DeleteOnClose);
    setAccessibleName(tr("Find anything"));
    setProperty("card", true);
    setFont(look.font(TextSize::Body));
    setPalette(paletteFor(look.dark));
    m_typed = new QLineEdit(this);
    m_typed->setObjectName(QStringLiteral("find_typed"));
    m_typed->setAccessibleName(tr("Find anything"));
    m_typed->setPlaceholderText(tr("A mark, a word, a day, something to do"));
    m_typed->setFont(look.font(TextSize::Head));
    m_typed->setMaxLength(200);
    m_typed->installEventFilter(this);
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("find_list"));
    m_list->setAccessibleName(tr("What was found"));
    m_list->setItemDelegate(new FindLinePainter(look, m_list));
    m_list->setFocusPolicy(Qt::NoFocus);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_note = mutedLabel(look, "find_note", this);
    m_note->setWordWrap(true);
    m_keys = mutedLabel(look, "find_keys", this);
    m_keys->setWordWrap(true);
    m_keys->setText(tr("↑ ↓ line   Tab next group   Enter goes there   Esc back"));
    auto* column = new QVBoxLayout(this);
    const int edge = look.space(12);
    column->setContentsMargins(edge, edge, edge, look.space(8));
    column->setSpacing(look.space(8));
    column->addWidget(m_typed);
    column->addWidget(m_list, 1);
    column->addWidget(m_note);
    column->addWidget(m_keys);
    setFocusProxy(m_typed);
    connect(m_typed, &QLineEdit::textChanged, this, &FindBox::typed);
    connect(m_list, &QListWidget::itemClicked, this,
            [this](QListWidgetItem* item) { choose(m_list->row(item)); });
    connect(m_list, &QListWidget::currentRowChanged, this, [this] { sayCurrent(); });
}

void FindBox::setRoom(const QRect& room) {
    m_room = room;
    fit();
}

void FindBox::begin() {
    m_typed->setFocus(Qt::PopupFocusReason);
    m_typed->selectAll();
}

void FindBox::setLines(const FindLines& lines, const QString& note) {
    // Reading on while one has gone down some lines must not take one back to the first.
    const FindLine* at = current();
    const QString was = at && m_list->currentRow() > 1 ? at->title + at->context : QString();
    m_lines = lines;
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    int first = -1;
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        const FindLine& line = m_lines[i];
        auto* item = new QListWidgetItem(line.title, m_list);
        item->setData(ContextRole, line.context);
        item->setData(KeyRole, line.key);
        item->setData(HeadRole, line.isHead());
        item->setData(Qt::AccessibleTextRole, line.context.isEmpty()
                                                  ? line.title
                                                  : tr("%1, %2").arg(line.title, line.context));
        item->setToolTip(line.context);
        if (line.isHead()) {
            item->setFlags(Qt::ItemIsEnabled);
            continue;
        }
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
        if (first < 0 || (!was.isEmpty() && was == line.title + line.context))
            first = static_cast<int>(i);
    }
    m_list->setCurrentRow(first);
    m_note->setText(note);
    m_note->setVisible(!note.isEmpty());
    fit();
    sayCurrent();
}

const FindLine* FindBox::current() const {
    const int row = m_list->currentRow();
    if (row < 0 || row >= static_cast<int>(m_lines.size())) return nullptr;
    const FindLine& line = m_lines[static_cast<std::size_t>(row)];
    return line.isHead() ? nullptr : &line;
}

void FindBox::fit() {
    if (m_room.isEmpty()) return;
    int rows = 0;
    for (int i = 0; i < m_list->count(); ++i) rows += m_list->sizeHintForRow(i);
    const int wide = std::min(m_room.width(), m_look.space(840));
    m_list->setVisible(rows > 0);
    const int gap = layout()->spacing();
    const QMargins edges = layout()->contentsMargins();
    const int inside = wide - edges.left() - edges.right();
    int high = edges.top() + edges.bottom() + m_typed->sizeHint().height() + gap +
               m_keys->heightForWidth(inside);
    // A little more than its lines, or a bar would stand beside what is all there.
    if (rows > 0) high += rows + 2 * m_list->frameWidth() + gap + m_look.space(4);
    if (!m_note->isHidden()) high += m_note->heightForWidth(inside) + gap;
    setGeometry(m_room.left(), m_room.top(), wide, std::min(high, m_room.height()));
    if (QListWidgetItem* item = m_list->currentItem()) m_list->scrollToItem(item);
}

void FindBox::step(int by, bool group) {
    const int count = m_list->count();
    int row = m_list->currentRow();
    if (row < 0) return;
    const auto isHead = [this](int at) { return m_lines[static_cast<std::size_t>(at)].isHead(); };
    if (group) {
        // To the first line of the next group; backwards to the first of the one before.
        const auto headOf = [&](int at) {
            while (at > 0 && !isHead(at)) --at;
            return at;
        };
        int head = headOf(row);
        if (by > 0) {
            for (head = row + 1; head < count && !isHead(head);) ++head;
            if (head >= count) head = 0;
        } else {
            head = head > 0 ? headOf(head - 1) : headOf(count - 1);
        }
        row = isHead(head) ? head + 1 : head;
    } else {
        const int wanted = std::clamp(row + by, 0, count - 1);
        const int way = by > 0 ? 1 : -1;
        int next = wanted;
        while (next >= 0 && next < count && isHead(next)) next += way;
        if (next < 0 || next >= count) return;
        row = next;
    }
    m_list->setCurrentRow(row);
    // The head of a first line is seen with it.
    if (row == 1) m_list->scrollToTop();
}

void FindBox::choose(int row) {
    if (row < 0 || row >= static_cast<int>(m_lines.size())) return;
    const FindLine line = m_lines[static_cast<std::size_t>(row)];
    if (!line.isHead()) Q_EMIT chosen(line);
}

void FindBox::sayCurrent() {
    const FindLine* line = current();
    m_typed->setAccessibleDescription(!line ? m_note->text()
                                      : line->context.isEmpty()
                                          ? line->title
                                          : tr("%1, %2").arg(line->title, line->context));
    QAccessibleEvent event(m_typed, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

bool FindBox::eventFilter(QObject* watched, QEvent* event) {
    // A key of the place behind it would come first: Escape leads back there in the season book.
    if (event->type() == QEvent::ShortcutOverride) {
        constexpr std::array ours{Qt::Key_Escape, Qt::Key_Down,   Qt::Key_Up,   Qt::Key_PageDown,
                                  Qt::Key_PageUp, Qt::Key_Return, Qt::Key_Enter};
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (std::find(ours.begin(), ours.end(), key) == ours.end())
            return QFrame::eventFilter(watched, event);
        event->accept();
        return true;
    }
    if (event->type() != QEvent::KeyPress) return QFrame::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const int page = std::max(1, m_list->viewport()->height() / m_look.space(28) - 1);
    switch (key->key()) {
        case Qt::Key_Down:
            step(+1, false);
            return true;
        case Qt::Key_Up:
            step(-1, false);
            return true;
        case Qt::Key_PageDown:
            step(+page, false);
            return true;
        case Qt::Key_PageUp:
            step(-page, false);
            return true;
        case Qt::Key_Tab:
            step(+1, true);
            return true;
        case Qt::Key_Backtab:
            step(-1, true);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            choose(m_list->currentRow());
            return true;
        case Qt::Key_Escape:
            close();
            return true;
        case Qt::Key_K:
            if (key->modifiers() != Qt::ControlModifier) break;
            m_typed->selectAll();
            return true;
        default:
            break;
    }
    return QFrame::eventFilter(watched, event);
}

void FindBox::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), m_look.tone(Tone::Surface));
    painter.setPen(m_look.tone(Tone::Line));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

}  // namespace combwright
