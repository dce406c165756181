#include "ui/storeroom/stock_take_form.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/storeroom/equipment.h"
#include "core/places/pages/storeroom/storeroom_words.h"
#include "core/words/figures.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

constexpr int firstCell = 3;

QTableWidgetItem* stockItem(const QString& text, bool number = false) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsEnabled);
    item->setToolTip(text);
    if (number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return item;
}

QString countWord(const std::optional<Count>& count) {
    return count ? QString::number(count->value()) : QString();
}

}  // namespace

StockTakeForm::StockTakeForm(Session& session, Day on, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_table(new QTableWidget(this)),
      m_item(new QComboBox(this)),
      m_called(new QLineEdit(this)),
      m_frame(new QComboBox(this)),
      m_add(new QPushButton(tr("Add this &kind"), this)),
      m_drafts(new FormDrafts(session, this)),
      m_fewer(new QLabel(this)),
      m_why(new QLineEdit(this)),
      m_reason(new QLabel(this)),
      m_keep(new QPushButton(tr("Keep the count"), this)),
      m_leave(new QPushButton(tr("Not now"), this)) {
    setObjectName(QStringLiteral("stock_take"));
    setWindowTitle(tr("Stock-take of %1").arg(dayText(on)));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* how = new QLabel(tr("What lies in the shed, not what is on hives. An empty line is not "
                              "counted, an empty cell beside a number stays as it was; 0: there is "
                              "none. Enter goes on, Ctrl+Enter keeps."),
                           this);
    how->setWordWrap(true);
    column->addWidget(how);
    m_table->setColumnCount(6);
    m_table->setHorizontalHeaderLabels(
        {tr("item"), tr("on hives"), tr("last counted"), tr("sound"), tr("in repair"), tr("lent")});
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(look.space(32));
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->setFocusPolicy(Qt::NoFocus);
    m_table->setSelectionMode(QAbstractItemView::NoSelection);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* head = m_table->horizontalHeader();
    head->setSectionResizeMode(QHeaderView::ResizeToContents);
    head->setSectionResizeMode(0, QHeaderView::Stretch);
    for (int cell = firstCell; cell < firstCell + 3; ++cell) {
        head->setSectionResizeMode(cell, QHeaderView::Fixed);
        m_table->setColumnWidth(cell, look.space(76));
    }
    for (int n = 0; n < m_table->columnCount(); ++n)
        m_table->horizontalHeaderItem(n)->setTextAlignment(
            (n == 0 || n == 2 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    column->addWidget(m_table, 1);
    for (const StockTakeRow& row : stockTake(stockOn(session.read(), on)))
        addRow(row, m_rows.size());

    auto* another = new QHBoxLayout;
    auto* label = new QLabel(tr("Another kind of"), this);
    another->addWidget(label);
    label->setBuddy(m_item);
    addChoices<EquipmentItem>(m_item, {});
    m_item->setObjectName(QStringLiteral("item"));
    m_item->setAccessibleName(tr("Another kind of"));
    another->addWidget(m_item, 1);
    m_called->setObjectName(QStringLiteral("called"));
    m_called->setAccessibleName(tr("What the kind is called"));
    m_called->setPlaceholderText(tr("4 l tray"));
    another->addWidget(m_called, 1);
    m_frame->setObjectName(QStringLiteral("frame_kind"));
    m_frame->setAccessibleName(tr("The frame it is cut for or holds"));
    addFrameKinds(m_frame, session.read(), tr("for any frame"));
    m_frame->setMinimumContentsLength(12);
    m_frame->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    another->addWidget(m_frame, 1);
    m_add->setObjectName(QStringLiteral("add_kind"));
    another->addWidget(m_add);
    column->addLayout(another);
    column->addWidget(m_drafts);
    m_fewer->setWordWrap(true);
    m_fewer->setObjectName(QStringLiteral("fewer"));
    m_why->setObjectName(QStringLiteral("why_fewer"));
    m_why->setAccessibleName(tr("Why there are fewer"));
    m_why->setPlaceholderText(tr("worn out, given away, counted wrong last time"));
    m_reason->setWordWrap(true);
    m_reason->setObjectName(QStringLiteral("reason"));
    for (QWidget* each : std::initializer_list<QWidget*>{m_fewer, m_why, m_reason}) {
        column->addWidget(each);
        each->hide();
    }
    auto* buttons = new QHBoxLayout;
    m_keep->setObjectName(QStringLiteral("keep"));
    m_keep->setProperty("primary", true);
    buttons->addWidget(m_leave);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    column->addLayout(buttons);
    for (QPushButton* button : {m_add, m_keep, m_leave}) button->setAutoDefault(false);
    connect(m_add, &QPushButton::clicked, this, &StockTakeForm::addKind);
    connect(m_keep, &QPushButton::clicked, this, &StockTakeForm::keep);
    connect(m_leave, &QPushButton::clicked, this, &QDialog::reject);
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (bad) say(text);
    });
    for (QLineEdit* edit : {m_called, m_why}) edit->installEventFilter(this);
    // One sheet, whatever day it is begun on: pencilled tonight it is typed to the end tomorrow.
    const QString sheet = QStringLiteral("stock-take");
    addHeldKinds(sheet);
    m_drafts->begin(sheet);
    connect(m_drafts, &FormDrafts::begunAfresh, this,
            [this] { m_rows.front().cells.front()->setFocus(); });
    orderTabs();
    const QSize room = parent ? parent->window()->size() : QSize(1000, 760);
    resize(std::min(look.space(760), room.width() - 20),
           std::min(look.space(640), room.height() - 20));
    if (!m_rows.empty()) m_rows.front().cells.front()->setFocus();
}

void StockTakeForm::addRow(const StockTakeRow& row, std::size_t at) {
    Row made;
    made.item = row.item;
    std::optional<FrameKind> frame;
    if (row.kind) {
        made.called = fromUtf8(row.kind->name);
        made.frameKind = row.kind->frameKind;
        made.onHand = row.kind->onHand;
        frame = m_session.read().find(row.kind->frameKind);
    }
    const QString name = row.kind ? itemText(row.item, row.kind->name, frame) : itemText(row.item);
    const int line = static_cast<int>(at);
    m_table->insertRow(line);
    m_table->setItem(line, 0, stockItem(name));
    if (row.item == EquipmentItem::Foundation && !made.frameKind) {
        made.frame = new QComboBox(m_table);
        made.frame->setObjectName(QStringLiteral("foundation_for"));
        made.frame->setAccessibleName(tr("Foundation is cut for"));
        addFrameKinds(made.frame, m_session.read(), tr("foundation for which frame?"));
        m_table->setCellWidget(line, 0, made.frame);
    }
    m_table->setItem(line, 1, stockItem(row.inUse ? QString::number(*row.inUse) : QString(), true));
    const bool known = row.kind && row.kind->onHand && row.counted;
    m_table->setItem(
        line, 2,
        stockItem(known ? tr("%1, %2").arg(row.kind->onHand->value()).arg(dayText(*row.counted))
                        : tr("not counted")));
    const QString cells[] = {tr("sound"), tr("in repair"), tr("lent")};
    const std::optional<Count> last[] = {row.kind ? row.kind->onHand : std::nullopt,
                                         row.kind ? row.kind->inRepair : std::nullopt,
                                         row.kind ? row.kind->lent : std::nullopt};
    for (int cell = 0; cell < 3; ++cell) {
        auto* edit = new QLineEdit(m_table);
        edit->setObjectName(QStringLiteral("cell"));
        edit->setAccessibleName(QStringLiteral("%1, %2").arg(name, cells[cell]));
        edit->setPlaceholderText(countWord(last[cell]));
        edit->setAlignment(Qt::AlignRight);
        edit->installEventFilter(this);
        m_table->setCellWidget(line, firstCell + cell, edit);
        made.cells.push_back(edit);
    }
    for (int cell = 0; cell < 3; ++cell)
        m_drafts->watch(made.cells[static_cast<std::size_t>(cell)],
                        QStringLiteral("%1|%2").arg(made.key(), QString::number(cell)));
    if (made.frame) m_drafts->watch(made.frame, made.key() + QStringLiteral("|for"));
    m_rows.insert(m_rows.begin() + static_cast<std::ptrdiff_t>(at), std::move(made));
}

QString StockTakeForm::Row::key() const {
    QString name = called;
    name.replace(QLatin1Char('|'), QLatin1Char(' '));
    return QStringLiteral("%1|%2|%3")
        .arg(choiceText(word(item)), name)
        .arg(static_cast<qlonglong>(frameKind ? frameKind->number : 0));
}

void StockTakeForm::addHeldKinds(const QString& sheet) {
    for (const auto& [row, text] : m_session.drafts().of(sheet)) {
        const QStringList parts = row.split(QLatin1Char('|'));
        if (parts.size() != 4) continue;
        const auto& words = Choices<EquipmentItem>::words;
        const auto item = std::find(words.begin(), words.end(), parts[0].toStdString());
        if (item == words.end()) continue;
        Equipment kind;
        kind.item = static_cast<EquipmentItem>(item - words.begin());
        kind.name = parts[1].toStdString();
        if (const qlonglong frame = parts[2].toLongLong(); frame > 0) {
            kind.frameKind = Id<FrameKind>{frame};
            if (!m_session.read().find(*kind.frameKind)) continue;
        }
        if (kind.name.empty() && !kind.frameKind) continue;  // a line of the sheet itself
        const std::size_t at = placeFor(kind);
        if (at > m_rows.size()) continue;
        StockTakeRow added;
        added.item = kind.item;
        added.kind = kind;
        addRow(added, at);
    }
}

/// Behind the last of its item; past the end where that kind has its line already.
std::size_t StockTakeForm::placeFor(const Equipment& kind) const {
    std::size_t at = 0;
    for (std::size_t n = 0; n < m_rows.size(); ++n) {
        const Row& each = m_rows[n];
        if (each.item != kind.item) continue;
        if (each.called.toStdString() == kind.name && each.frameKind == kind.frameKind)
            return m_rows.size() + 1;
        at = n + 1;
    }
    return at;
}

void StockTakeForm::orderTabs() {
    QWidget* before = nullptr;
    const auto next = [&before](QWidget* widget) {
        if (before) setTabOrder(before, widget);
        before = widget;
    };
    for (const Row& row : m_rows) {
        if (row.frame) next(row.frame);
        for (QLineEdit* cell : row.cells) next(cell);
    }
    for (QWidget* each : std::initializer_list<QWidget*>{
             m_item, m_called, m_frame, m_add, &m_drafts->afresh(), m_why, m_keep, m_leave})
        next(each);
}

void StockTakeForm::addKind() {
    const auto item = chosen<EquipmentItem>(m_item).value_or(EquipmentItem::Other);
    StockTakeRow row;
    row.item = item;
    Equipment kind;
    kind.item = item;
    kind.name = typedWords(m_called);
    kind.frameKind = chosenId<FrameKind>(m_frame);
    if (item == EquipmentItem::Foundation && !kind.frameKind) {
        say(tr("Say which frame the foundation is cut for."));
        m_frame->setFocus();
        return;
    }
    if (kind.name.empty() && !kind.frameKind) {
        say(tr("Write what this kind is called, for instance 4 l tray."));
        m_called->setFocus();
        return;
    }
    const std::size_t at = placeFor(kind);
    if (at > m_rows.size()) {
        say(tr("That kind is on the list already."));
        for (const Row& each : m_rows)
            if (each.item == item && each.called.toStdString() == kind.name &&
                each.frameKind == kind.frameKind)
                each.cells.front()->setFocus();
        return;
    }
    row.kind = kind;
    addRow(row, at);
    orderTabs();
    say({});
    m_called->clear();
    m_rows[at].cells.front()->setFocus();
}

void StockTakeForm::step(QLineEdit* from, int rows, bool nextCell) {
    std::vector<QLineEdit*> all;
    for (const Row& row : m_rows) all.insert(all.end(), row.cells.begin(), row.cells.end());
    const auto at = std::find(all.begin(), all.end(), from) - all.begin();
    const auto to = at + (nextCell ? 1 : 3 * rows);
    if (to < 0) return;
    if (to >= static_cast<std::ptrdiff_t>(all.size())) {
        if (nextCell) m_keep->setFocus();
        return;
    }
    all[static_cast<std::size_t>(to)]->setFocus();
}

bool StockTakeForm::eventFilter(QObject* watched, QEvent* event) {
    auto* edit = qobject_cast<QLineEdit*>(watched);
    if (!edit) return QDialog::eventFilter(watched, event);
    const bool isCell = edit != m_called && edit != m_why;
    if (event->type() == QEvent::FocusIn && isCell)
        for (int line = 0; line < static_cast<int>(m_rows.size()); ++line) {
            const auto& cells = m_rows[static_cast<std::size_t>(line)].cells;
            if (std::find(cells.begin(), cells.end(), edit) != cells.end())
                m_table->scrollTo(m_table->model()->index(line, 0));
        }
    if (event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (isEnter && (key->modifiers().testFlag(Qt::ControlModifier) || edit == m_why)) {
        keep();
        return true;
    }
    if (isEnter && edit == m_called) {
        addKind();
        return true;
    }
    if (!isCell) return QDialog::eventFilter(watched, event);
    if (isEnter) {
        step(edit, 0, true);
        return true;
    }
    if (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up) {
        step(edit, key->key() == Qt::Key_Down ? 1 : -1, false);
        return true;
    }
    return QDialog::eventFilter(watched, event);
}

bool StockTakeForm::read(const Row& row, std::optional<Count> (&counts)[3]) {
    for (std::size_t cell = 0; cell < 3; ++cell)
        if (!readField(m_session, row.cells[cell], counts[cell])) return false;
    if (counts[0] || (!counts[1] && !counts[2])) return true;
    counts[0] = row.onHand;
    if (counts[0]) return true;
    say(tr("%1: write how many are sound too, 0 where none is.")
            .arg(row.cells.front()->accessibleName()));
    row.cells.front()->setFocus();
    return false;
}

void StockTakeForm::keep() {
    std::vector<std::pair<CountEquipment, QLineEdit*>> counted;
    for (const Row& row : m_rows) {
        std::optional<Count> counts[3];
        if (!read(row, counts)) return;
        if (!counts[0]) continue;
        CountEquipment count{
            .on = m_on,
            .item = row.item,
            .called = row.called.toStdString(),
            .frameKind = row.frame ? chosenId<FrameKind>(row.frame) : row.frameKind,
            .onHand = *counts[0],
            .inRepair = counts[1],
            .lent = counts[2],
            .whyFewer = {}};
        counted.emplace_back(count, row.cells.front());
    }
    if (counted.empty()) {
        say(tr("Nothing is counted yet. Write a number into a line, or leave with Esc."));
        return;
    }
    const std::string why = typedWords(m_why);
    QStringList fewer;
    QLineEdit* at = nullptr;
    std::size_t kept = 0;
    const bool done = m_session.together([&](Season& season) -> Result<void> {
        std::optional<Refusal> refused;
        for (const auto& [typed, cell] : counted) {
            auto count = typed;
            auto made = perform(season, count);
            const auto falls = [&] {
                return !made && made.error().code == Code::Missing &&
                       made.error().field == "why_fewer";
            };
            if (falls() && !why.empty()) {
                count.whyFewer = why;
                made = perform(season, count);
            }
            if (made) {
                ++kept;
                continue;
            }
            // What was counted that day already is no trouble among others.
            if (made.error().code == Code::NothingToDo) continue;
            if (falls())
                fewer << tr("%1: %2 before, now %3")
                             .arg(itemText(count.item, count.called,
                                           m_session.read().find(count.frameKind)),
                                  fromUtf8(made.error().value("before")),
                                  fromUtf8(made.error().value("now")));
            if (!refused) {
                refused = made.error();
                at = cell;
            }
        }
        if (refused) return *refused;
        if (kept == 0) return Refusal{Code::NothingToDo, "on_hand", {}};
        return {};
    });
    if (done) {
        m_drafts->kept();
        m_session.tell(kept == 1 ? tr("1 line of the stock-take is kept.")
                                 : tr("%1 lines of the stock-take are kept.").arg(kept));
        accept();
        return;
    }
    if (fewer.isEmpty()) {
        if (at) at->setFocus();
        return;
    }
    say({});
    m_fewer->setText(tr("Why are there fewer? %1.").arg(fewer.join(QStringLiteral("; "))));
    m_fewer->show();
    m_why->show();
    m_why->setFocus();
}

void StockTakeForm::say(const QString& text) {
    m_reason->setText(text);
    m_reason->setVisible(!text.isEmpty());
}

bool askToTakeStock(QWidget* parent, Session& session, Day on) {
    StockTakeForm form(session, on, parent);
    return form.exec() == QDialog::Accepted;
}

bool askToDescribeEquipment(QWidget* parent, Session& session, EquipmentItem item,
                            const std::optional<Equipment>& known, Day on) {
    const auto say = [](const char* text) { return StockTakeForm::tr(text); };
    SmallForm form(parent, session, say("What the %1 is like").arg(itemText(item)));
    auto* called = form.line(say("Name"), "called", say("may stay empty"));
    auto* frame = form.choice(say("Holds frames of"), "frame_kind");
    addFrameKinds(frame, session.read(), say("any kind"));
    auto* holds = form.line(say("Frames at once"), "holds", say("4"));
    auto* radius = form.line(say("Axle to middle of the comb"), "radius", say("225 mm"));
    auto* rpm = form.line(say("Usual turns a minute"), "rpm", say("280"));
    auto* litres = form.line(say("Litres"), "litres", say("4"));
    auto* capacity = form.line(say("Honey it holds, %1").arg(massUnit()), "capacity", say("18"));
    auto* note = form.line(say("Note"), "note", say("may stay empty"));
    const bool drum = item == EquipmentItem::Extractor;
    form.showField(frame, drum || item == EquipmentItem::NucleusBox);
    form.showField(holds, drum || item == EquipmentItem::NucleusBox);
    form.showField(radius, drum);
    form.showField(rpm, drum);
    form.showField(litres, item == EquipmentItem::Feeder);
    form.showField(capacity, item == EquipmentItem::Bucket);
    if (drum)
        form.caution(
            say("Lid shut while it turns; no hand, hair or sleeve near the drum until it "
                "stands. Other slots for another frame are another entry."));
    if (item == EquipmentItem::Bucket) form.caution(liftCaution());
    if (known) {
        // By these it is told from others.
        called->setText(fromUtf8(known->name));
        called->setEnabled(false);
        choose(frame, known->frameKind);
        frame->setEnabled(false);
        holds->setText(countWord(known->holds));
        rpm->setText(countWord(known->rpm));
        litres->setText(countWord(known->litres));
        if (known->radius) radius->setText(shownLength(known->radius->mm()).text());
        if (known->capacity) capacity->setText(massTyped(*known->capacity));
        note->setText(fromUtf8(known->note));
        form.beginIn(drum || item == EquipmentItem::NucleusBox ? holds
                     : item == EquipmentItem::Feeder           ? litres
                     : item == EquipmentItem::Bucket           ? capacity
                                                               : note);
    } else {
        form.beginIn(called);
    }
    form.onAccept([&] {
        DescribeEquipment deed;
        deed.on = on;
        deed.item = item;
        deed.called = typedWords(called);
        deed.frameKind = chosenId<FrameKind>(frame);
        deed.note = typedWords(note);
        if (!readField(session, holds, deed.holds) || !readField(session, rpm, deed.rpm) ||
            !readField(session, litres, deed.litres) || !readField(session, radius, deed.radius) ||
            !readField(session, capacity, deed.capacity))
            return false;
        // Shown rounded, the radius is not to change by being looked at.
        if (!radius->isModified()) deed.radius.reset();
        if (!capacity->isModified()) deed.capacity.reset();
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
