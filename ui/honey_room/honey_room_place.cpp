#include "ui/honey_room/honey_room_place.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLocale>
#include <QRegularExpression>
#include <QVBoxLayout>
#include <algorithm>
#include <map>

#include "core/actions/honey_room/runs.h"
#include "core/places/pages/honey_room_pages.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/run_drawing.h"

namespace combwright {
namespace {

std::optional<Known<Mass>> weighedKilograms(const QString& text) {
    const auto number = typedNumber(text);
    if (!number) return std::nullopt;
    return Known<Mass>{Mass::roundedGrams(*number * 1000.0), std::nullopt, How::Weighed};
}

QString massText(const std::optional<Known<Mass>>& mass) {
    if (!mass || !mass->value) return {};
    return QStringLiteral("%1 %2").arg(
        massFigure(static_cast<double>(mass->value->grams()), mass->how),
        QString(QLatin1Char(letter(mass->how))));
}

}  // namespace

HoneyRoomPlace::HoneyRoomPlace(Session& session, QWidget* parent) : Place(session, parent) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_runs = new QComboBox;
    m_runs->setObjectName(QStringLiteral("run"));
    m_runs->setAccessibleName(tr("Run"));
    m_caution = new QLabel(
        tr("<b>Mind</b> &nbsp; lid shut while it turns · hot knife and pot off when you leave "
           "the room · wet floor · <b>over 23 kg: two people</b>"),
        this);
    m_caution->setWordWrap(true);
    m_empty =
        new QLabel(tr("No run is open. Type the name of a lot and its yard below, for instance "
                      "<b>open 27-2 Hill</b>, then weigh its boxes: <b>M07 21.4</b> full, later "
                      "<b>M07 wet 5.2</b>."),
                   this);
    m_empty->setWordWrap(true);

    m_room = new QWidget(this);
    auto* across = new QHBoxLayout(m_room);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(24);
    auto* left = new QVBoxLayout;
    left->addWidget(new QLabel(tr("<b>Boxes</b>, oldest first"), m_room));
    m_boxes = new QTableWidget(m_room);
    m_boxes->setObjectName(QStringLiteral("boxes"));
    m_boxes->setAccessibleName(tr("Boxes of the run"));
    m_boxes->setTabKeyNavigation(false);
    m_boxes->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_boxes->setShowGrid(false);
    m_boxes->setFrameShape(QFrame::NoFrame);
    m_boxes->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_boxes->verticalHeader()->hide();
    m_boxes->horizontalHeader()->setHighlightSections(false);
    left->addWidget(m_boxes, 1);
    across->addLayout(left, 3);

    auto* middle = new QVBoxLayout;
    m_load = new LoadView(session, m_room);
    m_loadText = new QLabel(m_room);
    m_loadText->setObjectName(QStringLiteral("load_text"));
    m_loadText->setWordWrap(true);
    m_loadText->setTextFormat(Qt::RichText);
    auto* keys = new QHBoxLayout;
    const auto button = [&](const QString& text, const char* name, auto deed) {
        auto* made = new QPushButton(text, m_room);
        made->setObjectName(QLatin1String(name));
        connect(made, &QPushButton::clicked, this, deed);
        keys->addWidget(made);
    };
    button(tr("Load before"), "load_before", [this] {
        m_loadIndex = std::max(0, m_loadIndex - 1);
        fillLoad();
    });
    button(tr("Load after"), "load_after", [this] {
        ++m_loadIndex;
        fillLoad();
    });
    button(tr("Spun, smooth"), "spun_smooth", [this] { spun(Ran::Smooth); });
    button(tr("It walked"), "spun_walked", [this] { spun(Ran::Walked); });
    middle->addWidget(m_load, 1);
    middle->addWidget(m_loadText);
    middle->addLayout(keys);
    across->addLayout(middle, 5);

    auto* right = new QVBoxLayout;
    right->addWidget(new QLabel(tr("<b>Buckets</b>"), m_room));
    m_buckets = new BucketRow(session, m_room);
    right->addWidget(m_buckets, 3);
    m_drawing = new RunDrawing(session, m_room);
    right->addWidget(m_drawing, 2);
    m_balanceText = new QLabel(m_room);
    m_balanceText->setObjectName(QStringLiteral("balance"));
    m_balanceText->setWordWrap(true);
    m_balanceText->setTextFormat(Qt::RichText);
    right->addWidget(m_balanceText);
    across->addLayout(right, 4);

    m_entry = new QLineEdit(this);
    m_entry->setObjectName(QStringLiteral("entry"));
    m_entry->setAccessibleName(tr("What was weighed"));
    m_entry->setPlaceholderText(
        tr("M07 21.4 · M07 wet 5.2 · B3 13.0 17.2 · cappings 11 · open 27-3 Creek"));

    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(24, 8, 24, 12);
    whole->setSpacing(8);
    whole->addWidget(m_caution);
    whole->addWidget(m_empty);
    // At large type the room is wider than the window; it scrolls rather than cut words off.
    m_roomScroll = new QScrollArea(this);
    m_roomScroll->setFrameShape(QFrame::NoFrame);
    m_roomScroll->setWidgetResizable(true);
    m_roomScroll->setFocusPolicy(Qt::NoFocus);
    m_roomScroll->setWidget(m_room);
    whole->addWidget(m_roomScroll, 1);
    whole->addWidget(m_entry);
    whole->addStretch(0);

    connect(m_entry, &QLineEdit::returnPressed, this, [this] {
        if (enter(m_entry->text())) m_entry->clear();
    });
    connect(m_runs, &QComboBox::activated, this, [this](int index) {
        m_run = Id<Extraction>{m_runs->itemData(index).toLongLong()};
        m_loadIndex = 0;
        reload();
    });
    connect(m_load, &LoadView::changed, this,
            [this] { m_loadText->setText(QStringLiteral("<b>%1</b>").arg(m_load->offsetText())); });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_run.reset();
        m_loadIndex = 0;
    });
    connect(&session, &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    const auto sizes = [this] {
        const QFont font = look().font(TextSize::Head);
        for (QWidget* widget : std::initializer_list<QWidget*>{m_boxes, m_entry})
            widget->setFont(font);
        m_room->setMinimumWidth(look().space(940));
        m_boxes->setMinimumWidth(look().space(220));
        m_load->setMinimumSize(look().space(380), look().space(340));
        m_entry->setMinimumHeight(look().target(true));
        m_boxes->verticalHeader()->setDefaultSectionSize(look().space(30));
    };
    connect(&session, &Session::lookChanged, this, sizes);
    sizes();
}

void HoneyRoomPlace::fillRuns() {
    auto runs = session().read().all<Extraction>();
    std::reverse(runs.begin(), runs.end());
    m_runs->clear();
    bool stillThere = false;
    for (const Extraction& run : runs) {
        QString text = fromUtf8(run.name.text());
        if (run.yard)
            text += QLatin1Char(' ') +
                    fromUtf8(nameOf(session().read(), Yard::table, run.yard->number));
        m_runs->addItem(text, static_cast<qlonglong>(run.id.number));
        stillThere = stillThere || run.id == m_run;
    }
    if (!stillThere) {
        m_run = runs.empty() ? std::nullopt : std::optional(runs.front().id);
        const auto open = openRuns(session().read());
        if (!open.empty()) m_run = open.front().id;
    }
    if (m_run) m_runs->setCurrentIndex(m_runs->findData(static_cast<qlonglong>(m_run->number)));
    m_runs->setVisible(!runs.empty());
}

void HoneyRoomPlace::reload() {
    if (!session().hasSeason()) return;
    fillRuns();
    m_empty->setVisible(!m_run);
    m_roomScroll->setVisible(m_run.has_value());
    m_balance.reset();
    m_loads = {};
    if (m_run) {
        const auto balance = runBalance(session().read(), *m_run);
        if (balance) m_balance = *balance;
        const auto run = session().read().find(*m_run);
        if (run && !run->closed)
            if (auto loads = loadSheet(session().read(), {*m_run}, session().clock().today()))
                m_loads = *std::move(loads);
        fillBoxes();
        const double full =
            constantOr(session().read(), "bucket_g", {}, session().clock().today(), 13600);
        const double wet =
            constantOr(session().read(), "max_water_percent", {}, session().clock().today(), 18.0);
        m_buckets->show(session().read().where<Bucket>({is("extraction", *m_run)}), full, wet);
        m_drawing->show(m_balance);
        QString text;
        if (balance) {
            for (const RunShare& share : balance->shares)
                text += QStringLiteral("%1 <b>%2</b> kg<sup>%3</sup>%4 &nbsp; ")
                            .arg(share.hive ? fromUtf8(share.mark).toHtmlEscaped() : tr("no tag"),
                                 massFigure(static_cast<double>(share.mass.grams()), share.how),
                                 QString(QLatin1Char(letter(share.how))),
                                 share.atClosing ? tr(" (revised)") : QString());
            if (balance->byEye && !balance->shares.empty())
                text += tr("By eye: nothing was weighed.");
        } else {
            text = sentence(balance.error());
        }
        m_balanceText->setText(text);
        fillLoad();
    }
    Q_EMIT headChanged();
}

void HoneyRoomPlace::fillBoxes() {
    const auto boxes = session().read().where<ExtractionBox>({is("extraction", *m_run)});
    m_boxes->clear();
    m_boxes->setColumnCount(4);
    m_boxes->setHorizontalHeaderLabels({tr("Box"), tr("Hive"), tr("full, kg"), tr("wet, kg")});
    m_boxes->setRowCount(static_cast<int>(boxes.size()));
    int row = 0;
    for (const ExtractionBox& box : boxes) {
        const auto known = session().read().find(box.box);
        const QString mark =
            known && !known->mark.empty() ? fromUtf8(known->mark) : fromUtf8(box.knownAs);
        const QStringList texts{
            mark,
            box.hive ? fromUtf8(nameOf(session().read(), Hive::table, box.hive->number))
                     : QStringLiteral("?"),
            massText(box.gross).isEmpty() ? QStringLiteral("?") : massText(box.gross),
            massText(box.wet)};
        for (int column = 0; column < texts.size(); ++column)
            m_boxes->setItem(row, column, new QTableWidgetItem(texts[column]));
        ++row;
    }
    m_boxes->resizeColumnsToContents();
}

void HoneyRoomPlace::fillLoad() {
    const int count = static_cast<int>(m_loads.loads.size());
    if (count == 0) {
        m_load->clear();
        m_loadText->clear();
        return;
    }
    m_loadIndex = std::clamp(m_loadIndex, 0, count - 1);
    m_load->show(m_loads.loads[static_cast<std::size_t>(m_loadIndex)], m_loads.allowedG);
    m_loadText->setText(
        QStringLiteral("<b>%1</b> %2")
            .arg(tr("Load %1 of %2:").arg(m_loadIndex + 1).arg(count), m_load->offsetText()));
}

void HoneyRoomPlace::spun(Ran ran) {
    if (!m_run || !m_load->hasLoad()) return;
    std::map<std::string, int> frames;
    for (const auto& place : m_load->load().places)
        if (place) ++frames[place->box];
    QStringList boxes;
    for (const auto& [box, many] : frames)
        boxes << QStringLiteral("%1 %2").arg(fromUtf8(box)).arg(many);
    SpinFrames spin;
    spin.on = session().clock().today();
    spin.run = *m_run;
    spin.boxes = boxes.join(QStringLiteral(", ")).toStdString();
    spin.ran = ran;
    spin.startOffset = Mass::roundedGrams(m_load->load().offset.startG);
    spin.endOffset = Mass::roundedGrams(m_load->load().offset.endG);
    spin.doubt = Mass::roundedGrams(m_load->load().doubtG);
    const int index = m_loadIndex;
    if (!session().run(spin)) return;
    session().tell(tr("Load %1 spun.").arg(index + 1));
    m_loadIndex = index + 1;
    fillLoad();
}

bool HoneyRoomPlace::enterBox(const QStringList& words) {
    const bool wet = words.size() > 2 && words[1].compare(tr("wet"), Qt::CaseInsensitive) == 0;
    const auto mass = weighedKilograms(words.last());
    if (!mass) {
        session().tell(tr("%1 is no weight in kg.").arg(words.last()), true);
        return false;
    }
    WeighBox weigh;
    weigh.on = session().clock().today();
    weigh.run = *m_run;
    const auto box = findNamed(session().read(), Box::table,
                               NameQuery{.name = words.first().toStdString(), .on = weigh.on});
    // A mark nobody painted is a box whose tag was lost: it keeps a line of its own.
    if (box)
        weigh.box = Id<Box>{*box};
    else
        weigh.knownAs = words.first().toStdString();
    (wet ? weigh.wet : weigh.gross) = mass;
    if (!session().run(weigh)) return false;
    session().tell(wet ? tr("%1 wet: %2 kg").arg(words.first(), words.last())
                       : tr("%1 full: %2 kg").arg(words.first(), words.last()));
    return true;
}

bool HoneyRoomPlace::enterBucket(const QStringList& words) {
    FillBucket fill;
    fill.on = session().clock().today();
    fill.run = *m_run;
    fill.bucket = *Name::of(words.first().toUpper().toStdString());
    fill.net = weighedKilograms(words.value(1));
    if (!fill.net) {
        session().tell(tr("%1 is no weight in kg.").arg(words.value(1)), true);
        return false;
    }
    if (words.size() > 2) {
        const auto water = typedNumber(words[2]);
        if (!water) {
            session().tell(tr("%1 is no water in per cent.").arg(words[2]), true);
            return false;
        }
        fill.water = WaterContent::roundedPercent(*water);
    }
    if (!session().run(fill)) return false;
    session().tell(tr("Bucket %1: %2 kg").arg(words.first(), words.value(1)));
    return true;
}

bool HoneyRoomPlace::enter(const QString& text) {
    if (!session().hasSeason()) return false;
    const QStringList words = text.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.size() < 2) {
        session().tell(tr("Box and weight, for instance M07 21.4"), true);
        return false;
    }
    if (words.first().compare(tr("open"), Qt::CaseInsensitive) == 0) {
        OpenRun open;
        open.on = session().clock().today();
        open.run = *Name::of(words[1].toStdString());
        if (words.size() > 2) {
            const auto yard =
                findNamed(session().read(), Yard::table,
                          NameQuery{.name = words.mid(2).join(QLatin1Char(' ')).toStdString(),
                                    .on = open.on});
            if (!yard) {
                session().tell(sentence(yard.error()), true);
                return false;
            }
            open.yard = Id<Yard>{*yard};
        }
        const auto made = session().run(open);
        if (!made) return false;
        m_run = *made;
        reload();
        return true;
    }
    if (!m_run) {
        session().tell(tr("First open a run: open 27-2 Hill"), true);
        return false;
    }
    if (words.first().compare(tr("cappings"), Qt::CaseInsensitive) == 0) {
        WeighCappings weigh;
        weigh.on = session().clock().today();
        weigh.run = *m_run;
        weigh.cappings = weighedKilograms(words[1]);
        if (weigh.cappings) return session().run(weigh).has_value();
        session().tell(tr("%1 is no weight in kg.").arg(words[1]), true);
        return false;
    }
    static const QRegularExpression bucket(QStringLiteral("^[bB]\\d+$"));
    return bucket.match(words.first()).hasMatch() ? enterBucket(words) : enterBox(words);
}

PlaceHead HoneyRoomPlace::head() const {
    PlaceHead head;
    head.title = tr("Honey room");
    if (!m_run) {
        head.under = tr("no run yet");
        return head;
    }
    const auto run = session().read().find(*m_run);
    if (!run) return head;
    head.under = run->closed ? tr("closed on %1").arg(dayText(*run->closed))
                             : tr("since %1").arg(dayText(run->on));
    if (m_balance && m_balance->buckets > Mass()) {
        head.big = {
            massFigure(static_cast<double>(m_balance->buckets.grams()), m_balance->bucketsHow),
            tr("kg"), letter(m_balance->bucketsHow)};
        head.bigNote = tr("in the buckets");
        if (m_balance->unaccountedG)
            head.bigNote +=
                tr(",\n%1 missing").arg(massFigure(*m_balance->unaccountedG, How::Weighed));
    }
    if (!run->closed) head.action = tr("Close the day");
    return head;
}

std::vector<KeyHint> HoneyRoomPlace::hints() const {
    return {{QStringLiteral("↵"), tr("weigh")}, {QStringLiteral("Space"), tr("take a frame up")}};
}

std::vector<PrintSheet> HoneyRoomPlace::sheets() const {
    return {{QStringLiteral("loads"), tr("Extractor loads"),
             [this] { return loadsPage(session().read(), m_loads, session().clock().today()); }}};
}

QString HoneyRoomPlace::help() const {
    return tr(
        "A run is honey handled together: one lot. Weigh a box full as it comes in (M07 21.4), wet "
        "when it "
        "is empty (M07 wet 5.2); fill buckets (B3 13.0 17.2: kilograms and water); weigh the wet "
        "cappings "
        "(cappings 11). A mark nobody painted is kept as a box without a tag. What the boxes lost "
        "shares "
        "the buckets out to the hives; nothing weighed is fine too, and then said to be by "
        "eye.\n\nThe "
        "extractor is seen from above. Arrows go round the slots; Space takes a frame up and puts "
        "it down "
        "in another slot, and the offsets follow. Start slow, lid shut, hands away from the drum. "
        "The "
        "allowed offset is advice from a balance grade, not a safety certificate: the machine's "
        "own manual "
        "decides.");
}

void HoneyRoomPlace::act() {
    if (!m_run) return;
    CloseRun close;
    close.on = session().clock().today();
    close.run = *m_run;
    if (session().run(close))
        session().tell(tr("The run is closed; what changes later is said to be revised."));
}

}  // namespace combwright
