#include "ui/yard/yard_place.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <algorithm>

#include "core/places/explain/explain_yard.h"
#include "core/places/pages/health/colonies_page.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/day_words.h"
#include "core/words/words.h"
#include "ui/yard/add_forms.h"

namespace combwright {

YardPlace::YardPlace(Session& session, QWidget* parent) : Place(session, parent) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_controls = new QWidget;
    auto* controls = new QHBoxLayout(m_controls);
    controls->setContentsMargins(0, 0, 0, 0);
    controls->setSpacing(8);
    m_yards = new YardChoice(session, m_controls);
    m_yards->setObjectName(QStringLiteral("yard"));
    m_yards->setAccessibleName(tr("Yard"));
    m_day = new QLineEdit(m_controls);
    m_day->setObjectName(QStringLiteral("day"));
    m_day->setAccessibleName(tr("Day of the visit"));
    m_day->setToolTip(tr("A day: today, yesterday, sat, 9 jun, -3 or 2027-06-09"));
    controls->addWidget(m_yards);
    controls->addWidget(m_day);
    m_today = new QPushButton(m_controls);
    m_today->setObjectName(QStringLiteral("to_today"));
    m_today->setAccessibleName(tr("Back to today"));
    m_today->setProperty("small", true);
    m_today->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    controls->addWidget(m_today);

    m_pages = new QStackedWidget(this);
    m_empty = new QWidget(m_pages);
    auto* emptyColumn = new QVBoxLayout(m_empty);
    emptyColumn->setContentsMargins(24, 48, 24, 24);
    m_emptyText = new QLabel(m_empty);
    m_emptyText->setObjectName(QStringLiteral("empty_text"));
    m_emptyText->setWordWrap(true);
    auto* addYardButton = new QPushButton(tr("Add a yard…"), m_empty);
    addYardButton->setObjectName(QStringLiteral("add_yard"));
    auto* addHiveButton = new QPushButton(tr("Add a hive…"), m_empty);
    addHiveButton->setObjectName(QStringLiteral("add_hive"));
    // Not aligned: a text that may wrap is then given the room of one long word only.
    emptyColumn->addWidget(m_emptyText);
    for (QWidget* widget : std::initializer_list<QWidget*>{addYardButton, addHiveButton})
        emptyColumn->addWidget(widget, 0, Qt::AlignLeft);
    emptyColumn->addStretch(1);

    m_board = new BoardPage(session, m_pages);

    m_sheet = new SheetView(session, m_pages);
    m_health = new HealthPage(session, m_pages);
    m_stores = new StoresPage(session, m_pages);
    for (QWidget* page :
         std::initializer_list<QWidget*>{m_empty, m_board, m_sheet, m_health, m_stores})
        m_pages->addWidget(page);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_pages);

    connect(addYardButton, &QPushButton::clicked, this, &YardPlace::addYard);
    connect(addHiveButton, &QPushButton::clicked, this, &YardPlace::addHive);
    connect(m_yards, &YardChoice::activated, this, [this](int index) {
        keepTyped();
        choose(Id<Yard>{m_yards->itemData(index).toLongLong()}, m_on);
    });
    connect(m_day, &QLineEdit::editingFinished, this, &YardPlace::takeDay);
    // Behind takeDay: what is typed next belongs to the hives, not into the day.
    connect(
        m_day, &QLineEdit::returnPressed, this, [this] { leaveDay(); }, Qt::QueuedConnection);
    connect(m_today, &QPushButton::clicked, this, &YardPlace::backToToday);
    connect(m_board, &BoardPage::sheetAsked, this, &YardPlace::openSheet);
    connect(m_board, &BoardPage::hiveAsked, this, &YardPlace::addHive);
    connect(m_board, &BoardPage::yardAsked, this, &YardPlace::addYard);
    connect(m_board, &BoardPage::hintsChanged, this, &YardPlace::headChanged);
    connect(m_board, &BoardPage::pageAsked, this, &YardPlace::openPage);
    for (WorkPage* page : std::initializer_list<WorkPage*>{m_health, m_stores}) {
        connect(page, &WorkPage::pageAsked, this, &YardPlace::openPage);
        connect(page, &WorkPage::hiveAsked, this, [this](Id<Hive> hive) {
            openPage(Qt::Key_Escape);
            m_board->board().choose(hive);
        });
    }
    // The line under the cursor goes with the sheet, so the editor must have done with the key
    // first.
    connect(&m_sheet->table(), &SheetTable::closeAsked, this, &YardPlace::closeSheet,
            Qt::QueuedConnection);
    connect(&m_sheet->table(), &SheetTable::cellsSwitched, this, &YardPlace::headChanged);
    connect(&m_sheet->model(), &SheetModel::sheetChanged, this, [this] {
        m_state = m_sheet->model().sheet();
        Q_EMIT headChanged();
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_yard.reset();
        m_on = this->session().clock().today();
        m_board->leave();
        m_pages->setCurrentWidget(m_empty);
    });
    connect(&session, &Session::changed, this, [this] {
        if (sheetIsOpen())
            m_sheet->model().reload();
        else if (isVisible())  // one who comes to it finds it read anew
            reload();
    });
    connect(&session, &Session::lookChanged, this, &YardPlace::fitDay);
    m_on = session.clock().today();
}

bool YardPlace::sheetIsOpen() const { return m_pages->currentWidget() == m_sheet; }

void YardPlace::fillYards() {
    // On a past day the yards of that day, those given up since too.
    auto yards = session().read().all<Yard>();
    std::erase_if(yards, [this](const Yard& yard) {
        return yard.closed && (*yard.closed <= m_on || m_on >= session().clock().today());
    });
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    m_yards->clear();
    bool stillThere = false;
    for (const Yard& yard : yards) {
        m_yards->addItem(fromUtf8(yard.name.text()), static_cast<qlonglong>(yard.id.number));
        stillThere = stillThere || yard.id == m_yard;
    }
    if (!stillThere) m_yard = yards.empty() ? std::nullopt : std::optional(yards.front().id);
    if (m_yard) m_yards->setCurrentIndex(m_yards->findData(static_cast<qlonglong>(m_yard->number)));
    m_yards->fit();
    m_controls->setVisible(!yards.empty());
    m_day->setText(dayText(m_on));
    m_today->setVisible(isPast());
    // In the sheet letters are what one saw.
    m_today->setText(sheetIsOpen() ? tr("Back to today") : tr("Back to today  R"));
    fitDay();
}

bool YardPlace::isPast() const { return m_on < session().clock().today(); }

void YardPlace::backToToday() {
    if (!m_yard || !isPast()) return;
    keepTyped();
    choose(*m_yard, session().clock().today());
    if (!sheetIsOpen()) setFocus();
}

void YardPlace::fitDay() {
    m_day->ensurePolished();
    const QFontMetrics metrics(m_day->font());
    // Every weekday in every month: one of them is the longest.
    int longest = 0;
    for (Day day = m_on; day < m_on + days(365); day = day + days(4))
        longest = std::max(longest, metrics.horizontalAdvance(dayText(day)));
    // Qt's own hint is room for seventeen letters and what stands around them.
    const int around = m_day->sizeHint().width() - 17 * metrics.horizontalAdvance(QLatin1Char('x'));
    m_day->setFixedWidth(longest + std::max(around, 0) + look().space(8));
}

void YardPlace::readAnew() {
    if (!session().hasSeason()) return;
    fillYards();
    m_state = m_yard ? yardSheet(session().read(), *m_yard, m_on) : YardSheet{};
    const bool hasHives = !m_state.rows.empty();
    if (!sheetIsOpen() && !(hasHives && workPage()))
        m_pages->setCurrentWidget(hasHives ? static_cast<QWidget*>(m_board) : m_empty);
    if (auto* add = m_empty->findChild<QPushButton*>(QStringLiteral("add_hive")))
        add->setVisible(m_yard.has_value());
    m_emptyText->setText(
        m_state.youngerHives > 0
            ? tr("No hive of this yard stood here on %1 yet. Choose a later day above.")
                  .arg(dayText(m_on))
            : tr("No hives stand here yet. First a yard, then its hives with their boxes: ten "
                 "seconds each."));
    m_board->show(m_state);
    showPage();
    Q_EMIT headChanged();
}

WorkPage* YardPlace::workPage() const { return qobject_cast<WorkPage*>(m_pages->currentWidget()); }

void YardPlace::showPage() {
    if (WorkPage* page = workPage(); page && m_yard) page->show(m_state.yard, m_on);
}

void YardPlace::openPage(int key) {
    if (sheetIsOpen()) closeSheet();
    if (sheetIsOpen() || !m_yard || m_state.rows.empty()) return;
    const HiveOnBoard* hive = m_board->board().currentHive();
    m_pages->setCurrentWidget(key == Qt::Key_V   ? static_cast<QWidget*>(m_health)
                              : key == Qt::Key_F ? m_stores
                                                 : static_cast<QWidget*>(m_board));
    session().reading([this] { showPage(); });
    if (WorkPage* page = workPage(); page && hive) page->table().choose(hive->id);
    setFocus();
    Q_EMIT headChanged();
}

void YardPlace::choose(Id<Yard> yard, Day on) {
    m_yard = yard;
    m_on = on;
    if (sheetIsOpen()) {
        fillYards();
        m_sheet->show(yard, on);
        m_sheet->table().editRow(1);
    } else {
        reload();
    }
}

void YardPlace::goFor(const GoTo& where) {
    if (sheetIsOpen()) closeSheet();
    if (workPage()) openPage(Qt::Key_Escape);
    if (where.yard) choose(*where.yard, where.on.value_or(session().clock().today()));
    if (where.hive && m_pages->currentWidget() == m_board) m_board->board().choose(*where.hive);
    if (where.sheet) {
        openSheet();
        if (!where.hive) editTyped();
        return;
    }
    switch (where.page) {
        case GoTo::Page::Health:
            return openPage(Qt::Key_V);
        case GoTo::Page::Stores:
            return openPage(Qt::Key_F);
        case GoTo::Page::Story:
            setFocus();
            if (where.hive && m_pages->currentWidget() == m_board) m_board->card().openAll();
            return;
        case GoTo::Page::Board:
        case GoTo::Page::Honey:
        case GoTo::Page::Jars:
        case GoTo::Page::Fair:
            return setFocus();
    }
}

GoTo YardPlace::at() const {
    GoTo here{.yard = m_yard, .on = m_on};
    const HiveOnBoard* hive = m_board->board().currentHive();
    if (hive && m_pages->currentWidget() == m_board) here.hive = hive->id;
    return here;
}

std::vector<PlacePage> YardPlace::pagesToGo() const {
    return {{tr("Stacks"), GoTo{}, m_board},
            {tr("Sheet"), GoTo{.sheet = true}, m_sheet},
            {tr("Health"), GoTo{.page = GoTo::Page::Health}, m_health},
            {tr("Stores"), GoTo{.page = GoTo::Page::Stores}, m_stores}};
}

bool YardPlace::resumes(const QString& sheet, const QString&) const {
    return sheet.startsWith(QLatin1String("yard-sheet "));
}

void YardPlace::resume(const QString& sheet, const QString&) {
    // As the sheet names its drafts: its yard and the day of the visit.
    const Id<Yard> typedIn{sheet.section(QLatin1Char(' '), 1, 1).toLongLong()};
    const auto on = parseDay(sheet.section(QLatin1Char(' '), 2, 2).toStdString());
    if (!on || !session().read().find(typedIn)) return;
    choose(typedIn, *on);
    if (m_yard != typedIn) return;
    openSheet();
    editTyped();
}

bool YardPlace::editTyped() {
    const SheetModel& lines = m_sheet->model();
    for (int row = 0; row < lines.rowCount(); ++row) {
        if (lines.draftOf(row).isEmpty()) continue;
        m_sheet->table().editRow(row);
        return true;
    }
    return false;
}

void YardPlace::takeDay() {
    // The code on a printed sheet names yard and day at once.
    if (const auto visit = visitOfCode(m_day->text().trimmed().toStdString())) {
        if (session().read().find(visit->yard)) {
            keepTyped();
            choose(visit->yard, visit->on);
            return;
        }
    }
    const auto day = dayInWords(m_day->text().toStdString(), session().clock().today());
    // Our own text stands in the field until something is typed over it.
    if (m_day->text() == dayText(m_on)) return;
    if (!day) {
        session().tell(noDayText(m_day->text()), true);
        m_day->setText(dayText(m_on));
        return;
    }
    session().forgetRefusal();
    if (*day > session().clock().today())
        session().tell(tr("%1 has not come yet; a visit then is kept, but look at the day again.")
                           .arg(dayText(*day)));
    keepTyped();
    if (m_yard) choose(*m_yard, *day);
}

void YardPlace::leaveDay() {
    if (!sheetIsOpen()) return setFocus();
    m_sheet->table().setFocus();
    m_sheet->table().editRow(std::max(m_sheet->table().currentIndex().row(), 1));
}

PlaceHead YardPlace::head() const {
    PlaceHead head;
    head.title = sheetIsOpen() ? tr("Yard sheet") : tr("Yard");
    if (!m_yard) {
        head.under = tr("no yard yet");
        return head;
    }
    if (workPage()) return workHead(std::move(head));
    QStringList under;
    if (isPast()) under << tr("as on %1").arg(dayText(m_on));
    under << (m_state.rows.size() == 1 ? tr("1 hive in walking order")
                                       : tr("%1 hives in walking order").arg(m_state.rows.size()));
    if (sheetIsOpen())
        under << tr("each line is kept as you leave it");
    else if (!isPast() && m_state.lastVisit)
        under << tr("visited before on %1").arg(shortDayText(*m_state.lastVisit));
    head.under = under.join(QStringLiteral(" · "));
    if (m_state.visit) {
        head.big = {QString::number(m_state.opened), tr("of %1").arg(m_state.rows.size()), 0};
        head.bigNote = tr("opened\non %1").arg(dayAndMonth(m_on));
    }
    if (sheetIsOpen()) {
        head.action = tr("Close the sheet");
        head.actionKey = tr("Ctrl+Enter");
    } else if (visitIsWritten()) {
        head.action = tr("Print the sheet for %1").arg(dayAndMonth(nextVisitDay()));
        head.actionKey = printKeyText();
    } else if (!m_state.rows.empty()) {
        head.action = tr("Fill in the yard sheet");
        head.actionKey = tr("S");
    }
    return head;
}

PlaceHead YardPlace::workHead(PlaceHead head) const {
    const std::size_t hives = m_state.rows.size();
    const bool health = workPage() == m_health;
    const auto big = [&](int figure, const QString& note) {
        head.big = {QString::number(figure), tr("of %1").arg(hives), 0};
        head.bigNote = note;
        if (figure > 0) head.bigTone = Tone::Warn;
    };
    head.title = health ? tr("Health") : tr("Stores");
    head.action = health ? tr("Treat") : tr("Feed");
    head.actionKey = health ? tr("T") : tr("G");
    if (health) {
        const HealthBoard& board = m_health->board();
        big(board.lineReached, tr("at the line\nor over it"));
        head.under = tr("%1 not sampled · %2 with a medicine in")
                         .arg(board.notSampled)
                         .arg(board.underTreatment);
    } else {
        const Stores& stores = m_stores->stores();
        big(stores.runOut, tr("do not last\nto the flow"));
        // None of those one knows is no word on those one does not.
        if (stores.runOut == 0 && stores.lastsNotKnown > 0) {
            head.big = {QString::number(stores.lastsNotKnown), tr("of %1").arg(m_stores->living()),
                        0};
            head.bigNote = tr("not known whether\nthey last");
            head.bigTone = Tone::Muted;
        }
        head.under =
            tr("%1 living · %2 not known").arg(m_stores->living()).arg(m_stores->stores().notKnown);
    }
    if (isPast()) head.under = tr("as on %1 · %2").arg(dayText(m_on), head.under);
    return head;
}

std::vector<KeyHint> YardPlace::hints() const {
    std::vector<KeyHint> hints = pageHints();
    if (isPast() && !sheetIsOpen()) hints.insert(hints.begin(), {tr("R"), tr("back to today")});
    return hints;
}

std::vector<KeyHint> YardPlace::pageHints() const {
    if (workPage())
        return {{tr("Space"), tr("tick")},
                {tr("A"), tr("all")},
                {QStringLiteral("↵"), tr("on the board")},
                {tr("Esc"), tr("board")}};
    if (sheetIsOpen())
        return {{QStringLiteral("↵"), tr("next hive")},
                {tr("F6"), m_sheet->table().asCells() ? tr("as one line") : tr("as cells")}};
    if (m_board->hasBox())
        return {{QStringLiteral("↵"), tr("its frames")},
                {tr("L"), tr("look")},
                {tr("Shift+↑↓"), tr("move")},
                {tr("Esc"), tr("back to the hive")}};
    return {{QStringLiteral("← →"), tr("hive")},
            {QStringLiteral("↑"), tr("its boxes")},
            {tr("X"), tr("split, unite")},
            {tr("S"), tr("yard sheet")},
            {tr("V"), tr("health")},
            {tr("F"), tr("stores")}};
}

bool YardPlace::visitIsWritten() const {
    return m_state.visit && !m_state.rows.empty() &&
           m_state.opened + m_state.notOpened == static_cast<int>(m_state.rows.size());
}

std::vector<Explained> YardPlace::explained() const {
    if (!session().hasSeason() || !m_yard) return {};
    const Read& file = session().read();
    if (workPage() == m_stores) return explainStores(file, m_stores->stores());
    if (workPage() == m_health) {
        auto figures = explainMites(file, mites(file, *m_yard, m_on), m_on);
        for (Explained& each : explainTreatments(file, *m_yard, m_on))
            figures.push_back(std::move(each));
        return figures;
    }
    const HiveOnBoard* hive = m_board->board().currentHive();
    return explainYard(session().read(), m_state, hive ? std::optional(hive->id) : std::nullopt);
}

Day YardPlace::nextVisitDay() const {
    // Where a visit was entered the sheet is for the week after; else for the day that is chosen.
    return m_state.visit ? m_on + days(7) : m_on;
}

std::vector<PrintSheet> YardPlace::sheets() const {
    if (!m_yard) return {};
    if (workPage() == m_health) return healthSheets();
    std::vector<PrintSheet> all = yardSheets();
    // What one is at stands first.
    if (workPage() == m_stores) std::rotate(all.begin(), all.begin() + 1, all.begin() + 3);
    return all;
}

std::vector<PrintSheet> YardPlace::healthSheets() const {
    return {{QStringLiteral("mites"), tr("Mites"),
             [this] {
                 return mitesPage(session().read(), mites(session().read(), *m_yard, m_on), m_on);
             }},
            {QStringLiteral("treatments"), tr("Medicines and treatments"),
             [this] { return treatmentsPage(session().read(), *m_yard, m_on); }},
            {QStringLiteral("medicine-record"), tr("Medicine record"),
             [this] { return medicineRecordPage(session().read(), m_on); }},
            {QStringLiteral("inspector-list"), tr("Inspector's list"),
             [this] { return inspectorPage(session().read(), m_on); }}};
}

std::vector<PrintSheet> YardPlace::yardSheets() const {
    return {
        {QStringLiteral("yard-sheet"), tr("Yard sheet"),
         [this] {
             return yardSheetPage(session().read(), yardSheet(session().read(), *m_yard, m_on),
                                  nextVisitDay());
         }},
        {QStringLiteral("kit-list"), tr("What to take along"),
         [this] {
             return kitListPage(session().read(), kitList(session().read(), *m_yard, m_on));
         }},
        {QStringLiteral("feeding-sheet"), tr("Feeding sheet"),
         [this] {
             return feedingSheetPage(session().read(), stores(session().read(), {*m_yard}, m_on));
         }},
        {QStringLiteral("colonies"), tr("Colonies, for the registration"),
         [this] { return coloniesPage(session().read(), coloniesOn(session().read(), m_on)); }},
        {QStringLiteral("queens"), tr("Queens"), [this] {
             return queensPage(session().read(), queensOn(session().read(), m_on, std::nullopt));
         }}};
}

void YardPlace::act() {
    if (sheetIsOpen())
        closeSheet();
    else if (WorkPage* page = workPage())
        page->press(page == m_health ? Qt::Key_T : Qt::Key_G);
    else if (visitIsWritten())
        Q_EMIT printAsked();
    else if (!m_state.rows.empty())
        openSheet();
}

void YardPlace::openSheet() {
    // Asked for while another place is in front, this one may not have read the season yet.
    if (!m_yard || m_state.rows.empty()) reload();
    if (!m_yard || m_state.rows.empty()) return;
    m_pages->setCurrentWidget(m_sheet);
    m_today->setText(tr("Back to today"));
    m_sheet->show(*m_yard, m_on);
    const int row = std::max(m_board->board().current() + 1, 1);
    m_sheet->table().setFocus();
    m_sheet->table().editRow(row);
    Q_EMIT headChanged();
}

void YardPlace::closeSheet() {
    if (!m_sheet->model().keepAll()) return;
    m_pages->setCurrentWidget(m_board);
    reload();
    m_board->board().setFocus();
}

void YardPlace::keepTyped() {
    if (sheetIsOpen())
        m_sheet->model().keepAll();
    else
        m_board->keepTyped();
}

void YardPlace::keyPressEvent(QKeyEvent* event) {
    const bool control = event->modifiers() & Qt::ControlModifier;
    if (control && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) return act();
    const bool plain = !(event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier));
    if (plain && event->key() == Qt::Key_R && isPast() && !sheetIsOpen()) return backToToday();
    if (m_pages->currentWidget() == m_board && plain && m_board->press(event->key())) return;
    if (WorkPage* page = workPage(); page && plain && page->press(event->key())) return;
    if (m_pages->currentWidget() == m_empty && plain) {
        if (event->key() == Qt::Key_H) return addHive();
        if (event->key() == Qt::Key_Y) return addYard();
    }
    Place::keyPressEvent(event);
}

void YardPlace::focusInEvent(QFocusEvent*) {
    if (sheetIsOpen())
        m_sheet->table().setFocus();
    else if (WorkPage* page = workPage())
        page->table().setFocus();
    else if (m_pages->currentWidget() == m_board)
        m_board->board().setFocus();
    else if (auto* button = m_empty->findChild<QPushButton*>(m_yard ? QStringLiteral("add_hive")
                                                                    : QStringLiteral("add_yard")))
        button->setFocus();
}

void YardPlace::addYard() {
    if (const auto yard = askForYard(this, session(), m_on)) {
        m_yard = *yard;
        reload();
        setFocus();
    }
}

void YardPlace::addHive() {
    if (!m_yard) return;
    if (const auto hive = askForHive(this, session(), *m_yard, m_on)) {
        m_board->board().choose(*hive);
        setFocus();
    }
}

}  // namespace combwright
