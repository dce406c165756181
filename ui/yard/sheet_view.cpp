#include "ui/yard/sheet_view.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "core/actions/yard/sheet.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/shorthand.h"
#include "core/words/words.h"
#include "ui/yard/cells_editor.h"
#include "ui/yard/line_delegate.h"

namespace combwright {
namespace {

/// When the sums below are told after a line was kept: soon enough to seem at once.
constexpr int belowAfterMs = 60;

}  // namespace

// SheetTable ----------------------------------------------------------------------------------

SheetTable::SheetTable(SheetModel& model, Session& session, QWidget* parent)
    : QTableView(parent), m_model(model), m_session(session) {
    setObjectName(QStringLiteral("yard_sheet"));
    setAccessibleName(tr("Yard sheet"));
    setModel(&model);
    setItemDelegate(new LineDelegate(*this, model, session));
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(true);
    setSelectionBehavior(SelectRows);
    setSelectionMode(SingleSelection);
    setEditTriggers(CurrentChanged | SelectedClicked | AnyKeyPressed | EditKeyPressed);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    verticalHeader()->hide();
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setSectionsClickable(false);
    const auto sizes = [this] {
        verticalHeader()->setDefaultSectionSize(m_session.look().space(32));
        verticalHeader()->setMinimumSectionSize(m_session.look().space(32));
        layOutColumns();
        fitRows(0, this->model()->rowCount() - 1);
    };
    connect(&session, &Session::lookChanged, this, sizes);
    // A row is as high as what is read back and to mind, and as the cells of the row one types in.
    // Each is measured when it changes: to measure all of them with every letter held up the hand.
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    connect(&model, &QAbstractItemModel::modelReset, this,
            [this] { fitRows(0, this->model()->rowCount() - 1); });
    sizes();
}

CellsEditor* SheetTable::cells() const {
    return qobject_cast<CellsEditor*>(indexWidget(currentIndex()));
}

void SheetTable::switchCells() {
    const int row = currentIndex().row();
    if (!cellsAreMeant()) return;
    // A cell has room for one of two marks that contradict; which, only the person can say.
    if (!m_asCells && row >= 0 && contradictionIn(m_model.lineOf(row).toStdString())) {
        m_session.tell(m_model.saidBack(row), true);
        return;
    }
    m_asCells = !m_asCells;
    if (row < 0) return;
    // The line as it is typed goes over; it is the same line in either shape.
    if (QWidget* editor = indexWidget(currentIndex()))
        closeEditor(editor, QAbstractItemDelegate::NoHint);
    editRow(row);
    fitRow();
    Q_EMIT cellsSwitched();
}

bool SheetTable::cellsAreMeant() {
    CellsEditor* editor = cells();
    QLineEdit* bad = editor ? editor->firstBad() : nullptr;
    if (!bad) return true;
    m_session.tell(editor->badWhy(), true);
    bad->setFocus();
    return false;
}

void SheetTable::fitRow() {
    CellsEditor* editor = cells();
    // Twice: the first look tells the editor its width, the second the row its height.
    if (editor) updateGeometries();
    resizeRowsToContents();
    updateEditorGeometries();
}

int SheetTable::heightAsked(int row, int fromColumn, int toColumn) const {
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    option.rect.setHeight(std::max(rowHeight(row), 1));
    int height = 0;
    for (int column = fromColumn; column <= toColumn; ++column) {
        if (isColumnHidden(column)) continue;
        option.rect.setWidth(columnWidth(column));
        const QModelIndex at = model()->index(row, column);
        height = std::max(height, itemDelegate()->sizeHint(option, at).height());
    }
    return height;
}

void SheetTable::fitRows(int from, int to) {
    m_heightBesideLine.resize(static_cast<std::size_t>(std::max(model()->rowCount(), 0)));
    for (int row = from; row <= to; ++row) {
        m_heightBesideLine[static_cast<std::size_t>(row)] =
            std::max(heightAsked(row, 0, SheetModel::LineColumn - 1),
                     heightAsked(row, SheetModel::ReadBackColumn + 1, SheetModel::ColumnCount - 1));
        fitLine(row);
    }
}

void SheetTable::fitLine(int row) {
    const int line = heightAsked(row, SheetModel::LineColumn, SheetModel::ReadBackColumn);
    verticalHeader()->resizeSection(
        row, std::max({line, m_heightBesideLine[static_cast<std::size_t>(row)],
                       verticalHeader()->minimumSectionSize()}));
}

void SheetTable::dataChanged(const QModelIndex& from, const QModelIndex& to,
                             const QList<int>& roles) {
    QTableView::dataChanged(from, to, roles);
    // A letter changes the line and what it reads back as; the other cells keep their height.
    const bool lineAlone = from.row() == to.row() && from.column() == SheetModel::LineColumn &&
                           to.column() == SheetModel::ReadBackColumn &&
                           from.row() < static_cast<int>(m_heightBesideLine.size());
    if (lineAlone)
        fitLine(from.row());
    else
        fitRows(from.row(), to.row());
    // A row that grew below the edge is typed in blindly.
    if (state() == EditingState && from.row() <= currentIndex().row() &&
        currentIndex().row() <= to.row())
        scrollTo(currentIndex());
}

void SheetTable::layOutColumns() {
    const Look& look = m_session.look();
    // What must be read or typed keeps its room; of what was seen last as much stays as fits.
    constexpr int needed = 520;
    const std::pair<int, int> fixed[] = {
        {SheetModel::HiveColumn, 64},        {SheetModel::SupersColumn, 68},
        {SheetModel::BroodColumn, 68},       {SheetModel::StoresColumn, 68},
        {SheetModel::OpenedColumn, 64},      {SheetModel::EggsColumn, 68},
        {SheetModel::SupersBeforeColumn, 60}};
    int left = viewport()->width();
    for (const auto& [column, least] : fixed) {
        // A heading in another language may be longer than what stands under it.
        int wide = look.space(least);
        const auto lines = model()->headerData(column, Qt::Horizontal).toString().split(u'\n');
        for (const QString& text : lines)
            wide = std::max(
                wide, horizontalHeader()->fontMetrics().horizontalAdvance(text) + look.space(8));
        const bool fits = column == SheetModel::HiveColumn || left - wide >= look.space(needed);
        setColumnHidden(column, !fits);
        if (!fits) continue;
        setColumnWidth(column, wide);
        left -= wide;
    }
    const int line = left * 36 / 100;
    const int back = left * 36 / 100;
    setColumnWidth(SheetModel::LineColumn, line);
    setColumnWidth(SheetModel::ReadBackColumn, back);
    setColumnWidth(SheetModel::MindColumn, left - line - back);
}

void SheetTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    layOutColumns();
    if (event->size().width() != event->oldSize().width()) fitRows(0, model()->rowCount() - 1);
    if (m_asCells) fitRow();
}

void SheetTable::focusInEvent(QFocusEvent* event) {
    QTableView::focusInEvent(event);
    if (m_leaving) return;
    if (CellsEditor* editor = cells())
        (editor->firstBad() ? static_cast<QWidget*>(editor->firstBad()) : editor)->setFocus();
    else if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason)
        editRow(currentIndex().row());
}

bool SheetTable::goesToReason() const {
    return m_reason && QApplication::focusWidget() == m_reason;
}

void SheetTable::editRow(int row) {
    const QModelIndex at = model()->index(row, SheetModel::LineColumn);
    if (!at.isValid()) return;
    setCurrentIndex(at);
    if (state() != EditingState) edit(at);
    if (m_asCells) fitRow();
    scrollTo(at);
}

void SheetTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    if (previous.isValid() && previous.row() != current.row()) m_model.keep(previous.row());
    // Whatever column was clicked, one types in the line.
    if (current.isValid() && current.column() != SheetModel::LineColumn) {
        setCurrentIndex(current.siblingAtColumn(SheetModel::LineColumn));
        return;
    }
    QTableView::currentChanged(current, previous);
}

void SheetTable::leaveRow(int step) {
    const int row = currentIndex().row();
    if (!cellsAreMeant()) return;
    // A refused line stays under the cursor, so that it can be put right.
    if (!m_model.keep(row)) return;
    const int next = row + step;
    if (next >= 0 && next < m_model.rowCount()) editRow(next);
}

bool SheetTable::eventFilter(QObject* watched, QEvent* event) {
    auto* edit = qobject_cast<QLineEdit*>(watched);
    if (edit && event->type() == QEvent::FocusIn && cells()) cells()->update();
    if (!edit || event->type() != QEvent::KeyPress) return QTableView::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    const bool modifierAlone =
        key->key() == Qt::Key_Shift || key->key() == Qt::Key_Control || key->key() == Qt::Key_Alt;
    if (!modifierAlone) ++m_keystrokes;
    if (key->key() == Qt::Key_Delete &&
        key->modifiers() == (Qt::ControlModifier | Qt::ShiftModifier)) {
        Q_EMIT strikeAsked();
        return true;
    }
    switch (key->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (key->modifiers() & Qt::ControlModifier) {
                if (cellsAreMeant()) Q_EMIT closeAsked();
                return true;
            }
            leaveRow(key->modifiers() & Qt::ShiftModifier ? -1 : 1);
            return true;
        case Qt::Key_Down:
            leaveRow(1);
            return true;
        case Qt::Key_Up:
            leaveRow(-1);
            return true;
        case Qt::Key_F6:
            switchCells();
            return true;
        case Qt::Key_Tab:
        case Qt::Key_Backtab: {
            const bool back = key->key() == Qt::Key_Backtab;
            if (cells() && cells()->step(!back)) return true;
            if (back || !m_reason || !m_reason->isVisible()) m_model.keep(currentIndex().row());
            // A cell that cannot be meant keeps its text and its place, but never the keyboard.
            if (cells() && cells()->firstBad()) {
                m_session.tell(cells()->badWhy(), true);
                focusNextPrevChild(!back);
                return true;
            }
            // The table itself takes the keyboard on its way out; a cell that is closed under it
            // would hand it to the cell beside.
            m_leaving = true;
            QWidget* editor = cells() ? static_cast<QWidget*>(cells()) : edit;
            setFocus();
            closeEditor(editor, QAbstractItemDelegate::NoHint);
            fitRows(currentIndex().row(), currentIndex().row());
            focusNextPrevChild(!back);
            m_leaving = false;
            return true;
        }
        case Qt::Key_Right:
            // At the end of a line there is nowhere to go but into what was typed before.
            if (edit->cursorPosition() < edit->text().size()) return false;
            if (!m_model.takeDraft(currentIndex().row())) return false;
            if (cells())
                cells()->reset(m_model.lineOf(currentIndex().row()));
            else
                edit->setText(m_model.lineOf(currentIndex().row()));
            return true;
        case Qt::Key_Escape:
            m_model.discard(currentIndex().row());
            if (cells()) {
                cells()->setOffer({});
                cells()->reset(m_model.lineOf(currentIndex().row()));
            } else {
                edit->setText(m_model.lineOf(currentIndex().row()));
                edit->setPlaceholderText({});
            }
            return true;
        default:
            return false;
    }
}

// SheetView -----------------------------------------------------------------------------------

SheetView::SheetView(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_model(session) {
    m_table = new SheetTable(m_model, session, this);
    const auto label = [this](const char* name) {
        auto* text = new QLabel(this);
        text->setObjectName(QLatin1String(name));
        text->setWordWrap(true);
        text->setTextFormat(Qt::RichText);
        text->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        return text;
    };
    m_marks = label("marks");
    m_whyRow = new QWidget(this);
    auto* whyLine = new QHBoxLayout(m_whyRow);
    whyLine->setContentsMargins(0, 0, 0, 0);
    auto* whyHead = new QLabel(tr("&Why a line of this day is changed:"), m_whyRow);
    m_why = new QLineEdit(m_whyRow);
    m_why->setObjectName(QStringLiteral("why_changed"));
    m_why->setPlaceholderText(tr("kept beside the old line; may stay blank"));
    whyHead->setBuddy(m_why);
    whyLine->addWidget(whyHead);
    whyLine->addWidget(m_why, 1);
    connect(m_why, &QLineEdit::textChanged, &m_model, &SheetModel::setWhy);
    connect(m_why, &QLineEdit::returnPressed, this, &SheetView::keepWithReason);
    m_table->setReasonField(m_why);
    connect(m_table, &SheetTable::strikeAsked, this, &SheetView::strikeVisit);
    m_kept = label("kept");
    m_lookAt = label("look_at");
    m_take = label("take_along");
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 8, 24, 8);
    column->setSpacing(12);
    column->addWidget(m_table, 1);
    column->addWidget(m_whyRow);
    column->addWidget(m_marks);
    m_below = new QScrollArea(this);
    m_below->setFrameShape(QFrame::NoFrame);
    m_below->setWidgetResizable(true);
    m_below->setAccessibleName(tr("What was kept, what to look at, what to take next time"));
    auto* belowPage = new QWidget(m_below);
    m_belowRow = new QBoxLayout(QBoxLayout::LeftToRight, belowPage);
    m_belowRow->setContentsMargins(0, 0, 0, 0);
    m_belowRow->setSpacing(24);
    for (QLabel* text : {m_kept, m_lookAt, m_take}) m_belowRow->addWidget(text, 1);
    m_below->setWidget(belowPage);
    column->addWidget(m_below);
    // The sums follow the hand: the next hive's line is there first.
    m_belowLater.setSingleShot(true);
    m_belowLater.setInterval(belowAfterMs);
    connect(&m_belowLater, &QTimer::timeout, this, &SheetView::fillBelow);
    connect(&m_model, &SheetModel::sheetChanged, this, [this] {
        if (m_model.isKeeping())
            m_belowLater.start();
        else
            fillBelow();
    });
    connect(&session, &Session::lookChanged, this, &SheetView::fillBelow);
}

void SheetView::show(Id<Yard> yard, Day on) {
    if (m_model.sheet().on != on || m_model.sheet().yard.id != yard) m_why->clear();
    m_strikeAsked = false;
    m_model.show(yard, on);
    fillBelow();
}

void SheetView::settle() {
    m_model.settle();
    if (m_belowLater.isActive()) fillBelow();
}

void SheetView::paintEvent(QPaintEvent*) {
    // An ink rule opens the blocks below the table.
    QPainter painter(this);
    painter.setPen(QPen(m_session.look().tone(Tone::Ink), 1.2));
    painter.drawLine(m_below->x(), m_below->y() - 5, m_below->x() + m_below->width(),
                     m_below->y() - 5);
}

void SheetView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    shareHeight();
}

void SheetView::shareHeight() {
    // The rows one types in come first: the marks fold in below and the blocks scroll where it is
    // tight.
    const Look& look = m_session.look();
    const bool narrow = width() < look.space(760);
    m_belowRow->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    const int rows = look.space(32) * std::min(m_model.rowCount() + 2, 8);
    const int room = std::max(width() - 48, 100);
    const int most = std::max(height() * 30 / 100, 60);
    const int marks = m_marks->heightForWidth(room);
    const bool marksFit = !narrow && height() - marks - most > rows;
    auto* column = static_cast<QVBoxLayout*>(layout());
    if (marksFit && column->indexOf(m_marks) < 0) column->insertWidget(2, m_marks);
    if (!marksFit && m_belowRow->indexOf(m_marks) < 0) m_belowRow->addWidget(m_marks, 1);
    m_marks->show();
    const int below = m_below->widget()->heightForWidth(room);
    const int wanted = below > 0 ? below : m_below->widget()->sizeHint().height();
    m_below->setFixedHeight(std::clamp(wanted, 0, most));
    // What does not fit is scrolled by keyboard too.
    m_below->setFocusPolicy(wanted > most ? Qt::StrongFocus : Qt::NoFocus);
}

void SheetView::keepWithReason() {
    if (!m_model.keepAll()) return;
    m_table->setFocus();
    m_table->editRow(std::max(m_table->currentIndex().row(), 1));
}

void SheetView::strikeVisit() {
    const YardSheet& sheet = m_model.sheet();
    if (!sheet.visit) {
        m_session.tell(tr("Nothing is written of this day yet; there is no visit to strike out."),
                       true);
        return;
    }
    if (!std::exchange(m_strikeAsked, true)) {
        m_session.tell(
            tr("Strike out the whole visit, %n lines with all they moved? "
               "Ctrl+Shift+Delete again does it; Ctrl+Z brings it back.")
                .replace(QLatin1String("%n"), QString::number(sheet.opened + sheet.notOpened)),
            true);
        return;
    }
    m_strikeAsked = false;
    const StrikeVisit strike{.on = sheet.on, .yard = sheet.yard.id};
    m_session.run(strike, StepNote{m_why->text().trimmed().toStdString(),
                                   "visit " + sheet.yard.name.text() + " " + isoText(sheet.on)});
    m_model.reload();
}

void SheetView::fillBelow() {
    m_belowLater.stop();
    const YardSheet& sheet = m_model.sheet();
    const bool rowWasHidden = m_whyRow->isHidden();
    m_whyRow->setVisible(sheet.visit && sheet.on < m_session.clock().today() &&
                         sheet.opened + sheet.notOpened > 0);
    const Look& look = m_session.look();
    for (QLabel* text : {m_kept, m_lookAt, m_take}) text->setFont(look.font(TextSize::Body));
    m_marks->setFont(look.font(TextSize::Note));
    QStringList marks;
    const auto together = [](const QString& words) {
        return words.toHtmlEscaped().replace(QLatin1Char(' '), QStringLiteral("&nbsp;"));
    };
    for (const ShorthandMark& mark : shorthandMarks(shownUnits()))
        marks << QStringLiteral("<b>%1</b>&nbsp;%2")
                     .arg(together(fromUtf8(mark.typed)), together(word(mark.meaning)));
    marks << tr("<b>anything else</b>&nbsp;is&nbsp;your&nbsp;note");
    bool other = false;
    // Words laid out again in vain hold up the next line.
    const auto say = [&other](QLabel* label, const QString& text) {
        if (label->text() == text) return;
        label->setText(text);
        other = true;
    };
    say(m_marks, marks.join(QStringLiteral(" &nbsp; ")));
    say(m_kept, keptText());
    say(m_lookAt, lookAtText());
    say(m_take, takeText());
    if (other || rowWasHidden != m_whyRow->isHidden()) shareHeight();
    update();
}

}  // namespace combwright
