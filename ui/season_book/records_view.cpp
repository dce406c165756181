#include "ui/season_book/records_view.h"

#include <QHeaderView>
#include <QVBoxLayout>

#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/words/words.h"
#include "ui/common/figure_delegate.h"

namespace combwright {

RecordsView::RecordsView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_title = new QLabel(this);
    m_table = new QTableWidget(this);
    m_table->setObjectName(QStringLiteral("records"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_note = new QLabel(this);
    m_note->setWordWrap(true);
    column->addWidget(m_title);
    column->addWidget(m_table, 1);
    column->addWidget(m_note);
    setFocusProxy(m_table);
    connect(&session, &Session::lookChanged, this, &RecordsView::sizes);
    sizes();
}

void RecordsView::sizes() {
    const Look& look = m_session.look();
    m_title->setFont(look.font(TextSize::Body, true));
    m_note->setFont(look.font(TextSize::Note));
    m_table->horizontalHeader()->setFont(look.font(TextSize::Note));
    m_table->verticalHeader()->setMinimumSectionSize(look.space(18));
    m_table->verticalHeader()->setDefaultSectionSize(look.space(22));
    m_table->setMinimumHeight(look.space(160));
    layout()->setSpacing(look.space(4));
    auto* head = m_table->horizontalHeader();
    for (int c = 0; c < m_table->columnCount(); ++c)
        head->setSectionResizeMode(c,
                                   c == 0 ? QHeaderView::Stretch : QHeaderView::ResizeToContents);
}

void RecordsView::show(const YieldRecords& records) {
    m_records = records;
    const TableBlock block = recordsBlock(records);
    m_title->setText(tr("%1: what it is made of").arg(recordsTitle(records)));
    m_note->setText(records.empty()
                        ? tr("No run and no note of that year knows of it. Esc goes back.")
                        : tr("A run's share is its buckets, shared out by what came out of the "
                             "boxes. Ctrl+E explains it; Esc goes back."));
    fill(block);
    // A run's name runs on over the columns its line leaves empty.
    for (int r = 0; r < m_table->rowCount(); ++r)
        if (block.rows[static_cast<std::size_t>(r)].group) m_table->setSpan(r, 0, 1, 5);
}

void RecordsView::show(const QString& title, const TableBlock& block, const QString& note) {
    m_records = {};
    m_title->setText(title);
    m_note->setText(note);
    fill(block);
}

void RecordsView::fill(const TableBlock& block) {
    const Look& look = m_session.look();
    m_table->setAccessibleName(m_title->text());
    m_table->clear();
    m_table->clearSpans();
    m_table->setColumnCount(static_cast<int>(block.columns.size()));
    m_table->setRowCount(static_cast<int>(block.rows.size()));
    for (int c = 0; c < m_table->columnCount(); ++c) {
        const TableColumn& column = block.columns[static_cast<std::size_t>(c)];
        auto* head = new QTableWidgetItem(column.head);
        head->setTextAlignment(Qt::AlignBottom | (column.right ? Qt::AlignRight : Qt::AlignLeft));
        m_table->setHorizontalHeaderItem(c, head);
        for (int r = 0; r < m_table->rowCount(); ++r) {
            const auto& cells = block.rows[static_cast<std::size_t>(r)].cells;
            const Cell& cell = cells[static_cast<std::size_t>(c)];
            QString text = cell.text;
            if (cell.how) text += QStringLiteral(" %1").arg(QLatin1Char(letter(*cell.how)));
            auto* item = new QTableWidgetItem(text);
            item->setTextAlignment(Qt::AlignVCenter |
                                   (column.right ? Qt::AlignRight : Qt::AlignLeft));
            item->setFont(look.font(TextSize::Body, cell.strong));
            if (cell.muted) item->setForeground(look.tone(Tone::Muted));
            m_table->setItem(r, c, item);
        }
    }
    if (m_table->rowCount() > 0) m_table->setCurrentCell(0, 0);
    sizes();
}

}  // namespace combwright
