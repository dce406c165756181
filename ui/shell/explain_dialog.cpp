#include "ui/shell/explain_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QVBoxLayout>

#include "core/words/words.h"
#include "core/words/working_words.h"

namespace combwright {

ExplainDialog::ExplainDialog(QWidget* parent, const Look& look, const QString& place,
                             std::vector<Explained> figures)
    : QDialog(parent), m_figures(std::move(figures)) {
    setWindowTitle(tr("How the figures come about: %1").arg(place));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(16), look.space(16), look.space(16), look.space(12));
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("figures"));
    m_list->setAccessibleName(tr("Figures of this place"));
    m_list->setWordWrap(true);
    m_list->setResizeMode(QListView::Adjust);
    m_list->setTextElideMode(Qt::ElideNone);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    for (const Explained& figure : m_figures)
        m_list->addItem(QStringLiteral("%1\n%2").arg(figure.what, figure.answer));
    m_steps = new QTableWidget(this);
    m_steps->setObjectName(QStringLiteral("steps"));
    m_steps->setAccessibleName(tr("How the chosen figure comes about"));
    m_steps->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_steps->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_steps->setTabKeyNavigation(false);
    m_steps->setShowGrid(false);
    m_steps->setWordWrap(true);
    m_steps->verticalHeader()->hide();
    m_steps->horizontalHeader()->setHighlightSections(false);
    m_steps->setColumnCount(4);
    m_steps->setHorizontalHeaderLabels({QString(), tr("value"), tr("how"), tr("source")});
    across->addWidget(m_list, 2);
    across->addWidget(m_steps, 5);
    column->addLayout(across, 1);
    auto* foot = new QLabel(tr("Rounded only where it is shown: sums are made of these values. "
                               "Rates marked as your own "
                               "are those you set; the published ones stand beside their source."),
                            this);
    foot->setWordWrap(true);
    foot->setFont(look.font(TextSize::Note));
    column->addWidget(foot);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_list, &QListWidget::currentRowChanged, this, &ExplainDialog::choose);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(1000), room.width() - look.space(32)),
           std::min(look.space(520), room.height() - look.space(32)));
    if (!m_figures.empty()) m_list->setCurrentRow(0);
    m_list->setFocus();
}

void ExplainDialog::choose(int row) {
    m_steps->setRowCount(0);
    if (row < 0 || row >= static_cast<int>(m_figures.size())) return;
    const auto& steps = m_figures[static_cast<std::size_t>(row)].working.steps;
    m_steps->setRowCount(static_cast<int>(steps.size()));
    int line = 0;
    for (const Working::Step& step : steps) {
        const QString texts[] = {stepWord(step), stepValue(step), fromUtf8(step.how),
                                 fromUtf8(step.source)};
        for (int column = 0; column < 4; ++column) {
            auto* item = new QTableWidgetItem(texts[column]);
            item->setToolTip(texts[column]);
            if (column == 1) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_steps->setItem(line, column, item);
        }
        ++line;
    }
    auto* head = m_steps->horizontalHeader();
    head->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    head->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    head->setSectionResizeMode(2, QHeaderView::Stretch);
    head->setSectionResizeMode(3, QHeaderView::Stretch);
    m_steps->resizeRowsToContents();
}

void showExplained(QWidget* parent, const Look& look, const QString& place,
                   const std::vector<Explained>& figures) {
    ExplainDialog dialog(parent, look, place, figures);
    dialog.exec();
}

}  // namespace combwright
