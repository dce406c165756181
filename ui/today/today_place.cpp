#include "ui/today/today_place.h"

#include <QFileDialog>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <map>

#include "core/actions/honey_room/clearers.h"
#include "core/actions/yard/tasks.h"
#include "core/model/season_info.h"
#include "core/places/due/due_quarantine.h"
#include "core/places/due/due_tasks.h"
#include "core/places/pages/due/due_calendar.h"
#include "core/places/pages/due/due_page.h"
#include "core/places/pages/due/due_words.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/today/today_forms.h"

namespace combwright {
namespace {

using TodayLine = DueLine::What;

/// The page of a yard, or of the honey room, where such work is read and written down.
GoTo::Page pageOf(const DueItem& item) {
    if (isQuarantine(item)) return GoTo::Page::Health;
    switch (item.rule) {
        case DueRule::Sample:
        case DueRule::SampleAgain:
        case DueRule::Treat:
        case DueRule::TakeOut:
        case DueRule::SupersBack:
            return GoTo::Page::Health;
        case DueRule::Feed:
        case DueRule::Stores:
            return GoTo::Page::Stores;
        case DueRule::Queen:
        case DueRule::TestFrame:
            return GoTo::Page::Story;
        case DueRule::Look:
        case DueRule::Swarm:
        case DueRule::AddBox:
        case DueRule::ComeBack:
        case DueRule::Extract:
        case DueRule::Clearers:
        case DueRule::Wets:
        case DueRule::Freezer:
        case DueRule::DeadOut:
        case DueRule::Visit:
        case DueRule::Task:
        case DueRule::Wax:
            break;
        case DueRule::Honey:
            return GoTo::Page::Honey;
    }
    return GoTo::Page::Board;
}

/// Where a line leads: of one hive to the page of what is said first, of a whole trip to the one
/// page all its work is on, else to the hives. Clearer boards go in from the pull's own list.
GoTo wayOf(const DueList& list, const DueLine& line) {
    const DueTrip& trip = list.trips[line.trip];
    const bool inside = line.what != TodayLine::Trip;
    const DueHive& row =
        (line.what == TodayLine::Shut ? trip.shut : trip.hives)[inside ? line.row : 0];
    GoTo way{trip.where, trip.yard, {}, {}, false, pageOf(row.items.front())};
    if (inside || trip.hives.size() == 1) way.hive = row.hive;
    const auto all = [&](const auto& holds) {
        if (inside) return holds(row.items.front());
        return std::all_of(trip.hives.begin(), trip.hives.end(), [&](const DueHive& each) {
            return std::all_of(each.items.begin(), each.items.end(), holds);
        });
    };
    if (!way.hive && !all([&](const DueItem& item) { return pageOf(item) == way.page; }))
        way.page = GoTo::Page::Board;
    const bool boardsIn = all(
        [](const DueItem& item) { return item.rule == DueRule::Clearers && item.about == "in"; });
    if (boardsIn) way.where = DueWhere::Pull;
    return way;
}

/// The head of a column over the rule that opens it.
class ColumnHead : public QLabel {
  public:
    ColumnHead(Session& session, const QString& text, const QString& about, QWidget* parent)
        : QLabel(text, parent), m_session(session), m_about(about) {
        setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    }

  protected:
    void paintEvent(QPaintEvent* event) override {
        QLabel::paintEvent(event);
        QPainter painter(this);
        const Look& look = m_session.look();
        painter.setPen(QPen(look.tone(Tone::Ink), look.px(1.3)));
        painter.drawLine(QPointF(0, height() - 1), QPointF(width(), height() - 1));
        const double x = fontMetrics().horizontalAdvance(text()) + look.px(10);
        const QFont note = look.font(TextSize::Note);
        if (m_about.isEmpty() || x + textWidth(m_about, note) > width()) return;
        paintText(painter, {x, (height() - look.space(4) + capHeight(font())) / 2.0}, m_about, note,
                  look.tone(Tone::Muted));
    }

  private:
    Session& m_session;
    QString m_about;  ///< muted, where there is room for all of it
};

}  // namespace

TodayPlace::TodayPlace(Session& session, QWidget* parent) : Place(session, parent) {
    setFocusPolicy(Qt::ClickFocus);
    m_scroll = new QScrollArea(this);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_content = new QWidget(m_scroll);
    auto* down = new QVBoxLayout(m_content);
    down->setSpacing(0);
    m_ribbon = new YearRibbonView(session, m_content);
    m_first = new QLabel(m_content);
    m_first->setObjectName(QStringLiteral("empty_text"));
    m_first->setWordWrap(true);
    m_begin = new QPushButton(tr("Begin with a yard"), m_content);
    m_begin->setObjectName(QStringLiteral("begin"));
    m_due = new DueView(session, m_content);
    m_half = new HalfDoneView(session, m_content);
    m_dueHead = new ColumnHead(
        session, tr("Due"), tr("a line a trip, each from a record; Enter does it, → opens a trip"),
        m_content);
    m_halfHead = new ColumnHead(session, tr("Left half done"), {}, m_content);
    auto* left = new QVBoxLayout;
    left->setSpacing(0);
    left->addWidget(m_dueHead);
    left->addWidget(m_first);
    left->addWidget(m_begin, 0, Qt::AlignLeft);
    left->addWidget(m_due);
    left->addStretch(1);
    auto* right = new QVBoxLayout;
    right->setSpacing(0);
    right->addWidget(m_halfHead);
    right->addWidget(m_half);
    right->addStretch(1);
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->addLayout(left, 5);
    m_columns->addLayout(right, 3);
    down->addWidget(m_ribbon);
    down->addLayout(m_columns, 1);
    m_scroll->setWidget(m_content);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_scroll);

    connect(m_due, &DueView::chosen, this, &TodayPlace::headChanged);
    for (LineList* list : std::initializer_list<LineList*>{m_due, m_half})
        connect(list, &LineList::moved, this, [this, list] { bringIntoSight(*list); });
    connect(m_due, &DueView::done, this, &TodayPlace::doLine);
    connect(m_half, &HalfDoneView::done, this, &TodayPlace::carryOn);
    connect(m_begin, &QPushButton::clicked, this, [this] {
        Q_EMIT goAsked({DueWhere::Yard, {}, {}, {}, false});
    });
    connect(&session, &Session::seasonChanged, this, [this] { m_waiting.reset(); });
    connect(&session, &Session::changed, this, [this] {
        m_waiting.reset();
        // Another place in front has its own work; this one reads when one comes to it.
        if (isVisible()) reload();
    });
    connect(&session, &Session::lookChanged, this, &TodayPlace::fitColumns);
    fitColumns();
}

void TodayPlace::fitColumns() {
    const Look& look = this->look();
    const int edge = look.space(24);
    m_content->layout()->setContentsMargins(edge, look.space(12), edge, look.space(12));
    // At large type on a small window one column under the other.
    const bool beside = width() >= look.space(820);
    m_columns->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_columns->setSpacing(look.space(beside ? 32 : 16));
    m_columns->setContentsMargins(0, look.space(12), 0, 0);
    for (QLabel* head : {m_dueHead, m_halfHead}) {
        head->setFont(look.font(TextSize::Head, true));
        QPalette palette = head->palette();
        palette.setColor(QPalette::WindowText, look.tone(Tone::Ink));
        head->setPalette(palette);
        head->setContentsMargins(0, 0, 0, look.space(4));
    }
}

void TodayPlace::bringIntoSight(const LineList& list) {
    const QRect at = list.currentRect().translated(list.mapTo(m_content, QPoint()));
    const int air = look().space(16);
    m_scroll->ensureVisible(at.center().x(), at.bottom(), 0, air);
    m_scroll->ensureVisible(at.center().x(), at.top(), 0, air);
}

void TodayPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    fitColumns();
}

void TodayPlace::readAnew() {
    if (!session().hasSeason()) return;
    const Read& file = session().read();
    const Day today = session().clock().today();
    m_list = dueList(file, today);
    m_waiting = {today, m_list.today()};
    const bool noYard = openYards(file).empty();
    m_ribbon->show(yearRibbon(file, today, m_list));
    m_due->show(m_list);
    auto half = typedNotKept();
    for (HalfDone& each : halfDone(file, today)) half.push_back(std::move(each));
    m_half->show(half, soFar(file, today), today);
    const bool nothing = m_due->lines().empty();
    m_due->setVisible(!nothing);
    m_first->setVisible(nothing);
    m_begin->setVisible(noYard);
    m_first->setText(
        noYard ? tr("No yard yet. First a yard, then its hives with their boxes: ten seconds each. "
                    "From then on this page says what is due, from what you write of your visits.")
               : tr("Nothing is due by what is written down. What you write of a visit (Ctrl+2), a "
                    "pull (Ctrl+3) or the honey room (Ctrl+4) brings its own next step here; N "
                    "notes something of your own."));
    Q_EMIT headChanged();
}

PlaceHead TodayPlace::head() const {
    PlaceHead head;
    head.title = tr("Today");
    head.under = dayText(session().clock().today());
    if (!session().hasSeason()) return head;
    const int due = m_list.today();
    const int late = m_list.late();
    head.big = {QString::number(due), {}, 0};
    head.bigNote = late == 0   ? tr("due today")
                   : due == 1  ? tr("due today,\nand it is late")
                   : late == 1 ? tr("due today,\none of them late")
                               : tr("due today,\n%1 of them late").arg(late);
    const DueLine* line = m_due->current();
    if (!line) return head;
    head.action = dueAction(m_list, *line);
    if (line->what == TodayLine::Trip || line->what == TodayLine::Hive) {
        const DueTrip& trip = m_list.trips[line->trip];
        const bool goes = dueAction(m_list, *line) == DueView::tr("Go there");
        const GoTo way = wayOf(m_list, *line);
        const DueHive& row = trip.hives[line->what == TodayLine::Hive ? line->row : 0];
        const QString of = fromUtf8(way.hive ? row.mark : trip.yardName);
        if (trip.where != DueWhere::Yard || (goes && way.where != DueWhere::Yard))
            head.action = tr("Open %1").arg(whereText(way.where));
        else if (goes && !trip.yardName.empty())
            head.action = way.page == GoTo::Page::Health   ? tr("Health of %1").arg(of)
                          : way.page == GoTo::Page::Stores ? tr("Stores of %1").arg(of)
                          : way.page == GoTo::Page::Story
                              ? tr("Story of %1").arg(of)
                              : tr("Go to %1").arg(fromUtf8(trip.yardName));
    }
    if (!head.action.isEmpty()) head.actionKey = QStringLiteral("↵");
    return head;
}

std::vector<KeyHint> TodayPlace::hints() const {
    return {{QStringLiteral("↑ ↓"), tr("line")},
            {QStringLiteral("→"), tr("opens a trip")},
            {tr("Tab"), tr("half done")},
            {tr("Q"), tr("quiet")},
            {tr("N"), tr("note")}};
}

std::vector<PrintSheet> TodayPlace::sheets() const {
    if (!session().hasSeason()) return {};
    std::vector<PrintSheet> all{
        {QStringLiteral("due"), tr("Due list"), [this] {
             return duePage(session().read(), dueList(session().read(), session().clock().today()));
         }}};
    // The trip one is at, by itself.
    const DueLine* line = m_due->current();
    if (line && (line->what == TodayLine::Trip || line->what == TodayLine::Hive) &&
        m_list.trips[line->trip].isTrip()) {
        const DueTrip& trip = m_list.trips[line->trip];
        all.push_back({QStringLiteral("trip"), tr("Trip to %1").arg(fromUtf8(trip.yardName)),
                       [this, trip] { return tripPage(session().read(), trip, m_list.on); }});
    }
    return all;
}

std::vector<Explained> TodayPlace::explained() const { return explainDue(m_list); }

int TodayPlace::waiting() const {
    if (!session().hasSeason()) return 0;
    const Day today = session().clock().today();
    // Asked whenever one goes to a place; reckoned again only when something was written since.
    if (!m_waiting || m_waiting->first != today)
        m_waiting = {today, dueList(session().read(), today).today()};
    return m_waiting->second;
}

QString TodayPlace::help() const {
    return tr("What is due, reckoned from what you wrote: nothing here is a diary to keep, and a "
              "line goes away when its work is written down. Late things stand alone; all else is "
              "gathered into trips, one line a yard and day, with how long it takes by your own "
              "visits and what to take along.") +
           QStringLiteral("\n\n") +
           tr("Up and Down go from line to line, Right opens a trip to its hives with why, Left "
              "closes it. Enter goes where the work is done, to the hive and the page it is about, "
              "or "
              "ticks it off: a note of your own, a clearer board that came out. Ctrl+P prints the "
              "list as one drives it.") +
           QStringLiteral("\n\n") +
           tr("Q quiets a rule for the hive or the yard, with the reason and until when; it stays "
              "listed below as quieted, and Enter there hears it again. N notes something of your "
              "own. Ctrl+Shift+E puts what is due into your calendar: a file any calendar reads; "
              "taken in again it doubles nothing. Ctrl+Z takes any of it back.") +
           QStringLiteral("\n\n") +
           tr("At the right, by Tab, what was left half done: a visit without its last hives, a "
              "line of a "
              "yard sheet typed and not kept, a "
              "run with its boxes on their pegs, wet boxes, a box without a tag, a round in the "
              "freezer, a bucket too wet to bottle. Enter carries it on. Above stands the year: "
              "what was done solid, what is due open.");
}

void TodayPlace::act() {
    if (const DueLine* line = m_due->current()) doLine(DueLine(*line));
}

void TodayPlace::doLine(const DueLine& line) {
    const Day today = session().clock().today();
    if (line.what == TodayLine::Quieted) return;
    if (line.what == TodayLine::Quiet) {
        session().run(EndQuiet{today, m_list.quieted[line.row].quiet.id});
        return;
    }
    const DueTrip& trip = m_list.trips[line.trip];
    const bool inside = line.what != TodayLine::Trip;
    const DueHive& row =
        (line.what == TodayLine::Shut ? trip.shut : trip.hives)[inside ? line.row : 0];
    const DueItem& item = row.items.front();
    const bool single = row.items.size() == 1 && (inside ? line.what == TodayLine::Hive
                                                         : !trip.isTrip() && trip.items() == 1);
    if (single && item.rule == DueRule::Task) {
        session().run(FinishTask{today, taskOf(item)});
        return;
    }
    if (single && item.rule == DueRule::Clearers && item.about == "out" && item.hive) {
        session().run(TakeClearer{today, *item.hive});
        return;
    }
    if (item.rule == DueRule::Visit) {
        Q_EMIT goAsked({DueWhere::Yard, item.yard, {}, item.since, true});
        return;
    }
    Q_EMIT goAsked(wayOf(m_list, line));
}

std::vector<HalfDone> TodayPlace::typedNotKept() const {
    const Read& file = session().read();
    std::map<QString, HalfDone> sheets;
    for (const auto& [sheet, row] : session().drafts().rows()) {
        // As the yard sheet names its drafts: its yard and the day of the visit.
        if (!sheet.startsWith(QLatin1String("yard-sheet "))) continue;
        const Id<Yard> id{sheet.section(QLatin1Char(' '), 1, 1).toLongLong()};
        const auto on = parseDay(sheet.section(QLatin1Char(' '), 2, 2).toStdString());
        const auto yard = file.find(id);
        if (!on || !yard) continue;
        HalfDone& half = sheets[sheet];
        half.what = HalfDone::What::Typed;
        half.name = yard->name.text();
        half.since = *on;
        half.yard = id;
        if (row.startsWith(QLatin1String("hive ")))
            half.hives.push_back(
                calledOn(file, Id<Hive>{row.section(QLatin1Char(' '), 1, 1).toLongLong()}, *on));
        else
            half.hives.push_back(tr("all").toStdString());
    }
    std::vector<HalfDone> list;
    for (auto& [sheet, half] : sheets) list.push_back(std::move(half));
    return list;
}

void TodayPlace::carryOn(const HalfDone& half) {
    switch (half.what) {
        case HalfDone::What::Typed:
        case HalfDone::What::Visit:
            Q_EMIT goAsked({DueWhere::Yard, half.yard, {}, half.since, true});
            return;
        case HalfDone::What::Held:
            Q_EMIT goAsked({half.hive ? DueWhere::Yard : DueWhere::Storeroom,
                            half.yard,
                            half.hive,
                            {},
                            false});
            return;
        case HalfDone::What::Freezer:
        case HalfDone::What::WetBoxes:
            Q_EMIT goAsked({DueWhere::Storeroom, {}, {}, {}, false});
            return;
        case HalfDone::What::Run:
        case HalfDone::What::NoTag:
        case HalfDone::What::Aside:
            Q_EMIT goAsked({DueWhere::HoneyRoom, {}, {}, {}, false});
            return;
        case HalfDone::What::Bucket:
            Q_EMIT goAsked({DueWhere::HoneyRoom, {}, {}, {}, false, GoTo::Page::Honey});
            return;
        case HalfDone::What::Heat:
            Q_EMIT goAsked({DueWhere::WaxBench, {}, {}, {}, false});
            return;
    }
}

std::optional<Id<Yard>> TodayPlace::yardOfLine() const {
    const DueLine* line = m_due->current();
    if (!line || line->what == TodayLine::Quieted || line->what == TodayLine::Quiet) return {};
    return m_list.trips[line->trip].yard;
}

void TodayPlace::quietLine() {
    const DueLine* line = m_due->current();
    if (!line || line->what == TodayLine::Quieted || line->what == TodayLine::Quiet) return;
    const DueTrip trip = m_list.trips[line->trip];
    std::vector<DueItem> items;
    QString hive;
    const auto& rows = line->what == TodayLine::Shut ? trip.shut : trip.hives;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (line->what != TodayLine::Trip && i != line->row) continue;
        items.insert(items.end(), rows[i].items.begin(), rows[i].items.end());
        hive = fromUtf8(rows[i].mark);
    }
    // Of a whole trip only the yard can be meant.
    if (line->what == TodayLine::Trip && rows.size() > 1) hive.clear();
    askForQuiet(this, session(), items, hive, fromUtf8(trip.yardName));
}

bool TodayPlace::writeCalendarTo(const QString& path) {
    QString wrong;
    std::size_t entries = 0;
    const bool read = session().reading([&] {
        const auto list = dueCalendar(session().read(), m_list);
        entries = list.size();
        const auto info = session().read().first<SeasonInfo>({});
        const std::string text =
            icalendarText(list, info ? info->name.text() : std::string(), session().clock().now());
        const auto told = tryCalendar(path.toStdString(), text);
        if (told) wrong = fromUtf8(*told);
    });
    if (!read) return false;
    if (!wrong.isEmpty()) {
        session().tell(tr("%1 cannot be written: %2. Choose another place.").arg(path, wrong),
                       true);
        return false;
    }
    session().tell(
        entries == 1
            ? tr("1 entry written to %1; open it with your calendar.").arg(path)
            : tr("%1 entries written to %2; open it with your calendar.").arg(entries).arg(path));
    return true;
}

void TodayPlace::askForCalendar() {
    QString path = QFileDialog::getSaveFileName(this, tr("Put what is due into your calendar"),
                                                tr("due.ics"), tr("Calendar (*.ics)"));
    if (path.isEmpty()) return;
    if (!path.endsWith(QLatin1String(".ics"))) path += QLatin1String(".ics");
    writeCalendarTo(path);
}

void TodayPlace::keyPressEvent(QKeyEvent* event) {
    const auto modifiers = event->modifiers() & ~Qt::KeypadModifier;
    if (modifiers == (Qt::ControlModifier | Qt::ShiftModifier) && event->key() == Qt::Key_E)
        return askForCalendar();
    if (modifiers == Qt::NoModifier && session().hasSeason()) {
        if (event->key() == Qt::Key_Q) return quietLine();
        if (event->key() == Qt::Key_N) {
            askForTask(this, session(), yardOfLine());
            return;
        }
    }
    Place::keyPressEvent(event);
}

void TodayPlace::focusInEvent(QFocusEvent*) {
    if (m_begin->isVisibleTo(this))
        m_begin->setFocus();
    else if (m_due->isVisibleTo(this))
        m_due->setFocus();
    else if (m_half->focusPolicy() != Qt::NoFocus)
        m_half->setFocus();
}

}  // namespace combwright
