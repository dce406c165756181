#include "ui/yard/board_page.h"

#include <QMenu>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/actions/boxes/looks.h"
#include "core/actions/yard/sheet.h"
#include "core/actions/yard/yards.h"
#include "core/words/read_back.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"
#include "ui/shell/small_form.h"
#include "ui/yard/add_forms.h"
#include "ui/yard/board_hives.h"
#include "ui/yard/colony_forms.h"
#include "ui/yard/follow_dialog.h"
#include "ui/yard/hive_forms.h"
#include "ui/yard/queen_forms.h"

namespace combwright {
namespace {

// At the base font, px: the card beside the board, and the board it must leave room for.
constexpr int cardWidth = 320;
constexpr int leastBoard = 408;

}  // namespace

BoardPage::BoardPage(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_board(new YardBoard(session)),
      m_scroll(new QScrollArea(this)),
      m_content(new QWidget),
      m_flat(new BoxLaidFlat(session, this)),
      m_line(new BoardLine(session, this)),
      m_totals(new TotalsLine(session, this)),
      m_card(new StoryCard(session, this)) {
    m_across = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_across->setContentsMargins(24, 8, 24, 8);
    m_across->setSpacing(24);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_contentColumn = new QVBoxLayout(m_content);
    m_contentColumn->setContentsMargins(0, 0, 0, 0);
    m_contentColumn->setSpacing(12);
    m_contentColumn->addWidget(m_board);
    m_contentColumn->addStretch(1);
    m_scroll->setWidget(m_content);
    m_column = new QVBoxLayout;
    m_column->setSpacing(8);
    for (QWidget* each : std::initializer_list<QWidget*>{m_scroll, m_flat, m_line, m_totals})
        m_column->addWidget(each, each == m_scroll ? 1 : 0);
    m_across->addLayout(m_column, 1);
    m_across->addWidget(m_card);
    m_flat->hide();
    addButtons();

    connect(m_board, &YardBoard::currentChanged, this, [this] { fillCard(); });
    connect(m_board, &YardBoard::boxChanged, this, &BoardPage::boxChanged);
    connect(m_board, &YardBoard::activated, this, [this] {
        m_card->openAll();
        if (!m_beside) m_scroll->verticalScrollBar()->setValue(m_card->y());
    });
    connect(m_card, &StoryCard::scrollAsked, this, [this](int key) {
        QScrollBar* bar = m_scroll->verticalScrollBar();
        const int step =
            key == Qt::Key_PageUp || key == Qt::Key_PageDown ? bar->pageStep() : bar->singleStep();
        const bool up = key == Qt::Key_Up || key == Qt::Key_PageUp;
        bar->setValue(bar->value() + (up ? -step : step));
    });
    connect(m_board, &YardBoard::boxActivated, this, &BoardPage::layFlat);
    connect(m_board, &YardBoard::moveAsked, this, &BoardPage::moveHiveBy);
    connect(m_board, &YardBoard::boxMoveAsked, this, &BoardPage::moveBoxBy);
    connect(m_board, &YardBoard::shown, this, [this](const QRect& place) {
        m_scroll->ensureVisible(place.center().x(), place.bottom(), 0, 8);
        m_scroll->ensureVisible(place.center().x(), place.top(), 0, 8);
    });
    connect(m_card, &StoryCard::closed, this, [this] { m_board->setFocus(); });
    connect(m_line, &BoardLine::closed, this, [this] { m_board->setFocus(); });
    connect(&session, &Session::lookChanged, this, [this] {
        arrange();
        fillCard();
    });
    arrange();
}

QPushButton* BoardPage::addButton(QWidget* row, const QString& text, int key, bool ofBox) {
    auto* button = new QPushButton(text, row);
    button->setProperty("small", true);
    row->layout()->addWidget(button);
    connect(button, &QPushButton::clicked, this, [this, key] { press(key); });
    m_buttons.emplace_back(button, ofBox);
    return button;
}

void BoardPage::addButtons() {
    auto* row = new QWidget(m_card);
    row->setLayout(new FlowRow(row, 6));
    addButton(row, tr("Write  W"), Qt::Key_W, false);
    addButton(row, tr("Box  B"), Qt::Key_B, false);
    addButton(row, tr("Split, unite  X"), Qt::Key_X, false);
    addButton(row, tr("Queen  Q"), Qt::Key_Q, false);
    addButton(row, tr("Sheet  S"), Qt::Key_S, false)->setObjectName(QStringLiteral("open_sheet"));
    addButton(row, tr("Health  V"), Qt::Key_V, false);
    addButton(row, tr("Stores  F"), Qt::Key_F, false);
    addButton(row, tr("Look  L"), Qt::Key_L, true);
    addButton(row, tr("Count  C"), Qt::Key_C, true);
    addButton(row, tr("Take off  T"), Qt::Key_T, true);
    addButton(row, tr("Move  M"), Qt::Key_M, true);
    addButton(row, tr("Hold  K"), Qt::Key_K, true);
    addButton(row, tr("Frames  ↵"), Qt::Key_Return, true);
    addButton(row, tr("Follow  J"), Qt::Key_J, true);
    addButton(row, tr("Hold  K"), Qt::Key_K, false);
    auto* add = new QPushButton(tr("Add"), row);
    add->setProperty("small", true);
    add->setObjectName(QStringLiteral("board_add"));
    auto* menu = new QMenu(add);
    for (const auto& [text, key] :
         {std::pair{tr("A hive or several  H"), Qt::Key_H}, std::pair{tr("Boxes  N"), Qt::Key_N},
          std::pair{tr("A yard  Y"), Qt::Key_Y}, std::pair{tr("Usual super  U"), Qt::Key_U}})
        menu->addAction(text, this, [this, key = key] { press(key); });
    add->setMenu(menu);
    row->layout()->addWidget(add);
    m_buttons.emplace_back(add, false);
    m_card->setButtons(row);
    boxChanged();
}

void BoardPage::arrange() {
    const Look& look = m_session.look();
    const int margins = look.space(24) * 3;
    m_beside = width() >= look.space(cardWidth) + margins + look.space(leastBoard);
    m_card->setOwnScroll(m_beside);
    if (m_beside) {
        m_card->setFixedWidth(look.space(cardWidth));
        if (m_across->indexOf(m_card) < 0) {
            m_across->addWidget(m_card);
            m_column->addWidget(m_totals);
        }
        return;
    }
    // Too narrow for both: card and sum go below the stacks and scroll with them.
    m_card->setMinimumWidth(0);
    m_card->setMaximumWidth(QWIDGETSIZE_MAX);
    if (m_contentColumn->indexOf(m_card) < 0) {
        m_contentColumn->insertWidget(1, m_totals);
        m_contentColumn->insertWidget(2, m_card);
    }
}

void BoardPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void BoardPage::show(const YardSheet& sheet) {
    m_sheet = sheet;
    m_board->setHives(hivesOnBoard(m_session.read(), sheet));
    m_totals->show(sheet);
    fillCard();
    boxChanged();
}

void BoardPage::leave() {
    m_line->close();
    m_flatWanted = false;
    m_sheet = {};
    m_board->setHives({});
    m_card->clear();
    m_flat->hide();
}

const YardSheetRow* BoardPage::currentRow() const {
    const int at = m_board->current();
    return at < 0 || at >= static_cast<int>(m_sheet.rows.size())
               ? nullptr
               : &m_sheet.rows[static_cast<std::size_t>(at)];
}

std::optional<Box> BoardPage::currentBox() const {
    const auto box = m_board->currentBox();
    return box ? m_session.read().find(*box) : std::nullopt;
}

void BoardPage::fillCard() {
    const YardSheetRow* row = currentRow();
    if (!m_session.hasSeason() || !row) return m_card->clear();
    const Read& file = m_session.read();
    m_card->tell(*row, m_board->current() + 1, static_cast<int>(m_sheet.rows.size()),
                 hiveHead(file, row->hive.id, m_sheet.on),
                 hiveStory(file, row->hive.id, m_sheet.on), m_sheet.on);
}

void BoardPage::boxChanged() {
    for (const auto& [button, ofBox] : m_buttons) button->setVisible(ofBox == hasBox());
    fillFlat();
    Q_EMIT hintsChanged();
}

void BoardPage::layFlat() {
    m_flatWanted = !m_flatWanted;
    fillFlat();
}

void BoardPage::fillFlat() {
    const auto box = m_session.hasSeason() ? m_board->currentBox() : std::nullopt;
    if (!box) m_flatWanted = false;
    const auto inside = m_flatWanted ? boxInside(m_session.read(), *box, m_sheet.on) : std::nullopt;
    if (inside)
        m_flat->show(*inside);
    else
        m_flat->hide();
}

bool BoardPage::press(int key) {
    switch (key) {
        case Qt::Key_S:
            Q_EMIT sheetAsked();
            return true;
        case Qt::Key_H:
            Q_EMIT hiveAsked();
            return true;
        case Qt::Key_Y:
            Q_EMIT yardAsked();
            return true;
        case Qt::Key_N:
            newBoxes();
            return true;
        case Qt::Key_U:
            askForUsualSuper(this, m_session, m_sheet.yard, m_sheet.on);
            m_board->setFocus();
            return true;
        case Qt::Key_V:
        case Qt::Key_F:
            Q_EMIT pageAsked(key);
            return true;
        case Qt::Key_W:
            write();
            return true;
        case Qt::Key_B:
            putOn();
            return true;
        case Qt::Key_M:
            move();
            return true;
        case Qt::Key_X:
            change();
            return true;
        case Qt::Key_Q:
            queen();
            return true;
        case Qt::Key_J:
            follow();
            return true;
        case Qt::Key_K:
            hold();
            return true;
        case Qt::Key_L:
            lookInto();
            return true;
        case Qt::Key_C:
            countFrames();
            return true;
        case Qt::Key_T:
            takeOff();
            return true;
        case Qt::Key_Return:
            if (hasBox()) layFlat();
            return hasBox();
        default:
            return false;
    }
}

// Deeds -------------------------------------------------------------------------------------------

void BoardPage::write() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    const Hive hive = row->hive;
    const bool wasThere = row->today.has_value();
    const Day on = m_sheet.on;
    const std::string all = m_sheet.visit ? m_sheet.visit->all : std::string();
    const StepNote note{{}, "visit " + m_sheet.yard.name.text() + " " + isoText(on)};
    LineAsked asked{tr("%1, %2: what you saw").arg(fromUtf8(hive.mark.text()), dayText(on)),
                    tr("e b7 s3 +1; S shows every mark"),
                    wasThere ? fromUtf8(row->today->line) : QString()};
    asked.keptOnLeaving = true;
    asked.readBack = [all](const QString& text) {
        return readBackTyped(all, sheetInEnglish(text).toStdString());
    };
    asked.deed = [this, hive, wasThere, on, note](const QString& text) {
        if (text.isEmpty())
            return !wasThere ||
                   m_session.run(StrikeLine{.on = on, .hive = hive.id}, note).has_value();
        return m_session
            .run(WriteLine{.on = on, .hive = hive.id, .line = sheetInEnglish(text).toStdString()},
                 note)
            .has_value();
    };
    m_line->ask(std::move(asked));
}

void BoardPage::askMove(const QString& prompt, const QString& example, const QString& before,
                        const Meant& meant) {
    LineAsked asked{prompt, example, before};
    asked.readBack = [this, meant](const QString& text) {
        return saidBack(m_session.read(), meant(text));
    };
    asked.deed = [this, meant](const QString& text) {
        const MeantMove move = meant(text);
        if (const auto* why = std::get_if<QString>(&move)) {
            m_session.tell(*why, true);
            return false;
        }
        return m_session.run(std::get<MoveBox>(move)).has_value();
    };
    m_line->ask(std::move(asked));
}

void BoardPage::putOn() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    const Day on = m_sheet.on;
    askMove(titleOfDay(m_session, tr("Box onto %1").arg(fromUtf8(row->hive.mark.text())), on),
            tr("a mark or a kind, on top: M43, medium; or at a place from the floor: M43 2"),
            nextToPutOn(m_session.read(), m_sheet.yard, on),
            [this, hive = row->hive, on](const QString& text) {
                return meantPutOn(m_session.read(), text, hive, on);
            });
}

void BoardPage::takeOff() {
    const auto box = currentBox();
    if (!box) return m_session.tell(tr("Choose a box first: Up from the hive."));
    askMove(
        titleOfDay(m_session, tr("Take %1 off").arg(calledBox(m_session.read(), *box)), m_sheet.on),
        tr("a shelf; or waiting, freezer, lent, gone; blank for the storeroom"), {},
        [box = *box, on = m_sheet.on](const QString& text) { return meantTakeOff(text, box, on); });
}

void BoardPage::moveBox() {
    const auto box = currentBox();
    if (!box) return;
    askMove(
        titleOfDay(m_session, tr("Move %1 to").arg(calledBox(m_session.read(), *box)), m_sheet.on),
        tr("a hive: ML4, or H1, Creek; a place from the floor: 2; or both: ML4 2"), {},
        [this, box = *box, on = m_sheet.on](const QString& text) {
            return meantMove(m_session.read(), text, box, on);
        });
}

void BoardPage::moveBoxBy(int step) {
    const auto box = currentBox();
    const YardSheetRow* row = currentRow();
    if (!box || !row || !box->level) return;
    const std::int64_t level = box->level->value() + step;
    if (level < 0 || level >= static_cast<std::int64_t>(row->boxes.size())) return;
    m_session.run(MoveBox{.on = m_sheet.on,
                          .box = box->id,
                          .to = BoxPlace::OnHive,
                          .hive = box->hive,
                          .level = Count(level),
                          .stack = {}});
}

void BoardPage::lookInto() {
    const auto box = currentBox();
    if (!box) return m_session.tell(tr("Choose a box first: Up from the hive."));
    LineAsked asked{titleOfDay(m_session, tr("Look into %1").arg(calledBox(m_session.read(), *box)),
                               m_sheet.on),
                    tr("9 drawn; 7 capped, 85 % full")};
    asked.deed = [this, id = box->id, on = m_sheet.on](const QString& text) {
        if (text.isEmpty()) {
            m_session.tell(tr("Nothing was typed, so nothing was kept. What do you see?"), true);
            return false;
        }
        return m_session
            .run(LookBox{.on = on,
                         .box = id,
                         .contents = typedInEnglish(text).toStdString(),
                         .filled = {},
                         .water = {},
                         .toFork = {},
                         .broodIn = {},
                         .note = {}})
            .has_value();
    };
    m_line->ask(std::move(asked));
}

void BoardPage::countFrames() {
    const auto box = currentBox();
    if (!box) return m_session.tell(tr("Choose a box first: Up from the hive."));
    LineAsked asked{
        titleOfDay(m_session, tr("Count the frames of %1").arg(calledBox(m_session.read(), *box)),
                   m_sheet.on),
        tr("7 drawn, 1 foundation, 1 broken")};
    asked.deed = [this, id = box->id, on = m_sheet.on](const QString& text) {
        return m_session
            .run(CountBox{.on = on,
                          .box = id,
                          .contents = typedInEnglish(text).toStdString(),
                          .occasion = Occasion::Visit})
            .has_value();
    };
    m_line->ask(std::move(asked));
}

void BoardPage::move() {
    if (hasBox()) return moveBox();
    if (const YardSheetRow* row = currentRow()) {
        askToMoveHive(this, m_session, row->hive, m_sheet.on);
        m_board->setFocus();
    }
}

void BoardPage::moveHiveBy(int step) {
    const YardSheetRow* row = currentRow();
    const int to = m_board->current() + step;
    if (!row || to < 0 || to >= static_cast<int>(m_sheet.rows.size())) return;
    // Its own number: on a past day hives set up later stand between and are not shown.
    const Hive& there = m_sheet.rows[static_cast<std::size_t>(to)].hive;
    m_session.run(MoveHive{
        .on = m_sheet.on, .hive = row->hive.id, .yard = {}, .standOrder = there.standOrder});
}

void BoardPage::change() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    // A copy: what is done fills the sheet anew while the form is still there.
    const Hive hive = row->hive;
    askForChange(this, m_session, hive, m_sheet.on);
    m_board->setFocus();
}

void BoardPage::queen() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    const Hive hive = row->hive;
    askForQueen(this, m_session, hive, m_sheet.on);
    m_board->setFocus();
}

void BoardPage::follow() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    const YardSheetRow now = *row;
    showFollowed(this, m_session, now, m_board->currentBox(), m_sheet.on);
    m_board->setFocus();
}

void BoardPage::hold() {
    const YardSheetRow* row = currentRow();
    if (!row) return;
    const Read& file = m_session.read();
    HeldThing thing;
    std::vector<Hold> holds;
    if (const auto box = currentBox()) {
        thing.box = box->id;
        thing.name = calledBox(file, *box);
        holds = holdsOn(file, box->id);
    } else {
        thing.hive = row->hive.id;
        thing.name = tr("the colony in %1").arg(fromUtf8(row->hive.mark.text()));
        holds = holdsOn(file, row->hive.id);
    }
    if (holds.empty())
        askToHoldBack(this, m_session, thing, m_sheet.on);
    else
        askToLiftHold(this, m_session, holds.front(), thing.name, m_sheet.on);
    m_board->setFocus();
}

void BoardPage::newBoxes() {
    askForBoxes(this, m_session, m_sheet.on);
    m_board->setFocus();
}

}  // namespace combwright
