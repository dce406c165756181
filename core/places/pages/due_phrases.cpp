#include "core/places/pages/due_phrases.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {

QString dueTr(const char* text) { return QCoreApplication::translate("due", text); }

QString dueCounted(std::int64_t many, const char* one, const char* several) {
    return many == 1 ? dueTr(one) : dueTr(several).arg(many);
}

std::int64_t dueCountOf(const DueItem& item) { return item.count.value_or(1); }

QString dueBoxes(const DueItem& item) {
    return dueCounted(dueCountOf(item), QT_TRANSLATE_NOOP("due", "1 box"),
                      QT_TRANSLATE_NOOP("due", "%1 boxes"));
}

QString dueFrames(const DueItem& item) {
    return dueCounted(dueCountOf(item), QT_TRANSLATE_NOOP("due", "1 frame"),
                      QT_TRANSLATE_NOOP("due", "%1 frames"));
}

QString dueDay(const DueItem& item, Day day) {
    return item.asked ? shortDayText(day, *item.asked) : shortDayText(day);
}

QString dueSince(const DueItem& item) { return dueDay(item, item.since); }

bool wetsComeOff(const DueItem& item) { return item.rule == DueRule::Wets && item.other; }

bool superTooEarly(const DueItem& item) {
    return item.rule == DueRule::SupersBack && item.count.has_value();
}

bool dueGoesIn(const DueItem& item) { return item.about == "in"; }

}  // namespace combwright
