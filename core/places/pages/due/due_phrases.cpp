#include "core/places/pages/due/due_phrases.h"

#include <QCoreApplication>
#include <QLocale>

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

namespace {

QString dueBuckets(const DueItem& item) {
    return dueCounted(dueCountOf(item), QT_TRANSLATE_NOOP("due", "1 bucket"),
                      QT_TRANSLATE_NOOP("due", "%1 buckets"));
}

QString dueWater(const DueItem& item) {
    return QLocale().toString(item.value.value_or(0), 'f', 1) + QStringLiteral(" %");
}

}  // namespace

QString dueHoneyDo(const DueItem& item) {
    const QString of = fromUtf8(item.about);
    if (!item.count) {
        if (item.source == "read") return dueTr("Read the water of %1").arg(of);
        if (item.source == "wet") return dueTr("Dry or blend %1: too wet").arg(of);
        if (item.source == "set") return dueTr("Use %1 first: set and in danger").arg(of);
        return dueTr("Skim %1: settled").arg(of);
    }
    if (item.source == "read") return dueTr("Read the water of %1: %2").arg(of, dueBuckets(item));
    if (item.source == "wet") return dueTr("Dry or blend %1: %2 too wet").arg(of, dueBuckets(item));
    if (item.source == "set")
        return dueTr("Use %1 first: %2 set and in danger").arg(of, dueBuckets(item));
    return dueTr("Skim %1: %2 settled").arg(of, dueBuckets(item));
}

QString dueHoneyWhy(const DueItem& item) {
    if (item.source == "read")
        return dueTr("In the room since %1, and nobody read its water.").arg(dueSince(item));
    if (item.source == "wet")
        return dueTr("It has up to %1 of water, over your line: do not fill it.")
            .arg(dueWater(item));
    if (item.source == "set")
        return dueTr("Between its crystals it comes to about %1 of water.").arg(dueWater(item));
    return dueTr(
               "Filled %1; froth and wax are up on %2, reckoned by its water, the room's warmth "
               "and an ordinary tank's depth.")
        .arg(dueSince(item), dueDay(item, item.from));
}

QString dueWaxDo(const DueItem& item) {
    const QString of = fromUtf8(item.about);
    if (item.source == "heat") return dueTr("POT ON HEAT: %1. Go there, and tick it off").arg(of);
    if (item.source == "melt") return dueTr("Melt %1: washed and not melted").arg(of);
    if (item.source == "wet") return dueTr("Melt, freeze or lid %1: wet cappings").arg(of);
    if (item.source == "pour") return dueTr("Pour %1").arg(of);
    if (item.source == "finish") return dueTr("Trim, pair and label the candles");
    if (item.source == "out") return dueTr("Take %1 out of the mould").arg(of);
    if (item.source == "on") return dueTr("put %1 on").arg(of);
    if (item.source == "look") return dueTr("look at %1").arg(of);
    if (item.source == "off") return dueTr("take %1 off: built").arg(of);
    return dueTr("Lid and weigh %1").arg(of);
}

QString dueWaxWhy(const DueItem& item) {
    if (item.source == "heat")
        return dueTr("On since %1; wax on heat is never left alone.").arg(dueSince(item));
    if (item.source == "melt")
        return dueTr("Washed %1; washed wax ferments when it is left.").arg(dueSince(item));
    if (item.source == "wet")
        return dueTr(
                   "Kept since %1, neither frozen nor under a tight lid; what is left wet "
                   "ferments and moulds. 14 days are a planning assumption.")
            .arg(dueSince(item));
    if (item.source == "pour")
        return dueTr("An evening that is free, by the plan for %1.").arg(dueDay(item, *item.other));
    if (item.source == "finish")
        return dueTr("The evening kept for it, before %1.").arg(dueDay(item, *item.other));
    if (item.source == "out") return dueTr("Poured %1, and set by now.").arg(dueSince(item));
    if (item.source == "on")
        return dueTr("Bees take up to 28 days to build in a good flow: planning assumption.");
    if (item.source == "look")
        return dueTr("On since %1; a look a week, and off as soon as they are built.")
            .arg(dueSince(item));
    if (item.source == "off")
        return dueTr("The last look found all of them filled; bees soil what stays on.");
    return dueTr("Off the hive since %1; comb and honey are weighed together.")
        .arg(dueDay(item, item.from));
}

bool wetsComeOff(const DueItem& item) { return item.rule == DueRule::Wets && item.other; }

bool superTooEarly(const DueItem& item) {
    return item.rule == DueRule::SupersBack && item.count.has_value();
}

bool dueGoesIn(const DueItem& item) { return item.about == "in"; }

}  // namespace combwright
