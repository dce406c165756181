#include "ui/shell/main_window.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QMessageBox>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <iterator>

#include "ui/honey_room/honey_room_place.h"
#include "ui/look/style.h"
#include "ui/print/print_dialog.h"
#include "ui/pull/pull_place.h"
#include "ui/season_book/season_book_place.h"
#include "ui/shell/copies/time_ways.h"
#include "ui/shell/explain_dialog.h"
#include "ui/shell/find/finder.h"
#include "ui/shell/heat_line.h"
#include "ui/shell/help/diagnostics_dialog.h"
#include "ui/shell/help/help_window.h"
#include "ui/shell/help/sample_pictures.h"
#include "ui/shell/language_choice.h"
#include "ui/shell/notice_bar.h"
#include "ui/shell/program_icon.h"
#include "ui/shell/reader_roles.h"
#include "ui/shell/season_binder.h"
#include "ui/shell/start/start_page.h"
#include "ui/shell/walk/sample_walk.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/today/today_place.h"
#include "ui/wax_bench/wax_bench_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

/// A row kept by a quick hand is not held up by what the other places count.
constexpr int countedAfterMs = 1000;

}  // namespace

MainWindow::MainWindow(Session& session, QWidget* parent)
    : QMainWindow(parent), m_session(session) {
    giveReadersRoles();
    m_files = new FileWays(session, *this);
    m_time = new TimeWays(session, *this);
    setWindowIcon(programIcon());
    setAcceptDrops(true);
    auto* whole = new QWidget(this);
    auto* across = new QHBoxLayout(whole);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(0);
    m_rail = new Rail(session, whole);
    auto* right = new QWidget(whole);
    auto* down = new QVBoxLayout(right);
    down->setContentsMargins(0, 0, 0, 0);
    down->setSpacing(0);
    m_head = new PlaceHeadBar(session, right);
    m_stack = new QStackedWidget(right);
    // What a place says now never widens the window.
    m_stack->setMinimumWidth(1);
    m_foot = new FootBar(session, right);
    m_notice = new NoticeBar(session, *m_files, right);
    m_heat = new HeatLine(session, true, right);
    m_samplePictures = new SamplePictures(session, this);
    m_walk = new SampleWalk(session, *this, right);
    down->addWidget(m_head);
    down->addWidget(m_notice);
    down->addWidget(m_heat);
    down->addWidget(m_stack, 1);
    down->addWidget(m_walk);
    down->addWidget(m_foot);
    across->addWidget(m_rail);
    across->addWidget(right, 1);
    setCentralWidget(whole);

    m_start = new StartPage(session, *m_files, m_stack);
    m_stack->addWidget(m_start);
    addPlace<TodayPlace>();
    addPlace<YardPlace>();
    addPlace<PullPlace>();
    addPlace<HoneyRoomPlace>();
    addPlace<WaxBenchPlace>();
    addPlace<StoreroomPlace>();
    addPlace<SeasonBookPlace>();

    connect(m_rail, &Rail::chosen, this, &MainWindow::goTo);
    connect(m_head->button(), &QPushButton::clicked, this, [this] {
        if (Place* place = current()) place->act();
    });
    connect(&session, &Session::seasonReady, this, &MainWindow::showSeason);
    connect(&session, &Session::pathChanged, this, &MainWindow::showTitle);
    connect(m_files, &FileWays::leaving, this, &MainWindow::keepTyped);
    connect(m_start, &StartPage::walkAsked, m_walk, &SampleWalk::begin);
    m_countLater = new QTimer(this);
    m_countLater->setSingleShot(true);
    m_countLater->setInterval(countedAfterMs);
    connect(m_countLater, &QTimer::timeout, this, &MainWindow::countWaiting);
    connect(&session, &Session::changed, this, [this] { m_countLater->start(); });
    m_makeLater = new QTimer(this);
    connect(m_makeLater, &QTimer::timeout, this, &MainWindow::makeNext);
    addFileKeys();
    m_finder = new Finder(*this, session);
    addKey(tr("Find anything"), QKeySequence(Qt::CTRL | Qt::Key_K), [this] { m_finder->open(); })
        ->setWhatsThis(
            tr("finds a hive, box, bucket, jar, day or note by a word of it, and what can "
               "be done by its name"));

    addKey(tr("Take back"), QKeySequence::Undo, [this] {
        Place* place = current();
        if (place && !place->takeBack()) m_session.undo();
    });
    addKey(tr("Do again"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), [this] {
        if (m_session.hasSeason()) m_session.redo();
    });
    addKey(tr("Print"), QKeySequence::Print, [this] {
        // Where the button keeps before it prints, its key does so too.
        Place* place = current();
        if (place && place->head().actionKey == printKeyText())
            place->act();
        else
            print();
    });
    addKey(tr("End"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); });
    qApp->installEventFilter(this);
    addKey(tr("Explain the figures"), QKeySequence(Qt::CTRL | Qt::Key_E), [this] {
        explain();
    })->setWhatsThis(tr("says of each figure shown how it came about"));
    addKey(tr("Pounds or kilograms"), QKeySequence(Qt::CTRL | Qt::Key_U), [this] {
        m_session.setUnits(shownUnits() == Units::Metric ? Units::UsCustomary : Units::Metric);
    });
    addKey(tr("Language"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L),
           [this] { chooseLanguage(this, m_session); });
    addKey(tr("Larger text"), QKeySequence::ZoomIn, [this] { changeTextSize(+1); });
    addKey(tr("Larger text"), QKeySequence(Qt::CTRL | Qt::Key_Equal),
           [this] { changeTextSize(+1); });
    addKey(tr("Smaller text"), QKeySequence::ZoomOut, [this] { changeTextSize(-1); });
    addKey(tr("Text as the desktop has it"), QKeySequence(Qt::CTRL | Qt::Key_0),
           [this] { changeTextSize(0); });
    connect(&session, &Session::unitsChanged, this, [this] {
        if (Place* place = current()) {
            place->reload();
            showHead();
        }
        m_rail->update();
    });
    addKey(tr("About this place"), QKeySequence(Qt::Key_F1),
           [this] { showHelp(*this, m_session); });
    addKey(tr("History and copies"), QKeySequence(Qt::CTRL | Qt::Key_H), [this] {
        keepTyped();
        m_time->showHistory();
    })->setWhatsThis(tr("what was written so far, in words, and the season as it stood on a day"));
    addKey(tr("Save"), QKeySequence::Save, [this] {
        m_session.tell(tr("Nothing needs saving: every change is kept when it is made."));
    });
    showSeason();
}

QAction* MainWindow::addKey(const QString& name, const QKeySequence& key,
                            std::function<void()> deed) {
    auto* action = new QAction(name, this);
    action->setShortcut(key);
    action->setShortcutContext(Qt::WindowShortcut);
    connect(action, &QAction::triggered, this, std::move(deed));
    addAction(action);
    return action;
}

// Places go only after this part of the window is gone: fields that lose the focus on their way
// out, and keys the filter still sees, must not find it half taken down.
MainWindow::~MainWindow() {
    qApp->removeEventFilter(this);
    m_session.disconnect(this);
    for (Place* place : m_places)
        if (place) place->disconnect(this);
    delete takeCentralWidget();
    m_places.clear();
}

void MainWindow::nameInRail(const QString& word) {
    const int index = static_cast<int>(m_places.size());
    m_places.push_back(nullptr);
    m_rail->addPlace(word);
    addKey(word, QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + index)),
           [this, index] { goTo(index); });
}

Place& MainWindow::place(int index) {
    Place*& place = m_places[static_cast<std::size_t>(index)];
    if (place) return *place;
    place = m_makers[static_cast<std::size_t>(index)]();
    place->setAccessibleName(place->railWord());
    m_stack->addWidget(place);
    // In a frame of ours: a place that shows or hides its controls while another place is in front
    // must not paint over that one's head.
    const auto framed = [this](QWidget* controls) {
        auto* frame = new QWidget(m_head);
        auto* row = new QHBoxLayout(frame);
        row->setContentsMargins(0, 0, 0, 0);
        row->addWidget(controls);
        frame->hide();
        return frame;
    };
    // First, so that Tab comes to the pages before what belongs to one of them.
    if (QWidget* words = place->pageWords()) m_pageWords[place] = framed(words);
    if (QWidget* controls = place->headControls()) m_controls[place] = framed(controls);
    connect(place, &Place::printAsked, this, [this] { print(); });
    connect(place, &Place::goAsked, this, &MainWindow::goFor);
    connect(place, &Place::headChanged, this, [this, made = place] {
        if (made == current()) showHead();
    });
    return *place;
}

const std::vector<Place*>& MainWindow::places() {
    for (int i = 0; i < m_rail->count(); ++i) place(i);
    return m_places;
}

bool MainWindow::isAnyToMake() const {
    return std::find(m_places.begin(), m_places.end(), nullptr) != m_places.end();
}

void MainWindow::makeNext() {
    const auto next = std::find(m_places.begin(), m_places.end(), nullptr);
    if (next != m_places.end()) place(static_cast<int>(next - m_places.begin()));
    if (isAnyToMake()) return;
    m_makeLater->stop();
    countWaiting();
}

Place* MainWindow::current() const {
    return m_session.hasSeason() ? qobject_cast<Place*>(m_stack->currentWidget()) : nullptr;
}

void MainWindow::goTo(int index) {
    if (!m_session.hasSeason() || index < 0 || index >= static_cast<int>(m_places.size())) return;
    if (Place* left = current()) left->keepTyped();
    Place& entered = place(index);
    if (&entered != current()) m_foot->forget();
    m_stack->setCurrentWidget(&entered);
    m_rail->setCurrent(index);
    entered.reload();
    showHead();
    countWaiting();
    entered.setFocus(Qt::OtherFocusReason);
    Q_EMIT wentTo(index);
}

void MainWindow::countWaiting() {
    m_countLater->stop();
    if (!m_session.hasSeason()) {
        for (int i = 0; i < m_rail->count(); ++i) m_rail->setWaiting(i, 0);
        m_rail->readAnew();
        return;
    }
    m_session.reading([this] {
        m_rail->readAnew();
        for (std::size_t i = 0; i < m_places.size(); ++i)
            if (m_places[i]) m_rail->setWaiting(static_cast<int>(i), m_places[i]->waiting());
    });
}

void MainWindow::showHead() {
    // The wax bench shows a pot on heat itself, where one works.
    m_heat->standAside(qobject_cast<WaxBenchPlace*>(current()) != nullptr);
    if (Place* place = current()) {
        const auto shown = [place](const std::map<const Place*, QWidget*>& of) {
            const auto found = of.find(place);
            return found == of.end() ? nullptr : found->second;
        };
        m_head->show(place->head(), shown(m_controls), shown(m_pageWords));
        m_foot->setHints(place->hints());
        return;
    }
    m_head->show(PlaceHead{tr("Your seasons"), tr("none is open"), {}, {}, {}, {}}, nullptr);
    m_foot->setHints({});
}

void MainWindow::showInAndOut() {
    QMenu menu(this);
    menu.setObjectName(QStringLiteral("in_and_out_menu"));
    const bool open = m_session.hasSeason();
    const auto add = [&](const QString& text, const char* name, bool possible,
                         const std::function<void()>& deed) {
        QAction* action = menu.addAction(text);
        action->setObjectName(QLatin1String(name));
        action->setEnabled(possible);
        connect(action, &QAction::triggered, this, deed);
    };
    add(tr("&Import a table…"), "import_table", open && m_session.readingOnly().isEmpty(),
        [this] { m_files->importTable(); });
    add(tr("&Write the whole season out…"), "write_whole", open, [this] { m_files->writeWhole(); });
    add(tr("&Photos…"), "photos_of_day", open,
        [this] { m_files->showPhotos(current() ? current()->at() : GoTo{}); });
    add(tr("What is due into your &calendar…"), "write_calendar", open, [this] {
        goTo(0);
        if (auto* today = qobject_cast<TodayPlace*>(current())) today->askForCalendar();
    });
    menu.addSeparator();
    add(tr("&New season out of an exported one…"), "from_json", true,
        [this] { m_files->makeFromJson(); });
    add(tr("&For whoever helps you…"), "for_helpers", true, [this] {
        DiagnosticsDialog dialog(m_session, this);
        dialog.exec();
    });
    QPushButton* button = m_rail->inAndOut();
    menu.exec(button->mapToGlobal(QPoint(0, button->height())));
}

void MainWindow::addFileKeys() {
    addKey(tr("In and out"), QKeySequence(Qt::CTRL | Qt::Key_I), [this] {
        showInAndOut();
    })->setWhatsThis(tr("takes a table in, keeps photos, writes the whole season out"));
    connect(m_rail->inAndOut(), &QPushButton::clicked, this, &MainWindow::showInAndOut);
    addKey(tr("Begin a new season file"), QKeySequence::New, [this] { m_files->make(); });
    addKey(tr("Open a season file"), QKeySequence::Open, [this] { m_files->open(); });
    addKey(tr("Close the season"), QKeySequence(Qt::CTRL | Qt::Key_W),
           [this] { m_isBeside ? void(close()) : m_files->closeSeason(); });
}

void MainWindow::showTitle() {
    if (!m_session.hasSeason()) return setWindowTitle(tr("Combwright"));
    const QString name =
        m_session.isSample() ? tr("Sample season") : QFileInfo(m_session.path()).fileName();
    if (!m_session.copyTitle().isEmpty()) {
        const QString of =
            m_session.isSample() ? QString() : QFileInfo(m_session.path()).fileName();
        setWindowFilePath(m_session.isSample() ? QString() : m_session.path());
        return setWindowTitle(of.isEmpty()
                                  ? tr("%1 · Combwright").arg(m_session.copyTitle())
                                  : tr("%1 · %2 · Combwright").arg(m_session.copyTitle(), of));
    }
    setWindowFilePath(m_session.isSample() ? QString() : m_session.path());
    setWindowTitle((m_session.readingOnly().isEmpty() ? tr("%1 · Combwright")
                                                      : tr("%1 (reading only) · Combwright"))
                       .arg(name));
}

void MainWindow::keepTyped() {
    if (Place* place = current()) place->keepTyped();
}

void MainWindow::showSeason() {
    showTitle();
    m_rail->setEnabled(m_session.hasSeason());
    if (!m_session.hasSeason()) {
        m_stack->setCurrentWidget(m_start);
        m_rail->setCurrent(-1);
        countWaiting();
        showHead();
        m_start->begin();
        return;
    }
    // So that the place of the last season is not left as if it were this one's.
    m_stack->setCurrentWidget(&place(0));
    goFirst();
}

void MainWindow::goFirst() {
    for (const auto& [sheet, row] : m_session.drafts().rows())
        for (int i = 0; i < m_rail->count(); ++i) {
            if (!place(i).resumes(sheet, row)) continue;
            goTo(i);
            place(i).resume(sheet, row);
            return;
        }
    goTo(0);
}

void MainWindow::goFor(const GoTo& where) {
    for (int i = 0; i < m_rail->count(); ++i) {
        if (place(i).worksAt() != where.where) continue;
        goTo(i);
        place(i).goFor(where);
        return;
    }
}

QRect MainWindow::findRoom() const {
    const int edge = m_session.look().space(12);
    const QRect below(m_head->mapToGlobal(QPoint(edge, m_head->height())),
                      m_foot->mapToGlobal(QPoint(m_foot->width() - edge, 0)));
    return below;
}

void MainWindow::print() {
    Place* place = current();
    if (!place) return;
    place->keepTyped();
    place->settle();
    std::vector<PrintSheet> sheets;
    m_session.reading([&] { sheets = place->sheets(); });
    if (sheets.empty()) return;
    QStringList titles;
    for (const PrintSheet& sheet : sheets) titles << sheet.title;
    const auto pageOf = [&](int index) {
        std::optional<Page> page;
        m_session.reading([&] { page = sheets[static_cast<std::size_t>(index)].page(); });
        return page;
    };
    printWithPreview(this, titles, pageOf, m_session.look());
}

void MainWindow::explain() {
    Place* place = current();
    if (!place) return;
    place->settle();
    std::vector<Explained> figures;
    if (!m_session.reading([&] { figures = place->explained(); })) return;
    if (figures.empty()) {
        m_session.tell(tr("No figure is reckoned here yet."));
        return;
    }
    showExplained(this, m_session.look(), place->railWord(), figures);
}

void MainWindow::changeTextSize(int steps) {
    static constexpr double sizes[] = {1.0, 1.15, 1.3, 1.5, 1.75, 2.0};
    const Look& look = m_session.look();
    std::size_t at = 0;
    while (at + 1 < std::size(sizes) && sizes[at] < look.factor - 0.01) ++at;
    if (steps > 0 && at + 1 < std::size(sizes)) ++at;
    if (steps < 0 && at > 0) --at;
    if (steps == 0) at = 0;
    m_session.setLook(applyLook(*qApp, look.dark, sizes[at]));
    if (Place* place = current()) {
        place->reload();
        showHead();
    }
    m_session.tell(tr("Text at %1 %.").arg(std::lround(sizes[at] * 100)));
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
    const bool override = event->type() == QEvent::ShortcutOverride;
    if (!override && event->type() != QEvent::KeyPress)
        return QMainWindow::eventFilter(watched, event);
    auto* widget = qobject_cast<QWidget*>(watched);
    if (!widget || widget->window() != this) return QMainWindow::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    // What waits elsewhere is counted when the hand rests, not between two lines.
    if (m_countLater->isActive()) m_countLater->start();
    if (override) {
        // A field in which nothing was typed has nothing to take back; the season has.
        const auto* edit = qobject_cast<QLineEdit*>(widget);
        const bool undoes = key->matches(QKeySequence::Undo);
        const bool redoes = key->matches(QKeySequence::Redo);
        // A line of commands, emptied by each, leaves the window's keys to the window: taking back
        // is the place's, and no end of the line or emptying of it hides the units or the figures.
        const bool plainCtrl = key->modifiers() == Qt::ControlModifier;
        const bool ofWindow =
            undoes || redoes || (plainCtrl && (key->key() == Qt::Key_U || key->key() == Qt::Key_E));
        const bool commands = edit && edit->property("commands").toBool();
        const bool passes =
            (commands && ofWindow) || (edit && ((undoes && !edit->isUndoAvailable()) ||
                                                (redoes && !edit->isRedoAvailable())));
        if (!passes) return QMainWindow::eventFilter(watched, event);
        event->ignore();
        return true;
    }
    const bool enter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (!enter || (key->modifiers() & ~Qt::KeypadModifier) != Qt::NoModifier)
        return QMainWindow::eventFilter(watched, event);
    // Enter presses a button here as it does in a dialog.
    auto* button = qobject_cast<QAbstractButton*>(widget);
    if (!button || qobject_cast<QCheckBox*>(widget))
        return QMainWindow::eventFilter(watched, event);
    button->click();
    return true;
}

bool MainWindow::leavesHeat() {
    if (m_heat->shown().empty() || qApp->isSavingSession()) return true;
    QMessageBox ask(QMessageBox::Warning, tr("A pot is on heat"),
                    tr("%1\n\nOnce the program has ended its clock does not call any more. Wax is "
                       "never left alone.")
                        .arg(m_heat->words()),
                    QMessageBox::NoButton, this);
    ask.setObjectName(QStringLiteral("leave_heat"));
    auto* stay = ask.addButton(tr("Let it call on"), QMessageBox::RejectRole);
    auto* end = ask.addButton(tr("End: somebody stays with the pot"), QMessageBox::AcceptRole);
    ask.setDefaultButton(stay);
    ask.setEscapeButton(stay);
    ask.exec();
    return ask.clickedButton() == end;
}

void MainWindow::closeEvent(QCloseEvent* event) {
    keepTyped();
    if (!leavesHeat()) return event->ignore();
    m_time->closeBeside();
    m_files->beforeClosing();
    // A large file takes seconds to copy and to prove; nobody waits in front of a window for it.
    hide();
    endQuietly();
    event->accept();
}

void MainWindow::endQuietly() {
    keepTyped();
    m_session.drafts().flush();
    m_session.keepCopy();
}

void MainWindow::comeForward() {
    setWindowState(windowState() & ~Qt::WindowMinimized);
    show();
    raise();
    activateWindow();
}

void MainWindow::changeEvent(QEvent* event) {
    if (event->type() == QEvent::ActivationChange) {
        if (isActiveWindow()) {
            m_session.markPapers();
            m_session.lookAgain();
        } else
            keepTyped();
    }
    QMainWindow::changeEvent(event);
}

void MainWindow::paintEvent(QPaintEvent* event) {
    QMainWindow::paintEvent(event);
    if (isAnyToMake() && !m_makeLater->isActive()) m_makeLater->start();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!FileWays::seasonIn(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
    const QString path = FileWays::seasonIn(event->mimeData());
    if (path.isEmpty()) return;
    event->acceptProposedAction();
    m_files->openPath(path);
}

}  // namespace combwright
