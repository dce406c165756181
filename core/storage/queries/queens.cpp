#include "core/storage/queries/queens.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace combwright {

std::optional<QueenStay> queenStayIn(const Read& file, Id<Colony> colony) {
    return file.first<QueenStay>({is("colony", colony), isUnknown("until")});
}

std::optional<QueenStay> queenStayOn(const Read& file, Id<Colony> colony, Day on) {
    std::optional<QueenStay> then;
    for (QueenStay& stay : file.where<QueenStay>({is("colony", colony)}))
        if (stay.since <= on && (!stay.until || on < *stay.until)) then = stay;
    return then;
}

std::vector<QueenStay> staysOfQueen(const Read& file, Id<Queen> queen) {
    auto stays = file.where<QueenStay>({is("queen", queen)});
    std::stable_sort(stays.begin(), stays.end(), [](const QueenStay& a, const QueenStay& b) {
        return std::tuple(a.since, !a.until, a.id) < std::tuple(b.since, !b.until, b.id);
    });
    return stays;
}

std::vector<Queen> daughtersOf(const Read& file, Id<Queen> queen) {
    return file.where<Queen>({is("mother", queen)});
}

std::vector<Queen> mothersOf(const Read& file, const Queen& queen) {
    std::vector<Queen> mothers;
    std::set<std::int64_t> met{queen.id.number};
    auto mother = file.find(queen.mother);
    while (mother && met.insert(mother->id.number).second) {
        mothers.push_back(*mother);
        mother = file.find(mother->mother);
    }
    return mothers;
}

std::vector<QueenWait> waitsFor(const Read& file, Id<Colony> colony) {
    auto waits = file.where<QueenWait>({is("colony", colony)});
    std::stable_sort(waits.begin(), waits.end(),
                     [](const QueenWait& a, const QueenWait& b) { return a.on < b.on; });
    return waits;
}

std::optional<Day> queenSeenIn(const Read& file, Id<Hive> hive, Day from, Day to) {
    // The word stands in the question, so that the index of just these looks is used.
    const auto newest = file.answered(
        "SELECT max(visit.on_day) FROM inspection CROSS JOIN visit ON visit.id = "
        "inspection.visit_id WHERE inspection.queen_seen = 1 AND inspection.hive_id = ? AND "
        "visit.on_day >= ? AND visit.on_day <= ?",
        1, {hive.number, isoText(from), isoText(to)});
    return newest.empty() ? std::nullopt : Codec<Day>::unpack(newest.front().front());
}

std::string ownQueenColour(const Read& file, int year, Day on) {
    std::optional<QueenColour> newest;
    for (QueenColour& each : file.where<QueenColour>({is("digit", Count(year % 10))}))
        if (each.since <= on && (!newest || each.since >= newest->since)) newest = each;
    return newest ? newest->colour.text() : std::string();
}

}  // namespace combwright
