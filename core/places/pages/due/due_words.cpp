#include "core/places/pages/due/due_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>
#include <vector>

#include "core/places/due/due_quarantine.h"
#include "core/places/pages/due/due_look_words.h"
#include "core/places/pages/due/due_phrases.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// What a trip counts alike, and how it is said of one and of several.
struct DueKind {
    const char* one;
    const char* several;
};

DueKind dueKindOf(const DueItem& item) {
    switch (item.rule) {
        case DueRule::Look:
            if (isQuarantine(item))
                return {QT_TRANSLATE_NOOP("due", "1 to leave as it is and report"),
                        QT_TRANSLATE_NOOP("due", "%1 to leave as they are and report")};
            return {QT_TRANSLATE_NOOP("due", "1 to look at"),
                    QT_TRANSLATE_NOOP("due", "%1 to look at")};
        case DueRule::Swarm:
            if (!item.about.empty())
                return {QT_TRANSLATE_NOOP("due", "1 whose queen cells to check"),
                        QT_TRANSLATE_NOOP("due", "%1 whose queen cells to check")};
            return {QT_TRANSLATE_NOOP("due", "1 to look through for swarm cells"),
                    QT_TRANSLATE_NOOP("due", "%1 to look through for swarm cells")};
        case DueRule::Queen:
            return {QT_TRANSLATE_NOOP("due", "1 young queen"),
                    QT_TRANSLATE_NOOP("due", "%1 young queens")};
        case DueRule::TestFrame:
            if (withoutQueen(item))
                return {QT_TRANSLATE_NOOP("due", "1 without a queen"),
                        QT_TRANSLATE_NOOP("due", "%1 without a queen")};
            if (!item.about.empty())
                return {QT_TRANSLATE_NOOP("due", "1 without eggs"),
                        QT_TRANSLATE_NOOP("due", "%1 without eggs")};
            return {QT_TRANSLATE_NOOP("due", "1 test frame"),
                    QT_TRANSLATE_NOOP("due", "%1 test frames")};
        case DueRule::Sample:
            return {QT_TRANSLATE_NOOP("due", "1 mite sample"),
                    QT_TRANSLATE_NOOP("due", "%1 mite samples")};
        case DueRule::SampleAgain:
            return {QT_TRANSLATE_NOOP("due", "1 to sample again"),
                    QT_TRANSLATE_NOOP("due", "%1 to sample again")};
        case DueRule::Treat:
            if (item.perDay)
                return {QT_TRANSLATE_NOOP("due", "1 with many mites on its board"),
                        QT_TRANSLATE_NOOP("due", "%1 with many mites on their boards")};
            return {QT_TRANSLATE_NOOP("due", "1 over the mite line"),
                    QT_TRANSLATE_NOOP("due", "%1 over the mite line")};
        case DueRule::TakeOut:
            return {QT_TRANSLATE_NOOP("due", "1 treatment out"),
                    QT_TRANSLATE_NOOP("due", "%1 treatments out")};
        case DueRule::SupersBack:
            if (superTooEarly(item))
                return {QT_TRANSLATE_NOOP("due", "1 with a super on too early"),
                        QT_TRANSLATE_NOOP("due", "%1 with supers on too early")};
            return {QT_TRANSLATE_NOOP("due", "1 may have supers again"),
                    QT_TRANSLATE_NOOP("due", "%1 may have supers again")};
        case DueRule::Feed:
            return {QT_TRANSLATE_NOOP("due", "1 to feed"), QT_TRANSLATE_NOOP("due", "%1 to feed")};
        case DueRule::Stores:
            return {QT_TRANSLATE_NOOP("due", "1 running short"),
                    QT_TRANSLATE_NOOP("due", "%1 running short")};
        case DueRule::AddBox:
            return {QT_TRANSLATE_NOOP("due", "1 to give room"),
                    QT_TRANSLATE_NOOP("due", "%1 to give room")};
        case DueRule::ComeBack:
            return {QT_TRANSLATE_NOOP("due", "1 to come back to"),
                    QT_TRANSLATE_NOOP("due", "%1 to come back to")};
        case DueRule::Clearers:
            if (dueGoesIn(item))
                return {QT_TRANSLATE_NOOP("due", "1 clearer board in"),
                        QT_TRANSLATE_NOOP("due", "%1 clearer boards in")};
            return {QT_TRANSLATE_NOOP("due", "1 clearer board out"),
                    QT_TRANSLATE_NOOP("due", "%1 clearer boards out")};
        case DueRule::Wets:
            if (wetsComeOff(item))
                return {QT_TRANSLATE_NOOP("due", "1 cleaned box off"),
                        QT_TRANSLATE_NOOP("due", "%1 cleaned boxes off")};
            return {QT_TRANSLATE_NOOP("due", "1 wet box back"),
                    QT_TRANSLATE_NOOP("due", "%1 wet boxes back")};
        case DueRule::Visit:
            return {QT_TRANSLATE_NOOP("due", "1 line to write"),
                    QT_TRANSLATE_NOOP("due", "%1 lines to write")};
        case DueRule::Task:
            return {QT_TRANSLATE_NOOP("due", "1 note"), QT_TRANSLATE_NOOP("due", "%1 notes")};
        case DueRule::Extract:
            return {QT_TRANSLATE_NOOP("due", "1 to extract"),
                    QT_TRANSLATE_NOOP("due", "%1 to extract")};
        case DueRule::Freezer:
            return {QT_TRANSLATE_NOOP("due", "1 frame for the freezer"),
                    QT_TRANSLATE_NOOP("due", "%1 frames for the freezer")};
        case DueRule::DeadOut:
            if (!item.about.empty())
                return {QT_TRANSLATE_NOOP("due", "1 found dead, its end to write down"),
                        QT_TRANSLATE_NOOP("due", "%1 found dead, their end to write down")};
            return {QT_TRANSLATE_NOOP("due", "1 dead-out"),
                    QT_TRANSLATE_NOOP("due", "%1 dead-outs")};
        case DueRule::Honey:
            return {QT_TRANSLATE_NOOP("due", "1 bucket to see to"),
                    QT_TRANSLATE_NOOP("due", "%1 buckets to see to")};
        case DueRule::Wax:
            return {QT_TRANSLATE_NOOP("due", "1 set of comb jars to see to"),
                    QT_TRANSLATE_NOOP("due", "%1 sets of comb jars to see to")};
    }
    return {"", ""};
}

/// Boxes and lines are counted, else hives.
std::int64_t manyOf(const DueItem& item) {
    const bool ofThings = item.rule == DueRule::Wets || item.rule == DueRule::Visit;
    return ofThings ? dueCountOf(item) : 1;
}

QString aloneText(const DueTrip& trip) {
    const DueItem& item = trip.item();
    const QString yard = fromUtf8(trip.yardName);
    switch (item.rule) {
        case DueRule::Extract:
            if (item.where == DueWhere::Pull)
                return yard.isEmpty() ? dueTr("Bring in %1").arg(dueBoxes(item))
                                      : dueTr("Bring in %1 of %2").arg(dueBoxes(item), yard);
            return yard.isEmpty() ? dueTr("Extract %1").arg(dueBoxes(item))
                                  : dueTr("Extract %1 of %2").arg(dueBoxes(item), yard);
        case DueRule::Freezer:
            return dueGoesIn(item) ? dueTr("%1 into the freezer").arg(dueFrames(item))
                                   : dueTr("%1 out of the freezer").arg(dueFrames(item));
        case DueRule::DeadOut:
            if (!item.about.empty()) break;
            return dueTr("Say what %1 died of").arg(fromUtf8(trip.hives.front().mark));
        case DueRule::Honey:
            return dueHoneyDo(item);
        case DueRule::Wax:
            if (item.where == DueWhere::WaxBench) return dueWaxDo(item);
            break;
        case DueRule::Wets:
            if (item.where == DueWhere::Storeroom)
                return dueTr("Dry %1 no hive may have").arg(dueBoxes(item));
            break;
        case DueRule::Task:
            if (!item.hive && trip.yardName.empty()) return fromUtf8(item.about);
            break;
        default:
            break;
    }
    QStringList works;
    for (const DueHive& row : trip.hives)
        for (const DueItem& each : row.items) works << dueDoText(each);
    const QString mark = fromUtf8(trip.hives.front().mark);
    return mark.isEmpty() ? yard + QStringLiteral(": ") + works.join(QStringLiteral(", "))
                          : mark + QStringLiteral(": ") + works.join(QStringLiteral(", "));
}

/// "H3"; "hive 3" where a mark alone would be read as a count.
QString hiveBesideCounts(const DueHive& row) {
    const QString mark = fromUtf8(row.mark);
    const bool isNumber =
        std::all_of(mark.begin(), mark.end(), [](QChar c) { return c.isDigit(); });
    return isNumber && !mark.isEmpty() ? dueTr("hive %1").arg(mark) : mark;
}

}  // namespace

QString groupText(DueGroup group) {
    switch (group) {
        case DueGroup::Late:
            return dueTr("late");
        case DueGroup::Today:
            return dueTr("today");
        case DueGroup::ThisWeek:
            return dueTr("this week");
        case DueGroup::Later:
            return dueTr("later");
    }
    return {};
}

QString whereText(DueWhere where) {
    switch (where) {
        case DueWhere::Yard:
            return dueTr("Yard");
        case DueWhere::Pull:
            return dueTr("Pull");
        case DueWhere::HoneyRoom:
            return dueTr("Honey room");
        case DueWhere::Storeroom:
            return dueTr("Storeroom");
        case DueWhere::WaxBench:
            return dueTr("Wax bench");
    }
    return {};
}

QString ruleText(DueRule rule) {
    return choiceText(Choices<DueRule>::words[static_cast<std::size_t>(rule)]);
}

QString dueDoText(const DueItem& item) {
    switch (item.rule) {
        case DueRule::Look:
            if (isQuarantine(item))
                return item.about == "contact" ? dueTr("leave it as it is: in contact with disease")
                                               : dueTr("leave it as it is: report");
            return dueTr("look into it");
        case DueRule::Swarm:
            return checksCells(item) ? checkCellsText(item) : dueTr("look for swarm cells");
        case DueRule::Queen:
            return dueTr("look for eggs of the young queen");
        case DueRule::TestFrame:
            if (withoutQueen(item)) return dueTr("see to a queen");
            return withoutEggs(item) ? dueTr("look for a queen, or give a frame with eggs")
                                     : dueTr("give a frame with eggs");
        case DueRule::Sample:
            if (item.about == "bees") return dueTr("say how many bees, or sample again");
            return item.perDay ? dueTr("take a wash now") : dueTr("take a mite sample");
        case DueRule::SampleAgain:
            return dueTr("sample again");
        case DueRule::Treat:
            return dueTr("decide on treatment");
        case DueRule::TakeOut:
            return item.about.empty() ? dueTr("take the treatment out")
                                      : dueTr("%1 out").arg(fromUtf8(item.about));
        case DueRule::SupersBack:
            return superTooEarly(item) ? dueTr("%1 off, or held back").arg(fromUtf8(item.about))
                                       : dueTr("supers may go on again");
        case DueRule::Feed:
            return item.mass ? dueTr("feed %1").arg(
                                   massText(static_cast<double>(item.mass->grams()), How::Assumed))
                             : dueTr("feed");
        case DueRule::Stores:
            return dueTr("weigh or feed");
        case DueRule::AddBox:
            return dueTr("give a box");
        case DueRule::ComeBack:
            return dueTr("come back to it");
        case DueRule::Extract:
            return item.where == DueWhere::Pull ? dueTr("bring in %1").arg(dueBoxes(item))
                                                : dueTr("extract %1").arg(dueBoxes(item));
        case DueRule::Clearers:
            return dueGoesIn(item) ? dueTr("clearer board in") : dueTr("clearer board out");
        case DueRule::Wets:
            return wetsComeOff(item) ? dueTr("%1 off again").arg(fromUtf8(item.about))
                                     : dueTr("%1 back").arg(fromUtf8(item.about));
        case DueRule::Freezer:
            return dueGoesIn(item) ? dueTr("%1 into the freezer").arg(dueFrames(item))
                                   : dueTr("%1 out of the freezer").arg(dueFrames(item));
        case DueRule::DeadOut:
            return foundDead(item) ? dueTr("write down that its colony ended")
                                   : dueTr("say what it died of");
        case DueRule::Honey:
            return dueHoneyDo(item);
        case DueRule::Wax:
            return dueWaxDo(item);
        case DueRule::Visit:
            return dueTr("write the rest of %1").arg(dueSince(item));
        case DueRule::Task:
            return fromUtf8(item.about);
    }
    return {};
}

QString tripWorkText(const DueTrip& trip) {
    if (!trip.isTrip()) return aloneText(trip);
    std::vector<std::pair<DueKind, std::int64_t>> kinds;
    QStringList parts;
    for (const DueHive& row : trip.hives)
        for (const DueItem& item : row.items) {
            const DueKind kind = dueKindOf(item);
            const auto same = std::find_if(kinds.begin(), kinds.end(), [&](const auto& each) {
                return std::string_view(each.first.several) == kind.several;
            });
            if (same == kinds.end())
                kinds.emplace_back(kind, manyOf(item));
            else
                same->second += manyOf(item);
        }
    for (const auto& [kind, many] : kinds) parts << dueCounted(many, kind.one, kind.several);
    for (const DueHive& row : trip.shut)
        parts << QStringLiteral("%1 %2").arg(hiveBesideCounts(row),
                                             leaveShutText(row.items.front().from - days(1)));
    return parts.join(QStringLiteral(", "));
}

QString tripText(const DueTrip& trip) {
    return trip.isTrip() ? fromUtf8(trip.yardName) + QStringLiteral(": ") + tripWorkText(trip)
                         : tripWorkText(trip);
}

QString tripNoteText(const DueTrip& trip) {
    if (!trip.isTrip()) {
        QStringList whys;
        for (const DueHive& row : trip.hives)
            for (const DueItem& item : row.items) whys << dueWhyText(item);
        return whys.join(QLatin1Char(' '));
    }
    QStringList parts;
    if (trip.minutes) parts << dueTr("about %1").arg(minutesText(*trip.minutes));
    QStringList kit;
    for (const DueKit& each : trip.take) kit << kitText(each);
    if (!kit.isEmpty()) parts << dueTr("take %1").arg(kit.join(QStringLiteral(", ")));
    // One hive to see says which and why at once; nobody opens a trip for that.
    if (trip.items() == 1) {
        const DueHive& row = trip.hives.front();
        const QString why = dueWhyText(trip.item());
        parts << (row.mark.empty() ? why : hiveBesideCounts(row) + QStringLiteral(": ") + why);
    }
    return parts.join(QStringLiteral("; "));
}

QString tripWhenText(const DueTrip& trip, Day today) {
    if (trip.group == DueGroup::Late)
        return dueCounted((today - trip.day).count(), QT_TRANSLATE_NOOP("due", "1 day"),
                          QT_TRANSLATE_NOOP("due", "%1 days"));
    if (trip.day == today) return {};
    return trip.by ? dueTr("by %1").arg(shortDayText(trip.day)) : shortDayText(trip.day);
}

QString kitText(const DueKit& kit) {
    if (kit.mass) {
        // Taken along by the kilogram, and rather one too many.
        const double grams = std::ceil(static_cast<double>(kit.mass->grams()) / 1000.0) * 1000.0;
        return massText(grams, How::Assumed) + QLatin1Char(' ') +
               (kit.item == "fondant" ? dueTr("fondant")
                : kit.item == "feed"  ? dueTr("feed")
                                      : fromUtf8(kit.item));
    }
    struct Things {
        std::string_view item;
        const char* one;
        const char* several;
    };
    static constexpr Things things[] = {
        {"egg frame", QT_TRANSLATE_NOOP("due", "1 egg frame"),
         QT_TRANSLATE_NOOP("due", "%1 egg frames")},
        {"frame with eggs", QT_TRANSLATE_NOOP("due", "1 frame with eggs"),
         QT_TRANSLATE_NOOP("due", "%1 frames with eggs")},
        {"super", QT_TRANSLATE_NOOP("due", "1 super"), QT_TRANSLATE_NOOP("due", "%1 supers")},
        {"box", QT_TRANSLATE_NOOP("due", "1 box"), QT_TRANSLATE_NOOP("due", "%1 boxes")},
        {"wet box", QT_TRANSLATE_NOOP("due", "1 wet box"),
         QT_TRANSLATE_NOOP("due", "%1 wet boxes")},
        {"wash jar", QT_TRANSLATE_NOOP("due", "1 wash jar"),
         QT_TRANSLATE_NOOP("due", "%1 wash jars")},
        {"clearer board", QT_TRANSLATE_NOOP("due", "1 clearer board"),
         QT_TRANSLATE_NOOP("due", "%1 clearer boards")},
        {"feeder", QT_TRANSLATE_NOOP("due", "1 feeder"), QT_TRANSLATE_NOOP("due", "%1 feeders")},
        {"fondant", QT_TRANSLATE_NOOP("due", "1 pack of fondant"),
         QT_TRANSLATE_NOOP("due", "%1 packs of fondant")},
    };
    if (kit.item == "feed") return dueTr("feed");
    for (const Things& each : things)
        if (each.item == kit.item) return dueCounted(kit.count, each.one, each.several);
    return QStringLiteral("%1 %2").arg(kit.count).arg(fromUtf8(kit.item));
}

QString minutesText(double minutes) {
    // By the quarter of an hour from an hour on, else by five minutes: it is no timetable.
    const long whole = std::max(5L, std::lround(minutes / 5.0) * 5);
    if (whole < 60) return dueTr("%1 min").arg(whole);
    return whole % 60 == 0 ? dueTr("%1 h").arg(whole / 60)
                           : dueTr("%1 h %2 min").arg(whole / 60).arg(whole % 60);
}

QString quietedText(const Quieted& quieted) {
    const QString at = fromUtf8(quieted.hive.empty() ? quieted.yard : quieted.hive);
    const QString text =
        dueTr("%1 at %2: %3")
            .arg(ruleText(quieted.item.rule), at, fromUtf8(quieted.quiet.reason.text()));
    return quieted.quiet.until
               ? dueTr("%1 (quiet until %2)").arg(text, shortDayText(*quieted.quiet.until))
               : text;
}

}  // namespace combwright
