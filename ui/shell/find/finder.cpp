#include "ui/shell/find/finder.h"

#include <QApplication>
#include <QTimer>
#include <algorithm>
#include <iterator>

#include "core/places/find/find.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/season_book/season_book_place.h"
#include "ui/shell/find/find_box.h"
#include "ui/today/today_place.h"

namespace combwright {
namespace {

constexpr std::size_t shownOfKind = 5;
constexpr std::size_t shownOfDay = 6;
constexpr std::size_t shownOfWindow = 5;
constexpr std::size_t shownOfHelp = 3;
constexpr std::size_t rememberedLately = 8;

template <class InFront>
int placeIndex(MainWindow& window) {
    for (std::size_t i = 0; i < window.places().size(); ++i)
        if (qobject_cast<InFront*>(window.places()[i])) return static_cast<int>(i);
    return 0;
}

GoTo goToOf(const FindLead& lead) {
    GoTo to;
    to.records = lead.records;
    to.yard = lead.yard;
    to.hive = lead.hive;
    to.on = lead.on;
    switch (lead.where) {
        case FindLead::Where::Today:
        case FindLead::Where::SeasonBook:
        case FindLead::Where::Yard:
            to.where = DueWhere::Yard;
            break;
        case FindLead::Where::Pull:
            to.where = DueWhere::Pull;
            break;
        case FindLead::Where::HoneyRoom:
            to.where = DueWhere::HoneyRoom;
            break;
        case FindLead::Where::WaxBench:
            to.where = DueWhere::WaxBench;
            break;
        case FindLead::Where::Storeroom:
            to.where = DueWhere::Storeroom;
            break;
    }
    switch (lead.page) {
        case FindLead::Page::Front:
            break;
        case FindLead::Page::Sheet:
            to.sheet = true;
            break;
        case FindLead::Page::Story:
            to.page = GoTo::Page::Story;
            break;
        case FindLead::Page::Health:
            to.page = GoTo::Page::Health;
            break;
        case FindLead::Page::Stores:
            to.page = GoTo::Page::Stores;
            break;
        case FindLead::Page::Honey:
            to.page = GoTo::Page::Honey;
            break;
        case FindLead::Page::Jars:
            to.page = GoTo::Page::Jars;
            break;
        case FindLead::Page::Fair:
            to.page = GoTo::Page::Fair;
            break;
    }
    return to;
}

void append(FindLines& to, const QString& head, FindLines lines) {
    if (lines.empty()) return;
    to.push_back({head});
    std::move(lines.begin(), lines.end(), std::back_inserter(to));
}

}  // namespace

Finder::Finder(MainWindow& window, Session& session)
    : QObject(&window), m_window(window), m_session(session), m_keeper(session, this) {
    connect(&window, &MainWindow::wentTo, this, [this](int index) {
        const Place* place = m_window.current();
        MainWindow* to = &m_window;
        remember({place->railWord(), tr("a place you were in"), tr("Ctrl+%1").arg(index + 1),
                  [to, index] { to->goTo(index); }});
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        if (m_box) m_box->close();
        m_lately.clear();
    });
    connect(&m_keeper, &FindKeeper::cameOn, this, [this] {
        if (box()) ask();
    });
}

Finder::~Finder() = default;

FindBox* Finder::box() const {
    // Closed, it is there until the program comes round to taking it away.
    return m_box && m_box->isVisible() ? m_box.data() : nullptr;
}

void Finder::remember(const FindLine& line) {
    std::erase_if(m_lately, [&](const FindLine& each) {
        return each.title == line.title && each.context == line.context;
    });
    m_lately.insert(m_lately.begin(), line);
    if (m_lately.size() > rememberedLately) m_lately.resize(rememberedLately);
}

void Finder::open() {
    if (!m_session.hasSeason()) return;
    if (FindBox* open = box()) return open->begin();
    m_deeds = std::make_unique<FindDeeds>(m_window, m_session);
    // Belonging to where one is, it does not make the field there keep or drop what is half typed.
    QWidget* from = QApplication::focusWidget();
    if (!from || from->window() != &m_window) from = &m_window;
    m_box = new FindBox(m_session.look(), from);
    m_box->setRoom(m_window.findRoom());
    connect(m_box, &FindBox::typed, this, &Finder::ask);
    connect(m_box, &FindBox::chosen, this, &Finder::chosen);
    m_keeper.follow();
    ask();
    m_box->show();
    m_box->begin();
}

void Finder::ask() {
    if (!m_box) return;
    const QString typed = m_box->text();
    const FindLines lines = linesFor(typed);
    const bool gathering = m_keeper.isGathering() && m_keeper.cache();
    QString note;
    if (gathering)
        note = tr("Reading the season: %1 %. What is not read yet is not found yet.")
                   .arg(static_cast<int>(m_keeper.cache()->gathered() * 100));
    else if (typed.trimmed().isEmpty())
        note =
            tr("Ask for a mark (ML3, L27-3-1), a word of a note, a buyer, a day (9 jun, last "
               "tuesday), a place, a page or something to do.");
    else if (lines.empty())
        note =
            tr("Nothing is called or says that. Each word is taken as the beginning of one; "
               "fewer words find more.");
    m_box->setLines(lines, note);
}

FindLines Finder::linesFor(const QString& typed) {
    FindLines lines;
    if (!m_deeds) m_deeds = std::make_unique<FindDeeds>(m_window, m_session);
    const auto words = findWords(typed.toStdString());
    if (words.empty()) {
        FindLines lately = m_lately;
        // Where one is needs no way there.
        const Place* here = m_window.current();
        std::erase_if(lately,
                      [&](const FindLine& each) { return here && each.title == here->railWord(); });
        append(lines, tr("Lately"), std::move(lately));
        return lines;
    }
    if (const auto day = findDay(typed, m_session.clock().today())) addDay(lines, *day);
    std::vector<FindGroup> groups;
    m_session.reading([&] {
        if (FindCache* cache = m_keeper.cache()) groups = findRecords(*cache, typed, shownOfKind);
    });
    const auto called = [](const FindGroup& group) {
        return std::any_of(group.hits.begin(), group.hits.end(),
                           [](const FindHit& hit) { return hit.byMark; });
    };
    for (const FindGroup& group : groups)
        if (called(group)) addRecords(lines, group);
    append(lines, tr("Places and pages"), m_deeds->places(words, shownOfWindow));
    append(lines, tr("To do"), m_deeds->deeds(words, shownOfWindow));
    for (const FindGroup& group : groups)
        if (!called(group)) addRecords(lines, group);
    append(lines, tr("Help"), m_deeds->help(words, shownOfHelp));
    return lines;
}

void Finder::addDay(FindLines& lines, Day day) {
    FindLines ofDay;
    m_session.reading([&] {
        for (const Yard& yard : openYards(m_session.read())) {
            if (yard.since > day) continue;
            const GoTo to{.where = DueWhere::Yard, .yard = yard.id, .on = day};
            MainWindow* window = &m_window;
            ofDay.push_back(
                {fromUtf8(yard.name.text()), tr("the yard as it stood that day"), {}, [window, to] {
                     window->goFor(to);
                 }});
        }
        if (FindCache* cache = m_keeper.cache())
            for (const FindGroup& group : findOnDay(*cache, day, shownOfDay))
                for (const FindHit& hit : group.hits) ofDay.push_back(lineOf(hit));
    });
    append(lines, dayText(day), std::move(ofDay));
}

void Finder::addRecords(FindLines& lines, const FindGroup& group) {
    FindLines own;
    for (const FindHit& hit : group.hits) own.push_back(lineOf(hit));
    append(lines, group.more ? tr("%1 · more with another word").arg(group.title) : group.title,
           std::move(own));
}

FindLine Finder::lineOf(const FindHit& hit) {
    return {hit.title, hit.context, {}, [this, hit] { goTo(hit); }};
}

void Finder::goTo(const FindHit& hit) {
    std::optional<FindLead> lead;
    const Day today = m_session.clock().today();
    if (!m_session.reading([&] { lead = findLead(m_session.read(), hit, today); })) return;
    if (!lead) return m_session.tell(tr("%1 is no longer there.").arg(hit.title));
    if (lead->where == FindLead::Where::Today)
        m_window.goTo(placeIndex<TodayPlace>(m_window));
    else if (lead->where == FindLead::Where::SeasonBook)
        m_window.goTo(placeIndex<SeasonBookPlace>(m_window));
    else
        m_window.goFor(goToOf(*lead));
    // A place shows where it is; what it is stands in the foot.
    m_session.tell(tr("%1 · %2").arg(hit.title, hit.context));
}

void Finder::chosen(const FindLine& line) {
    if (m_box) m_box->close();
    const FindLine held = line;
    // Once the keyboard is back where it was, for leaving there may keep what was typed.
    QTimer::singleShot(0, this, [this, held] {
        held.go();
        const bool isPlace =
            std::any_of(m_window.places().begin(), m_window.places().end(),
                        [&](const Place* place) { return place->railWord() == held.title; });
        if (!isPlace) remember(held);
    });
}

}  // namespace combwright
