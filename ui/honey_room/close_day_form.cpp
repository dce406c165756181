#include "ui/honey_room/close_day_form.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLocale>
#include <QVBoxLayout>
#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString typedAgain(const std::optional<Known<Mass>>& mass) {
    if (!mass) return {};
    if (!mass->value) return QStringLiteral("?");
    return (mass->how == How::ByEye ? QStringLiteral("~") : QString()) + massTyped(*mass->value);
}

bool isEmpty(const QLineEdit* edit) { return edit->text().trimmed().isEmpty(); }

/// "H1, 9 frames, 85 % full": by these it is shared out where nobody weighs.
QString aboutBox(const Read& file, const RoomBox& box, Day on) {
    QString text = box.hive.empty() ? CloseDayForm::tr("hive ?") : fromUtf8(box.hive);
    if (box.frames) text += CloseDayForm::tr(", %1 frames").arg(*box.frames);
    if (const auto filled = fillOfBox(file, box, on); filled && filled->middle())
        text += CloseDayForm::tr(", %1 % full")
                    .arg(QLocale().toString(*filled->middle() / 100.0, 'f', 0));
    return text;
}

}  // namespace

CloseDayForm::CloseDayForm(Session& session, std::optional<Id<Extraction>> run, QWidget* parent)
    : QDialog(parent), m_session(session), m_run(run) {
    setObjectName(QStringLiteral("close_day"));
    setWindowTitle(run ? tr("Close the day") : tr("A day in the honey room"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(8);
    auto* head = new QGridLayout;
    buildHead(head);
    column->addLayout(head);
    auto* hint =
        new QLabel(tr("Enter goes on, / to the next block, + or Ctrl+Enter keeps and closes. What "
                      "nobody weighed may stay empty; ~21 is by eye, ? nobody knows. The water of "
                      "a box: Tab."),
                   this);
    hint->setWordWrap(true);
    hint->setFont(session.look().font(TextSize::Note));
    column->addWidget(hint);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    m_inside = new QWidget(scroll);
    auto* inside = new QVBoxLayout(m_inside);
    inside->setContentsMargins(0, 0, session.look().space(12), 0);
    buildBoxes(inside);
    buildBuckets(inside);
    buildPile(inside);
    inside->addStretch(1);
    scroll->setWidget(m_inside);
    column->addWidget(scroll, 1);
    buildFoot(column);
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (bad) sayBad(text);
    });
    const QSize room = parent ? parent->window()->size() : QSize(1000, 700);
    resize(std::min(session.look().space(660), room.width() - 20),
           std::min(session.look().space(680), room.height() - 20));
    takeYard();
    setTabs();
    judge();
    beginWhereMissing();
}

QLabel* CloseDayForm::blockHead(const QString& text) {
    auto* label = new QLabel(text, m_inside);
    label->setFont(m_session.look().font(TextSize::Head, true));
    return label;
}

void CloseDayForm::buildBoxes(QVBoxLayout* inside) {
    inside->addWidget(blockHead(tr("Boxes")));
    m_boxGrid = new QGridLayout;
    m_boxGrid->setColumnStretch(1, 3);
    m_boxGrid->setColumnStretch(2, 2);
    m_boxGrid->setColumnStretch(3, 2);
    m_boxGrid->setColumnStretch(4, 1);
    const QStringList boxHeads{tr("box"), tr("hive"), tr("full, %1").arg(massUnit()),
                               tr("wet, %1").arg(massUnit()), tr("water, %")};
    for (int i = 0; i < boxHeads.size(); ++i)
        m_boxGrid->addWidget(new QLabel(boxHeads[i], m_inside), 0, i);
    inside->addLayout(m_boxGrid);
    const RoomBoxes room = roomBoxes(m_session.read(), m_run, m_session.clock().today());
    for (const auto* list : {&room.waiting, &room.wet})
        for (const RoomBox& box : *list) m_brought = m_brought || !box.plannedFor;
    for (const auto* list : {&room.waiting, &room.wet})
        for (const RoomBox& box : *list) addBoxRow(box, true);
    addBoxRow({}, false);
}

void CloseDayForm::buildBuckets(QVBoxLayout* inside) {
    inside->addWidget(blockHead(tr("Buckets")));
    auto* line = new QGridLayout;
    line->setColumnStretch(1, 1);
    m_bucketLine = field("buckets", tr("All buckets in one line"), {});
    m_bucketLine->setPlaceholderText(tr("6 full, 1 half · 6 13.0, half · by the pad 6.5* or 6*13"));
    auto* lineLabel = new QLabel(tr("&All in one line"), m_inside);
    lineLabel->setBuddy(m_bucketLine);
    line->addWidget(lineLabel, 0, 0);
    line->addWidget(m_bucketLine, 0, 1);
    m_filled = new QLabel(m_inside);
    m_filled->setObjectName(QStringLiteral("filled"));
    m_filled->setWordWrap(true);
    line->addWidget(m_filled, 1, 1);
    inside->addLayout(line);
    m_bucketGrid = new QGridLayout;
    m_bucketGrid->setColumnStretch(1, 3);
    m_bucketGrid->setColumnStretch(2, 2);
    const QStringList bucketHeads{tr("or one by one"), tr("%1, or half, 60 %").arg(massUnit()),
                                  tr("water, %")};
    for (int i = 0; i < bucketHeads.size(); ++i)
        m_bucketGrid->addWidget(new QLabel(bucketHeads[i], m_inside), 0, i);
    inside->addLayout(m_bucketGrid);
    QString cappings;
    if (m_run) {
        for (const Bucket& bucket : m_session.read().where<Bucket>({is("extraction", *m_run)}))
            addBucketRow(
                fromUtf8(bucket.mark.text()), typedAgain(bucket.net),
                bucket.water ? QLocale().toString(bucket.water->percent(), 'f', 1) : QString(),
                true);
        cappings = typedAgain(m_session.read().find(*m_run)->cappings);
    }
    addBucketRow({}, {}, {}, false);
    auto* rest = new QGridLayout;
    rest->setColumnStretch(1, 1);
    m_cappings =
        field("cappings", tr("Wet cappings, %1, or how full the tub is").arg(massUnit()), cappings);
    m_cappings->setPlaceholderText(tr("11.0, or half for half a tub"));
    auto* cappingsLabel = new QLabel(tr("Wet &cappings, %1").arg(massUnit()), m_inside);
    cappingsLabel->setBuddy(m_cappings);
    for (QLabel* label : {lineLabel, cappingsLabel})
        label->setMinimumWidth(
            std::max(lineLabel->sizeHint().width(), cappingsLabel->sizeHint().width()));
    rest->addWidget(cappingsLabel, 0, 0);
    rest->addWidget(m_cappings, 0, 1);
    inside->addLayout(rest);
}

void CloseDayForm::buildPile(QVBoxLayout* inside) {
    const auto pile = m_run ? pileOf(m_session.read(), *m_run) : std::vector<AsidePile>{};
    if (pile.empty()) return;
    inside->addWidget(blockHead(tr("Set aside: what became of it?")));
    auto* grid = new QGridLayout;
    grid->setColumnStretch(0, 1);
    for (const AsidePile& each : pile) {
        PileRow row{each, new QComboBox(m_inside)};
        row.became->setObjectName(QStringLiteral("became"));
        row.became->setAccessibleName(tr("%1: what became of it").arg(each.text));
        row.became->setMinimumHeight(m_session.look().space(30));
        row.became->addItem(tr("still there"));
        // The number is the key that chooses it.
        for (std::size_t i = 0; i < Choices<AsideBecame>::words.size(); ++i)
            row.became->addItem(
                QStringLiteral("%1  %2").arg(i + 1).arg(word(Choices<AsideBecame>::words[i])));
        row.became->installEventFilter(this);
        connect(row.became, &QComboBox::currentIndexChanged, this, [this] { judge(); });
        const int at = grid->rowCount();
        grid->addWidget(new QLabel(each.text, m_inside), at, 0);
        grid->addWidget(row.became, at, 1);
        m_pile.push_back(row);
    }
    inside->addLayout(grid);
}

void CloseDayForm::buildFoot(QVBoxLayout* column) {
    m_how = new QLabel(this);
    m_how->setObjectName(QStringLiteral("how_it_closes"));
    m_how->setWordWrap(true);
    m_how->setFont(m_session.look().font(TextSize::Head));
    column->addWidget(m_how);
    auto* buttons = new QHBoxLayout;
    m_cancel = new QPushButton(tr("Not now"), this);
    m_keep = new QPushButton(tr("Keep, close later"), this);
    m_keep->setObjectName(QStringLiteral("keep"));
    m_close = new QPushButton(tr("Keep and close  +"), this);
    m_close->setObjectName(QStringLiteral("keep_and_close"));
    m_close->setProperty("primary", true);
    for (QPushButton* button : {m_cancel, m_keep, m_close}) {
        button->setAutoDefault(false);
        button->setMinimumHeight(m_session.look().target(true));
        button->installEventFilter(this);
    }
    buttons->addWidget(m_cancel);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    buttons->addWidget(m_close);
    column->addLayout(buttons);
    connect(m_cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_keep, &QPushButton::clicked, this, [this] { keep(false); });
    connect(m_close, &QPushButton::clicked, this, [this] { keep(true); });
}

void CloseDayForm::beginWhereMissing() {
    const bool anyWeighed = std::any_of(m_boxes.begin(), m_boxes.end(), [](const BoxRow& row) {
        return row.box.gross || row.box.wet;
    });
    // With nothing typed yet: at the ticks, one key before the buckets.
    if (!anyWeighed)
        for (const BoxRow& row : m_boxes)
            if (row.in && !row.in->isHidden()) return row.in->setFocus();
    if (!m_run) return m_lot->setFocus();
    for (const BoxRow& row : m_boxes)
        for (QLineEdit* edit : {row.full, row.wet})
            if (isIn(row) && !edit->isHidden() && isEmpty(edit)) return edit->setFocus();
    m_cappings->setFocus();
}

QLineEdit* CloseDayForm::field(const char* name, const QString& label, const QString& text) {
    auto* edit = new QLineEdit(text, m_inside ? m_inside : this);
    edit->setObjectName(QLatin1String(name));
    edit->setAccessibleName(label);
    edit->setMinimumHeight(m_session.look().space(30));
    edit->installEventFilter(this);
    connect(edit, &QLineEdit::textChanged, this, [this] {
        growWhereFull();
        judge();
    });
    return edit;
}

void CloseDayForm::buildHead(QGridLayout* grid) {
    const Day today = m_session.clock().today();
    if (m_run) {
        const auto run = m_session.read().find(*m_run);
        QString text = tr("Lot %1").arg(fromUtf8(run->name.text()));
        if (run->yard)
            text += QStringLiteral(", ") +
                    fromUtf8(nameOf(m_session.read(), Yard::table, run->yard->number));
        auto* lot = new QLabel(text + tr(", since %1").arg(shortDayText(run->on)), this);
        lot->setFont(m_session.look().font(TextSize::Head, true));
        grid->addWidget(lot, 0, 0);
    } else {
        const NextLot next = nextLot(m_session.read(), today);
        m_lot = field("lot", tr("Lot"), fromUtf8(next.name));
        m_yard = new QComboBox(this);
        m_yard->setObjectName(QStringLiteral("yard"));
        m_yard->setAccessibleName(tr("Yard"));
        m_yard->addItem(tr("several yards"), QVariant());
        for (const Yard& yard : openYards(m_session.read())) {
            m_yard->addItem(fromUtf8(yard.name.text()), static_cast<qlonglong>(yard.id.number));
            if (next.yard == yard.id) m_yard->setCurrentIndex(m_yard->count() - 1);
        }
        m_yard->installEventFilter(this);
        connect(m_yard, &QComboBox::currentIndexChanged, this, [this] {
            takeYard();
            judge();
        });
        grid->addWidget(new QLabel(tr("Lot"), this), 0, 0);
        grid->addWidget(m_lot, 0, 1);
        grid->addWidget(new QLabel(tr("Yard"), this), 0, 2);
        grid->addWidget(m_yard, 0, 3);
    }
    m_day = field("day", tr("Day"), fromUtf8(isoText(today)));
    grid->addWidget(new QLabel(tr("Day"), this), 0, 4);
    grid->addWidget(m_day, 0, 5);
}

void CloseDayForm::addBoxRow(const RoomBox& box, bool known) {
    const int line = m_boxGrid->rowCount();
    BoxRow row;
    row.box = box;
    const QString called = known ? fromUtf8(box.mark) : tr("another box");
    if (!known) {
        row.mark = field("mark", tr("Mark of another box, or what is known of it"), {});
        row.mark->setPlaceholderText(tr("another, or tag lost 9: its frames"));
        m_boxGrid->addWidget(row.mark, line, 0, 1, 2);
    } else if (!box.entry) {
        row.in = new QCheckBox(called, m_inside);
        row.in->setObjectName(QStringLiteral("in_run"));
        row.in->setChecked(offered(box));
        row.in->setToolTip(offered(box) ? tr("planned: was it in this run?")
                                        : tr("still on its hive: was it in this run?"));
        row.in->installEventFilter(this);
        connect(row.in, &QCheckBox::toggled, this, [this] { judge(); });
        m_boxGrid->addWidget(row.in, line, 0);
    } else {
        auto* label = new QLabel(QStringLiteral("<b>%1</b>").arg(called.toHtmlEscaped()), m_inside);
        m_boxGrid->addWidget(label, line, 0);
    }
    if (known) {
        row.yard = yardOfBox(m_session.read(), box, m_session.clock().today());
        row.about =
            new QLabel(aboutBox(m_session.read(), box, m_session.clock().today()), m_inside);
        m_boxGrid->addWidget(row.about, line, 1);
    }
    row.typedFull = typedAgain(box.gross);
    row.typedWet = typedAgain(box.wet);
    row.full = field("full", tr("%1 full").arg(called), row.typedFull);
    row.wet = field("wet", tr("%1 wet").arg(called), row.typedWet);
    if (box.look && box.look->water)
        row.typedWater = QLocale().toString(box.look->water->percent(), 'f', 1);
    row.water = field("box_water", tr("%1, water in per cent").arg(called), row.typedWater);
    // What is weighed here was here.
    if (QCheckBox* in = row.in)
        for (QLineEdit* edit : {row.full, row.wet, row.water})
            connect(edit, &QLineEdit::textChanged, in, [in](const QString& text) {
                if (!text.trimmed().isEmpty()) in->setChecked(true);
            });
    m_boxGrid->addWidget(row.full, line, 2);
    m_boxGrid->addWidget(row.wet, line, 3);
    m_boxGrid->addWidget(row.water, line, 4);
    // Shown at once, or the next Enter would pass them over.
    if (m_inside->isVisible())
        for (QWidget* each : {row.mark, row.full, row.wet, row.water})
            if (each) each->show();
    m_boxes.push_back(row);
}

void CloseDayForm::addBucketRow(const QString& mark, const QString& mass, const QString& water,
                                bool known) {
    const int line = m_bucketGrid->rowCount();
    BucketRow row;
    row.mark = mark;
    if (known) {
        m_bucketGrid->addWidget(
            new QLabel(QStringLiteral("<b>%1</b>").arg(mark.toHtmlEscaped()), m_inside), line, 0);
    } else {
        row.name = field("bucket", tr("Mark of another bucket"), {});
        row.name->setPlaceholderText(tr("B9, or all"));
        m_bucketGrid->addWidget(row.name, line, 0);
    }
    row.mass = field("net", tr("%1, honey").arg(known ? mark : tr("another bucket")), mass);
    row.water =
        field("water", tr("%1, water in per cent").arg(known ? mark : tr("another bucket")), water);
    m_bucketGrid->addWidget(row.mass, line, 1);
    m_bucketGrid->addWidget(row.water, line, 2);
    if (m_inside->isVisible())
        for (QWidget* each : {row.name, row.mass, row.water})
            if (each) each->show();
    m_buckets.push_back(row);
}

void CloseDayForm::growWhereFull() {
    if (!m_cappings || !m_close) return;  // still being built
    if (m_boxes.back().mark && !isEmpty(m_boxes.back().mark)) addBoxRow({}, false);
    if (m_buckets.back().name && !isEmpty(m_buckets.back().name)) addBucketRow({}, {}, {}, false);
    setTabs();
}

void CloseDayForm::setTabs() {
    std::vector<QWidget*> order{m_lot, m_yard, m_day};
    for (const BoxRow& row : m_boxes)
        order.insert(order.end(), {row.in, row.mark, row.full, row.wet, row.water});
    order.push_back(m_bucketLine);
    for (const BucketRow& row : m_buckets)
        order.insert(order.end(), {row.name, row.mass, row.water});
    order.push_back(m_cappings);
    for (const PileRow& row : m_pile) order.push_back(row.became);
    order.insert(order.end(), {m_close, m_keep, m_cancel});
    QWidget* before = nullptr;
    for (QWidget* each : order) {
        if (!each) continue;
        if (before) setTabOrder(before, each);
        before = each;
    }
}

void CloseDayForm::takeYard() {
    if (!m_yard) return;
    const auto chosen = m_yard->currentIndex() > 0
                            ? std::optional(Id<Yard>{m_yard->currentData().toLongLong()})
                            : std::nullopt;
    for (const BoxRow& row : m_boxes) {
        if (!row.in) continue;
        const bool here = !chosen || !row.yard || row.yard == *chosen;
        row.in->setChecked(here && offered(row.box));
        for (QWidget* each :
             std::initializer_list<QWidget*>{row.in, row.about, row.full, row.wet, row.water})
            each->setVisible(here);
    }
}

void CloseDayForm::nextBlock() {
    QWidget* now = focusWidget();
    QWidget* closing = m_close->isEnabled() ? m_close : m_keep;
    const bool inBuckets =
        now == m_bucketLine ||
        std::any_of(m_buckets.begin(), m_buckets.end(), [&](const BucketRow& row) {
            return now == row.name || now == row.mass || now == row.water;
        });
    const bool inPile = std::any_of(m_pile.begin(), m_pile.end(),
                                    [&](const PileRow& row) { return now == row.became; });
    QWidget* next = m_bucketLine;
    if (inBuckets)
        next = m_cappings;
    else if (now == m_cappings && !m_pile.empty())
        next = m_pile.front().became;
    else if (now == m_cappings || inPile || qobject_cast<QPushButton*>(now))
        next = closing;
    next->setFocus(Qt::TabFocusReason);
    if (m_inside->isAncestorOf(next)) findChild<QScrollArea*>()->ensureWidgetVisible(next);
}

bool CloseDayForm::goOn(QWidget* from) {
    if (!from || qobject_cast<QPushButton*>(from)) return false;
    // What stands in the one line needs no rows.
    if (from == m_bucketLine && !isEmpty(m_bucketLine))
        m_cappings->setFocus(Qt::TabFocusReason);
    else
        focusNextChild();
    // Few tags carry the water: Enter passes it by, Tab stops there.
    if (from->objectName() == QLatin1String("wet") &&
        focusWidget()->objectName() == QLatin1String("box_water"))
        focusNextChild();
    auto* now = focusWidget();
    if (auto* edit = qobject_cast<QLineEdit*>(now)) edit->selectAll();
    if (m_inside->isAncestorOf(now)) findChild<QScrollArea*>()->ensureWidgetVisible(now);
    return true;
}

bool CloseDayForm::padKey(QObject* watched, const QKeyEvent& event) {
    if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
    const bool pad = event.modifiers() & Qt::KeypadModifier;
    const auto* edit = qobject_cast<QLineEdit*>(watched);
    // Names and the day may hold any sign; there only the pad's own keys command.
    const bool words =
        edit && (edit == m_lot || edit == m_day || edit->objectName() == QLatin1String("mark") ||
                 edit->objectName() == QLatin1String("bucket"));
    if (event.key() == Qt::Key_Plus && (pad || !words)) {
        keep(true);
        return true;
    }
    if (event.key() == Qt::Key_Slash) {
        // Behind a digit it may be half of a fraction: "3/4".
        const bool fraction = edit && !edit->text().isEmpty() && edit->text().back().isDigit();
        if (!pad && (words || fraction)) return false;
        nextBlock();
        return true;
    }
    if (const auto* tick = qobject_cast<QCheckBox*>(watched);
        tick && !event.text().isEmpty() && event.text().front().isDigit())
        for (const BoxRow& row : m_boxes)
            if (row.in == tick) {
                row.full->setFocus(Qt::TabFocusReason);
                row.full->setText(event.text());
                return true;
            }
    return false;
}

bool CloseDayForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    const auto& key = static_cast<const QKeyEvent&>(*event);
    if (padKey(watched, key)) return true;
    const bool enter = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
    // A button takes Enter as a press: the dialog has no default one.
    if (auto* button = qobject_cast<QPushButton*>(watched);
        enter && button && !(key.modifiers() & Qt::ControlModifier)) {
        button->click();
        return true;
    }
    return QDialog::eventFilter(watched, event);
}

void CloseDayForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && (event->modifiers() & Qt::ControlModifier)) return keep(true);
    if (enter && goOn(focusWidget())) return;
    QDialog::keyPressEvent(event);
}

}  // namespace combwright
