#include "ui/storeroom/wets_dialog.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/storeroom/wets.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QTableWidgetItem* wetItem(const QString& text) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsEnabled);
    item->setToolTip(text);
    return item;
}

QString wetName(const ShelfBox& box) { return fromUtf8(box.name); }

}  // namespace

WetsDialog::WetsDialog(Session& session, Day on, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_page(new QScrollArea(this)),
      m_sum(new QLabel(this)),
      m_outHead(new QLabel(tr("With the bees"), this)),
      m_leftHead(new QLabel(tr("Left-over stores"), this)),
      m_stack(new QLineEdit(this)),
      m_stackLabel(new QLabel(tr("Dry, onto the &stack"), this)),
      m_reason(new QLabel(this)),
      m_give(new QPushButton(tr("&Give back"), this)),
      m_off(new QPushButton(tr("&Take off"), this)),
      m_print(new QPushButton(tr("&Print…"), this)),
      m_close(new QPushButton(tr("Close"), this)) {
    setObjectName(QStringLiteral("wets_home"));
    setWindowTitle(tr("Wet boxes home to the bees"));
    const Look& look = session.look();
    auto* outer = new QVBoxLayout(this);
    outer->setSpacing(look.space(8));
    m_page->setWidgetResizable(true);
    m_page->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_page->setFocusPolicy(Qt::NoFocus);
    auto* inside = new QWidget(m_page);
    auto* column = new QVBoxLayout(inside);
    column->setContentsMargins(0, 0, look.space(8), 0);
    column->setSpacing(look.space(8));
    m_sum->setWordWrap(true);
    m_sum->setFont(look.font(TextSize::Head));
    m_sum->setObjectName(QStringLiteral("sum"));
    column->addWidget(m_sum);
    auto* mind = new QLabel(wetsCautions(), this);
    mind->setWordWrap(true);
    mind->setObjectName(QStringLiteral("caution"));
    QPalette palette = mind->palette();
    palette.setColor(QPalette::WindowText, look.tone(Tone::Warn));
    mind->setPalette(palette);
    column->addWidget(mind);
    m_ways = table("ways", tr("Wet boxes and their hives"),
                   {tr("box"), tr("came off"), tr("to the hive"), tr("why")});
    column->addWidget(m_ways);
    const auto head = [&](QLabel* label) {
        label->setFont(look.font(TextSize::Head, true));
        column->addWidget(label);
    };
    head(m_outHead);
    m_outs = table("outs", tr("Boxes with the bees"), {tr("box"), tr("on"), tr("off again")});
    column->addWidget(m_outs);
    auto* off = new QHBoxLayout;
    m_stack->setObjectName(QStringLiteral("stack"));
    m_stack->setAccessibleName(tr("The stack they go to"));
    m_stack->setPlaceholderText(tr("may stay empty"));
    m_stackLabel->setBuddy(m_stack);
    m_off->setObjectName(QStringLiteral("take_off"));
    off->addWidget(m_stackLabel);
    off->addWidget(m_stack, 1);
    off->addWidget(m_off);
    column->addLayout(off);
    head(m_leftHead);
    m_left = table("left_over", tr("Left-over stores and where they may go"),
                   {tr("box"), tr("what to do")});
    column->addWidget(m_left);
    column->addStretch(1);
    m_page->setWidget(inside);
    outer->addWidget(m_page, 1);
    m_reason->setWordWrap(true);
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->hide();
    outer->addWidget(m_reason);
    auto* buttons = new QHBoxLayout;
    m_give->setObjectName(QStringLiteral("give_back"));
    m_give->setProperty("primary", true);
    m_print->setObjectName(QStringLiteral("print"));
    buttons->addWidget(m_close);
    buttons->addStretch(1);
    buttons->addWidget(m_print);
    buttons->addWidget(m_give);
    outer->addLayout(buttons);
    for (QPushButton* button : {m_give, m_off, m_print, m_close}) button->setAutoDefault(false);
    connect(m_give, &QPushButton::clicked, this, &WetsDialog::giveBack);
    connect(m_off, &QPushButton::clicked, this, &WetsDialog::takeOff);
    connect(m_print, &QPushButton::clicked, this, &WetsDialog::printAsked);
    connect(m_close, &QPushButton::clicked, this, &QDialog::reject);
    connect(&session, &Session::told, this, &WetsDialog::say);
    for (QWidget* each : std::initializer_list<QWidget*>{m_stack, m_off, m_left})
        each->installEventFilter(this);
    const QSize room = parent ? parent->window()->size() : QSize(1000, 780);
    resize(std::min(look.space(800), room.width() - 20),
           std::min(look.space(680), room.height() - 20));
    fill();
}

QTableWidget* WetsDialog::table(const char* name, const QString& says, const QStringList& heads) {
    auto* made = new QTableWidget(this);
    made->setObjectName(QLatin1String(name));
    made->setAccessibleName(says);
    made->setColumnCount(static_cast<int>(heads.size()));
    made->setHorizontalHeaderLabels(heads);
    made->verticalHeader()->hide();
    made->verticalHeader()->setMinimumSectionSize(m_session.look().space(32));
    made->setShowGrid(false);
    made->setTabKeyNavigation(false);
    made->setWordWrap(true);
    made->setFocusPolicy(Qt::NoFocus);
    made->setSelectionMode(QAbstractItemView::NoSelection);
    made->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    made->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    made->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    made->horizontalHeader()->setSectionResizeMode(static_cast<int>(heads.size()) - 1,
                                                   QHeaderView::Stretch);
    for (int n = 0; n < made->columnCount(); ++n)
        made->horizontalHeaderItem(n)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    return made;
}

QCheckBox* WetsDialog::tickIn(QTableWidget* table, int line, const QString& text,
                              const char* name) {
    // An ampersand in a mark is no key.
    auto* tick =
        new QCheckBox(QString(text).replace(QLatin1Char('&'), QStringLiteral("&&")), table);
    tick->setObjectName(QLatin1String(name));
    tick->installEventFilter(this);
    // The cell keeps as much room as its words take.
    table->setItem(line, 0, wetItem(text + QStringLiteral("      ")));
    table->item(line, 0)->setForeground(QColor(Qt::transparent));
    table->setCellWidget(line, 0, tick);
    return tick;
}

void WetsDialog::fill() {
    const WetsHome home = wetsHome(m_session.read(), m_on);
    for (QTableWidget* each : {m_ways, m_outs, m_left}) each->setRowCount(0);
    m_wayRows.clear();
    m_outRows.clear();
    for (const WetBox& box : home.go) addWay(box, true);
    for (const WetBox& box : home.stay) addWay(box, false);
    const auto many = home.go.size();
    m_sum->setText(many == 0 && home.stay.empty()
                       ? tr("No wet box waits.")
                       : tr("%1 of %2 wet boxes may go home, at most %3 on a hive; off again %4.")
                             .arg(many)
                             .arg(many + home.stay.size())
                             .arg(home.perHive)
                             .arg(wetsOffText(home.offFrom, home.offTo)));
    m_ways->setVisible(!m_wayRows.empty());
    m_give->setEnabled(!m_wayRows.empty());
    m_print->setEnabled(!m_wayRows.empty() || !home.out.empty() || !home.leftOver.empty());
    fillOut(home);
    fillLeftOver(home);
    orderTabs();
    fitTables();
}

void WetsDialog::fitTables() {
    for (QTableWidget* each : {m_ways, m_outs, m_left}) {
        each->resizeRowsToContents();
        each->setFixedHeight(each->horizontalHeader()->sizeHint().height() +
                             each->verticalHeader()->length() + 2 * each->frameWidth());
    }
}

void WetsDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    // The words wrap otherwise once the columns have their new widths.
    QTimer::singleShot(0, this, &WetsDialog::fitTables);
}

void WetsDialog::addWay(const WetBox& box, bool goes) {
    const int line = m_ways->rowCount();
    m_ways->insertRow(line);
    Way way;
    way.box = box.box.box->id;
    way.name = wetName(box.box);
    way.tick = tickIn(m_ways, line, way.name, "way");
    way.tick->setAccessibleName(tr("Give %1 back").arg(way.name));
    way.tick->setChecked(goes);
    m_ways->setItem(line, 1,
                    wetItem(box.cameOff.empty() ? QStringLiteral("?") : fromUtf8(box.cameOff)));
    way.hive = new QLineEdit(m_ways);
    way.hive->setObjectName(QStringLiteral("hive"));
    way.hive->setAccessibleName(tr("Hive for %1").arg(way.name));
    way.hive->setText(fromUtf8(box.hive));
    way.hive->setMinimumWidth(m_session.look().space(88));
    way.hive->installEventFilter(this);
    // What is typed for a box that was to stay is meant.
    connect(way.hive, &QLineEdit::textEdited, way.tick, [tick = way.tick](const QString& text) {
        tick->setChecked(!text.trimmed().isEmpty());
    });
    m_ways->setItem(line, 2, wetItem(QStringLiteral("            ")));
    m_ways->setCellWidget(line, 2, way.hive);
    const QString why = !goes         ? tr("stays: %1").arg(wetsStayText(box))
                        : box.ownHive ? tr("its own hive, %1").arg(fromUtf8(box.yard))
                                      : tr("of its own yard, %1").arg(fromUtf8(box.yard));
    m_ways->setItem(line, 3, wetItem(why));
    m_wayRows.push_back(way);
}

void WetsDialog::fillOut(const WetsHome& home) {
    for (const WetsOut& out : home.out) {
        const int line = m_outs->rowCount();
        m_outs->insertRow(line);
        Out row;
        row.name = fromUtf8(out.name);
        row.tick = tickIn(m_outs, line, row.name, "out");
        row.tick->setAccessibleName(tr("Take %1 off").arg(row.name));
        row.tick->setChecked(m_on >= out.from);
        m_outs->setItem(line, 1, wetItem(tr("%1, %2").arg(fromUtf8(out.hive), fromUtf8(out.yard))));
        QString due = tr("given back %1, off again %2")
                          .arg(shortDayText(out.since), wetsOffText(out.from, out.to));
        if (m_on > out.to) due += tr("; overdue");
        m_outs->setItem(line, 2, wetItem(due));
        m_outRows.push_back(row);
    }
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_outHead, m_outs, m_stackLabel, m_stack, m_off})
        each->setVisible(!m_outRows.empty());
}

void WetsDialog::fillLeftOver(const WetsHome& home) {
    for (const LeftOver& left : home.leftOver) {
        const int line = m_left->rowCount();
        m_left->insertRow(line);
        m_left->setItem(line, 0, wetItem(wetName(left.box)));
        m_left->setItem(line, 1, wetItem(leftOverText(left)));
    }
    m_leftHead->setVisible(!home.leftOver.empty());
    m_left->setVisible(!home.leftOver.empty());
    // Rows to be read and not filled in are still to be come to.
    m_left->setFocusPolicy(home.leftOver.empty() ? Qt::NoFocus : Qt::StrongFocus);
}

void WetsDialog::orderTabs() {
    QWidget* before = nullptr;
    const auto next = [&before](QWidget* widget) {
        if (before) setTabOrder(before, widget);
        before = widget;
    };
    for (const Way& way : m_wayRows) {
        next(way.tick);
        next(way.hive);
    }
    for (const Out& out : m_outRows) next(out.tick);
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_stack, m_off, m_left, m_close, m_print, m_give})
        next(each);
}

void WetsDialog::beginAnew() {
    if (!m_wayRows.empty())
        m_wayRows.front().tick->setFocus();
    else if (!m_outRows.empty())
        m_outRows.front().tick->setFocus();
    else
        m_close->setFocus();
}

void WetsDialog::showEvent(QShowEvent* event) {
    if (!event->spontaneous()) beginAnew();
    QDialog::showEvent(event);
}

bool WetsDialog::eventFilter(QObject* watched, QEvent* event) {
    auto* widget = qobject_cast<QWidget*>(watched);
    if (widget && event->type() == QEvent::FocusIn) {
        m_page->ensureWidgetVisible(widget);
        return QDialog::eventFilter(watched, event);
    }
    if (event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (!isEnter || widget == m_off || widget == m_left)
        return QDialog::eventFilter(watched, event);
    if (widget == m_stack) {
        takeOff();
    } else if (key->modifiers().testFlag(Qt::ControlModifier)) {
        giveBack();
    } else {
        // On to the next row, in the same column.
        for (std::size_t n = 0; n < m_wayRows.size(); ++n) {
            if (m_wayRows[n].hive != widget && m_wayRows[n].tick != widget) continue;
            const bool last = n + 1 == m_wayRows.size();
            if (last)
                m_give->setFocus();
            else
                (m_wayRows[n].hive == widget ? static_cast<QWidget*>(m_wayRows[n + 1].hive)
                                             : m_wayRows[n + 1].tick)
                    ->setFocus();
        }
        for (std::size_t n = 0; n < m_outRows.size(); ++n)
            if (m_outRows[n].tick == widget)
                (n + 1 == m_outRows.size() ? static_cast<QWidget*>(m_stack) : m_outRows[n + 1].tick)
                    ->setFocus();
    }
    return true;
}

void WetsDialog::giveBack() {
    QStringList ways;
    for (const Way& way : m_wayRows) {
        if (!way.tick->isChecked()) continue;
        const QString hive = way.hive->text().simplified();
        if (hive.isEmpty()) {
            say(tr("Write which hive %1 goes to, or untick it.").arg(way.name), true);
            way.hive->setFocus();
            return;
        }
        ways << QStringLiteral("%1 %2").arg(way.name, hive);
    }
    if (ways.isEmpty()) {
        say(tr("No box is ticked. Tick those that go home today."), true);
        return;
    }
    const auto sent = m_session.run(
        SendWetsHome{.on = m_on, .boxes = ways.join(QStringLiteral(", ")).toStdString()});
    if (!sent) return;
    const QString text = sent->size() == 1 ? tr("1 box is with the bees.")
                                           : tr("%1 boxes are with the bees.").arg(sent->size());
    m_session.tell(text);
    fill();
    beginAnew();
    say(text, false);
}

void WetsDialog::takeOff() {
    QStringList marks;
    for (const Out& out : m_outRows)
        if (out.tick->isChecked()) marks << out.name;
    if (marks.isEmpty()) {
        say(tr("No box is ticked. Tick those that came off."), true);
        return;
    }
    const auto off =
        m_session.run(TakeWetsOff{.on = m_on,
                                  .boxes = marks.join(QStringLiteral(", ")).toStdString(),
                                  .stack = typedWords(m_stack)});
    if (!off) return;
    const QString text =
        off->size() == 1 ? tr("1 box is off, dry.") : tr("%1 boxes are off, dry.").arg(off->size());
    m_session.tell(text);
    fill();
    beginAnew();
    say(text, false);
}

void WetsDialog::say(const QString& text, bool bad) {
    QPalette palette = m_reason->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(bad ? Tone::Bad : Tone::Ink));
    m_reason->setPalette(palette);
    m_reason->setText(text);
    m_reason->setVisible(!text.isEmpty());
}

}  // namespace combwright
