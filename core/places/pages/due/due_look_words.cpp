#include "core/places/pages/due/due_look_words.h"

#include <QLocale>

#include "core/places/pages/due/due_phrases.h"
#include "core/words/words.h"

namespace combwright {

bool checksCells(const DueItem& item) { return item.rule == DueRule::Swarm && !item.about.empty(); }
bool foundDead(const DueItem& item) {
    return item.rule == DueRule::DeadOut && item.about == "found dead";
}
bool withoutEggs(const DueItem& item) {
    return item.rule == DueRule::TestFrame && !item.about.empty() && !withoutQueen(item);
}
bool withoutQueen(const DueItem& item) {
    return item.rule == DueRule::TestFrame && item.about == "queenless";
}

QString checkCellsWhy(const DueItem& item) {
    const bool capped = item.about == "capped";
    QString text = (capped                 ? dueTr("Capped queen cells seen %1")
                    : item.about == "open" ? dueTr("Open queen cells seen %1")
                                           : dueTr("Queen cells seen %1, open or capped not said"))
                       .arg(dueSince(item));
    if (item.by && !capped)
        text += dueTr("; sealed by %1, and a swarm may go").arg(dayAndMonth(*item.by));
    if (item.other)
        text += (capped ? dueTr("; a swarm may go, and the queens are out by %1")
                        : dueTr("; their queens come out from %1"))
                    .arg(dayAndMonth(*item.other));
    return text + dueTr(". Nobody wrote down whether one was left.");
}

QString withoutEggsWhy(const DueItem& item) {
    return (item.about == "no brood"
                ? dueTr("No eggs and no brood on %1: without a laying queen three weeks or more. "
                        "Look for a queen; a frame with eggs shows whether there is one.")
                : dueTr("No eggs on %1: without a laying queen three days or more. Look for a "
                        "queen; a frame with eggs shows whether there is one."))
        .arg(dueSince(item));
}

QString withoutQueenWhy(const DueItem& item) {
    return dueTr(
               "Without a queen since %1, by what is written down, and no young one is waited "
               "for. Give it a queen or a cell, a frame with eggs, or unite it.")
        .arg(dueSince(item));
}

QString openedWhy(const DueItem& item) {
    if (!item.other) return dueTr("Never opened by what is written down.");
    const QString opened = dueDay(item, *item.other);
    if (!item.count) return dueTr("Last opened %1.").arg(opened);
    if (*item.count == 0) return dueTr("Last opened %1, today.").arg(opened);
    if (*item.count == 1) return dueTr("Last opened %1, yesterday.").arg(opened);
    return dueTr("Last opened %1, %2 days ago.").arg(opened).arg(*item.count);
}

QString addBoxWhy(const DueItem& item) {
    const QString many = dueCounted(item.count.value_or(0), QT_TRANSLATE_NOOP("due", "1 frame"),
                                    QT_TRANSLATE_NOOP("due", "%1 frames"));
    QString text = item.about == "supers_filled"
                       ? dueTr("%1 of its super filled on %2").arg(many, dueSince(item))
                   : item.about == "nest_covered"
                       ? dueTr("bees on %1 of the nest on %2").arg(many, dueSince(item))
                       : dueTr("%1 of the nest filled on %2").arg(many, dueSince(item));
    if (item.value)
        text += dueTr("; from %1 on it wants room").arg(QLocale().toString(*item.value));
    text[0] = text.at(0).toUpper();
    return text + QLatin1Char('.');
}

QString checkCellsText(const DueItem& item) {
    if (item.about == "capped")
        return item.other ? dueTr("check the cells: capped, queens out by %1")
                                .arg(dayAndMonth(*item.other))
                          : dueTr("check the cells");
    return item.by ? (item.about == "open" ? dueTr("check the cells: open on %1, sealed by %2")
                                           : dueTr("check the cells: seen %1, sealed by %2"))
                         .arg(dayAndMonth(item.since), dayAndMonth(*item.by))
                   : dueTr("check the cells");
}

QString foundDeadWhy(const DueItem& item) {
    return dueTr(
               "Found dead on %1; its combs are not held and it stands in the records until its "
               "end is written down.")
        .arg(dueSince(item));
}

}  // namespace combwright
