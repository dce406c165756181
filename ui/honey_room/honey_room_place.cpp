#include "ui/honey_room/honey_room_place.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/honey_room/runs.h"
#include "core/places/honey_room/peg_meant.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"
#include "ui/honey_room/close_day_form.h"
#include "ui/honey_room/day_log_form.h"

namespace combwright {
namespace {

// Height under which the balance folds and what the gate asks for stands over the buckets, px at
// the base font.
constexpr int roomForBalance = 655;
// Where the gate stands among title, buckets and what is said of them.
constexpr int gateAtHead = 1;
constexpr int gateAtFoot = 3;

}  // namespace

HoneyRoomPlace::HoneyRoomPlace(Session& session, QWidget* parent) : Place(session, parent) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_runs = new QComboBox;
    m_runs->setObjectName(QStringLiteral("run"));
    m_runs->setAccessibleName(tr("Run"));
    m_runs->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_pages = new QStackedWidget(this);
    m_extract = new QWidget(m_pages);
    m_scroll = new QScrollArea(m_extract);
    m_scroll->setObjectName(QStringLiteral("room_scroll"));
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_room = new QWidget(m_scroll);
    auto* inside = new QVBoxLayout(m_room);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(6);
    inside->addWidget(buildCaution());
    m_empty = new QLabel(m_room);
    m_empty->setObjectName(QStringLiteral("empty"));
    m_empty->setWordWrap(true);
    inside->addWidget(m_empty);
    m_grid = new QGridLayout;
    m_grid->setContentsMargins(0, 0, 0, 0);
    inside->addLayout(m_grid, 1);
    m_left = buildWaiting();
    m_load = new LoadPanel(session, m_room);
    m_right = buildBuckets();
    m_scroll->setWidget(m_room);
    m_strip = buildStrip();
    m_spin = new SpinDesk(session, this);
    m_bell = new QCheckBox(tr("clock sounds"), m_load);
    m_bell->setObjectName(QStringLiteral("clock_sounds"));
    m_bell->setChecked(m_spin->bellOn());
    connect(m_bell, &QCheckBox::toggled, m_spin, &SpinDesk::setBellOn);
    m_load->addToLegend(m_bell);
    m_balanceView = new RunView(session, m_extract);
    m_learned = new LearnedLine(session, m_extract);
    auto* whole = new QVBoxLayout(m_extract);
    whole->setContentsMargins(24, 4, 24, 6);
    whole->setSpacing(6);
    whole->addWidget(m_scroll, 1);
    whole->addWidget(m_strip);
    whole->addWidget(m_balanceView);
    whole->addWidget(m_learned);
    buildPages();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_pages);
    setTabOrder(m_entry->line(), m_waiting);
    m_entry->line()->setProperty("commands", true);
    // A long question makes the line and the read-back narrower, not the window wider.
    m_entry->setMinimumWidth(1);
    addDayLogKey(this, session);
    connectAll();
    sizes();
    if (session.hasSeason()) restoreSpin();
}

QWidget* HoneyRoomPlace::buildCaution() {
    m_cautionLine = new QWidget(m_room);
    auto* across = new QHBoxLayout(m_cautionLine);
    across->setContentsMargins(0, 0, 0, 0);
    m_caution = new QLabel(m_cautionLine);
    m_caution->setObjectName(QStringLiteral("caution"));
    m_caution->setWordWrap(true);
    m_caution->setTextFormat(Qt::RichText);
    auto* seen = new QPushButton(tr("seen"), m_cautionLine);
    seen->setObjectName(QStringLiteral("seen"));
    seen->setAccessibleName(tr("Cautions seen: close this line for today"));
    seen->setProperty("small", true);
    connect(seen, &QPushButton::clicked, this, [this] {
        seeCautions();
        m_entry->setFocus();
    });
    across->addWidget(m_caution, 1);
    across->addWidget(seen, 0, Qt::AlignTop);
    return m_cautionLine;
}

QWidget* HoneyRoomPlace::buildWaiting() {
    auto* part = new QWidget(m_room);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    m_waitingTitle = new QLabel(tr("Waiting"), part);
    m_extractBy = new QLabel(part);
    m_extractBy->setObjectName(QStringLiteral("extract_by"));
    m_extractBy->setWordWrap(true);
    m_extractBy->setTextFormat(Qt::RichText);
    m_waiting = new WaitingView(session(), part);
    m_table = new QTableWidget(part);
    m_table->setObjectName(QStringLiteral("boxes"));
    m_table->setAccessibleName(tr("Boxes of the run"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->hide();
    m_waitingFoot = new QLabel(part);
    m_waitingFoot->setObjectName(QStringLiteral("waiting_foot"));
    m_waitingFoot->setWordWrap(true);
    column->addWidget(m_waitingTitle);
    column->addWidget(m_extractBy);
    column->addWidget(m_waiting);
    column->addWidget(m_table, 1);
    column->addWidget(m_waitingFoot);
    m_pile = new QLabel(part);
    m_pile->setObjectName(QStringLiteral("pile"));
    m_pile->setWordWrap(true);
    m_pile->setTextFormat(Qt::RichText);
    column->addWidget(m_pile);
    m_settle = new QPushButton(tr("Empty the pile"), part);
    m_settle->setObjectName(QStringLiteral("settle"));
    m_settle->setProperty("small", true);
    column->addWidget(m_settle, 0, Qt::AlignLeft);
    column->addStretch(0);
    return part;
}

QWidget* HoneyRoomPlace::buildBuckets() {
    auto* part = new QWidget(m_room);
    auto* column = m_rightColumn = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    m_bucketTitle = new QLabel(part);
    m_bucketTitle->setObjectName(QStringLiteral("bucket_title"));
    m_bucketTitle->setTextFormat(Qt::RichText);
    m_buckets = new BucketBoard(session(), part);
    m_bucketFoot = new QLabel(part);
    m_bucketFoot->setObjectName(QStringLiteral("bucket_foot"));
    m_bucketFoot->setWordWrap(true);
    m_bucketFoot->setTextFormat(Qt::RichText);
    column->addWidget(m_bucketTitle);
    column->addWidget(m_buckets);
    column->addWidget(m_bucketFoot);
    m_gatePart = new QWidget(part);
    auto* beside = new QHBoxLayout(m_gatePart);
    beside->setContentsMargins(0, 4, 0, 4);
    beside->setSpacing(8);
    m_gateBar = new QWidget(m_gatePart);
    m_gateBar->setAutoFillBackground(true);
    m_gate = new QLabel(m_gatePart);
    m_gate->setObjectName(QStringLiteral("gate"));
    m_gate->setWordWrap(true);
    m_gate->setTextFormat(Qt::RichText);
    beside->addWidget(m_gateBar);
    beside->addWidget(m_gate, 1);
    column->addWidget(m_gatePart);
    m_day = new QLabel(part);
    m_day->setObjectName(QStringLiteral("room_day"));
    m_day->setWordWrap(true);
    m_day->setTextFormat(Qt::RichText);
    column->addWidget(m_day);
    column->addStretch(1);
    return part;
}

QWidget* HoneyRoomPlace::buildStrip() {
    auto* strip = new QWidget(m_extract);
    auto* column = new QVBoxLayout(strip);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    m_entry = new RoomEntry(session(), strip);
    m_stripButtons = new QWidget(strip);
    auto* across = new FlowRow(m_stripButtons, 8);
    const auto button = [&](const char* name, auto deed) {
        auto* made = new KeyButton(session(), {}, {}, m_stripButtons);
        made->setObjectName(QLatin1String(name));
        connect(made, &QPushButton::clicked, this, deed);
        across->addWidget(made);
        return made;
    };
    const auto press = [this](char key) {
        m_entry->pad().press(QLatin1Char(key));
        m_entry->setFocus();
    };
    m_pegKeys = button("peg_keys", [this] { m_entry->setFocus(); });
    m_bucketKeys = button("bucket_keys", [this] {
        m_entry->pad().forget();
        m_entry->line()->setText(QStringLiteral("/"));
        m_entry->setFocus();
    });
    m_spun = button("spun_smooth", [press] { press('+'); });
    m_walked = button("spun_walked", [press] { press('-'); });
    m_aside = button("set_aside", [press] { press('*'); });
    m_closeDay = button("close_the_day", [this] { closeDay(); });
    column->addWidget(m_entry);
    column->addWidget(m_stripButtons);
    return strip;
}

void HoneyRoomPlace::connectAll() {
    connect(m_runs, &QComboBox::activated, this, [this](int index) {
        m_run = Id<Extraction>{m_runs->itemData(index).toLongLong()};
        reload();
    });
    connect(m_entry, &RoomEntry::runOpened, this, [this](Id<Extraction> run) {
        m_run = run;
        reload();
    });
    connect(m_entry, &RoomEntry::stepAsked, this, [this](int rows) {
        m_waiting->choose(m_waiting->currentRow() + rows);
        targetBox();
    });
    connect(m_entry, &RoomEntry::weighed, this, &HoneyRoomPlace::afterWeighing);
    connect(m_waiting, &WaitingView::chosen, this, [this](bool byHand) { targetBox({}, byHand); });
    connect(m_waiting, &WaitingView::moved, this,
            [this] { follow(m_waiting, m_waiting->currentRect()); });
    connect(&m_load->view(), &LoadView::slotChosen, this,
            [this](const QRect& slot) { follow(&m_load->view(), slot); });
    connect(m_buckets, &BucketBoard::chosen, this,
            [this] { follow(m_buckets, m_buckets->currentRect()); });
    connect(m_entry, &RoomEntry::scrollAsked, this, [this](int pages) {
        QScrollBar* bar = m_scroll->verticalScrollBar();
        bar->setValue(bar->value() + pages * bar->pageStep() * 9 / 10);
    });
    // A box chosen by its peg too, though the keys stay in the line.
    connect(&m_entry->pad(), &PadDesk::askChanged, this, [this] {
        const PadAsk& ask = m_entry->pad().ask();
        if (ask.box.peg == 0) return;
        if (const auto row = m_waiting->rectOfPeg(ask.box.peg)) follow(m_waiting, *row);
    });
    // Large type does not fit a small screen: the room moves with the cursor.
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        // Of the boxes, the slots and the buckets it is the one chosen.
        if (now == m_waiting) return follow(m_waiting, m_waiting->currentRect());
        if (now == m_buckets || now == &m_load->view()) return;
        if (now && m_room->isAncestorOf(now)) follow(now, now->rect());
    });
    connect(m_waiting, &WaitingView::typed, m_entry, &RoomEntry::begin);
    connect(m_waiting, &WaitingView::weighAsked, this, [this](bool wet) {
        targetBox(wet);
        m_entry->begin({});
    });
    connect(m_waiting, &WaitingView::tableAsked, this, [this] { showTable(true); });
    connect(m_waiting, &WaitingView::takeOutAsked, this, [this] { takeOut(); });
    auto* back = new QShortcut(QKeySequence(Qt::Key_T), m_table);
    back->setContext(Qt::WidgetShortcut);
    back->setWhatsThis(tr("from the table back to the drawing"));
    connect(back, &QShortcut::activated, this, [this] { showTable(false); });
    const auto bucket = [this] {
        const BucketLine* line = m_buckets->current();
        if (!line || !isOpen()) return;
        EntryTarget target;
        target.what = EntryTarget::What::Bucket;
        target.bucket = line->mark;
        m_entry->setTarget(target);
    };
    connect(m_buckets, &BucketBoard::chosen, this, bucket);
    connect(m_buckets, &BucketBoard::typed, this, [this, bucket](const QString& text) {
        bucket();
        m_entry->begin(text);
    });
    connect(m_balanceView, &RunView::nameAsked, this, [this](Id<ExtractionBox> box) {
        EntryTarget target;
        target.what = EntryTarget::What::HiveOfBox;
        target.lost = box;
        for (const RunBoxLine& line : m_shown->boxes)
            if (line.box.id == box) target.lostName = fromUtf8(line.mark);
        m_entry->setTarget(target);
        m_entry->setRun(m_shown->run.id);
        m_entry->begin({});
        session().tell(tr("Which hive was %1 of? Type its mark.").arg(target.lostName));
    });
    connect(m_load, &LoadPanel::rulesChanged, this, [this] { reload(); });
    connectPad();
    connect(m_entry, &RoomEntry::ranAsked, this, &HoneyRoomPlace::spunByKey);
    connect(m_entry, &RoomEntry::closeAsked, this, &HoneyRoomPlace::closeDay);
    connect(&session(), &Session::seasonChanged, this, [this] {
        m_run.reset();
        m_keptLoads.clear();
        restoreSpin();
        turnTo(GoTo::Page::Board);
    });
    connect(&session(), &Session::changed, this, [this](const Change& change) {
        m_keptAt = session().clock().steadyMs();
        writtenAgain(change);
        if (isVisible()) reload();
    });
    connect(&session(), &Session::lookChanged, this, [this] {
        sizes();
        arrange();
        // Words carry their colours with them.
        if (isVisible() && session().hasSeason()) reload();
    });
}

void HoneyRoomPlace::sizes() {
    const QFont body = look().font(TextSize::Body);
    for (QLabel* label : {m_waitingTitle, m_bucketTitle})
        label->setFont(look().font(TextSize::Head, true));
    for (QLabel* label :
         {m_extractBy, m_waitingFoot, m_bucketFoot, m_caution, m_empty, m_gate, m_pile})
        label->setFont(body);
    m_day->setFont(look().font(TextSize::Note));
    m_table->setFont(body);
    m_table->verticalHeader()->setDefaultSectionSize(look().space(28));
    m_grid->setHorizontalSpacing(look().space(20));
    m_grid->setVerticalSpacing(look().space(12));
}

void HoneyRoomPlace::arrange() {
    const int wide = width() - 48;
    for (QWidget* part : std::initializer_list<QWidget*>{m_left, m_load, m_right})
        m_grid->removeWidget(part);
    for (int i = 0; i < 3; ++i) {
        m_grid->setColumnStretch(i, 0);
        m_grid->setRowStretch(i, 0);
    }
    // Beside each other as far as nothing of them is cut.
    const int room = wide - m_scroll->verticalScrollBar()->sizeHint().width();
    const int two = m_left->minimumSizeHint().width() + m_grid->horizontalSpacing() +
                    m_load->minimumSizeHint().width();
    const bool three =
        room >= two + m_grid->horizontalSpacing() + m_right->minimumSizeHint().width();
    const bool low = height() < look().space(roomForBalance);
    int row = 0;
    m_grid->removeWidget(m_gatePart);
    m_rightColumn->removeWidget(m_gatePart);
    if (three) {
        m_grid->addWidget(m_left, 0, 0);
        m_grid->addWidget(m_load, 0, 1);
        m_grid->addWidget(m_right, 0, 2);
        m_grid->setColumnStretch(0, 11);
        m_grid->setColumnStretch(1, 22);
        m_grid->setColumnStretch(2, 14);
        m_grid->setRowStretch(0, 1);
    } else if (room >= two) {
        m_grid->addWidget(m_left, 0, 0);
        m_grid->addWidget(m_load, 0, 1);
        m_grid->addWidget(m_right, 1, 0, 1, 2);
        m_grid->setColumnStretch(0, 2);
        m_grid->setColumnStretch(1, 3);
    } else {
        // What the gate asks for is not looked for below everything else.
        m_grid->addWidget(m_gatePart, row++, 0);
        m_grid->addWidget(m_left, row++, 0);
        m_grid->addWidget(m_load, row++, 0);
        m_grid->addWidget(m_right, row, 0);
        m_grid->setColumnStretch(0, 1);
    }
    if (row == 0) m_rightColumn->insertWidget(three && !low ? gateAtFoot : gateAtHead, m_gatePart);
    // The examples go first where the buttons do not stand in one row.
    int keys = 0;
    for (const KeyButton* key : {m_spun, m_walked, m_aside, m_closeDay})
        if (!key->isHidden()) keys += key->sizeHint().width() + 8;
    for (KeyButton* example : {m_pegKeys, m_bucketKeys}) {
        keys += example->sizeHint().width() + 8;
        example->setVisible(keys <= wide && (example == m_pegKeys || m_open));
    }
    m_balanceView->setFolded(low || !three);
    // In large type an earlier run is not worth the room of the one at work.
    const bool ofAnother = m_open && m_shown && m_shown->run.id != m_run;
    m_balanceView->setVisible(three || room >= two || !ofAnother);
}

void HoneyRoomPlace::follow(const QWidget* widget, const QRect& part) {
    const QPoint at = widget->mapTo(m_room, part.center());
    m_scroll->ensureVisible(at.x(), at.y(), 0, part.height() / 2 + look().space(8));
}

void HoneyRoomPlace::targetBox(std::optional<bool> wet, bool byHand) {
    const RoomBox* box = m_waiting->current();
    EntryTarget target;
    const EntryTarget& before = m_entry->target();
    const bool same = box && before.what == EntryTarget::What::BoxWet && before.box &&
                      before.box->mark == box->mark;
    const bool full = box && box->gross && box->gross->value;
    // Its wet weight is asked of a box that was spun, or that somebody chose.
    const bool spunOut = box && (box->went.spun > 0 || (box->wet && box->wet->value));
    // Where pegs are in use a bare number is a peg, and only a box chosen by hand is weighed so.
    const bool byPeg = session().hasSeason() && pegsInUse(session().read());
    const bool meant = !byPeg || wet || byHand;
    if (box && m_open && meant && (wet || !full || spunOut || byHand || same)) {
        target.what = wet.value_or(full) ? EntryTarget::What::BoxWet : EntryTarget::What::BoxFull;
        target.box = *box;
    }
    m_entry->setTarget(target);
    m_entry->describe();
}

void HoneyRoomPlace::afterWeighing(const EntryTarget& done) {
    if (done.what == EntryTarget::What::HiveOfBox) {
        m_entry->setRun(m_run, m_open);
        return targetBox();
    }
    // A line with a mark leaves the cursor where something is still to be weighed.
    const RoomBox* now = m_waiting->current();
    const bool here = now && done.box && now->mark == done.box->mark;
    const bool wet = done.what == EntryTarget::What::BoxWet;
    if (here || (now && now->gross && now->gross->value && !wet)) m_waiting->chooseNextLacking(wet);
    targetBox();
}

void HoneyRoomPlace::showTable(bool shown) {
    m_table->setVisible(shown);
    m_waiting->setVisible(!shown);
    if (shown) {
        m_table->setCurrentCell(m_waiting->currentRow(), 0);
        m_table->setFocus();
    } else {
        m_waiting->choose(m_table->currentRow());
        m_waiting->setFocus();
    }
}

void HoneyRoomPlace::keyPressEvent(QKeyEvent* event) {
    if (RoomPage* shown = page()) {
        const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
        if (!plain || !shown->press(event->key())) Place::keyPressEvent(event);
        return;
    }
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && (event->modifiers() & Qt::ControlModifier)) return closeDay();
    if (event->key() == Qt::Key_Space && (event->modifiers() & Qt::ControlModifier))
        return spunByKey(Ran::Smooth);
    Place::keyPressEvent(event);
}

void HoneyRoomPlace::takeOut() {
    const RoomBox* box = m_waiting->current();
    if (!box || !box->entry) return session().tell(tr("This box is not in the run yet."), true);
    TakeBoxOut deed;
    deed.on = session().clock().today();
    deed.box = box->entry->id;
    const QString mark = fromUtf8(box->mark);
    if (session().run(deed)) session().tell(tr("%1 is no longer in this run.").arg(mark));
}

void HoneyRoomPlace::closeDay() {
    // One form at a time: its own Ctrl+Enter must not open another.
    if (!session().hasSeason() || QApplication::activeModalWidget()) return;
    if (m_spin->turns())
        return session().tell(
            tr("Load %1 turns: the day is closed when it stands.").arg(m_spin->load()->number),
            true);
    CloseDayForm form(session(), m_open ? m_run : std::nullopt, this);
    form.exec();
    if (form.keptRun()) m_run = form.keptRun();
    reload();
    m_entry->setFocus();
}

}  // namespace combwright
