#include "core/storage/queries/yards.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/storage/queries/holds.h"

namespace combwright {

std::vector<Yard> openYards(const Read& file) {
    auto yards = file.where<Yard>({isUnknown("closed")});
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    return yards;
}

std::vector<Hive> openHives(const Read& file, Id<Yard> yard) {
    auto hives = file.where<Hive>({is("yard", yard), isUnknown("closed")});
    std::stable_sort(hives.begin(), hives.end(),
                     [](const Hive& a, const Hive& b) { return a.standOrder < b.standOrder; });
    return hives;
}

std::vector<Hive> hivesEver(const Read& file, Id<Yard> yard) {
    auto hives = openHives(file, yard);
    auto closed = file.where<Hive>({is("yard", yard)});
    std::erase_if(closed, [](const Hive& hive) { return !hive.closed; });
    // A closed stand keeps the place it had on its last day. Put back from the newest closing to
    // the oldest, each finds the row as it was left.
    std::stable_sort(closed.begin(), closed.end(),
                     [](const Hive& a, const Hive& b) { return *a.closed > *b.closed; });
    for (Hive& hive : closed) {
        const auto most = static_cast<std::int64_t>(hives.size());
        const auto place = std::clamp(hive.standOrder.value() - 1, std::int64_t{0}, most);
        hives.insert(hives.begin() + place, std::move(hive));
    }
    return hives;
}

std::vector<Box> boxesOn(const Read& file, Id<Hive> hive) {
    auto boxes = file.where<Box>({is("hive", hive), is("place", BoxPlace::OnHive)});
    std::stable_sort(boxes.begin(), boxes.end(),
                     [](const Box& a, const Box& b) { return a.level < b.level; });
    return boxes;
}

Standing standingOn(const Read& file, const Hive& hive, Day day) {
    Standing standing{boxesOn(file, hive.id), hive.excluderAbove};
    auto later = file.where<BoxMove>({is("to_hive", hive.id), isAfter("on_day", day)});
    for (BoxMove& move : file.where<BoxMove>({is("from_hive", hive.id), isAfter("on_day", day)}))
        if (move.toHive != hive.id) later.push_back(std::move(move));
    // By their days: one written down late comes before those of the days after it.
    std::sort(later.begin(), later.end(), [](const BoxMove& a, const BoxMove& b) {
        return std::tuple(a.on, a.id.number) > std::tuple(b.on, b.id.number);
    });
    auto& boxes = standing.boxes;
    auto& nest = standing.excluderAbove;
    for (const BoxMove& move : later) {
        if (move.toHive == hive.id) {
            const auto found = std::find_if(boxes.begin(), boxes.end(),
                                            [&](const Box& box) { return box.id == move.box; });
            if (found == boxes.end()) continue;
            if (nest && found - boxes.begin() < nest->value()) nest = Count(nest->value() - 1);
            boxes.erase(found);
        }
        if (move.fromHive != hive.id || move.fromPlace != BoxPlace::OnHive) continue;
        auto box = file.find(move.box);
        if (!box) continue;
        box->place = BoxPlace::OnHive;
        box->hive = hive.id;
        const auto top = static_cast<std::int64_t>(boxes.size());
        const auto level = move.fromLevel ? std::min(move.fromLevel->value(), top) : top;
        boxes.insert(boxes.begin() + level, *std::move(box));
        if (nest && move.fromUnder == true) nest = *nest + Count(1);
    }
    Count level;
    for (Box& box : boxes) {
        box.level = level;
        level += Count(1);
    }
    return standing;
}

std::optional<Colony> colonyIn(const Read& file, Id<Hive> hive) {
    return file.first<Colony>({is("hive", hive), isUnknown("ended")});
}

namespace {

/// M9 before M10: shorter marks first, then by letters; unmarked ones last.
void sortByMark(std::vector<Box>& boxes) {
    std::stable_sort(boxes.begin(), boxes.end(), [](const Box& a, const Box& b) {
        if (a.mark.empty() != b.mark.empty()) return b.mark.empty();
        if (a.mark.size() != b.mark.size()) return a.mark.size() < b.mark.size();
        return a.mark < b.mark;
    });
}

/// Where each box that was moved after a day had stood at its end; nothing for one that was not in
/// the world yet.
std::map<std::int64_t, std::optional<BoxPlace>> placesBeforeMoves(const Read& file, Day day) {
    Statement statement = file.database().prepare(
        "SELECT box_id, from_place FROM box_move WHERE on_day > ? ORDER BY on_day DESC, id "
        "DESC");
    statement.bind(std::string_view(isoText(day))).run();
    std::map<std::int64_t, std::optional<BoxPlace>> places;
    // The earliest of those moves comes last and counts.
    while (statement.next())
        places[statement.number(0)] = Codec<BoxPlace>::unpack(statement.value(1));
    return places;
}

}  // namespace

std::vector<Box> boxesReady(const Read& file, Id<BoxKind> kind) {
    auto boxes = file.where<Box>(
        {is("kind", kind), is("place", BoxPlace::Storeroom), is("condition", BoxCondition::Sound)});
    // What is held apart stands there, but not ready. Holds as they are now.
    const Day now = lastOfAllDays;
    if (anythingApart(file, now)) {
        const HeldThings held = heldThings(file, now);
        std::erase_if(boxes, [&](const Box& box) { return held.apart(box.id).has_value(); });
    }
    sortByMark(boxes);
    return boxes;
}

std::vector<Box> boxesReadyOn(const Read& file, Id<BoxKind> kind, Day day) {
    auto boxes = file.where<Box>({is("kind", kind), is("condition", BoxCondition::Sound)});
    const auto moved = placesBeforeMoves(file, day);
    std::erase_if(boxes, [&](const Box& box) {
        const auto before = moved.find(box.id.number);
        const auto place = before == moved.end() ? std::optional(box.place) : before->second;
        return box.since > day || place != BoxPlace::Storeroom;
    });
    sortByMark(boxes);
    return boxes;
}

namespace {

using LineOn = std::pair<Day, Id<Inspection>>;

std::vector<LineOn> linesFound(const Read& file, std::string_view sql,
                               std::initializer_list<Value> bound) {
    std::vector<LineOn> lines;
    for (const Row& row : file.answered(sql, 2, bound))
        lines.emplace_back(*parseDay(std::get<std::string>(row[1])),
                           Id<Inspection>{std::get<std::int64_t>(row[0])});
    return lines;
}

/// The lines of a hive from a day on and before another, newest first; those of one day in the
/// order they were written down. Visits are mostly written down in the order of their days, so
/// those days are a span of visits, and of a hive with many years behind it few lines lie in it.
std::vector<LineOn> linesOfDays(const Read& file, Id<Hive> hive, Day from, Day before) {
    const std::string first = isoText(from);
    const std::string end = isoText(before);
    const auto span = file.answered(
        "SELECT min(id), max(id) FROM visit WHERE on_day >= ? AND on_day < ?", 2, {first, end});
    if (span.empty() || std::holds_alternative<std::monostate>(span.front().front())) return {};
    return linesFound(
        file,
        "SELECT inspection.id, visit.on_day FROM inspection CROSS JOIN visit ON visit.id = "
        "inspection.visit_id WHERE inspection.hive_id = ? AND inspection.visit_id BETWEEN ? AND ? "
        "AND visit.on_day >= ? AND visit.on_day < ? ORDER BY visit.on_day DESC, inspection.id",
        {hive.number, span.front()[0], span.front()[1], first, end});
}

/// The same, all of them where no day is given; by the hive.
std::vector<LineOn> linesWithin(const Read& file, Id<Hive> hive, std::optional<Day> from,
                                std::optional<Day> before) {
    return linesFound(
        file,
        "SELECT inspection.id, visit.on_day FROM inspection CROSS JOIN visit ON visit.id = "
        "inspection.visit_id WHERE visit.on_day >= ? AND visit.on_day < ? AND inspection.hive_id = "
        "? ORDER BY visit.on_day DESC, inspection.id",
        // Before the first day there can be, and after the last.
        {from ? isoText(*from) : std::string(), before ? isoText(*before) : std::string("~"),
         hive.number});
}

/// So far back many who look back find what they want, and so far most of the others.
constexpr int lookedBackDays[] = {45, 400};

}  // namespace

std::optional<Visit> visitOn(const Read& file, Id<Yard> yard, Day day) {
    return file.first<Visit>({is("yard", yard), is("on_day", day)});
}

std::optional<Visit> newestVisit(const Read& file, Id<Yard> yard, Day upTo) {
    Statement& statement = file.prepared(
        "SELECT id FROM visit WHERE yard_id = ? AND on_day <= ? ORDER BY on_day DESC, id LIMIT 1");
    const std::string last = isoText(upTo);
    statement.bind(yard.number).bind(std::string_view(last)).run();
    std::optional<Id<Visit>> newest;
    while (statement.next()) newest = Id<Visit>{statement.number(0)};
    return file.find(newest);
}

std::vector<TimedVisit> timedVisits(const Read& file, Day upTo) {
    Statement& statement = file.prepared(
        "SELECT visit.yard_id, visit.begun, visit.ended, count(*) FROM visit CROSS JOIN inspection "
        "ON "
        "inspection.visit_id = visit.id WHERE visit.begun IS NOT NULL AND visit.ended IS NOT NULL "
        "AND visit.on_day <= ? AND inspection.looked = ? GROUP BY visit.id ORDER BY visit.id");
    const std::string last = isoText(upTo);
    statement.bind(std::string_view(last)).bind(Codec<Looked>::pack(Looked::Opened)).run();
    std::vector<TimedVisit> visits;
    while (statement.next()) {
        const auto begun = Codec<Instant>::unpack(statement.value(1));
        const auto ended = Codec<Instant>::unpack(statement.value(2));
        if (begun && ended)
            visits.push_back({Id<Yard>{statement.number(0)}, *begun, *ended,
                              static_cast<int>(statement.number(3))});
    }
    return visits;
}

std::optional<Inspection> inspectionOf(const Read& file, Id<Visit> visit, Id<Hive> hive) {
    return file.first<Inspection>({is("visit", visit), is("hive", hive)});
}

std::vector<DatedInspection> inspectionsOf(const Read& file, Id<Hive> hive,
                                           std::optional<Day> before) {
    const auto found = linesWithin(file, hive, std::nullopt, before);
    std::map<std::int64_t, Inspection> lines;
    // All of a hive's at once: one by one they take longer by far.
    for (Inspection& each : file.where<Inspection>({is("hive", hive)}))
        lines.emplace(each.id.number, std::move(each));
    std::vector<DatedInspection> dated;
    dated.reserve(found.size());
    for (const auto& [on, id] : found)
        if (const auto line = lines.find(id.number); line != lines.end())
            dated.push_back({on, std::move(line->second)});
    return dated;
}

void lookBack(const Read& file, Id<Hive> hive, std::optional<Day> before,
              const std::function<bool(DatedInspection& each)>& more) {
    lookBack(file, hive, std::nullopt, before, more);
}

bool lookBack(const Read& file, Id<Hive> hive, std::optional<Day> from, std::optional<Day> before,
              const std::function<bool(DatedInspection& each)>& more) {
    const auto wantsMore = [&](const std::vector<LineOn>& lines) {
        for (const auto& [on, id] : lines) {
            auto inspection = file.find(id);
            if (!inspection) continue;
            DatedInspection each{on, *std::move(inspection)};
            if (!more(each)) return false;
        }
        return true;
    };
    const std::optional<Day> end = before;
    for (const int back : lookedBackDays) {
        if (!end) break;
        const Day first = *end - days(back);
        if (from && *from >= first) return wantsMore(linesOfDays(file, hive, *from, *before));
        if (!wantsMore(linesOfDays(file, hive, first, *before))) return false;
        before = first;
    }
    return wantsMore(linesWithin(file, hive, from, before));
}

std::vector<DatedInspection> inspectionsBetween(const Read& file, Id<Hive> hive, Day from, Day to) {
    std::vector<DatedInspection> dated;
    for (const auto& [on, id] : linesOfDays(file, hive, from, to + days(1)))
        if (auto inspection = file.find(id)) dated.push_back({on, *std::move(inspection)});
    return dated;
}

std::vector<Box> supersOn(const Hive& hive, const std::vector<Box>& standing) {
    const std::size_t nest =
        hive.excluderAbove ? static_cast<std::size_t>(hive.excluderAbove->value()) : 1;
    if (standing.size() <= nest) return {};
    return {standing.begin() + static_cast<std::ptrdiff_t>(nest), standing.end()};
}

}  // namespace combwright
