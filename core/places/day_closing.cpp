#include "core/places/day_closing.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString closingWord(const char* text) { return QCoreApplication::translate("day_closing", text); }

bool whole(const YieldBox& box) { return box.grossG && box.wetG; }

QString lackingText(const YieldBox& box) {
    const char* what = box.grossG ? "%1 has no wet weight" : "%1 was not weighed full";
    if (!box.grossG && !box.wetG) what = "%1 was not weighed at all";
    return closingWord(what).arg(fromUtf8(box.mark));
}

ClosingOutlook notYet(std::optional<std::size_t> lacking, const QString& text) {
    return {false, text, lacking};
}

}  // namespace

ClosingOutlook closingOutlook(const DayTyped& day) {
    const auto count =
        static_cast<std::size_t>(std::count_if(day.boxes.begin(), day.boxes.end(), &whole));
    if (day.boxes.empty() && !day.bucketsG)
        return notYet({}, closingWord("Nothing is written down yet: boxes, then buckets."));
    if (count == 0 && !day.boxes.empty())
        return {true,
                day.bucketsG
                    ? closingWord("No box was weighed full and wet: shares follow frames and how "
                                  "full they were, all by eye. That is fine.")
                    : closingWord("Nothing was weighed: what the hives gave is reckoned from "
                                  "frames and how full they were, all by eye."),
                {}};
    if (!day.bucketsG)
        return notYet({}, closingWord("No bucket holds honey yet. Fill in what the buckets weigh, "
                                      "or one line for all of them."));
    std::vector<std::size_t> lacking;
    for (std::size_t i = 0; i < day.boxes.size(); ++i)
        if (!whole(day.boxes[i])) lacking.push_back(i);
    if (lacking.size() > 1)
        return notYet(
            lacking[1],
            closingWord("%1, and %2. One can be found by difference, two cannot: weigh one of "
                        "them, or leave every weight of the boxes out and close by eye.")
                .arg(lackingText(day.boxes[lacking[0]]), lackingText(day.boxes[lacking[1]])));
    if (lacking.size() == 1 && !day.cappingsG)
        return notYet(lacking[0],
                      closingWord("%1. It can be found by difference once the wet cappings are "
                                  "weighed; or weigh the box.")
                          .arg(lackingText(day.boxes[lacking[0]])));
    const auto shares = shareYield({*day.bucketsG, day.cappingsG, std::nullopt}, day.boxes);
    if (!shares) {
        std::optional<std::size_t> at;
        const std::string& field = shares.error().field;
        if (field.starts_with("boxes["))
            at = static_cast<std::size_t>(std::atoll(field.c_str() + 6));
        if (at && !whole(day.boxes[*at]))
            return notYet(at, closingWord("Buckets and cappings weigh less than the other boxes "
                                          "lost, so nothing is left for %1. Look at the weights "
                                          "again.")
                                  .arg(fromUtf8(day.boxes[*at].mark)));
        if (at)
            return notYet(at, closingWord("%1 is heavier wet than full. Put one right.")
                                  .arg(fromUtf8(day.boxes[*at].mark)));
        return notYet(at, sentence(shares.error()));
    }
    if (lacking.size() == 1)
        return {true,
                closingWord("%1: its %2 is what the others leave, by difference. What was lost on "
                            "the way is then not known.")
                    .arg(lackingText(day.boxes[lacking[0]]),
                         massText(shares->offG[lacking[0]], How::ByDifference)),
                lacking[0]};
    if (!shares->unaccountedG)
        return {true,
                closingWord("All boxes are weighed. The wet cappings are not: what was lost on the "
                            "way is then not known."),
                {}};
    const double missing = *shares->unaccountedG;
    const QString grams = massText(missing < 0 ? -missing : missing, day.how);
    if (day.how != How::Weighed)
        return {true,
                (missing < 0 ? closingWord("Not all is weighed, so only about: buckets and "
                                           "cappings hold %1 more than left the boxes. Is a box "
                                           "missing here?")
                             : closingWord("Not all is weighed, so only about: %1 is missing on "
                                           "the way."))
                    .arg(grams),
                {}};
    return {true,
            (missing < 0 ? closingWord("All is weighed; buckets and cappings weigh %1 more than "
                                       "left the boxes. Is a box missing here?")
                         : closingWord("All is weighed; %1 is missing on the way."))
                .arg(grams),
            {}};
}

}  // namespace combwright
