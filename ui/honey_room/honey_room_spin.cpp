// What is done at the extractor: the clock, how a load ran, the gate, and the day closed by the
// pad.
#include <QStyle>
#include <algorithm>
#include <map>

#include "core/actions/honey_room/gate.h"
#include "core/actions/honey_room/runs.h"
#include "core/places/honey_room/gate_minder.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/day_log_form.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

constexpr QLatin1String roomSheet("honey room");
constexpr QLatin1String seenRow("cautions seen");
constexpr QLatin1String lettersRow("frames felt");
/// The proof follows when nobody typed for so long, ms.
constexpr int proofAfterMs = 200;
/// An Enter so near behind what was kept or asked is the same stroke, ms.
constexpr std::int64_t enterBounceMs = 400;

/// A frame in a line of slots: the box by its name, or by its number where that would be read
/// otherwise.
QString slotName(const LoadFrame& frame) {
    const QString name = fromUtf8(frame.box);
    const bool plain = std::all_of(name.begin(), name.end(), [](QChar each) {
        return each.isLetterOrNumber() || each == QLatin1Char('-');
    });
    return plain && name != QLatin1String("empty") ? name
                                                   : QStringLiteral("#%1").arg(frame.entry.number);
}

QString feltAs(const LoadFrame& frame) {
    if (!frame.heft) return {};
    return QLatin1Char(' ') + QString(heftLetter(*frame.heft));
}

std::vector<FeltFrame> feltFrames(const QString& letters) {
    std::vector<FeltFrame> frames;
    for (const QChar each : letters) {
        FeltFrame frame;
        frame.heft = each == QLatin1Char('h')   ? FrameHeft::Heavy
                     : each == QLatin1Char('m') ? FrameHeft::Middling
                                                : FrameHeft::Light;
        frames.push_back(frame);
    }
    return frames;
}

}  // namespace

/// The load to be filled stands as its frames felt, first of what waits.
void HoneyRoomPlace::layFelt(LoadSheet& sheet, bool proven) {
    m_load->setFelt(std::nullopt);
    if (m_letters.isEmpty() || m_spin->load() || !m_run || !m_open) return;
    const Read& file = session().read();
    const Day on = session().clock().today();
    const auto frames = feltFrames(m_letters);
    const auto felt = proven ? feltLoad(file, runsForLoads(), frames, on, m_load->rules())
                             : feltLoadAtOnce(file, runsForLoads(), frames, on, m_load->rules());
    if (!felt) return session().tell(sentence(felt.error()), true);
    SheetLoad load = felt->load;
    load.number = sheet.loadsDone + 1;
    if (sheet.loads.empty()) sheet.loads.push_back(load);
    sheet.loads.front() = load;
    m_load->setFelt(*felt);
}

void HoneyRoomPlace::keepLetters(const QString& letters) {
    m_letters = letters;
    if (letters.isEmpty())
        session().drafts().drop(roomSheet, lettersRow);
    else
        session().drafts().hold(roomSheet, lettersRow, letters);
}

void HoneyRoomPlace::feel(const QString& letters, bool done) {
    if (!m_run || !m_open) {
        if (done)
            session().tell(tr("Nothing is open: weigh a box, and its lot opens by itself."), true);
        return;
    }
    keepLetters(letters);
    if (!m_spin->load()) {
        LoadSheet sheet = m_load->sheet();
        layFelt(sheet, done);
        m_load->show(sheet, openRuns(session().read()).size() > 1);
        m_scroll->ensureWidgetVisible(&m_load->view(), 0, 0);
        if (done)
            m_proof.stop();
        else
            m_proof.start(proofAfterMs);
    }
    if (!done) return;
    if (letters.isEmpty()) {
        reload();
        return session().tell(tr("What was felt is forgotten; frames are as planned."));
    }
    session().tell(m_spin->load() ? tr("%1 frames felt: laid out when load %2 is written down.")
                                        .arg(letters.size())
                                        .arg(m_spin->load()->number)
                                  : tr("%1 frames felt: %2").arg(letters.size()).arg(letters));
}

void HoneyRoomPlace::connectPad() {
    PadDesk& pad = m_entry->pad();
    pad.setAt([this] {
        PadDesk::At at;
        at.run = m_run;
        at.open = m_open;
        at.slotCount = static_cast<int>(m_load->sheet().slotCount);
        at.spinning = m_spin->turns();
        at.bareIsMass = m_entry->bareIsMass();
        return at;
    });
    connect(&pad, &PadDesk::runMeant, this, &HoneyRoomPlace::runMeant);
    connect(&pad, &PadDesk::clockAsked, this, &HoneyRoomPlace::startOrQuiet);
    connect(&pad, &PadDesk::takeBackAsked, this, &HoneyRoomPlace::takeBackOnce);
    connect(&pad, &PadDesk::plusAsked, this, &HoneyRoomPlace::plus);
    connect(&pad, &PadDesk::ranAsked, this, &HoneyRoomPlace::spunByKey);
    connect(&pad, &PadDesk::stoppedAfterAll, this, &HoneyRoomPlace::stoppedAfterAll);
    connect(&pad, &PadDesk::gateAsked, this, &HoneyRoomPlace::openGate);
    connect(&pad, &PadDesk::asideAsked, this, [this] { setAside(); });
    connect(&m_load->view(), &LoadView::setAsideAsked, this, [this](Id<ExtractionBox> box) {
        setAside(box);
        m_entry->setFocus();
    });
    connect(m_settle, &QPushButton::clicked, this, [this] {
        askOfPile();
        m_entry->setFocus();
    });
    connect(&pad, &PadDesk::closeAsked, this, &HoneyRoomPlace::closeByPad);
    connect(&pad, &PadDesk::seenAsked, this, &HoneyRoomPlace::seeCautions);
    connect(&pad, &PadDesk::nextRunAsked, this, &HoneyRoomPlace::showNextRun);
    connect(&pad, &PadDesk::dayLogAsked, this, [this] { openDayLog(this, session()); });
    connect(&pad, &PadDesk::felt, this, &HoneyRoomPlace::feel);
    m_proof.setSingleShot(true);
    connect(&m_proof, &QTimer::timeout, this, [this] {
        LoadSheet sheet = m_load->sheet();
        layFelt(sheet, true);
        m_load->show(sheet, openRuns(session().read()).size() > 1);
    });
    connect(m_spin, &SpinDesk::ticked, this, &HoneyRoomPlace::showSpin);
}

void HoneyRoomPlace::runMeant(Id<Extraction> run) {
    if (m_run == run) return;
    // What is being spun stays in sight; its boxes are weighed in the run they belong to.
    const bool busy = m_open && (m_spin->load() || m_load->view().hasLoad());
    if (busy) return;
    m_run = run;
    reload();
}

void HoneyRoomPlace::showNextRun() {
    const auto open = openRuns(session().read());
    if (open.empty()) return session().tell(tr("No run is open."), true);
    auto at = std::find_if(open.begin(), open.end(),
                           [this](const Extraction& each) { return each.id == m_run; });
    if (at != open.end()) ++at;
    if (at == open.end()) at = open.begin();
    m_run = at->id;
    reload();
    session().tell(tr("Lot %1").arg(fromUtf8(at->name.text())));
}

void HoneyRoomPlace::seeCautions() {
    session().drafts().hold(roomSheet, seenRow,
                            QString::fromStdString(isoText(session().clock().today())));
    fillCaution();
}

bool HoneyRoomPlace::cautionsSeen() const {
    const auto rows = session().drafts().of(roomSheet);
    const auto seen = rows.find(seenRow);
    return seen != rows.end() &&
           seen->second == QString::fromStdString(isoText(session().clock().today()));
}

std::optional<HeldLoad> HoneyRoomPlace::loadShown() const {
    if (!m_load->view().hasLoad()) return std::nullopt;
    const SheetLoad& load = m_load->view().load();
    HeldLoad held;
    held.number = load.number;
    held.startOffset = Mass::roundedGrams(load.offset.startG);
    held.endOffset = Mass::roundedGrams(load.offset.endG);
    held.doubt = Mass::roundedGrams(load.doubtG);
    // Where lots share a load each run keeps its part.
    std::map<std::string, QStringList> lines;
    for (const auto& place : load.places)
        if (place && !place->emptied) lines[place->lot];
    for (const auto& place : load.places)
        for (auto& [lot, line] : lines) {
            if (place && place->emptied)
                line << QStringLiteral("empty");
            else if (place && place->lot == lot)
                line << slotName(*place) + feltAs(*place);
            else
                line << QString();
        }
    const Day on = session().clock().today();
    for (const auto& [lot, line] : lines) {
        const auto run =
            findNamed(session().read(), Extraction::table, NameQuery{.name = lot, .on = on});
        if (!run) return std::nullopt;
        held.parts.push_back({Id<Extraction>{*run}, line.join(QStringLiteral(", "))});
    }
    return held.parts.empty() ? std::nullopt : std::optional(held);
}

void HoneyRoomPlace::startOrQuiet() {
    if (!m_run || !m_open)
        return session().tell(tr("Nothing is open: weigh a box, and its lot opens by itself."),
                              true);
    if (m_spin->turns()) {
        const SpinShown shown = m_spin->look();
        const auto number = m_spin->load()->number;
        if (shown.sinceKnown && shown.call != SpinShown::Call::Loud)
            return session().tell(tr("Load %1 turns, %2 left.").arg(number).arg(shown.figure()));
        m_spin->stand();
        session().tell(
            tr("Load %1: wait until it stands. + it ran smooth, − it walked.").arg(number));
        return m_entry->pad().askNext();
    }
    if (m_spin->stands())
        return session().tell(
            tr("Load %1 was spun. + it ran smooth, − it walked.").arg(m_spin->load()->number));
    if (m_keptAt && session().clock().steadyMs() - *m_keptAt < enterBounceMs)
        return session().tell(tr("%1 Enter again starts the clock.").arg(session().lastTold()));
    const auto load = loadShown();
    if (!load) return session().tell(tr("No load waits in the extractor: nothing to time."), true);
    if (otherLotAsked()) return;
    const std::int64_t minutes = plannedSpinMinutes(session().read(), session().clock().today());
    if (!m_spin->start(*load, minutes)) return;
    m_load->freeze(load->number);
    m_scroll->ensureWidgetVisible(&m_load->view(), 0, 0);
    m_turningLetters = m_letters;
    keepLetters({});
    m_clockMark = lastStep();
    m_soonAsked.reset();
    session().tell(tr("Load %1 turns, %2 min. Lid shut, hands out until it stands.")
                       .arg(load->number)
                       .arg(minutes));
}

QString HoneyRoomPlace::turningWords(const SpinShown& shown) const {
    const auto number = m_spin->load()->number;
    if (!shown.turning) return tr("load %1 stands:\n+ smooth, − walked").arg(number);
    if (!shown.sinceKnown) return tr("load %1 was turning,\nsince when nobody knows").arg(number);
    const QString of = QStringLiteral("%1:%2")
                           .arg(shown.plannedS / 60, 2, 10, QLatin1Char('0'))
                           .arg(shown.plannedS % 60, 2, 10, QLatin1Char('0'));
    if (shown.call == SpinShown::Call::Loud)
        return tr("over %1, load %2:\nEnter quiets it").arg(of).arg(number);
    if (shown.call == SpinShown::Call::Soft)
        return tr("nearly done\nof %1, load %2").arg(of).arg(number);
    return tr("left of %1\nfor load %2").arg(of).arg(number);
}

PlaceHead HoneyRoomPlace::headOfSpin(PlaceHead head) const {
    const SpinShown shown = m_spin->look();
    head.big = {shown.turning ? shown.figure() : QStringLiteral("00:00"), {}, 0};
    head.bigSize = TextSize::Clock;
    head.bigTone = !shown.turning                        ? Tone::Muted
                   : shown.call == SpinShown::Call::Loud ? Tone::Bad
                   : shown.call == SpinShown::Call::Soft ? Tone::Warn
                                                         : Tone::Ink;
    head.bigNote = turningWords(shown);
    head.action = tr("Load %1 spun").arg(m_spin->load()->number);
    head.actionKey = QStringLiteral("+");
    return head;
}

void HoneyRoomPlace::restoreSpin() {
    m_spin->restore();
    m_clockMark.reset();
    // The room may be made when the season has long been open: nobody else catches it then.
    session().reading([this] {
        if (m_spin->load()) m_clockMark = lastStep();
    });
    const auto rows = session().drafts().of(roomSheet);
    const auto felt = rows.find(lettersRow);
    m_letters = felt == rows.end() ? QString() : felt->second;
    m_turningLetters.clear();
}

void HoneyRoomPlace::showSpin() {
    const SpinShown shown = m_spin->look();
    const bool moves = style()->styleHint(QStyle::SH_Widget_Animation_Duration) > 0;
    m_load->view().setMarker(shown.turning && shown.sinceKnown && moves
                                 ? std::optional<double>((shown.elapsedS * 30) % 360)
                                 : std::nullopt);
    if (!m_spin->load()) m_load->freeze(std::nullopt);
    Q_EMIT headChanged();
    m_entry->pad().askNext();
}

/// Nothing is spun out in a tenth of its time: asked once, before the ring learns from it.
bool HoneyRoomPlace::tooSoon() {
    if (!m_spin->turns()) return false;
    const SpinShown shown = m_spin->look();
    const auto number = m_spin->load()->number;
    if (!shown.sinceKnown || shown.elapsedS * 10 >= shown.plannedS || m_soonAsked == number)
        return false;
    m_soonAsked = number;
    session().tell(tr("Load %1 after %2 s: spun? + again.").arg(number).arg(shown.elapsedS), true);
    return true;
}

/// The drum still holds another lot than the load about to begin: asked once, before it turns.
/// Two lots that meet there are one from then on.
bool HoneyRoomPlace::otherLotAsked() {
    const auto load = m_spin->load() || !m_run || !m_open ? std::nullopt : loadShown();
    if (!load) return false;
    const Read& file = session().read();
    const auto& machine = m_load->sheet().machine.machine;
    std::optional<Id<Extraction>> held;
    for (const HeldLoad::Part& part : load->parts) {
        const auto other = lotInDrumFor(file, part.run, session().clock().today(),
                                        machine ? std::optional(machine->id) : std::nullopt);
        const bool within = std::any_of(load->parts.begin(), load->parts.end(),
                                        [&](const auto& each) { return each.run == other; });
        if (other && !within) held = other;
    }
    const std::int64_t now = session().clock().steadyMs();
    const bool answered = m_entry->pad().answers(PadAsk::What::RunEmpty);
    if (!held || (answered && m_lotAskedAt && now - *m_lotAskedAt >= enterBounceMs)) return false;
    if (!answered) m_lotAskedAt = now;
    const auto run = file.find(*held);
    QString lot = fromUtf8(run->name.text());
    if (run->yard)
        lot = tr("%1 (%2)").arg(fromUtf8(nameOf(file, Yard::table, run->yard->number)), lot);
    PadAsk empty;
    empty.what = PadAsk::What::RunEmpty;
    empty.about =
        tr("The drum still holds honey of %1. Run drum, gate and strainer empty first?").arg(lot);
    m_entry->pad().askLater(empty);
    return true;
}

/// Ctrl+Space, a word or − says how the load ran; the guards are those of +.
void HoneyRoomPlace::spunByKey(Ran ran) {
    if (ran == Ran::Smooth && (m_entry->pad().bounced(QLatin1Char('+')) || tooSoon())) return;
    if (!otherLotAsked()) spun(ran);
}

void HoneyRoomPlace::plus() {
    if (tooSoon()) return;
    if (m_spin->load() || m_load->view().hasLoad()) {
        if (!otherLotAsked()) spun(Ran::Smooth);
        return;
    }
    if (!m_run || !m_open)
        return session().tell(tr("Nothing is open: weigh a box, and its lot opens by itself."),
                              true);
    if (!pile().empty()) return askOfPile();
    PadAsk close;
    close.what = PadAsk::What::Close;
    QStringList parts;
    if (m_balance && m_balance->buckets > Mass())
        parts << tr("%1 in the buckets")
                     .arg(massText(static_cast<double>(m_balance->buckets.grams()),
                                   m_balance->bucketsHow));
    if (m_balance && m_balance->unaccountedG)
        parts << tr("%1 missing").arg(massText(*m_balance->unaccountedG, m_balance->missingHow()));
    if (parts.isEmpty()) parts << tr("nothing in the buckets yet");
    close.about = tr("Close the day? %1").arg(parts.join(QStringLiteral(", ")));
    m_entry->pad().askLater(close);
}

void HoneyRoomPlace::closeByPad() {
    if (!m_run || !m_open) return;
    m_entry->pad().trail().during(QStringLiteral("close"), [this] {
        CloseRun close;
        close.on = session().clock().today();
        close.run = *m_run;
        const QString name = fromUtf8(session().read().find(*m_run)->name.text());
        if (!session().run(close)) return false;
        const QString said = tr("%1 is closed").arg(name);
        m_entry->pad().trail().call(said);
        session().tell(said);
        return true;
    });
}

bool HoneyRoomPlace::keepLoad(const SpinDesk::Taken& taken, Ran ran) {
    return session().together([&](Season& season) -> Result<void> {
        for (const HeldLoad::Part& part : taken.load.parts) {
            SpinFrames spin;
            spin.on = session().clock().today();
            spin.run = part.run;
            spin.slots = part.slotLine.toStdString();
            spin.minutes = taken.minutes;
            spin.begun = taken.load.begun;
            spin.ran = ran;
            spin.startOffset = taken.load.startOffset;
            spin.endOffset = taken.load.endOffset;
            spin.doubt = taken.load.doubt;
            if (const auto done = perform(season, spin); !done) return done.error();
        }
        return {};
    });
}

void HoneyRoomPlace::spun(Ran ran) {
    KeptLoad before;
    before.held = m_spin->load().has_value();
    before.letters = m_letters;
    before.turningLetters = m_turningLetters;
    before.drawn = m_load->frozen();
    before.clockMark = m_clockMark;
    auto taken = m_spin->take();
    if (!taken) {
        const auto shown = m_run ? loadShown() : std::nullopt;
        if (!shown)
            return session().tell(tr("No load waits in the extractor; nothing was written down."),
                                  true);
        taken = SpinDesk::Taken{*shown, std::nullopt};
    }
    const QString name = tr("Load %1").arg(taken->load.number);
    QString said;
    const bool kept = m_entry->pad().trail().during(QStringLiteral("load"), [&] {
        // What was felt is of this load, unless it turned and the next was felt meanwhile.
        if (!before.held) keepLetters({});
        if (!keepLoad(*taken, ran)) {
            keepLetters(before.letters);
            return false;
        }
        said =
            ran == Ran::Smooth ? tr("%1 spun, it ran smooth").arg(name)
            : ran == Ran::Walked
                ? tr("%1 spun; it walked. Look at feet, frames and speed before the next").arg(name)
                : tr("%1 stopped; its frames wait to be spun again").arg(name);
        if (taken->minutes && ran != Ran::Stopped)
            said += tr("; %1 min").arg(taken->minutes->value());
        m_entry->pad().trail().call(said);
        return true;
    });
    if (!kept) {
        // Where its run is gone there is nothing left to say of it.
        const bool runsThere = std::all_of(taken->load.parts.begin(), taken->load.parts.end(),
                                           [this](const HeldLoad::Part& part) {
                                               const auto run = session().read().find(part.run);
                                               return run && !run->closed;
                                           });
        if (before.held && runsThere) {
            m_load->freezeAgain(before.drawn);
            m_spin->putBack(*taken);
        }
        return;
    }
    before.step = lastStep();
    before.taken = *taken;
    m_keptLoads.push_back(before);
    m_load->loadKept(taken->load.number);
    session().tell(said + QLatin1Char('.'));
    m_entry->pad().askNext();
}

void HoneyRoomPlace::openGate() {
    if (!m_run || !m_open)
        return session().tell(tr("Nothing is open: weigh a box, and its lot opens by itself."),
                              true);
    m_entry->pad().trail().during(QStringLiteral("gate"), [this] {
        OpenGate open;
        open.on = session().clock().today();
        open.run = *m_run;
        open.at = session().clock().now();
        // Between two lots, and behind the last load, drum, gate and strainer run empty.
        const GateMinder gate = gateMinder(session().read(), *m_run, m_load->sheet(), open.on);
        if (gate.emptyUnder) {
            open.run = *gate.emptyUnder;
            open.runEmpty = true;
        } else if (!gate.emptyFor.empty() || (!m_load->view().hasLoad() && !m_spin->load())) {
            open.runEmpty = true;
        }
        if (!session().run(open)) return false;
        const QString said =
            open.runEmpty ? tr("Gate open, drum, gate and strainer run empty") : tr("Gate open");
        m_entry->pad().trail().call(said);
        session().tell(said + QLatin1Char('.'));
        return true;
    });
}

bool HoneyRoomPlace::resumes(const QString& sheet, const QString& row) const {
    // A load that turns is watched; cautions seen and letters felt wait without harm.
    return sheet == roomSheet && row == QLatin1String("load that turns");
}

}  // namespace combwright
