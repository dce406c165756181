#include "ui/yard/hive_forms.h"

#include <QCoreApplication>

#include "core/actions/boxes/looks.h"
#include "core/actions/yard/yards.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString handWord(const char* text) { return QCoreApplication::translate("hive_forms", text); }

void addHives(QComboBox* box, const Read& file, Id<Hive> but) {
    for (const Yard& yard : openYards(file))
        for (const Hive& hive : openHives(file, yard.id))
            if (hive.id != but)
                box->addItem(QStringLiteral("%1, %2").arg(fromUtf8(hive.mark.text()),
                                                          fromUtf8(yard.name.text())),
                             static_cast<qlonglong>(hive.id.number));
}

}  // namespace

bool askToMoveHive(QWidget* parent, Session& session, const Hive& hive, Day on) {
    const QString mark = fromUtf8(hive.mark.text());
    SmallForm form(parent, session, handWord("Move %1").arg(mark));
    form.ofDay(on);
    auto* yard = form.choice(handWord("To the yard"), "to_yard");
    for (const Yard& each : openYards(session.read()))
        yard->addItem(fromUtf8(each.name.text()), static_cast<qlonglong>(each.id.number));
    yard->setCurrentIndex(yard->findData(static_cast<qlonglong>(hive.yard.number)));
    auto* order = form.line(handWord("Place in walking order"), "stand_order",
                            handWord("3; left empty it goes last"));
    form.onAccept([&] {
        MoveHive move{.on = on, .hive = hive.id, .yard = {}, .standOrder = {}};
        move.yard = Id<Yard>{yard->currentData().toLongLong()};
        if (const QString typed = order->text().trimmed(); !typed.isEmpty()) {
            bool whole = false;
            move.standOrder = Count(typed.toLongLong(&whole));
            if (!whole) {
                session.tell(handWord("\"%1\" is no place in the walking order. Write a number "
                                      "from 1, or leave it empty.")
                                 .arg(typed),
                             true);
                return false;
            }
        }
        return session.run(move).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToCloseHive(QWidget* parent, Session& session, const Hive& hive, Day on) {
    const QString mark = fromUtf8(hive.mark.text());
    const auto boxes = boxesOn(session.read(), hive.id);
    SmallForm form(parent, session, handWord("Close %1").arg(mark));
    form.ofDay(on);
    QComboBox* ending = nullptr;
    if (colonyIn(session.read(), hive.id)) {
        ending = form.choice(handWord("The colony"), "ending");
        ending->addItem(handWord("ended; how is not known"));
        for (const std::string_view each : Choices<Ending>::words)
            ending->addItem(choiceText(each));
    }
    QComboBox* to = nullptr;
    QComboBox* onto = nullptr;
    QLineEdit* shelf = nullptr;
    if (!boxes.empty()) {
        to = form.choice(handWord("Its %1 boxes go to").arg(boxes.size()), "boxes_to");
        for (const BoxPlace place : {BoxPlace::Storeroom, BoxPlace::OnHive, BoxPlace::Waiting,
                                     BoxPlace::Freezer, BoxPlace::Lent, BoxPlace::Gone})
            to->addItem(
                place == BoxPlace::OnHive ? handWord("another hive") : choiceText(word(place)),
                static_cast<int>(place));
        shelf = form.line(handWord("Shelf"), "stack", handWord("may stay empty"));
        onto = form.choice(handWord("Hive"), "onto");
        addHives(onto, session.read(), hive.id);
        const auto fit = [to, onto, shelf] {
            const bool isHive = to->currentData().toInt() == static_cast<int>(BoxPlace::OnHive);
            onto->setEnabled(isHive);
            shelf->setEnabled(!isHive);
        };
        form.fitWith(to, fit);
    }
    form.say(handWord("The mark may be used again. Ctrl+Z opens the hive again, boxes and all."));
    form.onAccept([&] {
        CloseHive close{
            .on = on, .hive = hive.id, .ending = {}, .boxesTo = {}, .onto = {}, .stack = {}};
        if (ending && ending->currentIndex() > 0)
            close.ending = static_cast<Ending>(ending->currentIndex() - 1);
        if (to) {
            close.boxesTo = static_cast<BoxPlace>(to->currentData().toInt());
            if (*close.boxesTo == BoxPlace::OnHive && onto->currentIndex() >= 0)
                close.onto = Id<Hive>{onto->currentData().toLongLong()};
            if (*close.boxesTo != BoxPlace::OnHive)
                close.stack = shelf->text().simplified().toStdString();
        }
        return session.run(close).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToHoldBack(QWidget* parent, Session& session, const HeldThing& thing, Day on) {
    SmallForm form(parent, session, handWord("Hold %1 back").arg(thing.name));
    form.ofDay(on);
    auto* reason = form.choice(handWord("Why"), "reason");
    for (const std::string_view each : Choices<HoldWhy>::words) reason->addItem(choiceText(each));
    auto* note = form.line(handWord("Note"), "note", handWord("may stay empty"));
    form.say(handWord("It is not pulled, extracted or passed on until the hold is lifted."));
    form.onAccept([&] {
        return session
            .run(HoldBack{.on = on,
                          .reason = static_cast<HoldWhy>(reason->currentIndex()),
                          .box = thing.box,
                          .hive = thing.hive,
                          .bucket = {},
                          .note = note->text().simplified().toStdString()})
            .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToLiftHold(QWidget* parent, Session& session, const Hold& hold, const QString& name,
                   Day on) {
    SmallForm form(parent, session, handWord("Lift the hold on %1").arg(name));
    form.ofDay(on);
    form.say(handWord("Held back since %1: %2. %3")
                 .arg(dayText(hold.since), choiceText(word(hold.why)), fromUtf8(hold.note)));
    auto* grounds =
        form.line(handWord("On what grounds"), "grounds", handWord("inspected, nothing found"));
    auto* by = form.line(handWord("By whom"), "lifted_by", handWord("may stay empty"));
    form.onAccept([&] {
        // A hold that goes without a word helps nobody later.
        if (grounds->text().trimmed().isEmpty()) {
            session.tell(handWord("Write on what grounds, in a word or two."), true);
            return false;
        }
        return session
            .run(ReleaseHold{.on = on,
                             .hold = hold.id,
                             .liftedBy = by->text().simplified().toStdString(),
                             .grounds = grounds->text().simplified().toStdString()})
            .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
