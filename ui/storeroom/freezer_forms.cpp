#include "ui/storeroom/freezer_forms.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "core/actions/storeroom/equipment.h"
#include "core/actions/storeroom/freezer.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/places/storeroom/freezer.h"
#include "core/words/figures.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString coldForm(const char* text) { return QCoreApplication::translate("freezer_forms", text); }

/// "M01 9, D1 6, loose medium 4": as the action reads it. By the code of its kind, whose name may
/// hold what parts one box from the next.
QString roundTyped(const Read& file, const FreezerPlan& plan) {
    QStringList parts;
    if (plan.rounds.empty()) return {};
    for (const FreezerFrames& each : plan.rounds.front().loads) {
        QString name = fromUtf8(each.name);
        if (const auto kind = file.find(each.kind); kind && !each.box)
            name = QStringLiteral("loose ") + fromUtf8(kind->code.text());
        parts << QStringLiteral("%1 %2").arg(name).arg(each.frames);
    }
    return parts.join(QStringLiteral(", "));
}

QString freezerName(const Equipment& freezer) {
    return freezer.name.empty() ? coldForm("the freezer") : fromUtf8(freezer.name);
}

QString hoursWord(double hours) {
    return QLocale().toString(std::ceil(hours), 'f', 0) + QStringLiteral(" h");
}

/// Whether a round's cold does what it is for.
QString proofText(const ColdProof& proof) {
    const QString cold = shownTemperature(proof.temperatureC).text();
    const QString known = proof.byFreezer  ? coldForm("what the freezer can do, nobody measured")
                          : proof.assumed  ? coldForm("taken as usual, nobody measured")
                          : proof.measured ? coldForm("measured")
                                           : coldForm("by the dial");
    switch (proof.doubt) {
        case ColdDoubt::TooWarm:
            return coldForm("At %1 (%2) nothing is killed, however long it stays: 0 °C is no kill.")
                .arg(cold, known);
        case ColdDoubt::TimeNotKnown:
            return coldForm("At %1 (%2) it takes %3; how long it stayed nobody said.")
                .arg(cold, known, hoursWord(proof.neededHours().value_or(0)));
        case ColdDoubt::NotLongEnough:
            return coldForm(
                       "Not long enough: %1 of the %2 it takes at %3 (%4), until the core is "
                       "cold and for the kill.")
                .arg(hoursWord(proof.stayedHours.value_or(0)),
                     hoursWord(proof.neededHours().value_or(0)), cold, known);
        case ColdDoubt::None:
            return coldForm(
                       "Cold enough: %1, %2 are needed at %3 (%4), until the core is cold and "
                       "for the kill.")
                .arg(hoursWord(proof.stayedHours.value_or(0)),
                     hoursWord(proof.neededHours().value_or(0)), cold, known);
    }
    return {};
}

/// What waits and what cannot go in yet.
QString laneText(const FreezerLane& lane) {
    QStringList said;
    said << (lane.waitingFrames() == 1 ? coldForm("%1 frame waits, %2.")
                                       : coldForm("%1 frames wait, %2."))
                .arg(lane.waitingFrames())
                .arg(freezerPlanText(lane.next));
    if (const auto wet = framesIn(lane.dryFirst); wet > 0)
        said << coldForm("%1 are wet and dry first.").arg(wet);
    if (const auto held = framesIn(lane.held); held > 0)
        said << coldForm("%1 are held: a round of their own, if at all.").arg(held);
    for (const std::string& kind : lane.noRoomKnown)
        said << coldForm("How many %1 fit nobody knows.").arg(fromUtf8(kind));
    return said.join(QLatin1Char(' '));
}

}  // namespace

bool askToFreeze(QWidget* parent, Session& session, Day on) {
    FreezerLane lane = freezerLane(session.read(), on);
    if (lane.freezers.empty()) {
        if (!askToDescribeFreezer(parent, session, {}, on)) return false;
        lane = freezerLane(session.read(), on);
    }
    SmallForm form(parent, session, coldForm("Into the freezer"));
    form.say(laneText(lane));
    QComboBox* freezer = nullptr;
    if (lane.freezers.size() > 1) {
        freezer = form.choice(coldForm("Freezer"), "freezer");
        for (const Equipment& each : lane.freezers)
            freezer->addItem(freezerName(each), static_cast<qlonglong>(each.id.number));
        if (lane.freezer) choose(freezer, std::optional(lane.freezer->id));
    }
    QComboBox* plan = nullptr;
    if (lane.shared) {
        plan = form.choice(coldForm("Kinds"), "plan");
        plan->addItem(coldForm("each by itself: %1").arg(freezerPlanText(lane.next)));
        plan->addItem(coldForm("share a round: %1").arg(freezerPlanText(*lane.shared)));
    }
    auto* in = form.line(coldForm("Frames"), "boxes", coldForm("M01 9, D1 6"), 36);
    in->setText(roundTyped(session.read(), lane.next));
    auto* hours =
        form.line(coldForm("For how many hours"), "hours", QLocale().toString(lane.hours, 'f', 0));
    auto* degrees = form.line(coldForm("Temperature"), "temperature",
                              shownTemperature(lane.temperatureC).text());
    auto* measured = form.choice(coldForm("Known by"), "measured");
    measured->addItem(coldForm("nobody said"), -1);
    measured->addItem(coldForm("the dial"), 0);
    measured->addItem(coldForm("a thermometer inside"), 1);
    auto* packed = form.choice(coldForm("How they lie"), "packed");
    packed->addItem(coldForm("frames by themselves"), 0);
    packed->addItem(coldForm("in their boxes, comb against comb"), 1);
    auto* note = form.line(coldForm("Note"), "note", coldForm("may stay empty"));
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    form.caution(freezerCautions());
    const auto choiceOf = [](const QComboBox* box) {
        const int said = box->currentData().toInt();
        return said < 0 ? std::nullopt : std::optional(said == 1);
    };
    const auto look = [&] {
        FreezerRound round;
        round.in = on;
        if (freezer)
            round.freezer = chosenId<Equipment>(freezer).value_or(Id<Equipment>{});
        else if (!lane.freezers.empty())
            round.freezer = lane.freezers.front().id;
        bool whole = false;
        const qlonglong stays = hours->text().trimmed().toLongLong(&whole);
        if (whole && stays > 0) round.hours = Count(stays);
        round.temperature = typedTemperature(degrees->text());
        round.measured = choiceOf(measured);
        round.packed = choiceOf(packed);
        form.sayAgain(outlook, proofText(coldProof(session.read(), round)));
        // What stands there in grey is what is reckoned with where nothing is typed.
        round.temperature.reset();
        degrees->setPlaceholderText(
            shownTemperature(coldProof(session.read(), round).temperatureC).text());
    };
    const auto planned = [&](int index) {
        in->setText(roundTyped(session.read(), index == 1 ? *lane.shared : lane.next));
    };
    if (plan) QObject::connect(plan, &QComboBox::currentIndexChanged, &form, planned);
    for (QLineEdit* each : {hours, degrees})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    for (QComboBox* each : {measured, packed, freezer})
        if (each) QObject::connect(each, &QComboBox::currentIndexChanged, &form, look);
    look();
    QWidget* begin = in;
    if (plan) begin = plan;
    if (freezer) begin = freezer;
    form.beginIn(begin);
    form.onAccept([&] {
        FreezeFrames deed;
        deed.on = on;
        if (freezer) deed.freezer = chosenId<Equipment>(freezer);
        deed.boxes = typedWords(in);
        if (!readField(session, hours, deed.hours) ||
            !readField(session, degrees, deed.temperature))
            return false;
        deed.measured = choiceOf(measured);
        deed.packed = choiceOf(packed);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToTakeOut(QWidget* parent, Session& session, Day on) {
    const FreezerLane lane = freezerLane(session.read(), on);
    if (lane.in.empty()) {
        session.tell(coldForm("Nothing is in the freezer."), true);
        return false;
    }
    SmallForm form(parent, session, coldForm("Out of the freezer"));
    auto* round = form.choice(coldForm("Round"), "round");
    for (const FreezerRoundRow& each : lane.in)
        round->addItem(coldForm("in since %1: %2")
                           .arg(shortDayText(each.round.in), freezerLoadsText(each.loads)),
                       static_cast<qlonglong>(each.round.id.number));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    form.caution(
        coldForm("Leave them sealed until they are warm through, or water settles on the comb; "
                 "and sealed afterwards, or the moth is in again. Lift with two what is over %1.")
            .arg(liftLimitText()));
    const auto chosenRow = [&]() -> const FreezerRoundRow& {
        return lane.in[static_cast<std::size_t>(std::max(round->currentIndex(), 0))];
    };
    const auto look = [&] {
        FreezerRound out = chosenRow().round;
        out.out = on;
        const ColdProof proof = coldProof(session.read(), out);
        const bool one = chosenRow().frames == 1;
        form.sayAgain(
            comes,
            proofText(proof) + QLatin1Char(' ') +
                (proof.enough() ? (one ? coldForm("Its one frame counts as frozen from today.")
                                       : coldForm("Its %1 frames count as frozen from today.")
                                             .arg(chosenRow().frames))
                 : one ? coldForm("Taken out today its one frame stays as it was and waits again; "
                                  "better leave it in.")
                       : coldForm("Taken out today its %1 frames stay as they were "
                                  "and wait again; better leave them in.")
                             .arg(chosenRow().frames)));
    };
    QObject::connect(round, &QComboBox::currentIndexChanged, &form, look);
    look();
    form.onAccept([&] {
        TakeOutFrozen deed;
        deed.on = on;
        deed.round = chosenId<FreezerRound>(round);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToSpoil(QWidget* parent, Session& session, const QString& boxes, Day on) {
    SmallForm form(parent, session, coldForm("Opened or left warm"));
    auto* in = form.line(coldForm("Boxes"), "boxes", coldForm("M01, M02"));
    in->setText(boxes);
    auto* reason =
        form.line(coldForm("What happened"), "reason", coldForm("opened to look for a frame"));
    form.say(coldForm("Their frames no longer count as frozen and wait for the cold again."));
    form.beginIn(in);
    form.onAccept([&] {
        if (typedWords(reason).empty()) {
            session.tell(coldForm("Write what happened, in a word or two."), true);
            reason->setFocus();
            return false;
        }
        return session
            .run(SpoilFrozen{.on = on, .boxes = typedWords(in), .reason = typedWords(reason)})
            .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToDescribeFreezer(QWidget* parent, Session& session, const std::optional<Equipment>& known,
                          Day on) {
    SmallForm form(parent, session, coldForm("What the freezer is like"));
    auto* called = form.line(coldForm("Name"), "called", coldForm("chest; may stay empty"));
    auto* litres = form.line(coldForm("Litres"), "litres", coldForm("200"));
    auto* holds = form.line(coldForm("Or frames you counted in"), "holds", coldForm("24"));
    auto* kind = form.choice(coldForm("Frames of which kind"), "frame_kind");
    addFrameKinds(kind, session.read(), coldForm("any kind"));
    auto* coldest =
        form.line(coldForm("Coldest, measured inside"), "coldest", shownTemperature(-18).text());
    auto* note = form.line(coldForm("Note"), "note", coldForm("may stay empty"));
    form.say(
        coldForm("By its litres and the bulk of a frame, or by your own count, the rounds are "
                 "planned. Measure with a thermometer in the middle, not by the dial."));
    if (known) {
        // By these it is told from others.
        called->setText(fromUtf8(known->name));
        called->setEnabled(false);
        choose(kind, known->frameKind);
        if (known->litres) litres->setText(QString::number(known->litres->value()));
        if (known->holds) holds->setText(QString::number(known->holds->value()));
        if (known->coldest) coldest->setText(shownTemperature(known->coldest->celsius()).text());
        note->setText(fromUtf8(known->note));
        // So many of one kind or so many of another: each kind has its own count.
        QObject::connect(
            kind, &QComboBox::currentIndexChanged, &form, [&session, known, kind, holds] {
                const auto held = freezerHolding(session.read(), *known, chosenId<FrameKind>(kind));
                holds->setText(held ? QString::number(held->value()) : QString());
            });
    }
    form.beginIn(known ? litres : called);
    form.onAccept([&] {
        DescribeEquipment deed;
        deed.on = on;
        deed.item = EquipmentItem::Freezer;
        deed.called = typedWords(called);
        deed.note = typedWords(note);
        if (!readField(session, litres, deed.litres) || !readField(session, holds, deed.holds) ||
            !readField(session, coldest, deed.coldest))
            return false;
        if (!coldest->isModified()) deed.coldest.reset();
        // A kind belongs to a count; without one the freezer takes all of them.
        if (known || deed.holds) deed.frameKind = chosenId<FrameKind>(kind);
        if (!known && !deed.litres && !deed.holds) {
            session.tell(coldForm("Write its litres, or how many frames you counted into it."),
                         true);
            litres->setFocus();
            return false;
        }
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
