// The pages of the season book beside the harvest, what its yields are told by, and the year beside
// in a window of its own.
#include <QShortcut>
#include <algorithm>

#include "core/places/pages/chart_words.h"
#include "core/places/pages/season_book/yield_by_blocks.h"
#include "core/words/words.h"
#include "ui/season_book/season_book_place.h"

namespace combwright {
namespace {

constexpr int bookPages = 4;

}  // namespace

void SeasonBookPlace::buildPages() {
    m_words = new PageWords(session(), tr("Pages of the season book"), nullptr);
    const QStringList words = {tr("Harvest"), tr("Colonies"), tr("Goods"), tr("Years")};
    for (const QString& word : words) m_words->add(word);
    connect(m_words, &PageWords::chosen, this,
            [this](int index) { openPage(static_cast<BookPage>(index)); });
    QWidget* page = m_scroll->widget();
    for (const AccountPart part : {AccountPart::Colonies, AccountPart::Goods, AccountPart::Years}) {
        auto* each = new AccountPage(session(), part, page);
        m_accounts.push_back(each);
        each->setAccessibleName(words[static_cast<int>(m_accounts.size())]);
        each->hide();
        connect(each, &AccountPage::headChanged, this, &SeasonBookPlace::headChanged);
        connect(each, &AccountPage::moved, this, [this, each](const QRect& row) {
            const QPoint at = each->mapTo(m_scroll->widget(), row.center());
            m_scroll->ensureVisible(at.x(), at.y(), 0, row.height() / 2 + look().space(12));
        });
        // Enter in the list of records behind a line has nothing more to open.
        each->records().table().setObjectName(QStringLiteral("account_records"));
    }

    m_byWord = new QLabel(tr("Honey by"), m_byRow);
    m_byBox = new QComboBox(m_byRow);
    m_byBox->setObjectName(QStringLiteral("yields_by"));
    m_byBox->setAccessibleName(tr("Honey by"));
    m_byBox->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_byBox->addItem(tr("hive"), static_cast<int>(YieldBy::Hive));
    m_byBox->addItem(tr("colony"), static_cast<int>(YieldBy::Colony));
    m_byBox->addItem(tr("queen"), static_cast<int>(YieldBy::Queen));
    m_byBox->addItem(tr("yard"), static_cast<int>(YieldBy::Yard));
    auto* row = new QHBoxLayout(m_byRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_byWord);
    row->addWidget(m_byBox);
    row->addStretch(1);
    connect(m_byBox, &QComboBox::activated, this, [this] { turnBy(0); });
    setTabOrder(m_byBox, m_table);
    if (m_use == Use::ToCompare) m_reckonedView->readOnly();

    // The words may have the focus, which are not inside this place.
    const auto key = [this](const QKeySequence& press, const QString& what, auto deed) {
        auto* shortcut = new QShortcut(press, this);
        shortcut->setWhatsThis(what);
        connect(shortcut, &QShortcut::activated, this, deed);
    };
    const auto step = [this](int by) {
        openPage(static_cast<BookPage>((static_cast<int>(m_page) + by + bookPages) % bookPages));
    };
    key(QKeySequence(Qt::CTRL | Qt::Key_PageDown), tr("next page"), [step] { step(+1); });
    key(QKeySequence(Qt::CTRL | Qt::Key_PageUp), tr("page before"), [step] { step(-1); });
    key(QKeySequence(Qt::ALT | Qt::Key_H), tr("the page %1").arg(tr("Harvest")),
        [this] { openPage(BookPage::Harvest); });
    key(QKeySequence(Qt::ALT | Qt::Key_C), tr("the page %1").arg(tr("Colonies")),
        [this] { openPage(BookPage::Colonies); });
    key(QKeySequence(Qt::ALT | Qt::Key_G), tr("the page %1").arg(tr("Goods")),
        [this] { openPage(BookPage::Goods); });
    key(QKeySequence(Qt::ALT | Qt::Key_Y), tr("the page %1").arg(tr("Years")),
        [this] { openPage(BookPage::Years); });
}

AccountPage* SeasonBookPlace::accountShown() const {
    return m_page == BookPage::Harvest ? nullptr : &account(m_page);
}

void SeasonBookPlace::openPage(BookPage page) {
    m_page = page;
    m_words->choose(static_cast<int>(page));
    m_scroll->ensureVisible(0, 0);
    reload();
    setFocus();
    Q_EMIT headChanged();
}

void SeasonBookPlace::showPage() {
    AccountPage* shown = accountShown();
    if (shown) shown->readAnew(m_year);
    m_first->setVisible(!shown && m_season.total == Mass());
    m_blocks->setVisible(!shown);
    m_table->parentWidget()->setVisible(anyHoney());
    for (AccountPage* each : m_accounts)
        if (each != shown) each->hide();
    if (shown) shown->show();
}

bool SeasonBookPlace::canLeave() const {
    if (accountShown() || anyHoney()) return true;
    return currentBlock() == BookBlock::Year && !isEmpty(m_yearCharts->chartBlock());
}

void SeasonBookPlace::showTimeline(bool any) {
    m_timeline->setVisible(any);
    m_noTimeline->setVisible(!any);
    m_noTimeline->setText(
        m_season.total > Mass()
            ? tr("Harvest timeline: the honey of %1 is noted from paper without its days. A run "
                 "closed in the honey room has one and becomes a step here.")
                  .arg(m_year)
            : tr("Harvest timeline: nothing came in in %1. Each run that is closed becomes a step "
                 "here, beside those of the other year.")
                  .arg(m_year));
    m_noReckoned->setText(
        tr("Reckoned and got: what own runs gave, beside the rates they were planned with, stands "
           "here once a run of %1 is closed.")
            .arg(m_year));
}

void SeasonBookPlace::leave() {
    if (AccountPage* shown = accountShown(); shown && shown->recordsShown())
        shown->closeRecords();
    else if (!shown && recordsShown())
        closeRecords();
    else
        Q_EMIT leaveAsked();
}

void SeasonBookPlace::turnBy(int step) {
    if (m_page != BookPage::Harvest) return;
    const int count = m_byBox->count();
    if (step != 0) m_byBox->setCurrentIndex((m_byBox->currentIndex() + step + count) % count);
    m_by = static_cast<YieldBy>(m_byBox->currentData().toInt());
    closeRecords();
    session().reading([this] {
        showYields();
        showNotes();
    });
    arrange();
    Q_EMIT headChanged();
}

QString SeasonBookPlace::yieldsName() const {
    switch (m_by) {
        case YieldBy::Hive:
            return tr("honey-by-hive-%1");
        case YieldBy::Colony:
            return tr("honey-by-colony-%1");
        case YieldBy::Queen:
            return tr("honey-by-queen-%1");
        case YieldBy::Yard:
            break;
    }
    return tr("honey-by-yard-%1");
}

void SeasonBookPlace::showYields() {
    const int row = std::max(0, m_table->currentIndex().row());
    // Of hives and yards the season itself tells more: footnotes, yards with their hives.
    if (m_by == YieldBy::Hive) {
        m_model.show(m_season);
    } else {
        m_yieldsBy = yieldsBy(session().read(), m_season, m_before.front(), m_by);
        if (m_by == YieldBy::Yard)
            m_model.show(m_season, false);
        else
            m_model.show(m_yieldsBy);
    }
    if (m_model.rowCount() > 0)
        m_table->setCurrentIndex(m_model.index(std::min(row, m_model.rowCount() - 1), 0));
    YieldsBy named;
    named.by = m_by;
    named.year = m_year;
    m_table->setBy(m_by, yieldsByTitle(named));
    m_table->measure();
}

void SeasonBookPlace::openYear(int year) {
    m_year = year;
    m_beside = 0;
    reload();
}

void SeasonBookPlace::openBeside() {
    if (m_use != Use::Whole || !session().hasSeason()) return;
    if (!m_besideWindow) m_besideWindow = new BookWindow(session(), m_beside, this);
    m_besideWindow->book().openYear(m_beside);
    m_besideWindow->book().openPage(m_page);
    m_besideWindow->show();
    m_besideWindow->raise();
    m_besideWindow->activateWindow();
    m_besideWindow->book().setFocus();
    // A desktop activates it only after this key was dealt with, and gives back what had the
    // keyboard.
    QMetaObject::invokeMethod(
        &m_besideWindow->book(), [book = &m_besideWindow->book()] { book->setFocus(); },
        Qt::QueuedConnection);
}

QString SeasonBookPlace::help() const {
    return tr(
        "The year in one sentence, the honey as it came in, what rates were reckoned with and what "
        "own runs gave, and who gave what. The year and the one beside it are chosen under the "
        "title. A letter behind each figure says how it is known; a share found by difference or "
        "by eye is hatched, honey whose hive nobody knows is dashed and keeps a line of its own, "
        "what is only noted from paper is an open bar. Where a run was changed after it was closed "
        "the summary says revised.\n\nTab goes from block to block. In a chart Left and Right go "
        "along a line, Up and Down to another, Home and End to its ends; T turns it into a table. "
        "The "
        "box over the timeline draws it by run, lot, yard or hive, added up or each; Y lays one "
        "more "
        "year beside it. The box below chooses mites, weights, brood or stores; there Enter opens "
        "the "
        "hive's story. Enter on a run or a row opens the records it is made of, Esc closes them. "
        "B, or "
        "the box over the table, tells the honey by hive, by colony on whatever stand it was, by "
        "the "
        "queen who headed it, or by yard. Ctrl+Page Down and Ctrl+Page Up go on to the colonies of "
        "the "
        "year with what the winters took, to wax, candles, what went out of the door and "
        "equipment, "
        "and to the years below each other; Alt and the letter underlined in a word opens its "
        "page. W "
        "opens the year beside in a window of its own, to compare; it follows what is written and "
        "Esc "
        "closes it.\n\nP prints the block one is at, E exports it as picture or "
        "table; Ctrl+P prints the harvest summary. 1 to 9 take what own runs say for the next "
        "season: nothing changes until then, and Ctrl+Z takes it back. Ctrl+E explains a figure. "
        "Honey is not for infants under 12 months.");
}

}  // namespace combwright
