#include "ui/honey_room/pad_desk.h"

#include <QKeyEvent>
#include <QLocale>
#include <algorithm>

#include "core/actions/amend/amend.h"
#include "core/actions/honey_room/asides.h"
#include "core/actions/honey_room/pegs.h"
#include "core/actions/honey_room/runs.h"
#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/peg_meant.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/pegs.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/box_water.h"

namespace combwright {
namespace {

/// The same key again within that time is the same stroke, ms. Frames are set aside one by one,
/// and quickly.
std::int64_t bounceMs(QChar key) { return key == QLatin1Char('*') ? 400 : 2000; }

}  // namespace

PadDesk::PadDesk(Session& session, QLineEdit* line, QObject* parent)
    : QObject(parent), m_session(session), m_line(line), m_trail(session) {
    line->installEventFilter(this);
    connect(line, &QLineEdit::textChanged, this, [this](const QString& text) {
        if (isFelt(text))
            Q_EMIT felt(feltLetters(text, m_at().slotCount).value_or(QString()), false);
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_trail.forget();
        forget();
    });
}

PadRoom PadDesk::room() const {
    PadRoom room;
    const At at = m_at();
    room.slotCount = at.slotCount;
    room.spinning = at.spinning;
    room.bareIsMass = at.bareIsMass;
    room.withoutPeg = nextLooseName(m_session.read(), at.open ? at.run : std::nullopt);
    room.bucketHolds = Mass::roundedGrams(bucketHoldsG(m_session.read(), today()));
    room.onPeg = [this, at](int peg) -> std::optional<PadBox> {
        if (peg == 0) return at.run && at.open ? looseBox(m_session.read(), *at.run) : std::nullopt;
        const auto meant = pegMeant(m_session.read(), peg, today());
        return meant ? std::optional(meant->box) : std::nullopt;
    };
    room.heavyForWet = [](const PadBox& box, Mass wet) {
        RoomBox known;
        if (box.gross) known.gross = Known<Mass>{*box.gross, std::nullopt, How::Weighed};
        return heavyForWet(known, wet);
    };
    return room;
}

bool PadDesk::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_line && event->type() == QEvent::KeyPress && m_session.hasSeason())
        return keyPressed(*static_cast<QKeyEvent*>(event));
    return QObject::eventFilter(watched, event);
}

bool PadDesk::keyPressed(QKeyEvent& event) {
    if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier))
        return false;
    const QString typed = m_line->text();
    const bool onPad = event.modifiers() & Qt::KeypadModifier;
    const auto key = padKey(event.key(), onPad, event.text());
    m_asked = m_pad.ask();
    if (event.key() == Qt::Key_Escape && typed.isEmpty() && m_asked.what != PadAsk::What::Nothing) {
        forget();
        return true;
    }
    // Frames by feel: only their signs, and no more than there are slots.
    if (isFelt(typed) && !event.text().isEmpty() && event.text().front().isPrint() &&
        !m_line->hasSelectedText() &&
        !feltLetters(typed + (key ? QString(*key) : event.text()), m_at().slotCount)) {
        m_session.tell(tr("3 heavy, 2 middling, 1 light, up to %1 frames; Enter ends it.")
                           .arg(m_at().slotCount),
                       true);
        return true;
    }
    if (!key) return false;
    if (m_pad.acts(*key, typed)) {
        press(*key);
        return true;
    }
    m_lastKey.reset();
    if (*key == QLatin1Char('\n')) {
        const PadDeed deed = m_pad.enter(typed, room());
        if (deed.what == PadDeed::What::NotPad) {
            m_pad.forget();
            Q_EMIT askChanged();
            return false;
        }
        if (deed.what != PadDeed::What::NotRead) m_line->clear();
        handle(deed);
        return true;
    }
    // Num Lock is off: the pad's arrows are its digits.
    const bool typesItself = event.text().size() == 1 && event.text().front().isPrint();
    if (!typesItself && *key != QLatin1Char('\b')) {
        m_line->insert(*key == QLatin1Char('.') ? QString(QLocale().decimalPoint())
                                                : QString(*key));
        return true;
    }
    return false;
}

bool PadDesk::bounced(QChar key) {
    const bool guarded =
        key == QLatin1Char('+') || key == QLatin1Char('-') || key == QLatin1Char('*');
    if (!guarded) {
        m_lastKey.reset();
        return false;
    }
    const std::int64_t now = m_session.clock().steadyMs();
    const bool again = m_lastKey == key && now - m_lastKeyAt < bounceMs(key);
    m_lastKey = key;
    m_lastKeyAt = now;
    if (again)
        m_session.tell(tr("%1 came twice; the second one changed nothing.")
                           .arg(key == QLatin1Char('-') ? QStringLiteral("−") : QString(key)),
                       true);
    return again;
}

bool PadDesk::answers(PadAsk::What what) {
    const bool does = m_asked.what == what || m_pad.ask().what == what;
    if (does && m_pad.ask().what == what) {
        m_pad.forget();
        Q_EMIT askChanged();
    }
    m_asked = {};
    return does;
}

void PadDesk::press(QChar key) {
    if (bounced(key)) return;
    m_asked = m_pad.ask();
    handle(m_pad.press(key));
}

void PadDesk::askLater(const PadAsk& ask) {
    // Of a row of the pile it is asked once.
    if (std::none_of(m_later.begin(), m_later.end(), [&](const PadAsk& other) {
            return ask.row != 0 && other.what == ask.what && other.row == ask.row;
        }))
        m_later.push_back(ask);
    askNext();
}

bool PadDesk::isSettled(const PadAsk& ask) const {
    if (ask.what != PadAsk::What::Settle) return false;
    const auto aside = m_session.read().find(Id<SetAside>{ask.row});
    return !aside || aside->became;
}

void PadDesk::askNext() {
    while (!m_later.empty() && isSettled(m_later.front())) m_later.pop_front();
    if (m_later.empty() || m_pad.ask().what != PadAsk::What::Nothing || m_at().spinning) return;
    m_pad.setAsk(m_later.front());
    m_later.pop_front();
    Q_EMIT askChanged();
}

void PadDesk::forget() {
    m_pad.forget();
    m_later.clear();
    Q_EMIT askChanged();
}

void PadDesk::read(const QString& said) {
    m_trail.call(said);
    m_session.tell(said);
}

void PadDesk::handle(const PadDeed& deed) {
    const auto during = [&](const QString& name, auto perform) {
        m_trail.during(name, [&] { return (this->*perform)(deed); });
    };
    switch (deed.what) {
        case PadDeed::What::NotPad:
        case PadDeed::What::Asks:
            break;
        case PadDeed::What::NotRead:
            m_session.tell(deed.notRead, true);
            break;
        case PadDeed::What::Left:
            m_session.tell(leftText(m_asked));
            break;
        case PadDeed::What::Weigh:
            during(QStringLiteral("box ") + deed.box.mark, &PadDesk::weigh);
            break;
        case PadDeed::What::Frames:
            m_trail.alsoDuring(QStringLiteral("box ") + deed.box.mark,
                               [&] { return keepFrames(deed); });
            break;
        case PadDeed::What::Bucket: {
            const QString name = QStringLiteral("bucket %1").arg(deed.number);
            // Honey and water of a bucket are one entry.
            if (deed.water)
                m_trail.alsoDuring(name, [&] { return fill(deed); });
            else
                m_trail.during(name, [&] { return fill(deed); });
            break;
        }
        case PadDeed::What::Cappings:
        case PadDeed::What::Scrapings:
            during(QStringLiteral("cappings"), &PadDesk::weighRest);
            break;
        case PadDeed::What::AsideBox:
            m_trail.alsoDuring(QStringLiteral("aside"), [&] { return keepAsideBox(deed); });
            break;
        case PadDeed::What::AsideWhy:
            m_trail.alsoDuring(QStringLiteral("aside"), [&] { return keepWhy(deed); });
            break;
        case PadDeed::What::Settle:
            during(QStringLiteral("settle"), &PadDesk::settle);
            break;
        case PadDeed::What::Gate:
            Q_EMIT gateAsked();
            break;
        case PadDeed::What::Clock:
            Q_EMIT clockAsked();
            break;
        case PadDeed::What::Plus:
            Q_EMIT plusAsked();
            break;
        case PadDeed::What::Walked:
            Q_EMIT ranAsked(Ran::Walked);
            break;
        case PadDeed::What::Stopped:
            Q_EMIT stoppedAfterAll();
            break;
        case PadDeed::What::Aside:
            Q_EMIT asideAsked();
            break;
        case PadDeed::What::Close:
            Q_EMIT closeAsked();
            break;
        case PadDeed::What::TakeBack:
            Q_EMIT takeBackAsked();
            break;
        case PadDeed::What::Feel:
            Q_EMIT felt(deed.letters, true);
            break;
        case PadDeed::What::Seen:
            Q_EMIT seenAsked();
            break;
        case PadDeed::What::NextRun:
            Q_EMIT nextRunAsked();
            break;
        case PadDeed::What::DayLog:
            Q_EMIT dayLogAsked();
            break;
    }
    m_asked = {};
    Q_EMIT askChanged();
    askNext();
}

std::optional<Id<Extraction>> PadDesk::runFor(const PadDeed& deed) {
    const Read& file = m_session.read();
    const At at = m_at();
    const auto meant = pegMeant(file, deed.box.peg, today());
    if (meant && meant->run) return meant->run;
    const auto shown = at.open ? at.run : std::nullopt;
    const auto run = file.find(shown);
    // A box of nobody's yard goes into what is open.
    if (run && (!meant || !meant->yard || !run->yard || run->yard == meant->yard)) return shown;
    OpenRun open;
    open.on = today();
    const NextLot next = nextLot(file, open.on);
    open.run = *Name::of(next.name);
    open.yard = meant && meant->yard ? meant->yard : next.yard;
    return m_session.run(open);
}

bool PadDesk::keepWater(const PadDeed& deed) {
    const auto peg =
        deed.box.peg > 0 ? pegOn(m_session.read(), Count(deed.box.peg), today()) : std::nullopt;
    if (!peg || !peg->box) {
        m_session.tell(waterOfUnknownBox(calledText(deed.box)), true);
        return false;
    }
    if (!keepBoxWater(m_session, *peg->box, *deed.water)) return false;
    if (!deed.mass)
        read(tr("%1, water %2 %")
                 .arg(calledText(deed.box), QLocale().toString(*deed.water, 'f', 1)));
    return true;
}

bool PadDesk::weigh(const PadDeed& deed) {
    // Only its water: the weight is asked on.
    if (!deed.mass) return keepWater(deed);
    const Day on = today();
    const bool hadRun = m_at().run && m_at().open;
    const std::size_t runsBefore = m_session.read().all<Extraction>().size();
    const auto run = runFor(deed);
    if (!run) return false;
    const bool opened = m_session.read().all<Extraction>().size() > runsBefore;
    WeighBox weigh;
    weigh.on = on;
    weigh.run = *run;
    (deed.wet ? weigh.wet : weigh.gross) = deed.mass;
    const bool clipped = pegMeant(m_session.read(), deed.box.peg, on).has_value();
    if (deed.box.peg > 0)
        weigh.peg = Count(deed.box.peg);
    else
        weigh.knownAs = deed.box.mark.toStdString();
    const bool kept = m_session.together([&](Season& season) -> Result<void> {
        if (deed.box.peg > 0 && !clipped) {
            // Nobody said which box it is on: it gets a line of its own under its number.
            ClipPeg clip;
            clip.on = on;
            clip.peg = Count(deed.box.peg);
            if (const auto done = perform(season, clip); !done) return done.error();
        }
        if (const auto done = perform(season, weigh); !done) return done.error();
        return {};
    });
    if (!kept) {
        // A lot opened for nothing is closed up again.
        if (opened) m_session.undo();
        m_pad.setAsk(m_asked);
        return false;
    }
    QString said = weighedText(deed.box, *deed.mass, deed.wet);
    if (opened)
        said += tr(". Lot %1 is open").arg(fromUtf8(m_session.read().find(*run)->name.text()));
    Q_EMIT runMeant(*run);
    if (!hadRun && !opened) m_session.tell(said);
    const bool water = deed.water && keepWater(deed);
    if (water) said += tr(", water %1 %").arg(QLocale().toString(*deed.water, 'f', 1));
    if (water || !deed.water)
        read(said);
    else
        m_trail.call(said);
    const bool nobodyKnows = deed.box.peg == 0 || !clipped;
    if (!deed.wet && nobodyKnows && !deed.box.gross) {
        PadAsk frames;
        frames.what = PadAsk::What::Frames;
        frames.box = deed.box;
        askLater(frames);
    }
    return true;
}

bool PadDesk::keepFrames(const PadDeed& deed) {
    if (!m_at().run) return false;
    WeighBox count;
    count.on = today();
    count.run = *m_at().run;
    if (deed.box.peg > 0)
        count.peg = Count(deed.box.peg);
    else
        count.knownAs = deed.box.mark.toStdString();
    count.frames = Count(deed.number);
    if (!m_session.run(count)) return false;
    read(tr("%1: %2 frames").arg(deed.box.mark).arg(deed.number));
    return true;
}

bool PadDesk::fill(const PadDeed& deed) {
    const At at = m_at();
    if (!at.run || !at.open) {
        m_pad.forget();
        m_session.tell(tr("No run is open: weigh a box first, its lot opens by itself."), true);
        return false;
    }
    FillBucket fill;
    fill.on = today();
    fill.run = *at.run;
    fill.bucket = *Name::of("B" + std::to_string(deed.number));
    fill.net = deed.mass;
    if (deed.water) fill.water = WaterContent::roundedPercent(*deed.water);
    std::optional<Bucket> before;
    for (const Bucket& each : m_session.read().where<Bucket>({is("extraction", *at.run)}))
        if (each.mark == fill.bucket) before = each;
    if (!m_session.run(fill)) {
        m_pad.setAsk(m_asked);
        return false;
    }
    QStringList parts;
    if (deed.mass) {
        parts << padMassText(*deed.mass);
        if (before && before->net && before->net->value)
            parts.back() += tr(", was %1").arg(massTold(*before->net->value));
    } else if (before && before->net) {
        parts << padMassText(*before->net);
    }
    if (deed.water) parts << tr("water %1 %").arg(QLocale().toString(*deed.water, 'f', 1));
    read(tr("Bucket %1: %2").arg(deed.number).arg(parts.join(QStringLiteral(", "))));
    return true;
}

bool PadDesk::weighRest(const PadDeed& deed) {
    const At at = m_at();
    if (!at.run) {
        m_session.tell(tr("No run is open: weigh a box first, its lot opens by itself."), true);
        return false;
    }
    const bool cappings = deed.what == PadDeed::What::Cappings;
    WeighCappings weigh;
    weigh.on = today();
    weigh.run = *at.run;
    (cappings ? weigh.cappings : weigh.scrapings) = deed.mass;
    if (!m_session.run(weigh)) {
        m_pad.setAsk(m_asked);
        return false;
    }
    read((cappings ? tr("Cappings tub: %1") : tr("Scrapings: %1")).arg(padMassText(*deed.mass)));
    return true;
}

bool PadDesk::keepAsideBox(const PadDeed& deed) {
    const auto aside = m_session.read().find(Id<SetAside>{m_asked.row});
    if (!aside) return false;
    SetAside said = *aside;
    said.box = Id<ExtractionBox>{deed.box.row};
    const auto amend = amendment(today(), *aside, said);
    if (!amend) return true;
    StepNote note;
    note.why = tr("said after it was set aside").toStdString();
    if (!m_session.run(*amend, note)) {
        m_pad.setAsk(m_asked);
        return false;
    }
    read(tr("Set aside: 1 frame of %1").arg(calledText(deed.box)));
    return true;
}

bool PadDesk::keepWhy(const PadDeed& deed) {
    const auto aside = m_session.read().find(Id<SetAside>{m_asked.row});
    if (!aside) return false;
    SetAside said = *aside;
    said.why = static_cast<AsideWhy>(deed.number - 1);
    const auto amend = amendment(today(), *aside, said);
    if (!amend) return true;
    StepNote note;
    note.why = tr("said after it was set aside").toStdString();
    if (!m_session.run(*amend, note)) return false;
    const auto entry = m_session.read().find(aside->box);
    const auto many = aside->frames.value();
    const QString of =
        entry ? fromUtf8(calledInRun(m_session.read(), *entry)) : tr("a box nobody knows");
    const QString why =
        said.why == AsideWhy::Brood
            ? tr("brood in it")
            : combwright::word(Choices<AsideWhy>::words[static_cast<std::size_t>(deed.number - 1)]);
    read(many == 1 ? tr("One frame of %1 set aside: %2").arg(of, why)
                   : tr("%1 frames of %2 set aside: %3").arg(many).arg(of, why));
    return true;
}

bool PadDesk::settle(const PadDeed& deed) {
    SettleAside settled;
    settled.on = today();
    settled.aside = Id<SetAside>{m_asked.row};
    settled.became = static_cast<AsideBecame>(deed.number - 1);
    if (!m_session.run(settled)) return false;
    const auto words = Choices<AsideBecame>::words;
    read(tr("%1: %2").arg(m_asked.about.section(QLatin1Char(':'), 0, 0),
                          combwright::word(words[static_cast<std::size_t>(deed.number - 1)])));
    return true;
}

}  // namespace combwright
