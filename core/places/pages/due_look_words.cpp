#include "core/places/pages/due_look_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/words/words.h"

namespace combwright {
namespace {

QString dueLook(const char* text) { return QCoreApplication::translate("due", text); }

}  // namespace

/// A day of another year than the one asked in carries its year.
QString dueDay(const DueItem& item, Day day) {
    return item.asked ? shortDayText(day, *item.asked) : shortDayText(day);
}
QString dueSince(const DueItem& item) { return dueDay(item, item.since); }

bool checksCells(const DueItem& item) { return item.rule == DueRule::Swarm && !item.about.empty(); }
bool foundDead(const DueItem& item) {
    return item.rule == DueRule::DeadOut && item.about == "found dead";
}
bool withoutEggs(const DueItem& item) {
    return item.rule == DueRule::TestFrame && !item.about.empty();
}

QString checkCellsWhy(const DueItem& item) {
    const bool capped = item.about == "capped";
    QString text =
        (capped                 ? dueLook("Capped queen cells seen %1")
         : item.about == "open" ? dueLook("Open queen cells seen %1")
                                : dueLook("Queen cells seen %1, open or capped not said"))
            .arg(dueSince(item));
    if (item.by && !capped)
        text += dueLook("; sealed by %1, and a swarm may go").arg(dayAndMonth(*item.by));
    if (item.other)
        text += (capped ? dueLook("; a swarm may go, and the queens are out by %1")
                        : dueLook("; their queens come out from %1"))
                    .arg(dayAndMonth(*item.other));
    return text + dueLook(". Nobody wrote down whether one was left.");
}

QString withoutEggsWhy(const DueItem& item) {
    return (item.about == "no brood"
                ? dueLook("No eggs and no brood on %1: without a laying queen three weeks or more. "
                          "Look for a queen; a frame with eggs shows whether there is one.")
                : dueLook("No eggs on %1: without a laying queen three days or more. Look for a "
                          "queen; a frame with eggs shows whether there is one."))
        .arg(dueSince(item));
}

QString openedWhy(const DueItem& item) {
    if (!item.other) return dueLook("Never opened by what is written down.");
    const QString opened = dueDay(item, *item.other);
    if (!item.count) return dueLook("Last opened %1.").arg(opened);
    if (*item.count == 0) return dueLook("Last opened %1, today.").arg(opened);
    if (*item.count == 1) return dueLook("Last opened %1, yesterday.").arg(opened);
    return dueLook("Last opened %1, %2 days ago.").arg(opened).arg(*item.count);
}

QString addBoxWhy(const DueItem& item) {
    const QString many =
        (item.count == 1 ? dueLook("1 frame") : dueLook("%1 frames").arg(item.count.value_or(0)));
    QString text = item.about == "supers_filled"
                       ? dueLook("%1 of its super filled on %2").arg(many, dueSince(item))
                   : item.about == "nest_covered"
                       ? dueLook("bees on %1 of the nest on %2").arg(many, dueSince(item))
                       : dueLook("%1 of the nest filled on %2").arg(many, dueSince(item));
    if (item.value)
        text += dueLook("; from %1 on it wants room").arg(QLocale().toString(*item.value));
    text[0] = text.at(0).toUpper();
    return text + QLatin1Char('.');
}

QString checkCellsText(const DueItem& item) {
    if (item.about == "capped")
        return item.other ? dueLook("check the cells: capped, queens out by %1")
                                .arg(dayAndMonth(*item.other))
                          : dueLook("check the cells");
    return item.by ? (item.about == "open" ? dueLook("check the cells: open on %1, sealed by %2")
                                           : dueLook("check the cells: seen %1, sealed by %2"))
                         .arg(dayAndMonth(item.since), dayAndMonth(*item.by))
                   : dueLook("check the cells");
}

QString foundDeadWhy(const DueItem& item) {
    return dueLook(
               "Found dead on %1; its combs are not held and it stands in the records until its "
               "end is written down.")
        .arg(dueSince(item));
}

}  // namespace combwright
