#include "core/places/yard/growth.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/places/health/treatments.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/stays.h"

namespace combwright {
namespace {

/// A look older than this does not ask for a box any more. Planning assumption, no source.
constexpr int growthLookHolds = 21;

std::int64_t hangingIn(const Read& file, const Box& box) {
    if (const auto frames = framesIn(file, box)) return frames->value();
    const auto kind = file.find(box.kind);
    return kind && kind->framesNominal ? kind->framesNominal->value() : 0;
}

/// The newest look into a box since it came to this hive.
std::optional<BoxLook> lookInto(const Read& file, const Box& box, Day on) {
    const Day since = std::max(
        {box.since, lastMoved(file, box.id, on).value_or(box.since), on - days(growthLookHolds)});
    std::optional<BoxLook> newest;
    for (BoxLook& look :
         file.where<BoxLook>({is("box", box.id), isFrom("on_day", since), isUpTo("on_day", on)})) {
        if (!newest || look.on >= newest->on) newest = std::move(look);
    }
    return newest;
}

struct SuperSeen {
    Day on;
    double filled = 0;  ///< frames drawn and filled
    std::int64_t frames = 0;
};

std::optional<SuperSeen> superSeen(const Read& file, const Box& box, Day on) {
    const auto look = lookInto(file, box, on);
    if (!look) return std::nullopt;
    const std::int64_t frames = look->frames ? look->frames->value() : hangingIn(file, box);
    const auto share = look->filled ? look->filled->middle() : std::nullopt;
    const auto capped = look->cappedFrames ? look->cappedFrames->middle() : std::nullopt;
    if (frames <= 0 || (!share && !capped)) return std::nullopt;
    const double filled = share ? *share / 10000.0 * static_cast<double>(frames) : *capped / 10.0;
    return SuperSeen{look->on, std::min(filled, static_cast<double>(frames)), frames};
}

class GrowthReader {
  public:
    GrowthReader(const Read& file, const Yard& yard, Day on)
        : m_file(file), m_yard(yard), m_on(on), m_share(rate("add_box_share", 0.7)) {
        m_swarm = inMonths("swarm_from_month", 4, "swarm_to_month", 7);
        m_grows = inMonths("add_box_from_month", 4, "add_box_to_month", 7);
        m_seasonFrom =
            makeDay(yearOf(on),
                    static_cast<unsigned>(std::clamp(month("swarm_from_month", 4), 1L, 12L)), 1);
    }

    HiveGrowth read(const YardSheetRow& row) const;
    bool swarmWeeks() const { return m_swarm; }

  private:
    double rate(const char* name, double fallback) const {
        return constantOr(m_file, name, m_yard.id, m_on, fallback);
    }
    long month(const char* name, double fallback) const {
        return std::lround(rate(name, fallback));
    }
    bool inMonths(const char* from, double fromMonth, const char* to, double toMonth) const {
        return monthWithin(m_on, month(from, fromMonth), month(to, toMonth));
    }
    /// Read once, and only where a hive asks for it.
    const HeldThings& held() const {
        if (!m_held) m_held = heldThings(m_file, m_on);
        return *m_held;
    }
    void readSupers(HiveGrowth& hive, const YardSheetRow& row) const;
    void readNest(HiveGrowth& hive, const YardSheetRow& row) const;
    void readSwarm(HiveGrowth& hive, Day colonySince) const;

    const Read& m_file;
    const Yard& m_yard;
    Day m_on;
    double m_share;
    bool m_swarm = false;
    bool m_grows = false;
    std::optional<Day> m_seasonFrom;
    mutable std::optional<HeldThings> m_held;
};

void GrowthReader::readSupers(HiveGrowth& hive, const YardSheetRow& row) const {
    const auto supers = supersOn(row.hive, row.boxes);
    hive.supers = static_cast<int>(supers.size());
    std::optional<SuperSeen> fullest;
    bool roomKnown = false;
    double room = 0;
    bool allFilled = !supers.empty();
    for (const Box& box : supers) {
        const auto seen = superSeen(m_file, box, m_on);
        if (!seen) {
            // One nobody looked into may be empty: no box is asked for on top of it.
            ++hive.supersNotSeen;
            allFilled = false;
            continue;
        }
        roomKnown = true;
        room += static_cast<double>(seen->frames) - seen->filled;
        if (seen->filled + 1e-9 < static_cast<double>(framesForBox(seen->frames, m_share)))
            allFilled = false;
        fullest = seen;
    }
    if (roomKnown) hive.roomFrames = room;
    if (!m_grows || !allFilled) return;
    hive.addBox = AddBox{AddBoxBy::SupersFilled, fullest->on, fullest->filled,
                         framesForBox(fullest->frames, m_share), fullest->frames};
}

void GrowthReader::readNest(HiveGrowth& hive, const YardSheetRow& row) const {
    if (hive.supers > 0 || !m_grows) return;
    const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
    const Seen* seen = openedToday ? &row.today->seen
                       : row.last  ? &row.last->inspection.seen
                                   : nullptr;
    const Day on = openedToday ? m_on : row.last ? row.last->on : m_on;
    if (!seen || on + days(growthLookHolds) < m_on) return;
    std::int64_t frames = 0;
    for (const Box& box : row.boxes) {
        frames += hangingIn(m_file, box);
        // A box that came since has changed what the look said.
        for (const BoxMove& move : m_file.where<BoxMove>(
                 {is("box", box.id), isFrom("on_day", on), isUpTo("on_day", m_on)}))
            if (move.toHive == hive.hive.id && move.on > hive.hive.since) return;
    }
    if (frames == 0) return;
    const std::int64_t enough = framesForBox(frames, m_share);
    const auto seams = seen->seams ? seen->seams->middle() : std::nullopt;
    if (seams && *seams / 10.0 >= static_cast<double>(enough)) {
        hive.addBox = AddBox{AddBoxBy::NestCovered, on, *seams / 10.0, enough, frames};
        return;
    }
    const auto brood = seen->brood ? seen->brood->middle() : std::nullopt;
    const auto stores = seen->stores ? seen->stores->middle() : std::nullopt;
    const double filled = (brood.value_or(0) + stores.value_or(0)) / 10.0;
    if (filled >= static_cast<double>(enough))
        hive.addBox = AddBox{AddBoxBy::NestFilled, on, filled, enough, frames};
}

/// A week, at most nine days, after the hive was opened or the bees moved in; from the first day of
/// the swarm weeks where that was last year. Not before a young queen may be disturbed.
void GrowthReader::readSwarm(HiveGrowth& hive, Day colonySince) const {
    if (!m_swarm || !m_seasonFrom) return;
    Day seen = std::max(hive.opened.value_or(colonySince), colonySince);
    const auto week = month("swarm_look_days", 7);
    const auto most = std::max(week, month("swarm_look_most_days", 9));
    hive.swarmFrom = std::max(seen + days(week), *m_seasonFrom);
    hive.swarmBy = std::max(seen + days(most), *m_seasonFrom + days(most - week));
    if (hive.shutUntil && *hive.shutUntil >= *hive.swarmFrom) {
        hive.swarmFrom = hive.lookFrom.value_or(*hive.shutUntil + days(1));
        hive.swarmBy = *hive.swarmFrom + days(most - week);
    }
}

HiveGrowth GrowthReader::read(const YardSheetRow& row) const {
    HiveGrowth hive;
    hive.hive = row.hive;
    std::optional<Day> livesSince;
    if (const auto living = colonyLivingOn(m_file, row.hive.id, m_on)) livesSince = living->from;
    hive.foundDead = row.foundDead;
    hive.queenlessSince = row.queenlessSince;
    hive.lives = livesSince.has_value() && !hive.foundDead;
    lookBackAtColony(m_file, row.hive.id, m_on, [&hive](const DatedInspection& each) {
        const bool opened = each.inspection.seen.looked == Looked::Opened;
        if (opened)
            hive.opened = each.on;
        else if (!hive.passedBy)
            hive.passedBy = each.on;
        return !opened;
    });
    if (hive.opened) hive.daysSince = static_cast<int>((m_on - *hive.opened).count());
    if (!hive.lives) return hive;
    bool waited = false;
    for (const Mind& mind : row.minds) {
        waited = waited || mind.kind == MindKind::QueenWait;
        if (mind.kind == MindKind::CellsSeen) hive.cells = mind;
        if (mind.kind == MindKind::NoEggs) hive.noEggs = mind;
        if (mind.kind == MindKind::ComeBack) hive.comeBack = mind.since;
        if (mind.kind != MindKind::QueenWait) continue;
        if (mind.queen->doNotOpenUntil >= m_on) hive.shutUntil = mind.queen->doNotOpenUntil;
        if (mind.queen->lookFrom >= m_on) hive.lookFrom = mind.queen->lookFrom;
    }
    // Who waits for a young queen leaves her hive alone and expects no eggs.
    if (waited) {
        hive.cells.reset();
        hive.noEggs.reset();
    }
    readSupers(hive, row);
    readNest(hive, row);
    if (hive.addBox && (supersBackOf(m_file, row.hive.id, m_on) ||
                        quarantineOn(m_file, held(), row.hive.id, m_on)))
        hive.addBox.reset();
    readSwarm(hive, *livesSince);
    return hive;
}

}  // namespace

std::string_view key(AddBoxBy by) {
    constexpr std::array<std::string_view, 3> keys{"supers_filled", "nest_covered", "nest_filled"};
    return keys[static_cast<std::size_t>(by)];
}

std::int64_t framesForBox(std::int64_t frames, double share) {
    return static_cast<std::int64_t>(std::ceil(share * static_cast<double>(frames) - 1e-9));
}

bool monthWithin(Day on, long from, long to) {
    const long month = monthOf(on);
    return from <= to ? from <= month && month <= to : month >= from || month <= to;
}

Growth growth(const Read& file, Id<Yard> id, Day on) {
    Growth all;
    all.on = on;
    const auto yard = file.find(id);
    if (!yard) return all;
    all.yard = *yard;
    const GrowthReader reader(file, *yard, on);
    all.swarmWeeks = reader.swarmWeeks();
    for (const YardSheetRow& row : yardSheet(file, id, on).rows) {
        all.hives.push_back(reader.read(row));
        const HiveGrowth& hive = all.hives.back();
        if (!hive.lives) continue;
        ++all.living;
        all.neverOpened += !hive.opened;
        all.passedBy += hive.passedBy.has_value();
        all.shut += hive.shutUntil.has_value();
    }
    return all;
}

}  // namespace combwright
