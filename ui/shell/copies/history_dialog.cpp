#include "ui/shell/copies/history_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "core/words/words.h"
#include "ui/common/flow_row.h"

namespace combwright {

HistoryDialog::HistoryDialog(const Look& look, const std::vector<HistoryStep>& steps, bool mayWrite,
                             QWidget* parent)
    : QDialog(parent), m_steps(steps) {
    setObjectName(QStringLiteral("history"));
    setWindowTitle(tr("History and copies"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    auto* title = new QLabel(tr("What was written down, newest first"), this);
    title->setFont(look.font(TextSize::Head, true));
    m_list = new QTreeWidget(this);
    m_list->setObjectName(QStringLiteral("history_list"));
    m_list->setAccessibleName(tr("Days, and under each its steps"));
    m_list->setColumnCount(2);
    m_list->setHeaderLabels({tr("kept"), tr("what")});
    m_list->setUniformRowHeights(true);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    m_list->header()->setStretchLastSection(true);
    m_about = new QLabel(this);
    m_about->setObjectName(QStringLiteral("history_about"));
    m_about->setWordWrap(true);
    m_about->setTextFormat(Qt::PlainText);
    m_about->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_about->setMinimumHeight(look.space(72));
    column->addWidget(title);
    column->addWidget(m_list, 1);
    column->addWidget(m_about);
    auto* row = new QWidget(this);
    auto* flow = new FlowRow(row, look.space(8));
    for (QPushButton* button :
         {addWish(tr("As it stood then"), QStringLiteral("as_it_stood"), Wish::AsItStood),
          addWish(tr("What changed since…"), QStringLiteral("differences"), Wish::Differences),
          addWish(tr("Compare two days…"), QStringLiteral("two_days_wish"), Wish::TwoDays),
          addWish(tr("Print the history…"), QStringLiteral("print_history"), Wish::Print),
          addWish(tr("Plan a what-if…"), QStringLiteral("plan_what_if"), Wish::PlanWhatIf),
          addWish(tr("Compare or adopt a what-if…"), QStringLiteral("settle_what_if"),
                  Wish::SettleWhatIf),
          addWish(tr("Take in another copy…"), QStringLiteral("take_in"), Wish::TakeInCopy)})
        flow->addWidget(button);
    m_ofStep = {findChild<QPushButton*>(QStringLiteral("as_it_stood")),
                findChild<QPushButton*>(QStringLiteral("differences"))};
    findChild<QPushButton*>(QStringLiteral("take_in"))->setEnabled(mayWrite);
    column->addWidget(row);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_list, &QTreeWidget::currentItemChanged, this, &HistoryDialog::choose);
    fill(look);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(900), room.width() - look.space(32)),
           std::min(look.space(620), room.height() - look.space(32)));
    choose();
    m_list->setFocus();
}

QPushButton* HistoryDialog::addWish(const QString& text, const QString& name, Wish wish) {
    auto* button = new QPushButton(text, this);
    button->setObjectName(name);
    button->setProperty("small", true);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, [this, wish] {
        m_wish = wish;
        accept();
    });
    return button;
}

void HistoryDialog::fill(const Look& look) {
    QTreeWidgetItem* under = nullptr;
    std::optional<Day> day;
    for (std::size_t i = 0; i < m_steps.size(); ++i) {
        const HistoryStep& step = m_steps[i];
        if (!under || step.day != day) {
            under = new QTreeWidgetItem(
                m_list, {step.day ? dayText(*step.day) : tr("on a day nobody knows"), QString()});
            under->setFirstColumnSpanned(true);
            under->setFont(0, look.font(TextSize::Body, true));
            // The newest of the day comes first: it is how the day ended.
            under->setData(0, Qt::UserRole, static_cast<qulonglong>(i));
        }
        day = step.day;
        QString says = step.sentence;
        if (step.takenBack) says = tr("(taken back) %1").arg(says);
        auto* item = new QTreeWidgetItem(under, {step.time, says});
        item->setData(0, Qt::UserRole, static_cast<qulonglong>(i));
        item->setToolTip(1, says);
        if (step.takenBack) {
            QFont struck = m_list->font();
            struck.setStrikeOut(true);
            item->setFont(1, struck);
        }
    }
    if (QTreeWidgetItem* first = m_list->topLevelItem(0)) {
        first->setExpanded(true);
        m_list->setCurrentItem(first->child(0));
    }
}

std::optional<std::int64_t> HistoryDialog::chosenStep() const {
    const QTreeWidgetItem* item = m_list->currentItem();
    if (!item) return std::nullopt;
    return m_steps[item->data(0, Qt::UserRole).toULongLong()].step;
}

std::optional<Day> HistoryDialog::chosenDay() const {
    const QTreeWidgetItem* item = m_list->currentItem();
    if (!item) return std::nullopt;
    return m_steps[item->data(0, Qt::UserRole).toULongLong()].day;
}

void HistoryDialog::choose() {
    const QTreeWidgetItem* item = m_list->currentItem();
    for (QPushButton* button : m_ofStep) button->setEnabled(item != nullptr);
    if (!item) {
        m_about->setText(m_steps.empty() ? tr("Nothing was written down yet.") : QString());
        return;
    }
    const HistoryStep& step = m_steps[item->data(0, Qt::UserRole).toULongLong()];
    if (!item->parent()) {
        m_about->setText(step.day ? tr("The end of %1, after step %2. Right shows its steps.")
                                        .arg(dayText(*step.day))
                                        .arg(step.step)
                                  : QString());
        return;
    }
    QStringList lines{tr("Step %1: %2").arg(step.step).arg(step.sentence)};
    if (step.takenBack) lines << tr("It was taken back and does not stand.");
    if (!step.why.isEmpty()) lines << tr("Why: %1.").arg(step.why);
    lines << step.changes;
    m_about->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace combwright
