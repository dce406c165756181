#include "ui/season_book/account_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/common/flowing_words.h"
#include "ui/drawing/figure.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

/// Narrower than this, at the text's own size, the words of a line go below it.
constexpr int narrowAccount = 400;

/// Where name, figure and words of a line stand.
struct AccountRoom {
    QRectF name;
    double figureRight = 0;
    QRectF words;
};

FigureText figureOf(const AccountLine& line) {
    return {line.figure, line.unit, line.how ? letter(*line.how) : '\0'};
}

class AccountDelegate : public QStyledItemDelegate {
  public:
    AccountDelegate(Session& session, AccountLines* lines)
        : QStyledItemDelegate(lines), m_session(session), m_lines(lines) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Look& look = m_session.look();
        const AccountLine& line = lineAt(index.row());
        const QRectF cell(option.rect);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        if (option.state & QStyle::State_Selected) {
            painter->fillRect(cell, look.tone(Tone::Selection));
            if (m_lines->hasFocus())
                painter->fillRect(QRectF(cell.left(), cell.top(), look.px(3), cell.height()),
                                  look.tone(Tone::Accent));
        }
        const AccountRoom room = roomOf(line, cell);
        paintFlowing(*painter, room.name, nameOfLine(line), look);
        const double base =
            cell.top() + look.space(3) + QFontMetricsF(look.font(TextSize::Body)).ascent();
        paintFigure(*painter, {room.figureRight - m_columns.width(), base}, figureOf(line),
                    m_columns, {.bold = line.strong}, look);
        if (!line.note.isEmpty()) paintFlowing(*painter, room.words, wordsOfLine(line), look);
        if (line.sums) paintSum(*painter, cell, room.figureRight, look);
        painter->restore();
    }
    /// All figures of the section on the same edges.
    void measureColumns() {
        std::vector<FigureText> figures;
        for (const AccountLine& line : m_lines->section().lines) figures.push_back(figureOf(line));
        m_columns = measureFigures(figures, {.bold = true}, m_session.look());
    }
    int heightFor(int row, double width) const {
        const Look& look = m_session.look();
        const AccountLine& line = lineAt(row);
        const AccountRoom room = roomOf(line, QRectF(0, 0, width, 10));
        const double name = flowingHeight(nameOfLine(line), room.name.width(), look);
        const double words =
            line.note.isEmpty() ? 0 : flowingHeight(wordsOfLine(line), room.words.width(), look);
        const double high = isNarrow(width) ? name + words : std::max(name, words);
        return static_cast<int>(std::ceil(high)) + look.space(line.sums ? 10 : 6);
    }

  private:
    const AccountLine& lineAt(int row) const {
        return m_lines->section().lines[static_cast<std::size_t>(row)];
    }
    bool isNarrow(double width) const { return width < m_session.look().space(narrowAccount); }
    FlowingWords nameOfLine(const AccountLine& line) const {
        return {{line.name.trimmed(), TextSize::Body, Tone::Ink, line.strong}};
    }
    FlowingWords wordsOfLine(const AccountLine& line) const {
        return {{line.note, TextSize::Note, Tone::Muted}};
    }
    AccountRoom roomOf(const AccountLine& line, const QRectF& cell) const {
        const Look& look = m_session.look();
        AccountRoom room;
        const double top = cell.top() + look.space(3);
        const double left = cell.left() + look.px(line.name.startsWith(QLatin1Char(' ')) ? 20 : 8);
        const bool narrow = isNarrow(cell.width());
        room.figureRight = narrow ? cell.right() - look.px(4) : cell.left() + cell.width() * 0.56;
        const double figures = line.figure.isEmpty() ? 0 : m_columns.width() + look.px(8);
        room.name = QRectF(left, top, std::max(20.0, room.figureRight - figures - left), 10000);
        if (narrow) {
            const double name = flowingHeight(nameOfLine(line), room.name.width(), look);
            room.words = QRectF(left, top + name, cell.right() - left - look.px(4), 10000);
        } else {
            const double words = room.figureRight + look.px(14);
            room.words = QRectF(words, top, std::max(20.0, cell.right() - words), 10000);
        }
        return room;
    }
    void paintSum(QPainter& painter, const QRectF& cell, double right, const Look& look) const {
        painter.setPen(QPen(look.tone(Tone::Ink), 1));
        const double left = right - std::max(m_columns.width(), look.px(48));
        painter.drawLine(QPointF(left, cell.top() + 0.5), QPointF(right, cell.top() + 0.5));
        for (const double up : {5.5, 2.5})
            painter.drawLine(QPointF(left, cell.bottom() - up), QPointF(right, cell.bottom() - up));
    }

    Session& m_session;
    AccountLines* m_lines;
    FigureColumns m_columns;
};

QString spokenAccount(const AccountLine& line) {
    QStringList said{line.name.trimmed()};
    if (!line.figure.isEmpty()) said << spoken(figureOf(line));
    if (!line.note.isEmpty()) said << line.note;
    return said.join(QStringLiteral(", "));
}

}  // namespace

AccountLines::AccountLines(Session& session, QWidget* parent)
    : QTableWidget(parent), m_session(session) {
    setColumnCount(1);
    setTabKeyNavigation(false);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->hide();
    horizontalHeader()->hide();
    horizontalHeader()->setStretchLastSection(true);
    setItemDelegate(new AccountDelegate(session, this));
    connect(this, &QTableWidget::itemDoubleClicked, this, [this] { Q_EMIT opened(); });
}

void AccountLines::show(const AccountSection& section) {
    const int row = std::max(0, currentRow());
    m_section = section;
    setAccessibleName(section.title);
    setRowCount(static_cast<int>(section.lines.size()));
    for (int r = 0; r < rowCount(); ++r) {
        const AccountLine& line = section.lines[static_cast<std::size_t>(r)];
        auto* item = new QTableWidgetItem(
            QStringLiteral("%1 %2").arg(line.name.trimmed(), accountFigure(line)).trimmed());
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
        item->setData(Qt::AccessibleTextRole, spokenAccount(line));
        item->setToolTip(line.note);
        setItem(r, 0, item);
    }
    if (rowCount() > 0) setCurrentCell(std::min(row, rowCount() - 1), 0);
    measure();
}

void AccountLines::measure() {
    auto* delegate = static_cast<AccountDelegate*>(itemDelegate());
    delegate->measureColumns();
    verticalHeader()->setMinimumSectionSize(m_session.look().space(16));
    for (int r = 0; r < rowCount(); ++r)
        setRowHeight(r, delegate->heightFor(r, viewport()->width()));
    setFixedHeight(wholeHeight());
    viewport()->update();
}

int AccountLines::wholeHeight() const { return verticalHeader()->length() + 2; }

void AccountLines::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (currentRow() >= 0) Q_EMIT opened();
            return;
        case Qt::Key_Home:
        case Qt::Key_End:
            if (rowCount() > 0)
                setCurrentCell(event->key() == Qt::Key_Home ? 0 : rowCount() - 1, 0);
            return;
        default:
            QTableWidget::keyPressEvent(event);
    }
}

void AccountLines::resizeEvent(QResizeEvent* event) {
    QTableWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width()) measure();
}

void AccountLines::focusInEvent(QFocusEvent* event) {
    QTableWidget::focusInEvent(event);
    if (currentRow() < 0 && rowCount() > 0) setCurrentCell(0, 0);
    viewport()->update();
}

AccountView::AccountView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    m_title = new QLabel(this);
    m_title->setWordWrap(true);
    m_lines = new AccountLines(session, this);
    m_note = new QLabel(this);
    m_note->setWordWrap(true);
    auto* down = new QVBoxLayout(this);
    down->setContentsMargins(0, 0, 0, 0);
    down->addWidget(m_title);
    down->addWidget(m_lines);
    down->addWidget(m_note);
    setFocusProxy(m_lines);
    sizes();
}

void AccountView::show(const AccountSection& section) {
    setObjectName(QStringLiteral("account_") + section.id);
    m_lines->setObjectName(section.id);
    m_title->setText(section.title);
    m_note->setText(section.note);
    m_note->setVisible(!section.note.isEmpty());
    m_lines->setVisible(!section.lines.empty());
    m_lines->show(section);
}

const AccountLine* AccountView::current() const {
    const int row = m_lines->currentRow();
    return row >= 0 && row < static_cast<int>(section().lines.size())
               ? &section().lines[static_cast<std::size_t>(row)]
               : nullptr;
}

void AccountView::sizes() {
    const Look& look = m_session.look();
    m_title->setFont(look.font(TextSize::Body, true));
    m_note->setFont(look.font(TextSize::Note));
    QPalette muted = m_note->palette();
    muted.setColor(QPalette::WindowText, look.tone(Tone::Muted));
    m_note->setPalette(muted);
    layout()->setSpacing(look.space(2));
    m_lines->measure();
}

}  // namespace combwright
