#include "ui/season_book/account_page.h"

#include <QApplication>
#include <QVBoxLayout>

#include "core/places/pages/season_book/harvest_summary_page.h"

namespace combwright {

AccountPage::AccountPage(Session& session, AccountPart part, QWidget* parent)
    : QWidget(parent), m_session(session), m_part(part) {
    setFocusPolicy(Qt::ClickFocus);
    m_across = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_across->setContentsMargins(0, 0, 0, 0);
    for (QWidget*& column : m_columns) {
        column = new QWidget(this);
        auto* down = new QVBoxLayout(column);
        down->setContentsMargins(0, 0, 0, 0);
        down->addStretch(1);
        m_across->addWidget(column, 1);
    }
    m_records = new RecordsView(session, this);
    m_records->hide();
    connect(&session, &Session::lookChanged, this, [this] {
        for (AccountView* view : m_views) view->sizes();
    });
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        for (AccountView* view : m_views)
            if (now && view->isAncestorOf(now)) m_last = view;
    });
}

void AccountPage::makeViews(std::size_t count) {
    while (m_views.size() < count) {
        // The first half at the left, read downwards.
        const bool left = m_views.size() < (count + 1) / 2;
        QWidget* column = m_columns[left ? 0 : 1];
        auto* view = new AccountView(m_session, column);
        auto* down = static_cast<QVBoxLayout*>(column->layout());
        down->insertWidget(down->count() - 1, view);
        m_views.push_back(view);
        connect(&view->lines(), &AccountLines::opened, this, [this, view] { openRecords(view); });
        connect(&view->lines(), &QTableWidget::currentCellChanged, this, [this, view] {
            AccountLines& lines = view->lines();
            if (!lines.hasFocus() || lines.currentRow() < 0) return;
            if (recordsShown()) {
                m_opened = view;
                showRecords();
            }
            const QRect row = lines.visualItemRect(lines.currentItem());
            Q_EMIT moved(QRect(lines.viewport()->mapTo(this, row.topLeft()), row.size()));
        });
    }
}

void AccountPage::readAnew(int year) {
    m_year = year;
    const auto sections =
        accountSections(m_session.read(), m_part, year, m_session.clock().today());
    makeViews(sections.size());
    for (std::size_t i = 0; i < sections.size(); ++i) m_views[i]->show(sections[i]);
    if (recordsShown()) showRecords();
}

void AccountPage::arrange(bool wide) {
    const Look& look = m_session.look();
    m_across->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_across->setSpacing(look.space(wide ? 32 : 16));
    for (QWidget* column : m_columns) column->layout()->setSpacing(look.space(16));
}

AccountView* AccountPage::current() const {
    for (AccountView* view : m_views)
        if (view->isAncestorOf(QApplication::focusWidget())) return view;
    if (m_opened) return m_opened;
    if (m_last && !m_last->section().lines.empty()) return m_last;
    for (AccountView* view : m_views)
        if (!view->section().lines.empty()) return view;
    return nullptr;
}

void AccountPage::focusInEvent(QFocusEvent*) {
    if (AccountView* view = current()) view->lines().setFocus();
}

int AccountPage::columnOf(const AccountView* view) const {
    return m_columns[0]->isAncestorOf(view) ? 0 : 1;
}

void AccountPage::showRecords() {
    const AccountLine* line = m_opened->current();
    if (!line) return closeRecords();
    const QString title =
        tr("%1: %2, %3").arg(m_opened->section().title, line->name.trimmed()).arg(m_year);
    m_records->show(title, accountRecordsBlock(*line),
                    line->records.empty() ? tr("No record stands behind it. Esc goes back.")
                                          : tr("Ctrl+E explains the figure; Esc goes back."));
}

void AccountPage::openRecords(AccountView* view) {
    if (!view->current()) return;
    const int other = 1 - columnOf(view);
    m_opened = view;
    // Where the other column stood.
    auto* down = static_cast<QVBoxLayout*>(m_columns[static_cast<std::size_t>(other)]->layout());
    down->insertWidget(0, m_records, 1000);
    for (AccountView* each : m_views) each->setVisible(columnOf(each) != other);
    showRecords();
    m_records->setVisible(true);
    m_records->setFocus();
    Q_EMIT headChanged();
}

void AccountPage::closeRecords() {
    if (!recordsShown()) return;
    AccountView* back = m_opened;
    m_opened = nullptr;
    m_records->hide();
    for (AccountView* each : m_views) each->setVisible(true);
    back->lines().setFocus();
    Q_EMIT headChanged();
}

std::vector<Explained> AccountPage::explained() const {
    std::vector<Explained> figures;
    AccountView* at = current();
    const AccountLine* line = at ? at->current() : nullptr;
    if (line && !line->working.steps.empty())
        figures.push_back(explainedLine(at->section(), *line));
    for (AccountView* view : m_views)
        for (const AccountLine& each : view->section().lines)
            if (&each != line && !each.working.steps.empty())
                figures.push_back(explainedLine(view->section(), each));
    return figures;
}

Page AccountPage::blockPage() const {
    const Day today = m_session.clock().today();
    AccountView* at = current();
    if (!at) return accountPage(m_session.read(), {}, m_year, today);
    const AccountLine* line = at->current();
    if (recordsShown() && line)
        return accountRecordsPage(
            m_session.read(),
            tr("%1: %2, %3").arg(at->section().title, line->name.trimmed()).arg(m_year), *line,
            today);
    return accountPage(m_session.read(), at->section(), m_year, today);
}

HarvestTable AccountPage::blockTable() const {
    AccountView* at = current();
    if (!at) return {};
    const AccountLine* line = at->current();
    return recordsShown() && line ? accountRecordsTable(*line) : accountTable(at->section());
}

QString AccountPage::blockName() const {
    AccountView* at = current();
    return QStringLiteral("%1-%2")
        .arg(at ? at->section().id : QStringLiteral("account"))
        .arg(m_year);
}

}  // namespace combwright
