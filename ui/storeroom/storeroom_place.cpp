#include "ui/storeroom/storeroom_place.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QScrollBar>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/storeroom/frame_work.h"
#include "core/actions/storeroom/reviews.h"
#include "core/places/explain/explain_storeroom.h"
#include "core/places/health/contact_trace.h"
#include "core/places/health/dead_outs.h"
#include "core/places/pages/goods/order_list_page.h"
#include "core/places/pages/health/dead_out_pages.h"
#include "core/places/pages/pull/wets_home_page.h"
#include "core/places/pages/storeroom/frame_board_page.h"
#include "core/places/pages/storeroom/stock_page.h"
#include "core/places/pages/storeroom/winter_todo_page.h"
#include "core/places/pull/wets_home.h"
#include "core/places/storeroom/freezer.h"
#include "core/places/storeroom/shelf_danger.h"
#include "core/places/storeroom/storeroom_waits.h"
#include "core/places/storeroom/winter_todo.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/storeroom/bench_words.h"

namespace combwright {
namespace {

// At the base font, px.
constexpr int storeCountsWidth = 152;
constexpr int needsWidth = 236;
constexpr int storeBesideFrom = 900;
constexpr int leastBoardHeight = 116;

}  // namespace

StoreroomPlace::StoreroomPlace(Session& session, QWidget* parent)
    : Place(session, parent),
      m_whole(new QScrollArea(this)),
      m_body(new QWidget(m_whole)),
      m_across(new QBoxLayout(QBoxLayout::LeftToRight)),
      m_below(new QBoxLayout(QBoxLayout::LeftToRight)),
      m_counts(new BoardCounts(session.look(), m_body)),
      m_filterRow(new BoardFilterRow(session.look(), m_body)),
      m_buttons(new QWidget(m_body)),
      m_warnings(new QLabel(m_body)),
      m_board(new FrameBoardView(session.look(), m_body)),
      m_empty(new QLabel(m_body)),
      m_bench(new BenchPanel(session, m_body)),
      m_needsScroll(new QScrollArea(m_body)),
      m_needs(new NeedsCard(session, m_needsScroll)),
      m_lane(new LaneView(session, m_body)) {
    setFocusPolicy(Qt::ClickFocus);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    m_whole->setObjectName(QStringLiteral("storeroom_whole"));
    m_whole->setFrameShape(QFrame::NoFrame);
    m_whole->setWidgetResizable(true);
    m_whole->setFocusPolicy(Qt::NoFocus);
    m_whole->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_whole->setWidget(m_body);
    all->addWidget(m_whole);

    m_empty->setObjectName(QStringLiteral("storeroom_empty"));
    m_empty->setWordWrap(true);
    m_empty->setText(
        tr("No box stands in the storeroom yet. Boxes come here from Yard (Add, Boxes) "
           "or when they are taken off a hive; then arrow to one and type what is in "
           "it, for instance \"7 keep, 1 web, 1 broken\"."));
    m_warnings->setObjectName(QStringLiteral("storeroom_warnings"));
    m_warnings->setWordWrap(true);
    m_board->installEventFilter(this);
    addButtons();

    auto* column = new QVBoxLayout(m_body);
    column->addLayout(m_across, 1);
    column->addWidget(m_lane);
    auto* right = new QVBoxLayout;
    right->setSpacing(8);
    right->addWidget(m_filterRow);
    right->addWidget(m_warnings);
    right->addWidget(m_empty);
    right->addWidget(m_board, 1);
    right->addLayout(m_below);
    m_below->addWidget(m_bench, 1);
    m_below->addWidget(m_needsScroll);
    m_needsScroll->setObjectName(QStringLiteral("needs_scroll"));
    m_needsScroll->setAccessibleName(tr("Next season"));
    m_needsScroll->setFrameShape(QFrame::NoFrame);
    m_needsScroll->setWidgetResizable(true);
    m_needsScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_needsScroll->setWidget(m_needs);
    auto* left = new QVBoxLayout;
    left->setSpacing(8);
    left->addWidget(m_counts, 1);
    left->addWidget(m_buttons);
    m_across->addLayout(left);
    m_across->addLayout(right, 1);
    listen();
    arrange();
}

void StoreroomPlace::listen() {
    connect(m_counts, &BoardCounts::filterAsked, this, &StoreroomPlace::applyFilter);
    connect(m_filterRow, &BoardFilterRow::filterAsked, this, &StoreroomPlace::applyFilter);
    connect(m_board, &FrameBoardView::currentChanged, this, &StoreroomPlace::fillBench);
    connect(m_board, &FrameBoardView::frameChanged, this, &StoreroomPlace::fillBench);
    connect(m_board, &FrameBoardView::selectionChanged, this, [this] { Q_EMIT headChanged(); });
    connect(m_board, &FrameBoardView::pressed, this, [this](bool onFrame) {
        if (m_atFrame == onFrame) return;
        pointAtFrame(onFrame);
        fillBench();
    });
    auto* toCounts = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), this);
    toCounts->setWhatsThis(tr("the counts at the left"));
    connect(toCounts, &QShortcut::activated, this,
            [this] { m_counts->setFocus(Qt::ShortcutFocusReason); });
    m_counts->setToolTip(
        tr("%1 comes here, Enter shows just the frames of a line, Esc goes back to the board")
            .arg(toCounts->key().toString(QKeySequence::NativeText)));
    connect(m_board, &FrameBoardView::activated, this, [this] { beginLine(lineDraft()); });
    connect(&m_bench->line(), &QLineEdit::textChanged, this, &StoreroomPlace::holdDraft);
    connect(&m_bench->line(), &QLineEdit::textEdited, this, [this](const QString& text) {
        if (text.trimmed().isEmpty()) dropDraft();
    });
    m_bench->readBackBy([this](const QString& line) {
        return m_box ? readReviewBack(*m_box, line) : BenchPanel::Echo{};
    });
    connect(m_bench, &BenchPanel::lineEntered, this, &StoreroomPlace::keepLine);
    connect(m_bench, &BenchPanel::lineCorrected, this, &StoreroomPlace::keepCorrection);
    connect(m_bench, &BenchPanel::lineLeft, this, [this] {
        dropDraft();
        m_bench->clearLine();
        m_board->setFocus();
        fillBench();
    });
    connect(m_bench, &BenchPanel::frameClicked, this, [this](int frame) {
        if (const auto box = currentBox()) m_board->goToBox(*box, frame);
        pointAtFrame(true);
        m_board->setFocus();
        fillBench();
    });
    connect(&session(), &Session::seasonChanged, this, [this] {
        m_filter = {};
        pointAtFrame(false);
    });
    connect(&session(), &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    connect(&session(), &Session::lookChanged, this, [this] {
        m_counts->setLook(look());
        m_filterRow->setLook(look());
        m_board->setLook(look());
        fillBench();
        arrange();
    });
}

void StoreroomPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

void StoreroomPlace::arrange() {
    const bool beside = width() >= look().space(storeBesideFrom);
    const int side = look().space(beside ? 24 : 16);
    m_body->layout()->setContentsMargins(side, look().space(8), side, look().space(8));
    m_body->layout()->setSpacing(look().space(8));
    m_across->setSpacing(look().space(16));
    m_below->setSpacing(look().space(16));
    // Too narrow for both: the board first, its counts below.
    m_across->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::BottomToTop);
    m_below->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_board->setMinimumHeight(look().space(leastBoardHeight));
    // What the bench says wraps; its height is asked for here, so that the board gives way and not
    // the bench.
    const int bar = m_whole->verticalScrollBar()->sizeHint().width();
    int wide = width() - 2 * side - bar;
    if (beside)
        wide -= look().space(storeCountsWidth) + look().space(needsWidth) + look().space(48);
    m_bench->setMinimumHeight(m_bench->layout()->totalHeightForWidth(std::max(wide, 1)));
    if (beside) {
        m_counts->setFixedWidth(look().space(storeCountsWidth));
        m_buttons->setFixedWidth(look().space(storeCountsWidth));
        m_counts->setMinimumHeight(0);
        m_needsScroll->setFixedWidth(look().space(needsWidth) +
                                     m_needsScroll->verticalScrollBar()->sizeHint().width());
        m_needsScroll->setMinimumHeight(0);
        return;
    }
    for (QWidget* each : std::initializer_list<QWidget*>{m_counts, m_needsScroll, m_buttons}) {
        each->setMinimumWidth(0);
        each->setMaximumWidth(QWIDGETSIZE_MAX);
    }
    m_counts->setMinimumHeight(m_counts->contentHeight());
    m_needsScroll->setMinimumHeight(m_needs->heightForWidth(std::max(wide, 1)) + 4);
}

int StoreroomPlace::waiting() const {
    return static_cast<int>(boxesThatWait(session().read(), session().clock().today()));
}

void StoreroomPlace::focusInEvent(QFocusEvent*) { m_board->setFocus(); }

void StoreroomPlace::readAnew() {
    if (!session().hasSeason()) return;
    const Read& file = session().read();
    const Day today = session().clock().today();
    FrameBoard board = frameBoard(file, today, m_filter);
    m_counts->setBoard(board);
    m_filterRow->setBoard(board);
    const bool anything = board.all > 0 || board.boxesAll > 0;
    m_empty->setVisible(!anything);
    m_board->setVisible(anything);
    m_filterRow->setVisible(anything);
    m_board->setBoard(std::move(board));
    m_weights.emplace(file, today);
    m_contacts->setVisible(!suspectedHives(file, today).empty());
    m_next = nextSeason(file, today, plannedYear(file, today));
    m_needs->show(m_next);
    m_needsScroll->setAccessibleDescription(m_needs->accessibleDescription());
    m_lane->show(freezerLane(file, today));
    const EveningSum evening = eveningSum(file, today);
    m_bench->showEvening(eveningText(evening), eveningGone(evening));
    fillWarnings();
    fillBench();
    arrange();
    Q_EMIT headChanged();
}

void StoreroomPlace::applyFilter(const BoardFilter& filter) {
    m_filter = filter;
    reload();
}

void StoreroomPlace::fillWarnings() {
    const auto dangers = shelfDangers(session().read(), session().clock().today());
    std::int64_t frames = 0;
    QStringList boxes;
    for (const ShelfDanger& each : dangers) {
        frames += each.frames;
        if (boxes.size() < 6) boxes << fromUtf8(each.box.name);
    }
    if (dangers.size() > 6) boxes << tr("and %1 more").arg(dangers.size() - 6);
    m_warnings->setVisible(!dangers.empty());
    m_warnings->setText(
        QStringLiteral("<span style=\"color:%1\"><b>%2</b></span> %3")
            .arg(look().tone(Tone::Warn).name(),
                 tr("Moths: %1 combs lie warm and were never frozen.")
                     .arg(static_cast<qlonglong>(frames)),
                 tr("%1. Freeze brood and pollen comb first, or keep it below 10 °C.")
                     .arg(boxes.join(QStringLiteral(", ")))));
}

std::optional<Id<Box>> StoreroomPlace::currentBox() const {
    const BoardRow* row = m_board->currentRow();
    return row ? row->box : std::nullopt;
}

PlaceHead StoreroomPlace::head() const {
    PlaceHead head;
    head.title = tr("Storeroom");
    if (!session().hasSeason()) return head;
    const FrameBoard& board = m_board->board();
    head.under = tr("%1  ·  %2 boxes, %3 frames")
                     .arg(dayText(session().clock().today()))
                     .arg(static_cast<qlonglong>(board.boxesAll))
                     .arg(static_cast<qlonglong>(board.all));
    const NeedsHead needs = needsHead(m_next);
    head.big = needs.figure;
    head.bigNote = needs.words;
    std::int64_t notLooked = 0;
    for (const KindCounts& kind : board.counts)
        for (const StateCount& each : kind.states)
            if (each.state.kind == FrameState::Kind::NotLookedThrough) notLooked += each.frames;
    if (notLooked > 0)
        head.under += tr("  ·  %1 not looked through").arg(static_cast<qlonglong>(notLooked));
    if (m_board->selectedCount() > 1)
        head.under += tr("  ·  %1 boxes chosen").arg(m_board->selectedCount());
    head.action = tr("Print order list");
    head.actionKey = printKeyText();
    return head;
}

std::vector<KeyHint> StoreroomPlace::hints() const {
    if (m_board->selectedCount() > 1)
        return {{QStringLiteral("1…8"), tr("judge the chosen")},
                {QStringLiteral("Esc"), tr("let them go")}};
    if (m_atFrame)
        return {{QStringLiteral("W…Q"), tr("what is seen")},
                {QStringLiteral("1…8"), tr("what becomes of it")},
                {QStringLiteral("↑ ↓"), tr("back to boxes")}};
    return {{m_filterRow->enterKey(), tr("choose what is shown")},
            {QStringLiteral("↑ ↓"), tr("box")},
            {QStringLiteral("← →"), tr("frame")},
            {QStringLiteral("1…9"), tr("type its counts")},
            {QStringLiteral("F2"), tr("correct its last line")}};
}

std::vector<PrintSheet> StoreroomPlace::sheets() const {
    const Day today = session().clock().today();
    return {{QStringLiteral("order-list"), tr("Order list"),
             [this] { return orderListPage(session().read(), m_next); }},
            {QStringLiteral("winter-to-do"), tr("Winter to-do"),
             [this, today] {
                 return winterTodoPage(session().read(), winterTodo(session().read(), today));
             }},
            {QStringLiteral("wets-home"), tr("Wet boxes home"),
             [this, today] {
                 return wetsHomePage(session().read(), wetsHome(session().read(), today));
             }},
            {QStringLiteral("stock-take"), tr("Stock-take"),
             [this, today] {
                 return stockTakePage(session().read(), stockOn(session().read(), today));
             }},
            {QStringLiteral("frame-board"), tr("Frame board"),
             [this] { return frameBoardPage(session().read(), m_board->board()); }}};
}

std::vector<Explained> StoreroomPlace::explained() const { return explainNeeds(m_next); }

QString StoreroomPlace::help() const {
    return tr("<h3>Storeroom</h3>"
              "<p>What have I got, and what state is it in. Every box has a row with its frames "
              "laid out "
              "small, shelf by shelf; the counts at the left always show everything.</p>"
              "<p><b>The bench.</b> Go to a box with ↑ ↓ and type what is in it, for instance "
              "<i>7 keep, 1 web, 1 broken; scraped, wax 70, years 24x3</i>; Enter keeps it and "
              "goes to "
              "the "
              "next box. What becomes of a frame follows from what was seen; say it to decide "
              "otherwise: "
              "<i>1 W burn</i>. Fewer frames than there were are kept as not found. F2 on a box "
              "opens the line of its last look as it was: put it right, Enter, say why; the old "
              "line stays in the history.</p>"
              "<p><b>A mixed box.</b> Frames of another kind than the box is made for are a part "
              "of their own with their kind behind it: <i>5 keep, 3 keep of shallow, 1 V of "
              "shallow</i>. Each part is counted with its own kind everywhere; <i>Fit</i> says "
              "what bees do with the room a short frame leaves.</p>"
              "<p><b>One frame.</b> Go to it with ← →, press a letter for what you see and a digit "
              "for "
              "what becomes of it. It then has a place of its own.</p>"
              "<p><b>Many.</b> Choose boxes with Space, Shift and the arrows, or Ctrl+A for all "
              "shown; a "
              "digit says what it would do to them, pressed once more it does it, in one step. Esc "
              "lets "
              "them go.</p>"
              "<p><b>Find.</b> Type a mark to go to its box; a digit no mark goes on with is a "
              "count "
              "of that box. Enter counts it at once. A letter no mark begins with is what is seen "
              "of one "
              "frame, and the digit behind it its verdict: <i>W6</i> begins the line <i>1 "
              "W6</i>.</p>"
              "<p><b>Show.</b> Ctrl+F goes to the choices above the board, Tab from one to the "
              "next, "
              "↑ ↓ choose, Space ticks; Ctrl+G goes to how rows stand together; Esc goes back to "
              "the "
              "board. Ctrl+L goes to the counts at the left: Enter on a line shows just those "
              "frames. "
              "Ctrl+Backspace shows everything again.</p>"
              "<p><b>Work, freezer, wets, plan.</b> The buttons at the left, each with its Alt "
              "key: work "
              "that was done is ticked there and comes off the lists at once.</p>"
              "<p><b>Careful.</b> Combs of a colony that died are held back, all of them, until "
              "its "
              "card is answered. Where foulbrood is suspected call the inspector and move nothing; "
              "Alt+C then lists what moved in or out of that hive. Cold does not cure foulbrood. "
              "Full boxes weigh over %1: lift with two. What a box weighs, reckoned and as a "
              "range, stands with it at the bench.</p>")
        .arg(liftLimitText());
}

}  // namespace combwright
