// The pages of the honey room: the day's extracting and, beside it, what stands in buckets and lots
// and where it goes from there. What the window asks is answered by the page that is shown.
#include <QShortcut>

#include "ui/common/help_groups.h"
#include "ui/honey_room/fair_page.h"
#include "ui/honey_room/honey_page.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/honey_room/jars_page.h"

namespace combwright {

void HoneyRoomPlace::buildPages() {
    m_words = new PageWords(session(), tr("Pages of the honey room"), nullptr);
    connect(m_words, &PageWords::chosen, this,
            [this](int index) { openPage(m_slots[static_cast<std::size_t>(index)].opens); });

    addPage(GoTo::Page::Board, tr("Extract"), Qt::Key_E, nullptr);
    addPage(GoTo::Page::Honey, tr("Honey"), Qt::Key_H, new HoneyPage(session(), m_pages));
    addPage(GoTo::Page::Jars, tr("Jars"), Qt::Key_J, new JarsPage(session(), m_pages));
    addPage(GoTo::Page::Fair, tr("Fair"), Qt::Key_F, new FairPage(session(), m_pages));

    const auto step = [this](Qt::Key key, int by, const QString& what) {
        auto* keys = new QShortcut(QKeySequence(Qt::CTRL | key), this);
        keys->setWhatsThis(what);
        connect(keys, &QShortcut::activated, this, [this, by] {
            const int count = static_cast<int>(m_slots.size());
            const int next = (m_pages->currentIndex() + by + count) % count;
            openPage(m_slots[static_cast<std::size_t>(next)].opens);
        });
    };
    step(Qt::Key_PageDown, +1, tr("next page"));
    step(Qt::Key_PageUp, -1, tr("page before"));
}

/// No page: the day's extracting, which is the place itself.
void HoneyRoomPlace::addPage(GoTo::Page opens, const QString& word, Qt::Key letter,
                             RoomPage* page) {
    m_slots.push_back({opens, word, page});
    m_pages->addWidget(page ? static_cast<QWidget*>(page) : m_extract);
    m_words->add(word);
    auto* keys = new QShortcut(QKeySequence(Qt::ALT | letter), this);
    keys->setWhatsThis(tr("the page %1").arg(word));
    connect(keys, &QShortcut::activated, this, [this, opens] { openPage(opens); });
    if (page) connect(page, &RoomPage::headChanged, this, &HoneyRoomPlace::headChanged);
}

std::vector<std::pair<GoTo::Page, QString>> HoneyRoomPlace::pages() const {
    std::vector<std::pair<GoTo::Page, QString>> all;
    for (const PageSlot& each : m_slots) all.emplace_back(each.opens, each.word);
    return all;
}

std::vector<PlacePage> HoneyRoomPlace::pagesToGo() const {
    std::vector<PlacePage> all;
    for (const PageSlot& each : m_slots)
        all.push_back({each.word, GoTo{.where = DueWhere::HoneyRoom, .page = each.opens},
                       each.page ? static_cast<const QWidget*>(each.page) : m_extract});
    return all;
}

RoomPage* HoneyRoomPlace::page() const {
    const int index = m_pages->currentIndex();
    return index < 0 || index >= static_cast<int>(m_slots.size())
               ? nullptr
               : m_slots[static_cast<std::size_t>(index)].page;
}

void HoneyRoomPlace::turnTo(GoTo::Page opens) {
    for (std::size_t i = 0; i < m_slots.size(); ++i) {
        if (m_slots[i].opens != opens) continue;
        m_pages->setCurrentIndex(static_cast<int>(i));
        m_words->choose(static_cast<int>(i));
    }
    m_runs->setVisible(!page() && m_runs->count() > 0);
}

void HoneyRoomPlace::openPage(GoTo::Page opens) {
    turnTo(opens);
    reload();
    setFocus();
    Q_EMIT headChanged();
}

void HoneyRoomPlace::goFor(const GoTo& where) {
    openPage(where.page);
    for (const auto& [table, record] : where.records)
        if (page() && page()->goToRecord(table, record)) return;
}

void HoneyRoomPlace::readAnew() {
    if (!session().hasSeason()) return;
    if (RoomPage* shown = page()) {
        shown->readAnew();
        Q_EMIT headChanged();
        return;
    }
    readExtracting();
}

void HoneyRoomPlace::focusInEvent(QFocusEvent*) {
    if (RoomPage* shown = page())
        shown->setFocus();
    else
        m_entry->setFocus();
}

PlaceHead HoneyRoomPlace::head() const {
    PlaceHead head = page() ? page()->head() : headOfExtracting();
    // The words beside it say which page it is; they stand still while one goes from page to page.
    head.title = tr("Honey room");
    return head;
}

std::vector<KeyHint> HoneyRoomPlace::hints() const {
    std::vector<KeyHint> all = page() ? page()->hints() : hintsOfExtracting();
    all.push_back({QKeySequence(Qt::CTRL | Qt::Key_PageDown).toString(QKeySequence::NativeText),
                   tr("next page")});
    return all;
}

std::vector<PrintSheet> HoneyRoomPlace::sheets() const {
    return page() ? page()->sheets() : sheetsOfExtracting();
}

std::vector<Explained> HoneyRoomPlace::explained() const {
    if (!session().hasSeason()) return {};
    return page() ? page()->explained() : explainedOfExtracting();
}

QString HoneyRoomPlace::help() const {
    const QString pages = helpOf(
        {{tr("Pages of the room"),
          {{tr("Ctrl+Page Down, Ctrl+Page Up"),
            tr("from page to page: Extract is the day of spinning; Honey is what stands in buckets "
               "and lots; Jars what is filled and where it goes; Fair a day behind the table")},
           {tr("Alt and the letter"), tr("underlined in its word opens that page")}}}});
    return (page() ? page()->help() : helpOfExtracting()) + pages;
}

void HoneyRoomPlace::act() {
    if (RoomPage* shown = page())
        shown->act();
    else
        actOfExtracting();
}

bool HoneyRoomPlace::takeBack() { return !page() && takeBackInRoom(); }

}  // namespace combwright
