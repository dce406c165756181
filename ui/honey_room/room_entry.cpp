#include "ui/honey_room/room_entry.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLocale>
#include <algorithm>

#include "core/actions/honey_room/runs.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/peg_meant.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/yards.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/box_water.h"

namespace combwright {
namespace {

QString readingText(const Known<Mass>& mass) {
    if (!mass.value) return RoomEntry::tr("unknown");
    return ShownFigure{massTyped(*mass.value), massUnit()}.text();
}

/// "spun", "walked", "stopped" typed as a whole line.
std::optional<Ran> typedRan(const QString& typed) {
    const struct {
        const char* word;
        Ran ran;
    } words[] = {{QT_TRANSLATE_NOOP("combwright::RoomEntry", "spun"), Ran::Smooth},
                 {QT_TRANSLATE_NOOP("combwright::RoomEntry", "walked"), Ran::Walked},
                 {QT_TRANSLATE_NOOP("combwright::RoomEntry", "stopped"), Ran::Stopped}};
    for (const auto& [word, ran] : words)
        if (typed.compare(QLatin1String(word), Qt::CaseInsensitive) == 0 ||
            typed.compare(RoomEntry::tr(word), Qt::CaseInsensitive) == 0)
            return ran;
    return std::nullopt;
}

bool hasDigit(const QString& text) {
    return std::any_of(text.begin(), text.end(), [](QChar each) { return each.isDigit(); });
}

}  // namespace

RoomEntry::RoomEntry(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_for(new QLabel(this)),
      m_line(new QLineEdit(this)),
      m_back(new ReadBack(session, this)) {
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(8);
    m_for->setObjectName(QStringLiteral("entry_for"));
    m_for->setBuddy(m_line);
    m_line->setObjectName(QStringLiteral("entry"));
    m_line->installEventFilter(this);
    // The pad's keys come first: its filter is the newer one.
    m_pad = new PadDesk(session, m_line, this);
    across->addWidget(m_for);
    across->addWidget(m_line, 5);
    across->addWidget(m_back, 6);
    setFocusProxy(m_line);
    connect(m_pad, &PadDesk::askChanged, this, [this] {
        m_begun = false;
        describe();
    });
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (isVisible()) m_back->say(text, bad);
    });
    connect(&session, &Session::seasonChanged, this, [this] { m_back->say({}, false); });
    connect(m_line, &QLineEdit::returnPressed, this, [this] {
        if (m_line->text().trimmed().isEmpty()) return;
        const bool done = m_pad->trail().during(QStringLiteral("line"), [this] {
            const bool kept = enter(m_line->text());
            m_pad->trail().call(m_session.lastTold());
            return kept;
        });
        if (!done) return;
        m_line->clear();
        m_begun = false;
    });
    const auto sizes = [this] {
        m_line->setFont(m_session.look().font(TextSize::Title));
        m_line->setMinimumHeight(m_session.look().target(true));
        m_line->setMinimumWidth(m_session.look().space(150));
        describe();
    };
    connect(&session, &Session::lookChanged, this, sizes);
    sizes();
    describe();
}

void RoomEntry::setTarget(const EntryTarget& target) {
    m_target = target;
    describe();
}

void RoomEntry::describe() {
    const QString unit = massUnit();
    // What the pad asks comes before what was chosen.
    QString what = askedText(m_pad->ask());
    QString example;
    m_back->hint(answersText(m_pad->ask()));
    switch (what.isEmpty() ? m_target.what : EntryTarget::What::Nothing) {
        case EntryTarget::What::BoxFull:
            what = tr("%1 full, %2").arg(fromUtf8(m_target.box->mark), unit);
            break;
        case EntryTarget::What::BoxWet:
            what = tr("%1 wet, %2").arg(fromUtf8(m_target.box->mark), unit);
            break;
        case EntryTarget::What::Bucket:
            what = tr("%1: %2, water %").arg(fromUtf8(m_target.bucket), unit);
            example = tr("13.0 17.2, or half, or 60 %");
            break;
        case EntryTarget::What::HiveOfBox:
            what = tr("Hive of %1").arg(m_target.lostName);
            example = tr("its mark, for instance H2");
            break;
        case EntryTarget::What::Nothing:
            break;
    }
    const bool asked = m_pad->ask().what != PadAsk::What::Nothing;
    if (example.isEmpty() && !asked) example = m_run && m_open ? weighExample() : openExample();
    const bool longer = what.size() > 28;
    m_for->setWordWrap(longer);
    m_for->setMinimumWidth(longer ? m_session.look().space(240) : 0);
    m_for->setFont(m_session.look().font(longer ? TextSize::Body : TextSize::Title, true));
    m_for->setMaximumWidth(m_session.look().space(longer ? 300 : 360));
    m_for->setText(what);
    m_for->setVisible(!what.isEmpty());
    m_line->setPlaceholderText(example);
    m_line->setAccessibleName(what.isEmpty() ? tr("What was weighed") : what);
}

QString RoomEntry::openExample() const {
    if (!m_session.hasSeason()) return {};
    const Read& file = m_session.read();
    const NextLot next = nextLot(file, today());
    auto yard = file.find(next.yard);
    if (const auto yards = openYards(file); !yard && !yards.empty()) yard = yards.front();
    return yard ? tr("open %1 %2").arg(fromUtf8(next.name), fromUtf8(yard->name.text()))
                : tr("open %1").arg(fromUtf8(next.name));
}

QString RoomEntry::weighExample() const {
    if (pegsInUse(m_session.read())) return tr("14 ↵ %1 ↵").arg(massFigure(21400, How::Weighed));
    QString mark = m_target.box ? fromUtf8(m_target.box->mark) : QString();
    const auto first = m_session.read().first<ExtractionBox>({is("extraction", *m_run)});
    if (first) mark = fromUtf8(calledInRun(m_session.read(), *first));
    return mark.isEmpty()
               ? tr("a box and its weight · B3 13.0 17.2 · cappings 11 · spun")
               : tr("a number, or %1 21.4 · %1 wet 5.2 · B3 13.0 17.2 · cappings 11 · spun")
                     .arg(mark);
}

bool RoomEntry::bareIsMass() const {
    if (m_begun) return true;
    const bool chosen = m_target.what != EntryTarget::What::Nothing &&
                        m_target.what != EntryTarget::What::HiveOfBox;
    return chosen && !pegsInUse(m_session.read());
}

void RoomEntry::begin(const QString& text) {
    m_pad->forget();
    m_begun = m_target.what != EntryTarget::What::Nothing;
    m_line->setFocus(Qt::OtherFocusReason);
    if (text.isEmpty()) return m_line->selectAll();
    m_line->setText(text);
}

bool RoomEntry::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_line && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        const bool onPad = key->modifiers() & Qt::KeypadModifier;
        if (!onPad && (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down)) {
            Q_EMIT stepAsked(key->key() == Qt::Key_Up ? -1 : +1);
            return true;
        }
        if (!onPad && (key->key() == Qt::Key_PageUp || key->key() == Qt::Key_PageDown)) {
            Q_EMIT scrollAsked(key->key() == Qt::Key_PageUp ? -1 : +1);
            return true;
        }
        const bool enter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
        if (enter && (key->modifiers() & Qt::ControlModifier)) {
            Q_EMIT closeAsked();
            return true;
        }
        if (key->key() == Qt::Key_Space && (key->modifiers() & Qt::ControlModifier)) {
            Q_EMIT ranAsked(Ran::Smooth);
            return true;
        }
        if (key->key() == Qt::Key_Escape && !m_line->text().isEmpty()) {
            m_line->clear();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

bool RoomEntry::refuse(const QString& text) {
    m_session.tell(text, true);
    return false;
}

bool RoomEntry::enter(const QString& text) {
    if (!m_session.hasSeason()) return false;
    if (const auto ran = typedRan(text.trimmed())) {
        if (!m_run || !m_open) return refuse(tr("No run is open, so nothing was spun."));
        Q_EMIT ranAsked(*ran);
        return true;
    }
    RoomLine line = readRoomLine(text);
    if (m_target.what == EntryTarget::What::HiveOfBox && line.about != RoomLine::About::Open &&
        line.about != RoomLine::About::Hive && !line.mass)
        return enterHive(text.trimmed(), m_target.lost, m_target.lostName);
    // "half 17.2" and "13.0 17.2" are of the bucket chosen.
    if (m_target.what == EntryTarget::What::Bucket &&
        (line.about == RoomLine::About::Chosen ||
         (line.about == RoomLine::About::Box &&
          (line.mass || line.water || !line.notRead.isEmpty())))) {
        const RoomLine bucket = readRoomLine(QStringLiteral("B0 ") + text);
        if (bucket.notRead.isEmpty()) {
            line = bucket;
            line.name = fromUtf8(m_target.bucket);
        }
    }
    if (line.about == RoomLine::About::Open) return enterOpen(line);
    if (!m_run)
        return refuse(tr("First open a run: %1, or Ctrl+Enter for a form.").arg(openExample()));
    if (!line.notRead.isEmpty())
        return refuse(line.about == RoomLine::About::Bucket
                          ? tr("“%1” is no weight in %2, no level and no water in per cent; "
                               "nothing was written down.")
                                .arg(line.notRead, massUnit())
                          : tr("“%1” is no weight in %2; nothing was written down.")
                                .arg(line.notRead, massUnit()));
    switch (line.about) {
        case RoomLine::About::Chosen:
            return enterChosen(line, text);
        case RoomLine::About::Box:
            return enterBox(line);
        case RoomLine::About::Bucket:
            return enterBucket(line);
        case RoomLine::About::Hive: {
            for (const ExtractionBox& box :
                 m_session.read().where<ExtractionBox>({is("extraction", *m_run)}))
                if (fromUtf8(calledInRun(m_session.read(), box)) == line.name)
                    return enterHive(line.behind, box.id, line.name);
            return refuse(tr("There is no box %1 in this run.").arg(line.name));
        }
        default:
            return enterRest(line);
    }
}

bool RoomEntry::enterOpen(const RoomLine& line) {
    if (line.name.isEmpty())
        return refuse(tr("A run needs the name of its lot: %1").arg(openExample()));
    OpenRun open;
    open.on = today();
    open.run = *Name::of(line.name.toStdString());
    if (!line.behind.isEmpty()) {
        const auto yard = findNamed(m_session.read(), Yard::table,
                                    NameQuery{.name = line.behind.toStdString(), .on = open.on});
        if (!yard) return refuse(sentence(yard.error()));
        open.yard = Id<Yard>{*yard};
    }
    const auto made = m_session.run(open);
    if (made) Q_EMIT runOpened(*made);
    return made.has_value();
}

std::int64_t RoomEntry::unspunIn(const RoomBox& box) const {
    const Read& file = m_session.read();
    if (!file.first<SpinLoad>({is("extraction", *m_run)})) return 0;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", *m_run)}))
        if (box.box ? entry.box == box.box : !entry.box && entry.knownAs == box.mark)
            return unspunOf(file, entry);
    return 0;
}

bool RoomEntry::weigh(const RoomBox& box, const Known<Mass>& mass, bool wet) {
    const QString slip = fromUtf8(box.mark) + readingText(mass);
    if (wet && mass.value && heavyForWet(box, *mass.value) && m_asked != slip) {
        m_asked = slip;
        return refuse(tr("%1 wet, when %2 weighed %3 full? Press Enter again to keep it, or type "
                         "“full %4” to put the full weight right.")
                          .arg(readingText(mass), fromUtf8(box.mark), readingText(*box.gross),
                               massTyped(*mass.value)));
    }
    // Once it is wet its frames are in no load any more.
    const std::int64_t left = wet && mass.value ? unspunIn(box) : 0;
    if (left > 0 && m_asked != slip) {
        m_asked = slip;
        return refuse((left == 1 ? tr("1 frame of %1 is not spun: is %2 its wet weight? Press "
                                      "Enter again to keep it.")
                                       .arg(fromUtf8(box.mark), readingText(mass))
                                 : tr("%1 frames of %2 are not spun: is %3 its wet weight? Press "
                                      "Enter again to keep it.")
                                       .arg(left)
                                       .arg(fromUtf8(box.mark), readingText(mass))));
    }
    m_asked.clear();
    WeighBox weigh;
    weigh.on = today();
    weigh.run = *m_run;
    weigh.box = box.box;
    if (!box.box) weigh.knownAs = box.mark;
    (wet ? weigh.wet : weigh.gross) = mass;
    const auto before = wet ? box.wet : box.gross;
    if (!m_session.run(weigh)) return false;
    QString text =
        (wet ? tr("%1 wet: %2") : tr("%1 full: %2")).arg(fromUtf8(box.mark), readingText(mass));
    if (before && before->value) text += tr(", was %1").arg(readingText(*before));
    m_session.tell(text);
    return true;
}

bool RoomEntry::enterBox(const RoomLine& line) {
    const std::string mark = line.name.toStdString();
    RoomBox row;
    row.mark = mark;
    const Read& file = m_session.read();
    bool inRun = false;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", *m_run)})) {
        if (calledInRun(file, entry) != mark) continue;
        inRun = true;
        row.box = entry.box;
        row.gross = entry.gross;
        row.wet = entry.wet;
        if (!entry.box) row.mark = entry.knownAs;
    }
    if (!inRun) {
        const auto box = findNamed(file, Box::table, NameQuery{.name = mark, .on = today()});
        if (box) {
            row.box = Id<Box>{*box};
        } else if (box.error().code == Code::Ambiguous) {
            return refuse(sentence(box.error()));
        } else if (hasDigit(line.name) && m_asked != line.name) {
            // Words are a lost tag; letters and digits are more likely a slip of the pen.
            m_asked = line.name;
            return refuse(tr("No box %1 is known here. Put the mark right, or press Enter again to "
                             "keep it as a box without a tag.")
                              .arg(line.name));
        }
    }
    if (line.frames) return countFrames(row, *line.frames);
    const bool wet = line.wet.value_or(false);
    if (line.mass && !weigh(row, *line.mass, wet)) return false;
    if (line.water && !keepWater(row, *line.water, line.mass ? m_session.lastTold() : QString()))
        return false;
    if (!line.mass) return true;
    EntryTarget done;
    done.what = wet ? EntryTarget::What::BoxWet : EntryTarget::What::BoxFull;
    done.box = row;
    Q_EMIT weighed(done);
    if (!inRun && !row.box)
        m_session.tell(
            tr("%1 is kept as a box without a tag. How many frames? %1 frames 9").arg(line.name));
    return true;
}

bool RoomEntry::keepWater(const RoomBox& box, double percent, const QString& said) {
    if (!box.box) return refuse(waterOfUnknownBox(fromUtf8(box.mark)));
    if (!keepBoxWater(m_session, *box.box, percent)) return false;
    const QString water = tr("water %1 %").arg(QLocale().toString(percent, 'f', 1));
    m_session.tell(said.isEmpty() ? fromUtf8(box.mark) + QStringLiteral(": ") + water
                                  : said + QStringLiteral(", ") + water);
    return true;
}

bool RoomEntry::countFrames(const RoomBox& box, int frames) {
    WeighBox count;
    count.on = today();
    count.run = *m_run;
    count.box = box.box;
    if (!box.box) count.knownAs = box.mark;
    count.frames = Count(frames);
    if (!m_session.run(count)) return false;
    m_session.tell(tr("%1: %2 frames").arg(fromUtf8(box.mark)).arg(frames));
    return true;
}

bool RoomEntry::enterHive(const QString& name, std::optional<Id<ExtractionBox>> box,
                          const QString& of) {
    if (!box) return refuse(tr("Choose the line without a hive first."));
    const auto hive = findNamed(m_session.read(), Hive::table,
                                NameQuery{.name = name.toStdString(), .on = today()});
    if (!hive) return refuse(sentence(hive.error()));
    NameLostBox deed;
    deed.on = today();
    deed.lost = *box;
    deed.hive = Id<Hive>{*hive};
    if (!m_session.run(deed)) return false;
    const auto entry = m_session.read().find(*box);
    m_session.tell((entry && entry->box
                        ? tr("%1 was of %2. Shares are revised where the run was closed.")
                        : tr("The box written down as “%1” was of %2. Shares are revised where the "
                             "run was closed."))
                       .arg(of, name));
    EntryTarget done = m_target;
    setTarget({});
    Q_EMIT weighed(done);
    return true;
}

bool RoomEntry::enterBucket(const RoomLine& line) {
    FillBucket fill;
    fill.on = today();
    fill.run = *m_run;
    fill.bucket = *Name::of(line.name.toStdString());
    fill.net =
        line.level ? std::optional(massAtLevel(m_session.read(), *line.level, fill.on)) : line.mass;
    if (line.water) fill.water = WaterContent::roundedPercent(*line.water);
    fill.lidded = line.lidded;
    if (!m_session.run(fill)) return false;
    QStringList parts;
    if (fill.net) parts << readingText(*fill.net) + QLatin1Char(' ') + howWord(fill.net->how);
    if (line.water) parts << tr("water %1 %").arg(*line.water);
    if (line.lidded) parts << tr("lid on");
    m_session.tell(tr("Bucket %1: %2").arg(line.name, parts.join(QStringLiteral(", "))));
    return true;
}

bool RoomEntry::enterRest(const RoomLine& line) {
    WeighCappings weigh;
    weigh.on = today();
    weigh.run = *m_run;
    (line.about == RoomLine::About::Cappings ? weigh.cappings : weigh.scrapings) = line.mass;
    if (!line.mass) return refuse(tr("Box and weight, for instance M07 21.4"));
    if (!m_session.run(weigh)) return false;
    m_session.tell(
        (line.about == RoomLine::About::Cappings ? tr("Wet cappings: %1") : tr("Scrapings: %1"))
            .arg(readingText(*line.mass)));
    return true;
}

bool RoomEntry::enterChosen(RoomLine line, const QString& text) {
    if (m_target.what == EntryTarget::What::Bucket) {
        line = readRoomLine(QStringLiteral("B0 ") + text);
        line.name = fromUtf8(m_target.bucket);
        return line.notRead.isEmpty() ? enterBucket(line)
                                      : refuse(tr("“%1” is no weight.").arg(line.notRead));
    }
    if (!m_target.box)
        return refuse(
            tr("Choose a box with Up and Down first, or type its mark before the "
               "number."));
    EntryTarget done = m_target;
    const bool wet = line.wet.value_or(m_target.what == EntryTarget::What::BoxWet);
    done.what = wet ? EntryTarget::What::BoxWet : EntryTarget::What::BoxFull;
    if (!weigh(*m_target.box, *line.mass, wet)) return false;
    if (line.water && !keepWater(*done.box, *line.water, m_session.lastTold())) return false;
    Q_EMIT weighed(done);
    return true;
}

}  // namespace combwright
