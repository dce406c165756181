#include "core/places/season_book/through_year.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "core/model/health/tables.h"
#include "core/model/season_info.h"
#include "core/places/stores/hive_scale.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/treatments.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

Day newYearOf(int year) { return *makeDay(year, 1, 1); }
Day newYearsEve(int year) { return *makeDay(year, 12, 31); }

/// Who lived in a hive, asked for once a hive.
class LivingThere {
  public:
    explicit LivingThere(const Read& file) : m_file(file) {}
    std::optional<Id<Colony>> on(Id<Hive> hive, Day day) {
        auto known = m_stays.find(hive.number);
        if (known == m_stays.end())
            known = m_stays.emplace(hive.number, colonyStaysIn(m_file, hive)).first;
        std::optional<Id<Colony>> left;
        for (const ColonyStay& stay : known->second) {
            if (stay.holds(day)) return stay.colony.id;
            if (stay.to == day) left = stay.colony.id;
        }
        return left;
    }

  private:
    const Read& m_file;
    std::map<std::int64_t, std::vector<ColonyStay>> m_stays;
};

/// The lines the points belong to; those of one day in the order they were written down.
template <class Point>
std::vector<ColonyLine<Point>> colonyLines(const Read& file, std::vector<Point> points) {
    const auto earlier = [](const Point& a, const Point& b) { return a.on < b.on; };
    // Of a million readings of a scale most come in their order.
    if (!std::is_sorted(points.begin(), points.end(), earlier))
        std::stable_sort(points.begin(), points.end(), earlier);
    LivingThere living(file);
    // A hive nobody lives in by the book is a line of its own, under its number below nothing.
    std::map<std::int64_t, std::size_t> at;
    std::vector<ColonyLine<Point>> lines;
    std::vector<Id<Hive>> hives;
    for (Point& point : points) {
        const auto colony = living.on(point.hive, point.on);
        const std::int64_t whose = colony ? colony->number : -point.hive.number;
        const auto found = at.try_emplace(whose, lines.size());
        if (found.second) {
            lines.emplace_back();
            lines.back().colony = colony;
        }
        ColonyLine<Point>& line = lines[found.first->second];
        if (found.second || line.hive != point.hive) hives.push_back(point.hive);
        line.hive = point.hive;
        line.points.push_back(std::move(point));
    }
    std::sort(hives.begin(), hives.end(),
              [](Id<Hive> a, Id<Hive> b) { return a.number < b.number; });
    hives.erase(std::unique(hives.begin(), hives.end()), hives.end());
    const HivesCalled called(file, hives);
    std::map<std::string, int> ordinals;
    for (ColonyLine<Point>& line : lines) {
        const Day on = line.points.back().on;
        line.mark = called.on(line.hive, on);
        line.ordinal = ++ordinals[line.mark];
        if (const auto hive = file.find(line.hive))
            if (const auto yard = file.find(asItWas(file, *hive, on).yard))
                line.yard = yard->name.text();
    }
    return lines;
}

bool sameLine(const std::optional<MiteLineInForce>& a, const std::optional<MiteLineInForce>& b) {
    if (!a || !b) return a.has_value() == b.has_value();
    return a->per100 == b->per100 && a->from == b->from;
}

/// Where the line changes. It is asked every tenth day, and between two that differ for the very
/// day: phases last longer than that.
std::vector<MiteLineFrom> stepsOfLine(const Read& file, std::optional<Id<Yard>> yard, int year) {
    constexpr days apart{10};
    std::vector<MiteLineFrom> steps;
    const auto keep = [&](Day from, const std::optional<MiteLineInForce>& line) {
        if (line) steps.push_back({from, line->per100, line->from});
    };
    Day day = newYearOf(year);
    auto line = miteLineOn(file, yard, day);
    keep(day, line);
    while (day < newYearsEve(year)) {
        const Day next = std::min(day + apart, newYearsEve(year));
        const auto then = miteLineOn(file, yard, next);
        if (!sameLine(line, then)) {
            Day low = day;
            Day high = next;
            while (high - low > days{1}) {
                const Day middle = low + days{(high - low).count() / 2};
                (sameLine(line, miteLineOn(file, yard, middle)) ? low : high) = middle;
            }
            keep(high, then);
        }
        line = then;
        day = next;
    }
    return steps;
}

bool sameSteps(const std::vector<MiteLineFrom>& a, const std::vector<MiteLineFrom>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const MiteLineFrom& one, const MiteLineFrom& other) {
                          return one.from == other.from && one.per100 == other.per100;
                      });
}

/// Yards somebody gave a line or days of their own.
std::set<std::int64_t> yardsWithOwnLine(const Read& file) {
    std::set<std::int64_t> yards;
    for (const MiteLine& each : file.all<MiteLine>())
        if (each.yard) yards.insert(each.yard->number);
    for (const PhaseDay& each : file.all<PhaseDay>())
        if (each.yard) yards.insert(each.yard->number);
    for (const Constant& each : file.where<Constant>({{"name", std::string("mite_line_per_100")}}))
        if (each.yard) yards.insert(each.yard->number);
    return yards;
}

std::vector<MiteLineThroughYear> limitsOf(const Read& file, int year) {
    std::vector<MiteLineThroughYear> limits{{{}, stepsOfLine(file, std::nullopt, year)}};
    const auto own = yardsWithOwnLine(file);
    if (own.empty()) return limits;
    for (const Yard& yard : yardsOn(file, newYearsEve(year))) {
        if (!own.contains(yard.id.number)) continue;
        auto steps = stepsOfLine(file, yard.id, year);
        if (!sameSteps(steps, limits.front().steps))
            limits.push_back({yard.name.text(), std::move(steps)});
    }
    return limits;
}

std::vector<TreatedSpan> treatedIn(const Read& file, Day from, Day to) {
    using Key = std::tuple<std::int64_t, std::int64_t, Day, std::optional<Day>>;
    std::map<Key, std::size_t> at;
    std::vector<TreatedSpan> spans;
    for (const Treatment& each : treatmentsTouching(file, from, to)) {
        const auto now = file.find(each.hive);
        if (!now) continue;
        const Hive hive = asItWas(file, *now, each.on);
        const auto found = at.try_emplace(
            Key{each.medicine.number, hive.yard.number, each.on, each.out}, spans.size());
        if (found.second) {
            TreatedSpan span;
            span.medicine = each.medicine;
            if (const auto medicine = file.find(each.medicine)) span.name = medicine->name.text();
            if (const auto yard = file.find(hive.yard)) span.yard = yard->name.text();
            span.from = each.on;
            span.to = each.out;
            spans.push_back(std::move(span));
        }
        spans[found.first->second].hives.push_back(hive.mark.text());
    }
    std::stable_sort(spans.begin(), spans.end(),
                     [](const TreatedSpan& a, const TreatedSpan& b) { return a.from < b.from; });
    return spans;
}

double highestOf(const ColonyLine<MitePoint>& line) {
    double highest = 0;
    for (const MitePoint& point : line.points) highest = std::max(highest, point.rate.per100);
    return highest;
}

template <class Point>
void mostPointsFirst(std::vector<ColonyLine<Point>>& lines) {
    std::stable_sort(lines.begin(), lines.end(),
                     [](const ColonyLine<Point>& a, const ColonyLine<Point>& b) {
                         return a.points.size() > b.points.size();
                     });
}

}  // namespace

MitesThroughYear mitesThroughYear(const Read& file, int year, Day today) {
    const OneState still(file);
    MitesThroughYear mites;
    mites.year = year;
    mites.upTo = std::clamp(today, newYearOf(year), newYearsEve(year));
    std::vector<MitePoint> points;
    for (const Finding& each :
         file.where<Finding>({is("what", Pest::Varroa), isFrom("on_day", newYearOf(year)),
                              isUpTo("on_day", newYearsEve(year))})) {
        const MiteSample sample = sampleOf(file, each);
        if (!sample.rate) {
            const bool onBees =
                each.method == FindingMethod::Wash || each.method == FindingMethod::SugarRoll;
            (onBees ? mites.withoutBees : mites.otherMethods) += each.mites.has_value();
            continue;
        }
        MitePoint point{each.on, each.hive,   each.id,      each.method,
                        0,       sample.bees, *sample.rate, sample.how};
        // The middle of a range, as the rate is of it.
        point.mites = static_cast<std::int64_t>(std::llround(each.mites->middle().value_or(0)));
        if (const auto hive = file.find(each.hive))
            if (const auto line = miteLineOn(file, asItWas(file, *hive, each.on).yard, each.on))
                point.over = sample.rate->per100 > line->per100 + 1e-9;
        points.push_back(point);
    }
    mites.lines = colonyLines(file, std::move(points));
    std::stable_sort(mites.lines.begin(), mites.lines.end(),
                     [](const ColonyLine<MitePoint>& a, const ColonyLine<MitePoint>& b) {
                         return highestOf(a) > highestOf(b);
                     });
    mites.limits = limitsOf(file, year);
    mites.treated = treatedIn(file, newYearOf(year), newYearsEve(year));
    return mites;
}

WeightsThroughYear weightsThroughYear(const Read& file, int year) {
    const OneState still(file);
    WeightsThroughYear weights;
    weights.year = year;
    std::vector<WeightPoint> points;
    file.each<HiveWeighing>(
        {isFrom("on_day", newYearOf(year)), isUpTo("on_day", newYearsEve(year))},
        [&](const HiveWeighing& each) {
            const auto lifted = liftedOf(each);
            if (lifted)
                points.push_back(
                    {each.on, each.hive, each.id, lifted->leftG + lifted->rightG, lifted->how});
            else
                ++weights.oneSide;
        });
    weights.lines = colonyLines(file, std::move(points));
    mostPointsFirst(weights.lines);
    return weights;
}

CombsThroughYear combsThroughYear(const Read& file, int year) {
    const OneState still(file);
    CombsThroughYear combs;
    combs.year = year;
    std::vector<CombPoint> points;
    const auto frames = [](const std::optional<Known<Frames>>& known) -> std::optional<double> {
        const auto tenths = known ? known->middle() : std::nullopt;
        return tenths ? std::optional(*tenths / 10.0) : std::nullopt;
    };
    for (const Hive& hive : file.all<Hive>())
        for (const DatedInspection& each :
             inspectionsBetween(file, hive.id, newYearOf(year), newYearsEve(year))) {
            const Seen& seen = each.inspection.seen;
            CombPoint point{each.on,
                            hive.id,
                            each.inspection.id,
                            frames(seen.brood),
                            How::Unknown,
                            frames(seen.stores),
                            How::Unknown};
            if (!point.brood && !point.stores) continue;
            if (point.brood) point.broodHow = seen.brood->how;
            if (point.stores) point.storesHow = seen.stores->how;
            points.push_back(point);
        }
    combs.lines = colonyLines(file, std::move(points));
    mostPointsFirst(combs.lines);
    return combs;
}

}  // namespace combwright
