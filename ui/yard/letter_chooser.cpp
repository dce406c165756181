#include "ui/yard/letter_chooser.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

namespace combwright {
namespace {

constexpr int rowHigh = 26;  ///< at the base font, px

}  // namespace

LetterChooser::LetterChooser(QWidget* parent, Session& session, const QString& title,
                             std::vector<LetterChoice> choices)
    : QDialog(parent),
      m_choices(std::move(choices)),
      m_list(new QTreeWidget(this)),
      m_reason(new QLabel(this)) {
    const Look& look = session.look();
    setWindowTitle(title);
    setObjectName(QStringLiteral("letter_chooser"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(16), look.space(16), look.space(16), look.space(12));
    column->setSpacing(look.space(8));
    auto* head = new QLabel(title, this);
    head->setFont(look.font(TextSize::Head, true));
    column->addWidget(head);
    m_list->setObjectName(QStringLiteral("choices"));
    m_list->setAccessibleName(title);
    m_list->setColumnCount(2);
    m_list->setHeaderHidden(true);
    m_list->setRootIsDecorated(false);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAllColumnsShowFocus(true);
    m_list->header()->setStretchLastSection(false);
    m_list->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_list->setFont(look.font(TextSize::Body));
    for (const LetterChoice& each : m_choices) {
        const bool can = each.whyNot.isEmpty();
        const QString what = can ? each.what : tr("%1 (%2)").arg(each.what, each.whyNot);
        auto* item = new QTreeWidgetItem(m_list, {QString(each.letter), what});
        item->setFont(0, look.font(TextSize::Body, true));
        item->setSizeHint(0, QSize(0, look.space(rowHigh)));
        item->setData(1, Qt::AccessibleTextRole, QStringLiteral("%1: %2").arg(each.letter, what));
        if (can) continue;
        for (const int cell : {0, 1}) item->setForeground(cell, look.tone(Tone::Muted));
    }
    m_list->installEventFilter(this);
    column->addWidget(m_list);
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->setWordWrap(true);
    m_reason->hide();
    column->addWidget(m_reason);
    auto* foot = new QLabel(tr("Press the letter, or Up, Down and Enter. Esc leaves."), this);
    foot->setFont(look.font(TextSize::Note));
    foot->setWordWrap(true);
    column->addWidget(foot);
    connect(m_list, &QTreeWidget::itemClicked, this, [this](QTreeWidgetItem* item) {
        take(static_cast<std::size_t>(m_list->indexOfTopLevelItem(item)));
    });
    // As wide and high as what it lists: nothing is scrolled to, nothing is cut off.
    int width = 0;
    for (const int cell : {0, 1}) {
        m_list->resizeColumnToContents(cell);
        width += m_list->columnWidth(cell);
    }
    m_list->setMinimumWidth(width + look.space(32));
    m_list->setFixedHeight(2 * m_list->frameWidth() +
                           static_cast<int>(m_choices.size()) * look.space(rowHigh));
    const auto first = std::find_if(m_choices.begin(), m_choices.end(),
                                    [](const LetterChoice& each) { return each.whyNot.isEmpty(); });
    const auto at = first == m_choices.end() ? 0 : first - m_choices.begin();
    m_list->setCurrentItem(m_list->topLevelItem(static_cast<int>(at)));
    m_list->setFocus();
}

void LetterChooser::take(std::size_t index) {
    const LetterChoice& choice = m_choices[index];
    if (!choice.whyNot.isEmpty()) {
        m_list->setCurrentItem(m_list->topLevelItem(static_cast<int>(index)));
        m_reason->setText(tr("Not now: %1.").arg(choice.whyNot));
        m_reason->show();
        return;
    }
    m_chosen = index;
    accept();
}

bool LetterChooser::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_list || event->type() != QEvent::KeyPress)
        return QDialog::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
        const int row = m_list->indexOfTopLevelItem(m_list->currentItem());
        if (row >= 0) take(static_cast<std::size_t>(row));
        return true;
    }
    if (key->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    const QString typed = key->text().toUpper();
    for (std::size_t i = 0; i < m_choices.size(); ++i)
        if (typed == QString(m_choices[i].letter)) {
            take(i);
            return true;
        }
    // The list would search for what is typed.
    return !typed.isEmpty() && typed.front().isLetterOrNumber();
}

std::optional<QChar> askByLetter(QWidget* parent, Session& session, const QString& title,
                                 const std::vector<LetterChoice>& choices) {
    LetterChooser chooser(parent, session, title, choices);
    if (chooser.exec() != QDialog::Accepted || !chooser.chosen()) return std::nullopt;
    return choices[*chooser.chosen()].letter;
}

}  // namespace combwright
