#include "core/places/storeroom/stack_words.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString stackSay(const char* text) { return QCoreApplication::translate("stock", text); }

bool isHeavy(Lift lift) { return lift == Lift::Careful || lift == Lift::TwoPeople; }

}  // namespace

QString stackText(const BoxStack& stack) {
    if (!stack.stack.empty()) return fromUtf8(stack.stack);
    return choiceText(Choices<BoxPlace>::words[static_cast<std::size_t>(stack.place)]);
}

QString stackMassText(const BoxStack& stack) {
    const auto boxes = static_cast<std::int64_t>(stack.boxes.size());
    if (stack.load.notWeighed == boxes) return stackSay("not known");
    const bool weighed = std::all_of(stack.boxes.begin(), stack.boxes.end(), [](const auto& box) {
        return !box.massG || box.how == How::Weighed;
    });
    const QString mass = massText(stack.load.massG, weighed ? How::Weighed : How::Assumed);
    if (stack.load.notWeighed == 0) return mass;
    return (stack.load.notWeighed == 1 ? stackSay("%1 and 1 box not known")
                                       : stackSay("%1 and %2 boxes not known"))
        .replace(QStringLiteral("%2"), QString::number(stack.load.notWeighed))
        .arg(mass);
}

QString stackCaution(const BoxStack& stack) {
    const BoxInStack* now = stack.heaviest();
    if (now && isHeavy(now->lift))
        return stackSay("%1: %2 weighs %3: over %4 lift with two, or carry frames.")
            .arg(stackText(stack), fromUtf8(now->name), massText(*now->massG, now->how),
                 liftLimitText());
    const BoxInStack* full = stack.heaviestFull();
    if (!full || !isHeavy(full->fullLift)) return {};
    return stackSay("%1: full of honey a %2 weighs %3: over %4 lift with two, or carry frames.")
        .arg(stackText(stack), fromUtf8(full->kind), massText(*full->fullG, How::Assumed),
             liftLimitText());
}

QString heaviestNowText(const BoxStack& stack) {
    const BoxInStack* box = stack.heaviest();
    return box ? QStringLiteral("%1, %2").arg(fromUtf8(box->name), massText(*box->massG, box->how))
               : stackSay("not known");
}

QString heaviestFullText(const BoxStack& stack) {
    const BoxInStack* box = stack.heaviestFull();
    return box ? massText(*box->fullG, How::Assumed) : stackSay("not known");
}

}  // namespace combwright
