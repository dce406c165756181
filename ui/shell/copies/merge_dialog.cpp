#include "ui/shell/copies/merge_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/copies/copy_pages.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {
namespace {

constexpr int choiceColumn = 4;

}  // namespace

MergeDialog::MergeDialog(const Look& look, std::function<MergePlan(const MergeAnswers&)> planFor,
                         std::function<Page(const MergePlan&)> pageOf, QWidget* parent)
    : QDialog(parent), m_look(look), m_planFor(std::move(planFor)) {
    setObjectName(QStringLiteral("merge"));
    setWindowTitle(tr("Take in another copy"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    m_sum = new QLabel(this);
    m_sum->setObjectName(QStringLiteral("merge_sum"));
    m_sum->setFont(look.font(TextSize::Head, true));
    m_sum->setWordWrap(true);
    auto* text = new QLabel(tr("What only one copy changed is put together by itself. Where both "
                               "say something, choose what holds. It becomes one step here, which "
                               "can be taken back; the other copy stays as it is."),
                            this);
    text->setWordWrap(true);
    m_table = new QTableWidget(this);
    m_table->setObjectName(QStringLiteral("merge_questions"));
    m_table->setAccessibleName(tr("What both copies say, to be chosen"));
    m_table->setColumnCount(choiceColumn + 1);
    m_table->setHorizontalHeaderLabels(
        {tr("what"), tr("ours"), tr("the other's"), tr("before"), tr("what holds")});
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setWordWrap(true);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_notes = new QLabel(this);
    m_notes->setObjectName(QStringLiteral("merge_notes"));
    m_notes->setWordWrap(true);
    m_notes->setTextFormat(Qt::PlainText);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_take = buttons->addButton(tr("Take it in"), QDialogButtonBox::AcceptRole);
    m_take->setObjectName(QStringLiteral("merge_take"));
    m_take->setProperty("primary", true);
    auto* print = buttons->addButton(tr("Print…"), QDialogButtonBox::ActionRole);
    print->setAutoDefault(false);
    for (QWidget* widget : std::initializer_list<QWidget*>{m_sum, text, m_table, m_notes, buttons})
        column->addWidget(widget);
    column->setStretchFactor(m_table, 1);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(print, &QPushButton::clicked, this,
            [this, pageOf = std::move(pageOf)] { printWithPreview(this, pageOf(m_plan), m_look); });
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(1000), room.width() - look.space(32)),
           std::min(look.space(560), room.height() - look.space(32)));
    planAnew();
}

void MergeDialog::showEvent(QShowEvent* event) {
    QDialog::showEvent(event);
    // A desktop makes it active only after this, and gives back what had the keyboard.
    QMetaObject::invokeMethod(
        this,
        [this] {
            if (m_table->rowCount() > 0)
                m_table->cellWidget(0, choiceColumn)->setFocus();
            else
                m_take->setFocus();
        },
        Qt::QueuedConnection);
}

void MergeDialog::planAnew() {
    std::vector<std::string> before;
    for (const MergeQuestion& each : m_plan.questions) before.push_back(each.key);
    m_plan = m_planFor(m_answers);
    std::vector<std::string> after;
    for (const MergeQuestion& each : m_plan.questions) after.push_back(each.key);
    // A list that asks the same is left alone: the hand is on one of its boxes.
    if (before != after || m_table->rowCount() == 0) fill();
    QString sum = mergeSum(m_plan);
    if (m_plan.open() > 0) sum += QLatin1Char(' ') + tr("To be chosen: %1.").arg(m_plan.open());
    m_sum->setText(sum);
    m_notes->setText(m_plan.notes.join(QLatin1Char('\n')));
    m_notes->setVisible(!m_plan.notes.isEmpty());
    m_take->setEnabled(m_plan.open() == 0 && !m_plan.edits.empty());
}

void MergeDialog::fill() {
    const int at = m_table->currentRow();
    m_table->setRowCount(0);
    m_table->setRowCount(static_cast<int>(m_plan.questions.size()));
    m_table->setVisible(!m_plan.questions.empty());
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const MergeQuestion& asked = m_plan.questions[static_cast<std::size_t>(row)];
        int column = 0;
        for (const QString& text : {asked.about, asked.ours, asked.theirs, asked.was}) {
            auto* item = new QTableWidgetItem(text);
            item->setToolTip(text);
            m_table->setItem(row, column++, item);
        }
        auto* choice = new QComboBox(m_table);
        choice->setAccessibleName(tr("What holds of %1").arg(asked.about));
        choice->addItem(tr("choose…"));
        for (const MergeChoice each : choicesFor(asked.asked)) choice->addItem(choiceText(each));
        if (asked.chosen) choice->setCurrentText(choiceText(*asked.chosen));
        connect(choice, &QComboBox::activated, this,
                [this, key = asked.key](int index) { choose(key, index); });
        m_table->setCellWidget(row, choiceColumn, choice);
    }
    auto* head = m_table->horizontalHeader();
    for (int column = 0; column < choiceColumn; ++column)
        head->setSectionResizeMode(column, QHeaderView::Stretch);
    head->setSectionResizeMode(choiceColumn, QHeaderView::ResizeToContents);
    m_table->resizeRowsToContents();
    if (at >= 0 && at < m_table->rowCount()) {
        m_table->setCurrentCell(at, choiceColumn);
        m_table->cellWidget(at, choiceColumn)->setFocus();
    }
}

void MergeDialog::choose(const std::string& key, int index) {
    for (const MergeQuestion& asked : m_plan.questions) {
        if (asked.key != key) continue;
        const auto choices = choicesFor(asked.asked);
        if (index < 1 || index > static_cast<int>(choices.size()))
            m_answers.erase(key);
        else
            m_answers[key] = choices[static_cast<std::size_t>(index - 1)];
        break;
    }
    // The box that was just used may be made anew.
    QMetaObject::invokeMethod(
        this, [this] { planAnew(); }, Qt::QueuedConnection);
}

}  // namespace combwright
