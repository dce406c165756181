#include "core/places/honey_room/day_closing.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/places/honey/bucket_sheet.h"
#include "core/places/pull/fill_judged.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/runs.h"
#include "core/words/figures.h"
#include "core/words/room_line.h"
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
    if (day.onPile > 0)
        return notYet({}, day.onPile == 1
                              ? closingWord("One frame lies set aside: say what became of it, "
                                            "then the run can be closed.")
                              : closingWord("%1 frames lie set aside: say what became of "
                                            "them, then the run can be closed.")
                                    .arg(day.onPile));
    const auto count =
        static_cast<std::size_t>(std::count_if(day.boxes.begin(), day.boxes.end(), &whole));
    if (day.boxes.empty() && !day.bucketsG)
        return notYet({}, closingWord("Nothing is written down yet: boxes, then buckets."));
    const bool anyFull = std::any_of(day.boxes.begin(), day.boxes.end(),
                                     [](const YieldBox& box) { return box.grossG.has_value(); });
    if (count == 0 && anyFull)
        return {true,
                closingWord("No box was weighed full and wet: a box weighed full counts by that "
                            "weight less the empty box, the others by frames and how full they "
                            "were, all by eye."),
                {}};
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

namespace {

bool alikeBuckets(const BucketToFill& one, const BucketToFill& other) {
    return one.net.value == other.net.value && one.net.how == other.net.how;
}

QString readingText(const Known<Mass>& net) {
    return net.value ? massKnown(static_cast<double>(net.value->grams()), net.how)
                     : closingWord("not known");
}

}  // namespace

std::vector<BucketToFill> bucketsToFill(const Read& file, const TypedBuckets& typed, Day on,
                                        const std::vector<std::string>& besides,
                                        std::optional<Id<Extraction>> run) {
    const auto lot = file.find(run);
    BucketNumbers numbers(file, lot, lot ? lot->on : on);
    for (const std::string& mark : besides) numbers.pass(mark);
    std::vector<BucketToFill> buckets;
    for (const TypedBucket& each : typed.each)
        buckets.push_back(
            {numbers.next(), each.level ? massAtLevel(file, *each.level, on) : *each.mass});
    return buckets;
}

QString filledText(const std::vector<BucketToFill>& buckets) {
    QStringList parts;
    double grams = 0;
    How how = How::Weighed;
    for (std::size_t i = 0; i < buckets.size();) {
        std::size_t end = i + 1;
        while (end < buckets.size() && alikeBuckets(buckets[end], buckets[i])) ++end;
        const Known<Mass>& net = buckets[i].net;
        const QString first = fromUtf8(buckets[i].mark);
        parts << (end - i == 1
                      ? QStringLiteral("%1 %2").arg(first, readingText(net))
                      : closingWord("%1 to %2 %3 each")
                            .arg(first, fromUtf8(buckets[end - 1].mark), readingText(net)));
        if (net.value) {
            grams += static_cast<double>(net.value->grams()) * static_cast<double>(end - i);
            how = weaker(how, net.how);
        }
        i = end;
    }
    const QString all = parts.join(QStringLiteral(", "));
    return buckets.size() < 2 ? all
                              : closingWord("%1: %2 together").arg(all, massKnown(grams, how));
}

std::optional<Known<Mass>> cappingsTyped(const Read& file, const QString& text, Day on) {
    const auto level = typedTubLevel(text);
    if (!level) return typedReading(text);
    const double tub = constantOr(file, "cappings_tub_g", {}, on, 0);
    if (tub <= 0) return std::nullopt;
    return Known<Mass>{Mass::roundedGrams(*level * tub), std::nullopt, How::ByEye};
}

std::optional<Id<Yard>> yardOfBox(const Read& file, const RoomBox& box, Day on) {
    auto hive = box.entry ? box.entry->hive : std::nullopt;
    if (!hive && box.box) hive = hiveThatFilled(file, *box.box, on);
    const auto stand = file.find(hive);
    return stand ? std::optional(stand->yard) : std::nullopt;
}

std::optional<Known<Share>> fillOfBox(const Read& file, const RoomBox& box, Day on) {
    if (box.entry && box.entry->filled) return box.entry->filled;
    return box.box ? fillLookedAt(file, *box.box, on) : std::nullopt;
}

std::vector<AsidePile> pileOf(const Read& file, Id<Extraction> run) {
    std::vector<AsidePile> pile;
    for (const SetAside& aside : file.where<SetAside>({is("extraction", run)})) {
        if (aside.became) continue;
        const auto box = file.find(aside.box);
        const auto frames = aside.frames.value();
        QString text = frames == 1 ? closingWord("1 frame") : closingWord("%1 frames").arg(frames);
        text += closingWord(" of %1").arg(box ? fromUtf8(calledInRun(file, *box))
                                              : closingWord("a box nobody knows"));
        if (aside.why)
            text += QStringLiteral(", ") +
                    word(Choices<AsideWhy>::words[static_cast<std::size_t>(*aside.why)]);
        pile.push_back({aside, text});
    }
    return pile;
}

}  // namespace combwright
