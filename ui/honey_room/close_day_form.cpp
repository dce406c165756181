#include "ui/honey_room/close_day_form.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLocale>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/bucket_sheet.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/room_line.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString typedAgain(const std::optional<Known<Mass>>& mass) {
    if (!mass) return {};
    if (!mass->value) return QStringLiteral("?");
    return (mass->how == How::ByEye ? QStringLiteral("~") : QString()) + massTyped(*mass->value);
}

std::optional<double> readGrams(const QLineEdit* edit) {
    const auto mass = typedReading(edit->text());
    return mass ? mass->middle() : std::nullopt;
}

bool isEmpty(const QLineEdit* edit) { return edit->text().trimmed().isEmpty(); }

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
    auto* hint = new QLabel(tr("Enter goes on to the next field, Ctrl+Enter keeps and closes. What "
                               "nobody weighed may stay empty; ~21 is by eye, ? nobody knows."),
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
    const auto title = [&](const QString& text) {
        auto* label = new QLabel(text, m_inside);
        label->setFont(session.look().font(TextSize::Head, true));
        inside->addWidget(label);
    };
    title(tr("Boxes"));
    m_boxGrid = new QGridLayout;
    m_boxGrid->setColumnStretch(1, 3);
    m_boxGrid->setColumnStretch(2, 2);
    m_boxGrid->setColumnStretch(3, 2);
    const QStringList boxHeads{tr("box"), tr("hive"), tr("full, %1").arg(massUnit()),
                               tr("wet, %1").arg(massUnit())};
    for (int i = 0; i < boxHeads.size(); ++i)
        m_boxGrid->addWidget(new QLabel(boxHeads[i], m_inside), 0, i);
    inside->addLayout(m_boxGrid);
    const RoomBoxes room = roomBoxes(session.read(), run, session.clock().today());
    for (const auto* list : {&room.waiting, &room.wet})
        for (const RoomBox& box : *list) addBoxRow(box, true);
    addBoxRow({}, false);
    title(tr("Buckets"));
    m_bucketGrid = new QGridLayout;
    m_bucketGrid->setColumnStretch(1, 3);
    m_bucketGrid->setColumnStretch(2, 2);
    const QStringList bucketHeads{tr("bucket"), tr("%1, or half, 60 %").arg(massUnit()),
                                  tr("water, %")};
    for (int i = 0; i < bucketHeads.size(); ++i)
        m_bucketGrid->addWidget(new QLabel(bucketHeads[i], m_inside), 0, i);
    inside->addLayout(m_bucketGrid);
    QString cappings;
    if (run) {
        for (const Bucket& bucket : session.read().where<Bucket>({is("extraction", *run)}))
            addBucketRow(
                fromUtf8(bucket.mark.text()), typedAgain(bucket.net),
                bucket.water ? QLocale().toString(bucket.water->percent(), 'f', 1) : QString(),
                true);
        cappings = typedAgain(session.read().find(*run)->cappings);
    }
    addBucketRow({}, {}, {}, false);
    auto* rest = new QGridLayout;
    rest->setColumnStretch(1, 1);
    m_cappings = field("cappings", tr("Wet cappings, %1").arg(massUnit()), cappings);
    auto* cappingsLabel = new QLabel(tr("Wet &cappings, %1").arg(massUnit()), m_inside);
    cappingsLabel->setBuddy(m_cappings);
    rest->addWidget(cappingsLabel, 0, 0);
    rest->addWidget(m_cappings, 0, 1);
    inside->addLayout(rest);
    inside->addStretch(1);
    scroll->setWidget(m_inside);
    column->addWidget(scroll, 1);
    m_how = new QLabel(this);
    m_how->setObjectName(QStringLiteral("how_it_closes"));
    m_how->setWordWrap(true);
    m_how->setFont(session.look().font(TextSize::Head));
    column->addWidget(m_how);
    auto* buttons = new QHBoxLayout;
    m_cancel = new QPushButton(tr("Not now"), this);
    m_keep = new QPushButton(tr("Keep, close later"), this);
    m_keep->setObjectName(QStringLiteral("keep"));
    m_close = new QPushButton(tr("Keep and close"), this);
    m_close->setObjectName(QStringLiteral("keep_and_close"));
    m_close->setProperty("primary", true);
    for (QPushButton* button : {m_cancel, m_keep, m_close}) {
        button->setAutoDefault(false);
        button->setMinimumHeight(session.look().target(true));
    }
    buttons->addWidget(m_cancel);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    buttons->addWidget(m_close);
    column->addLayout(buttons);
    connect(m_cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_keep, &QPushButton::clicked, this, [this] { keep(false); });
    connect(m_close, &QPushButton::clicked, this, [this] { keep(true); });
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (bad) sayBad(text);
    });
    const QSize room2 = parent ? parent->window()->size() : QSize(1000, 700);
    resize(std::min(session.look().space(620), room2.width() - 20),
           std::min(session.look().space(640), room2.height() - 20));
    setTabs();
    judge();
    if (!m_run) {
        m_lot->setFocus();
    } else {
        // Where something is missing one begins.
        for (const BoxRow& row : m_boxes)
            for (QLineEdit* edit : {row.full, row.wet})
                if (isEmpty(edit)) {
                    edit->setFocus();
                    return;
                }
        m_cappings->setFocus();
    }
}

QLineEdit* CloseDayForm::field(const char* name, const QString& label, const QString& text) {
    auto* edit = new QLineEdit(text, m_inside ? m_inside : this);
    edit->setObjectName(QLatin1String(name));
    edit->setAccessibleName(label);
    edit->setMinimumHeight(m_session.look().space(30));
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
        row.mark->setPlaceholderText(tr("another, or tag lost"));
        m_boxGrid->addWidget(row.mark, line, 0, 1, 2);
    } else if (!box.entry) {
        row.in = new QCheckBox(called, m_inside);
        row.in->setObjectName(QStringLiteral("in_run"));
        row.in->setChecked(true);
        row.in->setToolTip(tr("planned: was it in this run?"));
        connect(row.in, &QCheckBox::toggled, this, [this] { judge(); });
        m_boxGrid->addWidget(row.in, line, 0);
    } else {
        auto* label = new QLabel(QStringLiteral("<b>%1</b>").arg(called.toHtmlEscaped()), m_inside);
        m_boxGrid->addWidget(label, line, 0);
    }
    if (known)
        m_boxGrid->addWidget(
            new QLabel(box.hive.empty() ? tr("hive ?") : fromUtf8(box.hive), m_inside), line, 1);
    row.full = field("full", tr("%1 full").arg(called), typedAgain(box.gross));
    row.wet = field("wet", tr("%1 wet").arg(called), typedAgain(box.wet));
    m_boxGrid->addWidget(row.full, line, 2);
    m_boxGrid->addWidget(row.wet, line, 3);
    // Shown at once, or the next Enter would pass them over.
    if (m_inside->isVisible())
        for (QWidget* each : {row.mark, row.full, row.wet})
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
    if (!m_cappings || !m_close) return;
    if (m_boxes.back().mark && !isEmpty(m_boxes.back().mark)) addBoxRow({}, false);
    if (m_buckets.back().name && !isEmpty(m_buckets.back().name)) addBucketRow({}, {}, {}, false);
    setTabs();
}

void CloseDayForm::setTabs() {
    std::vector<QWidget*> order{m_lot, m_yard, m_day};
    for (const BoxRow& row : m_boxes)
        order.insert(order.end(), {row.in, row.mark, row.full, row.wet});
    for (const BucketRow& row : m_buckets)
        order.insert(order.end(), {row.name, row.mass, row.water});
    order.insert(order.end(), {m_cappings, m_close, m_keep, m_cancel});
    QWidget* before = nullptr;
    for (QWidget* each : order) {
        if (!each) continue;
        if (before) setTabOrder(before, each);
        before = each;
    }
}

QLineEdit* CloseDayForm::unreadable(QString& why) const {
    const auto notMass = [&](QLineEdit* edit) {
        if (isEmpty(edit) || typedReading(edit->text())) return false;
        why = tr("%1: “%2” is no weight in %3.")
                  .arg(edit->accessibleName(), edit->text(), massUnit());
        return true;
    };
    for (const BoxRow& row : m_boxes) {
        if (row.in && !row.in->isChecked()) continue;
        if (notMass(row.full)) return row.full;
        if (notMass(row.wet)) return row.wet;
        if (row.mark && isEmpty(row.mark) && (!isEmpty(row.full) || !isEmpty(row.wet))) {
            why = tr("Which box is that? Its mark, or “tag lost”.");
            return row.mark;
        }
    }
    for (const BucketRow& row : m_buckets) {
        if (!typedLevel(row.mass->text()) && notMass(row.mass)) return row.mass;
        if (!isEmpty(row.water) && !typedNumber(row.water->text())) {
            why = tr("%1: “%2” is no number.").arg(row.water->accessibleName(), row.water->text());
            return row.water;
        }
        if (row.name && isEmpty(row.name) && !isEmpty(row.mass)) {
            why = tr("Which bucket is that? Its mark, or “all”.");
            return row.name;
        }
    }
    if (notMass(m_cappings)) return m_cappings;
    if (!dayInWords(m_day->text().toStdString(), m_session.clock().today())) {
        why = tr("“%1” is no day.").arg(m_day->text());
        return m_day;
    }
    if (m_lot && isEmpty(m_lot)) {
        why = tr("The lot needs a name.");
        return m_lot;
    }
    return nullptr;
}

void CloseDayForm::judge() {
    if (!m_how || !m_cappings) return;
    QString why;
    if (unreadable(why)) {
        m_outlook = {false, why, {}};
        return sayBad(why);
    }
    DayTyped day;
    const auto takeHow = [&](const QLineEdit* edit) {
        const auto reading = typedReading(edit->text());
        if (reading && reading->value) day.how = weaker(day.how, reading->how);
    };
    m_judged.clear();
    for (std::size_t i = 0; i < m_boxes.size(); ++i) {
        const BoxRow& row = m_boxes[i];
        if (row.mark ? isEmpty(row.mark) : row.in && !row.in->isChecked()) continue;
        const QString mark = row.mark ? row.mark->text().trimmed() : fromUtf8(row.box.mark);
        m_judged.push_back(i);
        day.boxes.push_back({mark.toStdString(),
                             row.box.hive.empty() ? std::nullopt : std::optional(row.box.hive),
                             readGrams(row.full), readGrams(row.wet)});
        takeHow(row.full);
        takeHow(row.wet);
    }
    for (const BucketRow& row : m_buckets) {
        const auto level = typedLevel(row.mass->text());
        const auto net =
            level ? massAtLevel(m_session.read(), *level, m_session.clock().today()).middle()
                  : readGrams(row.mass);
        if (net) day.bucketsG = day.bucketsG.value_or(0) + *net;
        if (level) day.how = weaker(day.how, How::ByEye);
        takeHow(row.mass);
    }
    day.cappingsG = readGrams(m_cappings);
    takeHow(m_cappings);
    m_outlook = closingOutlook(day);
    m_how->setText(m_outlook.text);
    QPalette palette = this->palette();
    palette.setColor(QPalette::WindowText,
                     m_session.look().tone(m_outlook.closes ? Tone::Ink : Tone::Warn));
    m_how->setPalette(palette);
    m_close->setEnabled(m_outlook.closes);
}

void CloseDayForm::sayBad(const QString& text) {
    if (!m_how) return;
    m_how->setText(text);
    QPalette palette = this->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(Tone::Bad));
    m_how->setPalette(palette);
    m_close->setEnabled(false);
}

Result<void> CloseDayForm::keepAll(Season& season, bool close) {
    const Day on = *dayInWords(m_day->text().toStdString(), m_session.clock().today());
    std::optional<Id<Extraction>> run = m_run;
    if (!run) {
        OpenRun open;
        open.on = on;
        open.run = *Name::of(m_lot->text().trimmed().toStdString());
        if (m_yard->currentIndex() > 0) open.yard = Id<Yard>{m_yard->currentData().toLongLong()};
        const auto made = perform(season, open);
        if (!made) return made.error();
        run = *made;
    }
    for (const BoxRow& row : m_boxes) {
        if (row.mark ? isEmpty(row.mark) : row.in && !row.in->isChecked()) continue;
        WeighBox weigh;
        weigh.on = on;
        weigh.run = *run;
        weigh.box = row.box.box;
        const std::string mark = row.mark ? row.mark->text().trimmed().toStdString() : row.box.mark;
        if (row.mark)
            if (const auto box =
                    findNamed(season.read(), Box::table, NameQuery{.name = mark, .on = on}))
                weigh.box = Id<Box>{*box};
        if (!weigh.box) weigh.knownAs = row.box.entry ? row.box.entry->knownAs : mark;
        if (row.full->text() != typedAgain(row.box.gross))
            weigh.gross = typedReading(row.full->text())
                              .value_or(Known<Mass>{std::nullopt, std::nullopt, How::Unknown});
        if (row.wet->text() != typedAgain(row.box.wet))
            weigh.wet = typedReading(row.wet->text())
                            .value_or(Known<Mass>{std::nullopt, std::nullopt, How::Unknown});
        if (row.box.entry && !weigh.gross && !weigh.wet) continue;
        if (const auto done = perform(season, weigh); !done) return done.error();
    }
    for (const BucketRow& row : m_buckets) {
        if (isEmpty(row.mass) && isEmpty(row.water)) continue;
        FillBucket fill;
        fill.on = on;
        fill.run = *run;
        fill.bucket = *Name::of((row.name ? row.name->text() : row.mark).trimmed().toStdString());
        const auto level = typedLevel(row.mass->text());
        fill.net = level ? std::optional(massAtLevel(season.read(), *level, on))
                         : typedReading(row.mass->text());
        if (const auto water = typedNumber(row.water->text()))
            fill.water = WaterContent::roundedPercent(*water);
        if (const auto done = perform(season, fill); !done) return done.error();
    }
    if (const auto mass = typedReading(m_cappings->text())) {
        WeighCappings weigh;
        weigh.on = on;
        weigh.run = *run;
        weigh.cappings = mass;
        if (const auto done = perform(season, weigh); !done) return done.error();
    }
    if (close) {
        CloseRun deed;
        deed.on = on;
        deed.run = *run;
        if (const auto done = perform(season, deed); !done) return done.error();
    }
    m_kept = run;
    return {};
}

void CloseDayForm::keep(bool close) {
    QString why;
    if (QLineEdit* bad = unreadable(why)) {
        sayBad(why);
        bad->setFocus();
        return bad->selectAll();
    }
    if (close && !m_outlook.closes) {
        if (m_outlook.lacking && *m_outlook.lacking < m_judged.size()) {
            const BoxRow& row = m_boxes[m_judged[*m_outlook.lacking]];
            (isEmpty(row.full) ? row.full : row.wet)->setFocus();
        }
        return sayBad(m_outlook.text);
    }
    if (!m_session.together([&](Season& season) { return keepAll(season, close); })) {
        m_kept.reset();
        return;
    }
    m_session.tell(close ? tr("The run is closed: %1").arg(m_outlook.text)
                         : tr("Kept; the run stays open."));
    accept();
}

void CloseDayForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && (event->modifiers() & Qt::ControlModifier)) return keep(true);
    if (enter && qobject_cast<QLineEdit*>(focusWidget())) {
        focusNextChild();
        if (auto* edit = qobject_cast<QLineEdit*>(focusWidget())) edit->selectAll();
        auto* scroll = findChild<QScrollArea*>();
        if (m_inside->isAncestorOf(focusWidget())) scroll->ensureWidgetVisible(focusWidget());
        return;
    }
    QDialog::keyPressEvent(event);
}

}  // namespace combwright
