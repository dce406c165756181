#include "ui/yard/yard_place.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>

#include "core/actions/yard/yards.h"
#include "core/places/pages/yard_sheet_page.h"
#include "core/places/yard_story.h"
#include "core/words/day_words.h"
#include "core/words/read_back.h"
#include "core/words/words.h"
#include "ui/yard/add_forms.h"
#include "ui/yard/board_hives.h"

namespace combwright {
namespace {

QString storySentence(const StoryEntry& entry) {
    const QString box = entry.box.empty()
                            ? YardPlace::tr("a %1 without a mark").arg(fromUtf8(entry.kind))
                            : fromUtf8(entry.box);
    switch (entry.what) {
        case StoryEntry::What::Look:
            return readBack(entry.line);
        case StoryEntry::What::BoxOn:
            return YardPlace::tr("%1 put on.").arg(box);
        case StoryEntry::What::BoxOff:
            return YardPlace::tr("%1 taken off.").arg(box);
        case StoryEntry::What::ColonyCame:
            return YardPlace::tr("A colony since then: %1.").arg(fromUtf8(word(*entry.origin)));
        case StoryEntry::What::ColonyEnded:
            return entry.ending
                       ? YardPlace::tr("The colony ended: %1.").arg(fromUtf8(word(*entry.ending)))
                       : YardPlace::tr("The colony ended; why is not known.");
    }
    return {};
}

QString storyKind(const StoryEntry& entry) {
    switch (entry.what) {
        case StoryEntry::What::Look:
            switch (entry.looked) {
                case Looked::Opened:
                    return YardPlace::tr("opened");
                case Looked::LidOnly:
                    return YardPlace::tr("lid only");
                case Looked::NotOpened:
                    return YardPlace::tr("not opened");
            }
            return {};
        case StoryEntry::What::BoxOn:
        case StoryEntry::What::BoxOff:
            return YardPlace::tr("box");
        default:
            return YardPlace::tr("colony");
    }
}

}  // namespace

YardPlace::YardPlace(Session& session, QWidget* parent) : Place(session, parent) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_controls = new QWidget;
    auto* controls = new QHBoxLayout(m_controls);
    controls->setContentsMargins(0, 0, 0, 0);
    controls->setSpacing(8);
    m_yards = new QComboBox(m_controls);
    m_yards->setObjectName(QStringLiteral("yard"));
    m_yards->setAccessibleName(tr("Yard"));
    m_day = new QLineEdit(m_controls);
    m_day->setObjectName(QStringLiteral("day"));
    m_day->setAccessibleName(tr("Day of the visit"));
    m_day->setToolTip(tr("A day: today, yesterday, sat, 9 jun, -3 or 2027-06-09"));
    controls->addWidget(m_yards);
    controls->addWidget(m_day);

    m_pages = new QStackedWidget(this);
    m_empty = new QWidget(m_pages);
    auto* emptyColumn = new QVBoxLayout(m_empty);
    emptyColumn->setContentsMargins(24, 48, 24, 24);
    auto* first = new QLabel(tr("No hives stand here yet. First a yard, then its hives with their "
                                "boxes: ten seconds each."),
                             m_empty);
    first->setWordWrap(true);
    auto* addYardButton = new QPushButton(tr("Add a yard…"), m_empty);
    addYardButton->setObjectName(QStringLiteral("add_yard"));
    auto* addHiveButton = new QPushButton(tr("Add a hive…"), m_empty);
    addHiveButton->setObjectName(QStringLiteral("add_hive"));
    for (QWidget* widget : std::initializer_list<QWidget*>{first, addYardButton, addHiveButton})
        emptyColumn->addWidget(widget, 0, Qt::AlignLeft);
    emptyColumn->addStretch(1);

    m_boardPage = new QWidget(m_pages);
    auto* across = new QHBoxLayout(m_boardPage);
    across->setContentsMargins(24, 8, 24, 16);
    across->setSpacing(24);
    auto* scroll = new QScrollArea(m_boardPage);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    m_board = new YardBoard(session, scroll);
    scroll->setWidget(m_board);
    auto* card = new QFrame(m_boardPage);
    card->setProperty("card", true);
    auto* cardColumn = new QVBoxLayout(card);
    auto* storyScroll = new QScrollArea(card);
    storyScroll->setFrameShape(QFrame::NoFrame);
    storyScroll->setWidgetResizable(true);
    storyScroll->setFocusPolicy(Qt::NoFocus);
    m_story = new QLabel(storyScroll);
    m_story->setObjectName(QStringLiteral("story"));
    m_story->setTextFormat(Qt::RichText);
    m_story->setWordWrap(true);
    m_story->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    storyScroll->setWidget(m_story);
    // The card's own ground shows through.
    storyScroll->viewport()->setAutoFillBackground(false);
    m_story->setAutoFillBackground(false);
    cardColumn->addWidget(storyScroll, 1);
    auto* buttons = new QHBoxLayout;
    const auto button = [&](const QString& text, const char* name, auto slot) {
        auto* made = new QPushButton(text, card);
        made->setObjectName(QLatin1String(name));
        made->setProperty("small", true);
        connect(made, &QPushButton::clicked, this, slot);
        buttons->addWidget(made);
    };
    button(tr("Yard sheet  S"), "open_sheet", &YardPlace::openSheet);
    button(tr("Hive  H"), "board_add_hive", &YardPlace::addHive);
    button(tr("Yard  Y"), "board_add_yard", &YardPlace::addYard);
    buttons->addStretch(1);
    cardColumn->addLayout(buttons);
    across->addWidget(scroll, 5);
    across->addWidget(card, 2);

    m_sheet = new SheetView(session, m_pages);
    for (QWidget* page : std::initializer_list<QWidget*>{m_empty, m_boardPage, m_sheet})
        m_pages->addWidget(page);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_pages);

    connect(addYardButton, &QPushButton::clicked, this, &YardPlace::addYard);
    connect(addHiveButton, &QPushButton::clicked, this, &YardPlace::addHive);
    connect(m_yards, &QComboBox::activated, this, [this](int index) {
        keepTyped();
        choose(Id<Yard>{m_yards->itemData(index).toLongLong()}, m_on);
    });
    connect(m_day, &QLineEdit::editingFinished, this, &YardPlace::takeDay);
    connect(m_board, &YardBoard::currentChanged, this, [this] { fillStory(); });
    connect(m_board, &YardBoard::activated, this, [this] { openSheet(); });
    // The line under the cursor goes with the sheet, so the editor must have done with the key
    // first.
    connect(&m_sheet->table(), &SheetTable::closeAsked, this, &YardPlace::closeSheet,
            Qt::QueuedConnection);
    connect(&m_sheet->model(), &SheetModel::sheetChanged, this, [this] {
        m_state = m_sheet->model().sheet();
        Q_EMIT headChanged();
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_yard.reset();
        m_on = this->session().clock().today();
        m_pages->setCurrentWidget(m_empty);
    });
    connect(&session, &Session::changed, this, [this] {
        if (sheetIsOpen())
            m_sheet->model().reload();
        else
            reload();
    });
    connect(&session, &Session::lookChanged, this, [this] {
        fillStory();
        m_day->setFixedWidth(look().space(120));
    });
    m_on = session.clock().today();
}

bool YardPlace::sheetIsOpen() const { return m_pages->currentWidget() == m_sheet; }

void YardPlace::fillYards() {
    const auto yards = openYards(session().read());
    m_yards->clear();
    bool stillThere = false;
    for (const Yard& yard : yards) {
        m_yards->addItem(fromUtf8(yard.name.text()), static_cast<qlonglong>(yard.id.number));
        stillThere = stillThere || yard.id == m_yard;
    }
    if (!stillThere) m_yard = yards.empty() ? std::nullopt : std::optional(yards.front().id);
    if (m_yard) m_yards->setCurrentIndex(m_yards->findData(static_cast<qlonglong>(m_yard->number)));
    m_controls->setVisible(!yards.empty());
    m_day->setText(dayText(m_on));
    m_day->setFixedWidth(look().space(120));
}

void YardPlace::reload() {
    if (!session().hasSeason()) return;
    fillYards();
    m_state = m_yard ? yardSheet(session().read(), *m_yard, m_on) : YardSheet{};
    const bool hasHives = !m_state.rows.empty();
    if (!sheetIsOpen()) m_pages->setCurrentWidget(hasHives ? m_boardPage : m_empty);
    if (auto* add = m_empty->findChild<QPushButton*>(QStringLiteral("add_hive")))
        add->setVisible(m_yard.has_value());
    fillBoard();
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

void YardPlace::takeDay() {
    const auto day = dayInWords(m_day->text().toStdString(), session().clock().today());
    // Our own text stands in the field until something is typed over it.
    if (m_day->text() == dayText(m_on)) return;
    if (!day) {
        session().tell(tr("%1 is no day. Write today, yesterday, sat, 9 jun or 2027-06-09.")
                           .arg(m_day->text()),
                       true);
        m_day->setText(dayText(m_on));
        return;
    }
    if (*day > session().clock().today())
        session().tell(tr("%1 has not come yet; a visit then is kept, but look at the day again.")
                           .arg(dayText(*day)));
    keepTyped();
    if (m_yard) choose(*m_yard, *day);
}

void YardPlace::fillBoard() {
    m_board->setHives(hivesOnBoard(session().read(), m_state));
    fillStory();
}

void YardPlace::fillStory() {
    if (!session().hasSeason() || m_board->current() < 0) {
        m_story->clear();
        return;
    }
    const HiveOnBoard& hive = m_board->hives()[static_cast<std::size_t>(m_board->current())];
    const Look& now = look();
    m_story->setFont(now.font(TextSize::Body));
    const QString muted = now.tone(Tone::Muted).name();
    const QString hairline = now.tone(Tone::Hairline).name();
    QString html =
        QStringLiteral(
            "<p style='font-size:%1px'><b>%2</b> <span "
            "style='font-size:%3px;color:%4'>%5</span></p>")
            .arg(now.font(TextSize::Title).pixelSize())
            .arg(hive.mark.toHtmlEscaped())
            .arg(now.font(TextSize::Note).pixelSize())
            .arg(muted,
                 tr("hive %1 of %2").arg(m_board->current() + 1).arg(m_board->hives().size()));
    const auto story = hiveStory(session().read(), hive.id);
    for (const StoryEntry& entry : story) {
        html += QStringLiteral(
                    "<hr style='color:%1'><table width='100%'><tr><td><b><small>%2</small></b></td>"
                    "<td align='right'><small style='color:%3'>%4</small></td></tr></table>%5")
                    .arg(hairline, dayText(entry.on).toHtmlEscaped(), muted,
                         storyKind(entry).toHtmlEscaped(), storySentence(entry).toHtmlEscaped());
    }
    m_story->setText(html);
    m_story->setAccessibleName(tr("Story of %1").arg(hive.mark));
}

PlaceHead YardPlace::head() const {
    PlaceHead head;
    head.title = sheetIsOpen() ? tr("Yard sheet") : tr("Yard");
    if (!m_yard) {
        head.under = tr("no yard yet");
        return head;
    }
    QStringList under;
    under << tr("%1 hives in walking order").arg(m_state.rows.size());
    if (sheetIsOpen()) under << tr("each line is kept as you leave it");
    head.under = under.join(QStringLiteral(" · "));
    if (m_state.visit) {
        head.big = {QString::number(m_state.opened), tr("of %1").arg(m_state.rows.size()), 0};
        head.bigNote = tr("opened\non %1").arg(dayAndMonth(m_on));
    }
    if (sheetIsOpen()) {
        head.action = tr("Close the sheet");
        head.actionKey = tr("Ctrl+Enter");
    } else if (!m_state.rows.empty()) {
        head.action = tr("Fill in the yard sheet");
        head.actionKey = tr("S");
    }
    return head;
}

std::vector<KeyHint> YardPlace::hints() const {
    if (sheetIsOpen())
        return {{QStringLiteral("↵"), tr("next hive")}, {tr("Esc"), tr("as it was")}};
    return {{QStringLiteral("← →"), tr("hive")}, {tr("S"), tr("yard sheet")}};
}

Day YardPlace::nextVisitDay() const {
    // Where a visit was entered the sheet is for the week after; else for the day that is chosen.
    return m_state.visit ? m_on + days(7) : m_on;
}

std::vector<PrintSheet> YardPlace::sheets() const {
    if (!m_yard) return {};
    return {{QStringLiteral("yard-sheet"), tr("Yard sheet"), [this] {
                 return yardSheetPage(session().read(), yardSheet(session().read(), *m_yard, m_on),
                                      nextVisitDay());
             }}};
}

QString YardPlace::help() const {
    return tr(
        "The hives of a yard stand in the order you walk past them, each as its stack of boxes. "
        "Left and Right go from hive to hive; the story of the chosen one stands at the right.\n\n"
        "S opens the yard sheet: one line for each hive, in the short marks you would write on a "
        "lid. "
        "Enter keeps a line and goes to the next hive, Shift+Enter goes back. What was seen last "
        "time "
        "stands in grey and is never stored again. A line left blank is a hive not looked at.\n\n"
        "Bees sting: wear what you wear, and have help at hand where a sting could harm you. A "
        "full "
        "super weighs up to 25 kg, a full deep 40: lift with two, or carry frames.");
}

void YardPlace::act() {
    if (sheetIsOpen())
        closeSheet();
    else if (!m_state.rows.empty())
        openSheet();
}

void YardPlace::openSheet() {
    if (!m_yard || m_state.rows.empty()) return;
    m_pages->setCurrentWidget(m_sheet);
    m_sheet->show(*m_yard, m_on);
    const int row = m_board->current() > 0 ? m_board->current() + 1 : 1;
    m_sheet->table().setFocus();
    m_sheet->table().editRow(row);
    Q_EMIT headChanged();
}

void YardPlace::closeSheet() {
    if (!m_sheet->model().keepAll()) return;
    m_pages->setCurrentWidget(m_boardPage);
    reload();
    m_board->setFocus();
}

void YardPlace::keepTyped() {
    if (sheetIsOpen()) m_sheet->model().keepAll();
}

void YardPlace::keyPressEvent(QKeyEvent* event) {
    const bool control = event->modifiers() & Qt::ControlModifier;
    if (control && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) return act();
    if (!sheetIsOpen() && !control) {
        switch (event->key()) {
            case Qt::Key_S:
                return openSheet();
            case Qt::Key_H:
                return addHive();
            case Qt::Key_Y:
                return addYard();
            default:
                break;
        }
    }
    Place::keyPressEvent(event);
}

void YardPlace::focusInEvent(QFocusEvent*) {
    if (sheetIsOpen())
        m_sheet->table().setFocus();
    else if (m_pages->currentWidget() == m_boardPage)
        m_board->setFocus();
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
    if (m_yard && askForHive(this, session(), *m_yard, m_on)) setFocus();
}

}  // namespace combwright
