#include "ui/pull/pull_place.h"

#include <QHBoxLayout>
#include <QScrollBar>
#include <QVBoxLayout>
#include <QtConcurrentRun>
#include <algorithm>
#include <cmath>

#include "core/actions/boxes/looks.h"
#include "core/actions/pull/plan.h"
#include "core/places/explain/explain_pull.h"
#include "core/places/pages/pull/pull_list_page.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Narrower than this, at the base font, limits and answer go below the stacks.
constexpr int besideFrom = 880;
constexpr int cardWidth = 304;
/// After this long the person is shown that something is being reckoned.
constexpr int slowAfterMs = 1000;

QScrollArea* plainScroll(const char* name, QWidget* parent) {
    auto* scroll = new QScrollArea(parent);
    scroll->setObjectName(QLatin1String(name));
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    return scroll;
}

}  // namespace

PullPlace::PullPlace(Session& session, QWidget* parent)
    : Place(session, parent),
      m_whole(plainScroll("pull_whole", this)),
      m_body(new QWidget(m_whole)),
      m_across(new QBoxLayout(QBoxLayout::LeftToRight, m_body)),
      m_reckoner([](PullInput input) { return reckonPull(std::move(input)); }) {
    // Not by Tab: Shift+Tab from the board would come straight back to it.
    setFocusPolicy(Qt::ClickFocus);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    m_whole->setWidget(m_body);
    all->addWidget(m_whole);
    m_left = new QWidget(m_body);
    buildLeft(m_left);
    buildCard();
    m_across->addWidget(m_left, 1);
    m_across->addWidget(m_cardScroll);
    // One after the other: a question that waits is dropped when a newer one comes.
    m_pool.setMaxThreadCount(1);
    m_slow.setSingleShot(true);
    m_slow.setInterval(slowAfterMs);
    listen();
    arrange();
}

PullPlace::~PullPlace() {
    m_watcher.cancel();
    m_otherwise.cancel();
    m_pool.waitForDone();
}

void PullPlace::buildLeft(QWidget* left) {
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    m_question = new PullQuestion(session(), left);
    m_busy = new QWidget(left);
    m_busy->setObjectName(QStringLiteral("reckoning"));
    auto* busy = new QHBoxLayout(m_busy);
    busy->setContentsMargins(0, 0, 0, 0);
    auto* bar = new QProgressBar(m_busy);
    bar->setRange(0, 0);
    bar->setAccessibleName(tr("Reckoning which boxes come off"));
    auto* stopButton = new QPushButton(tr("Stop reckoning"), m_busy);
    stopButton->setObjectName(QStringLiteral("stop_reckoning"));
    stopButton->setProperty("small", true);
    connect(stopButton, &QPushButton::clicked, this, &PullPlace::stop);
    busy->addWidget(bar, 1);
    busy->addWidget(stopButton);
    m_busy->hide();
    m_empty =
        new QLabel(tr("No super stands on a hive of these yards. Put supers on in Yard, then look "
                      "into them: what is seen of a box is what a pull is reckoned from."),
                   left);
    m_empty->setObjectName(QStringLiteral("no_super"));
    m_empty->setWordWrap(true);
    m_scroll = plainScroll("pull_stacks", left);
    m_board = new PullBoard(session(), m_scroll);
    m_scroll->setWidget(m_board);
    m_boardBar = new ClearerBar(session(), left);
    m_chosen = new ChosenBox(session(), left);
    column->addWidget(m_question);
    column->addWidget(m_busy);
    column->addWidget(m_empty);
    column->addWidget(m_scroll, 1);
    column->addWidget(m_boardBar);
    column->addWidget(m_chosen);
    column->addStretch(0);
}

void PullPlace::buildCard() {
    m_cardScroll = plainScroll("pull_card", m_body);
    m_card = new QFrame(m_cardScroll);
    m_card->setProperty("card", true);
    auto* column = new QVBoxLayout(m_card);
    column->setContentsMargins(12, 8, 12, 8);
    column->setSpacing(4);
    const auto title = [&](const QString& text) {
        column->addWidget(new QLabel(QStringLiteral("<b>%1</b>").arg(text), m_card));
    };
    title(tr("Limits"));
    m_fields = new PullLimitFields(session(), m_card);
    column->addWidget(m_fields);
    title(tr("What follows"));
    m_follows = new PullFollows(session(), m_card);
    column->addWidget(m_follows);
    column->addStretch(1);
    m_cardScroll->setWidget(m_card);
}

void PullPlace::listen() {
    connect(m_board, &PullBoard::currentChanged, this, [this] {
        fillBox();
        showCurrent();
    });
    connect(m_board, &PullBoard::decided, this,
            [this](std::int64_t box, PullVerdict verdict) { decide(box, verdict, {}); });
    const auto undecide = [this](std::int64_t box) {
        if (!m_asked.forced.contains(box)) return;
        m_decidedBefore.push_back(m_asked.forced);
        m_asked.forced.erase(box);
        reckon();
    };
    connect(m_board, &PullBoard::decisionTakenBack, this, undecide);
    connect(m_chosen, &ChosenBox::decided, this, &PullPlace::decide);
    connect(m_chosen, &ChosenBox::decisionTakenBack, this, undecide);
    connect(m_board, &PullBoard::pegAsked, this, [this](const QString& typed) {
        m_chosen->askPeg(typed);
        arrange();
    });
    connect(m_board, &PullBoard::boardAsked, this, &PullPlace::boardHere);
    connect(m_board, &PullBoard::boardsInAsked, this, &PullPlace::boardsIn);
    connect(m_board, &PullBoard::boardsOutAsked, this, &PullPlace::boardsOut);
    connect(m_boardBar, &ClearerBar::putInAsked, this, &PullPlace::boardsIn);
    connect(m_boardBar, &ClearerBar::takeOutAsked, this, &PullPlace::boardsOut);
    connect(m_chosen, &ChosenBox::pegged, this, &PullPlace::clip);
    connect(m_chosen, &ChosenBox::done, this, [this] { m_board->setFocus(); });
    connect(m_fields, &PullLimitFields::changed, this, &PullPlace::ask);
    connect(m_question, &PullQuestion::changed, this, &PullPlace::ask);
    connect(&m_slow, &QTimer::timeout, this, [this] {
        m_busy->show();
        Q_EMIT headChanged();
    });
    connect(&m_watcher, &QFutureWatcher<PullSheet>::finished, this, [this] {
        if (!m_watcher.isCanceled() && m_watcher.future().resultCount() > 0)
            show(m_watcher.result());
    });
    connect(&m_otherwise, &QFutureWatcher<std::vector<PullOtherwise>>::finished, this, [this] {
        if (!m_otherwise.isCanceled() && m_otherwise.future().resultCount() > 0) tellOtherwise();
    });
    connect(&session(), &Session::seasonChanged, this, [this] {
        m_pegNext.reset();
        m_pegWaits = false;
        m_watcher.cancel();
        m_otherwise.cancel();
        m_askedKnown = false;
        m_decidedBefore.clear();
        m_fields->forget();
        m_question->forget();
    });
    connect(&session(), &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    connect(&session(), &Session::lookChanged, this, [this] {
        m_fields->show(m_asked, m_input.constants);
        m_follows->show(m_sheet, m_kept);
        m_boardBar->show(m_boards);
        fillBox();
        arrange();
    });
}

void PullPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

void PullPlace::arrange() {
    const bool beside = width() >= look().space(besideFrom);
    const int side = look().space(beside ? 24 : 16);
    m_across->setContentsMargins(side, look().space(8), side, look().space(12));
    m_across->setSpacing(look().space(16));
    m_across->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    const int bar = m_whole->verticalScrollBar()->sizeHint().width();
    if (beside) {
        m_cardScroll->setFixedWidth(look().space(cardWidth) + bar);
        m_cardScroll->setMinimumHeight(0);
        m_scroll->setMinimumHeight(look().space(120));
    } else {
        // Below each other nothing scrolls but the whole.
        m_cardScroll->setMinimumWidth(0);
        m_cardScroll->setMaximumWidth(QWIDGETSIZE_MAX);
        const int wide = width() - 2 * side - bar;
        m_cardScroll->setMinimumHeight(m_card->layout()->totalHeightForWidth(wide) + 4);
        m_scroll->setMinimumHeight(m_board->heightForWidth(wide));
    }
    // At once, so that what was just said is never painted into the room of what was there before.
    m_chosen->layout()->activate();
    m_left->layout()->activate();
    m_across->activate();
}

void PullPlace::showCurrent() {
    const QRect rect = m_board->currentRect();
    if (rect.isNull()) return;
    m_scroll->ensureVisible(rect.center().x(), rect.center().y(), 0, rect.height() / 2 + 8);
    const QPoint middle = m_board->mapTo(m_body, rect.center());
    m_whole->ensureVisible(middle.x(), middle.y(), 0, rect.height() / 2 + 8);
}

void PullPlace::ask() {
    m_asked.limits = m_fields->limits();
    m_asked.supposed = m_fields->supposed();
    m_asked.yards = m_question->yards();
    m_asked.forDay = m_question->forDay();
    reckon();
}

void PullPlace::decide(std::int64_t box, PullVerdict verdict, const QString& reason) {
    const PullBoxRow* row = m_board->current();
    const bool held = row && row->box.id.number == box && row->hold;
    if (held && verdict == PullVerdict::Take && reason.isEmpty()) {
        m_chosen->askWhy();
        arrange();
        return;
    }
    m_decidedBefore.push_back(m_asked.forced);
    m_asked.forced[box] = ForcedVerdict(verdict, reason.toStdString());
    reckon();
}

bool PullPlace::takeBack() {
    if (m_decidedBefore.empty()) return false;
    m_asked.forced = std::move(m_decidedBefore.back());
    m_decidedBefore.pop_back();
    session().tell(tr("Your last decision on a box is taken back."));
    reckon();
    return true;
}

void PullPlace::readAnew() {
    if (!session().hasSeason()) return;
    const Day today = session().clock().today();
    m_kept = keptPull(session().read(), today);
    m_boards = clearers(session().read(), today);
    if (!m_askedKnown) {
        m_asked = startingQuestion(session().read(), today);
        m_askedKnown = true;
    }
    reckon();
}

void PullPlace::reckon() {
    // Plain values go to the other thread; a newer question makes an older answer worthless.
    m_input = pullInput(session().read(), session().clock().today(), m_asked);
    m_question->show(openYards(session().read()), m_asked);
    m_fields->show(m_asked, m_input.constants);
    m_watcher.cancel();
    m_otherwise.cancel();
    m_slow.start();
    m_watcher.setFuture(QtConcurrent::run(
        &m_pool,
        [reckoner = m_reckoner, input = m_input]() mutable { return reckoner(std::move(input)); }));
}

void PullPlace::reckonOtherwise() {
    const PullBoxRow* row = m_board->current();
    m_otherwise.cancel();
    if (!row) return;
    m_otherwise.setFuture(
        QtConcurrent::run(&m_pool, [input = m_input, sheet = m_sheet, box = row->box.id.number] {
            std::vector<PullOtherwise> both;
            for (const PullVerdict verdict : {PullVerdict::Leave, PullVerdict::Take})
                if (auto each = pullOtherwise(input, sheet, box, verdict)) both.push_back(*each);
            return both;
        }));
}

void PullPlace::stop() {
    m_slow.stop();
    m_watcher.cancel();
    m_busy->hide();
    m_board->setFocus();
    session().tell(tr("Stopped. What is shown is the last answer; change a limit to ask again."));
}

void PullPlace::settle() {
    m_watcher.waitForFinished();
    if (!m_watcher.isCanceled() && m_watcher.future().resultCount() > 0) show(m_watcher.result());
    m_otherwise.waitForFinished();
    if (!m_otherwise.isCanceled() && m_otherwise.future().resultCount() > 0) tellOtherwise();
    arrange();
}

void PullPlace::tellOtherwise() {
    m_chosen->tell(m_otherwise.result());
    arrange();
}

void PullPlace::show(PullSheet sheet) {
    m_slow.stop();
    m_busy->hide();
    m_sheet = std::move(sheet);
    bool anySuper = false;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives) anySuper = anySuper || !hive.boxes.empty();
    m_empty->setVisible(!anySuper);
    m_scroll->setVisible(anySuper);
    m_board->show(m_sheet, m_boards);
    m_boardBar->show(m_boards);
    m_fields->tellYards(m_sheet);
    m_follows->show(m_sheet, m_kept);
    askNextPeg();
    arrange();
    Q_EMIT headChanged();
}

void PullPlace::fillBox() {
    m_chosen->show(m_board->currentHive(), m_board->current());
    reckonOtherwise();
}

QString PullPlace::yardNames() const {
    QStringList yards;
    for (const Id<Yard> id : m_asked.yards)
        if (const auto yard = session().read().find(id)) yards << fromUtf8(yard->name.text());
    return yards.join(QStringLiteral(", "));
}

PlaceHead PullPlace::head() const {
    PlaceHead head;
    head.title = tr("Pull");
    if (!session().hasSeason() || !m_askedKnown) return head;
    QStringList under;
    under << (m_asked.yards.empty() ? tr("no yard ticked") : yardNames());
    under << tr("for %1").arg(shortDayText(m_asked.forDay));
    under << tr("as of %1").arg(dayText(session().clock().today()));
    head.under = under.join(QStringLiteral(" · "));
    if (m_sheet.taken == 0) return head;
    head.big = {massFigure(m_sheet.honey.grams, How::ByEye), massUnit(), letter(m_sheet.honey.how)};
    const double low = std::max(0.0, m_sheet.honey.grams - m_sheet.honey.spreadG);
    head.bigNote = tr("from %1,\nbetween %2 and %3")
                       .arg(boxesCounted(m_sheet.taken), massFigure(low, How::ByEye),
                            massFigure(m_sheet.honey.grams + m_sheet.honey.spreadG, How::ByEye));
    head.action =
        m_kept && asKept(m_sheet, *m_kept) ? tr("Print pull list") : tr("Keep plan and print list");
    head.actionKey = printKeyText();
    return head;
}

std::vector<KeyHint> PullPlace::hints() const {
    if (m_kept)
        return {{tr("Enter"), tr("clip its peg")}, {tr("B"), tr("clearer board in or out")}};
    return {{tr("T"), tr("take")}, {tr("L"), tr("leave")}, {tr("K"), tr("look first")}};
}

std::vector<PrintSheet> PullPlace::sheets() const {
    return {{QStringLiteral("pull-list"), tr("Pull list"),
             [this] { return pullListPage(session().read(), m_sheet); }}};
}

std::vector<Explained> PullPlace::explained() const {
    if (!session().hasSeason()) return {};
    const PullBoxRow* box = m_board->current();
    return explainPull(session().read(), m_input, m_sheet,
                       box ? std::optional(box->box.id.number) : std::nullopt);
}

QString PullPlace::help() const {
    return tr("Every super that could come off stands here with a verdict: take, leave or look "
              "first, and why. Whole boxes only; each hive keeps what it needs for winter, less "
              "what you are willing to feed. Boxes that are open, wet, hold brood, are held back "
              "or were not looked into lately stay. One that was on while a medicine was in the "
              "hive is refused: it is never suggested, and taking it needs a reason.\n\n"
              "Tick the yards and say the day (fri, 6 aug). Change a limit at the right and the "
              "answer follows. Full frame, extractor, bucket and spare buckets may be tried out: "
              "what you type there becomes your own figure when the plan is kept.\n\n"
              "The arrows go from hive to hive and from box to box; the chosen box lies flat "
              "below with what leaving and taking it would bring. T, L and K decide it against "
              "the reckoning; Delete takes your decision back. Ctrl+E says how each figure came "
              "about. What the bees bring or take until then is not in it: it speaks as of "
              "today.\n\n"
              "On the day: Enter asks for the peg of the chosen box and proposes the next free "
              "number; Enter again clips it, the box comes off its hive, and the next one to take "
              "is asked for. So the whole pull is Enter, Enter, Enter. B puts a clearer board in "
              "at the chosen hive or takes it out, I puts in those of the next round, O takes all "
              "out. They come out within three days.\n\n%1")
        .arg(liftCaution());
}

bool PullPlace::keep() {
    // A decision about a box that is not in these yards belongs to another plan.
    QStringList forced;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes) {
                if (!box.forced) continue;
                QString each = QStringLiteral("#%1 %2")
                                   .arg(box.box.id.number)
                                   .arg(choiceText(word(box.verdict)));
                if (!box.reason.empty()) each += QStringLiteral(" (%1)").arg(fromUtf8(box.reason));
                forced << each;
            }
    const Day today = session().clock().today();
    QStringList yards;
    for (const Id<Yard> id : m_asked.yards) {
        const auto yard = session().read().find(id);
        const QString name = yard ? fromUtf8(yard->name.text()) : QString();
        yards << (name.isEmpty() || name.contains(QLatin1Char(','))
                      ? QStringLiteral("#%1").arg(id.number)
                      : name);
    }
    KeepPlan plan;
    plan.on = today;
    plan.forDay = m_asked.forDay;
    plan.yards = yards.join(QStringLiteral(", ")).toStdString();
    plan.limits = m_asked.limits;
    plan.force = forced.join(QStringLiteral(", ")).toStdString();
    std::vector<SetConstant> constants;
    const auto own = [&](const std::string& name, const std::optional<double>& value) {
        const auto named = Name::of(name);
        if (!value || !named) return;
        SetConstant set;
        set.on = today;
        set.constant = *named;
        set.value = Number::rounded(*value);
        set.source = tr("typed for the pull plan").toStdString();
        constants.push_back(set);
    };
    const PullSupposed& supposed = m_asked.supposed;
    if (const auto& usual = m_sheet.constants.usualFrame)
        own("full_frame_g " + usual->code.text(), supposed.fullFrameG);
    own("extractor_slots", supposed.slots);
    own("bucket_g", supposed.bucketG);
    own("spare_share", supposed.spareShare);
    return session().together([&](Season& season) -> Result<void> {
        for (const SetConstant& each : constants)
            if (auto set = perform(season, each); !set) return set.error();
        if (auto kept = perform(season, plan); !kept) return kept.error();
        return {};
    });
}

void PullPlace::act() {
    settle();
    if (m_sheet.taken == 0) return;
    if (!m_kept || !asKept(m_sheet, *m_kept)) {
        if (!keep()) return;
        m_asked.supposed = {};
        reload();
        settle();
        m_decidedBefore.clear();  // they are in the plan now, which Ctrl+Z takes back whole
        session().tell(tr("The plan is kept."));
    }
    Q_EMIT printAsked();
}

}  // namespace combwright
