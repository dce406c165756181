#include "core/places/honey_room/room_day.h"

#include <algorithm>
#include <map>

#include "core/places/honey_room/gate_minder.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/runs.h"
#include "core/trade/honey/viscosity.h"
#include "core/words/clock_words.h"

namespace combwright {
namespace {

/// No pause of a day in the room is longer, minutes; what seems longer is a clock that was set.
constexpr double longestPauseMin = 180;
/// Nobody works longer in one go, minutes.
constexpr double longestDayMin = 24 * 60;

double minutesBetween(Instant from, Instant to) {
    return static_cast<double>((to - from).count()) / 60.0;
}

class DayReader {
  public:
    DayReader(const Read& file, Day on, RoomDaySheet& sheet)
        : m_file(file), m_on(on), m_sheet(sheet), m_machine(extractorMeant(file, {}, on)) {}

    void rates() {
        const auto rate = [&](const char* name, double fallback) {
            return constantOr(m_file, name, {}, m_on, fallback);
        };
        RoomRates& rates = m_sheet.rates;
        rates.uncapMinPerFrame = rate("uncap_min_per_frame", 1.5);
        // The published minutes count knife and fork together; who times the fork apart sets it.
        rates.forkMinPerFrame = rate("fork_min_per_frame", 0);
        rates.spinMinPerLoad = rate("spin_min_per_load", 15);
        rates.uncappers = m_sheet.hands;
        rates.swapMin = rate("swap_min", 3);
        rates.lotChangeMin = rate("lot_change_min", 20);
        rates.setUpMin = rate("set_up_min", 45);
        rates.washMin = rate("wash_min", 90);
        rates.bucketG = rate("bucket_g", 13600);
        rates.spareShare = rate("spare_share", 0.1);
        rates.drumKg = m_machine.drumKg;
    }

    /// The runs in the order of their first load today; those not begun behind them.
    void runs() {
        std::vector<std::pair<std::int64_t, Extraction>> found;
        for (Extraction& run : m_file.all<Extraction>()) {
            std::int64_t first = 0;
            for (const SpinLoad& load :
                 m_file.where<SpinLoad>({is("extraction", run.id), is("on_day", m_on)}))
                if (first == 0) first = load.id.number;
            if (first == 0 && (run.closed || run.on > m_on)) continue;
            found.emplace_back(first == 0 ? std::int64_t{1} << 60 : first, std::move(run));
        }
        std::stable_sort(found.begin(), found.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (auto& [first, run] : found) {
            lotsOf(run);
            m_runs.push_back(std::move(run));
        }
        for (const Extraction& run : m_runs)
            if (!m_sheet.strainer) m_sheet.strainer = strainerOf(m_file, run, m_on);
        if (m_sheet.strainer) m_sheet.rates.strainKgPerH = m_sheet.strainer->kgPerH;
    }

    /// Honey of the room's warmth, were it as warm as strainers like it.
    void warmer() {
        m_sheet.warmToC = constantOr(m_file, "strain_warm_to_c", {}, m_on, 38);
        if (!m_sheet.strainer) return;
        double nowC = constantOr(m_file, "strain_at_c", {}, m_on, 30);
        for (const Extraction& run : m_runs)
            if (run.room) nowC = run.room->celsius();
        if (nowC >= m_sheet.warmToC) return;
        nowC = std::max(nowC, coldestViscosityC);
        const auto factor = warmerFactor(
            constantOr(m_file, "strain_at_water_percent", {}, m_on, 17), nowC, m_sheet.warmToC);
        if (!factor) return;
        const auto what = ifWarmer(m_sheet.lots, m_sheet.rates, *factor);
        if (what) m_sheet.warmer = *what;
    }

    void loads() {
        std::vector<SpinLoad> spun = m_file.where<SpinLoad>({is("on_day", m_on)});
        double uncapping = 0;
        double uncapped = 0;
        double turned = 0;
        std::int64_t timed = 0;
        for (const SpinLoad& load : spun) {
            const std::int64_t frames = framesOf(load);
            if (load.uncapping && frames > 0) {
                uncapping += static_cast<double>(load.uncapping->value());
                uncapped += static_cast<double>(frames);
            }
            if (load.minutes && load.ran != Ran::Stopped) {
                turned += static_cast<double>(load.minutes->value());
                ++timed;
            }
            onDay(load, frames);
        }
        if (uncapped > 0) m_sheet.uncapMinSeen = uncapping / uncapped;
        if (timed > 0) m_sheet.spinMinSeen = turned / static_cast<double>(timed);
    }

    void now(const RoomNow& now) {
        if (m_sheet.done.empty() && !m_start) return;
        const double last = m_sheet.done.empty() ? 0 : m_sheet.done.back().endMin;
        double least = last + now.turningMin.value_or(0);
        // Of a day that is over, or is still to come, the clock on the wall says nothing.
        if (now.now && m_start && dayAt(*now.now) == m_on) {
            const double clock = minutesBetween(*m_start, *now.now) + m_shift;
            if (clock < least || clock > longestDayMin)
                m_sheet.clockSet = m_sheet.clockSet || clock + 1 < least || clock > longestDayMin;
            else
                least = clock;
        }
        m_sheet.nowMin = least;
        m_turningSince = now.turningMin ? std::optional(least - *now.turningMin) : std::nullopt;
    }

    void fromHere() {
        if (m_sheet.done.empty() || !m_sheet.nowMin) return;
        RoomRates rates = m_sheet.rates;
        // The day's own pace, once it has shown one.
        if (m_sheet.done.size() > 1) {
            rates.uncapMinPerFrame = m_sheet.uncapMinSeen.value_or(rates.uncapMinPerFrame);
            rates.spinMinPerLoad = m_sheet.spinMinSeen.value_or(rates.spinMinPerLoad);
        }
        DaySoFar soFar;
        soFar.nowMin = *m_sheet.nowMin;
        soFar.turningSinceMin = m_turningSince;
        const auto loads = static_cast<std::int64_t>(m_loadEnds.size());
        for (std::int64_t n = 0; n < loads && n < m_sheet.plan.loads; ++n) {
            soFar.loadEndsMin.push_back(m_loadEnds[static_cast<std::size_t>(n)]);
            soFar.framesUncapped += m_sheet.plan.timeline[static_cast<std::size_t>(n)].frames;
        }
        const bool asPlanned = loads <= m_sheet.plan.loads && soFar.framesUncapped == m_framesSpun;
        if (asPlanned) {
            if (const auto rest = planSoFar(m_sheet.lots, rates, soFar)) m_sheet.fromHere = *rest;
            return;
        }
        // Loads were filled otherwise than planned: what is left is planned anew, from now on.
        const auto rest = planDay(m_lotsLeft, rates);
        if (!rest) return;
        DayFromHere here;
        here.loadsLeft = rest->loads;
        here.framesToUncap = m_sheet.framesLeft;
        here.lastLoadEndsMin =
            rest->loads > 0 ? soFar.nowMin + rest->lastLoadEndsMin : m_loadEnds.back();
        if (rest->strainEndsMin) here.strainEndsMin = soFar.nowMin + *rest->strainEndsMin;
        here.dayMin = rates.setUpMin + here.lastLoadEndsMin + rates.washMin;
        here.doneMin = rates.setUpMin + rates.washMin +
                       std::max(here.lastLoadEndsMin, here.strainEndsMin.value_or(0));
        here.behindMin = here.lastLoadEndsMin - m_sheet.plan.lastLoadEndsMin;
        here.timeline = rest->timeline;
        for (PlanLoad& load : here.timeline)
            for (double* at : {&load.uncapStart, &load.uncapEnd, &load.swapStart, &load.spinStart,
                               &load.spinEnd})
                *at += soFar.nowMin;
        m_sheet.fromHere = here;
    }

  private:
    std::int64_t framesOf(const SpinLoad& load) const {
        std::int64_t frames = 0;
        for (const LoadBox& each : m_file.where<LoadBox>({is("load", load.id)}))
            frames += each.frames.value();
        return frames;
    }

    double forkShare(const ExtractionBox& box) const {
        double share = 0;
        if (!box.box) return share;
        for (const BoxLook& look : m_file.where<BoxLook>({is("box", *box.box)}))
            if (look.on <= m_on && look.toFork)
                share = look.toFork->middle().value_or(share * 10000) / 10000.0;
        return share;
    }

    /// Frames of each kind that are or were to be spun today.
    void lotsOf(const Extraction& run) {
        std::map<std::int64_t, std::int64_t> today;
        for (const SpinLoad& load :
             m_file.where<SpinLoad>({is("extraction", run.id), is("on_day", m_on)})) {
            if (load.ran == Ran::Stopped) continue;
            for (const LoadBox& each : m_file.where<LoadBox>({is("load", load.id)}))
                today[each.box.number] += each.frames.value();
        }
        const auto gone = framesOfBoxes(m_file, run.id);
        std::map<std::string, PlanLot> kinds;
        std::map<std::string, PlanLot> left;
        for (const ExtractionBox& box : m_file.where<ExtractionBox>({is("extraction", run.id)})) {
            const auto each = reckonFrame(m_file, box, run);
            if (!each) continue;
            std::int64_t waits = box.frames->value();
            if (const auto found = gone.find(box.id.number); found != gone.end())
                waits = found->second.left(waits);
            if (run.closed || (box.wet && box.wet->value)) waits = 0;
            const auto slots = m_machine.slotsFor(m_file, box.frameKind);
            if (!slots) {
                if (waits > 0) m_sheet.leftOut.push_back({each->kind, waits});
                continue;
            }
            m_sheet.rates.slotsOfKind[each->kind] = *slots;
            const double honey = each->startG - each->endG;
            add(kinds, *each, waits + today[box.id.number], honey, forkShare(box));
            add(left, *each, waits, honey, forkShare(box));
            m_sheet.framesLeft += waits;
            m_framesSpun += today[box.id.number];
        }
        for (auto& [kind, lot] : kinds)
            if (lot.frames > 0) m_sheet.lots.push_back(std::move(lot));
        for (auto& [kind, lot] : left)
            if (lot.frames > 0) m_lotsLeft.push_back(std::move(lot));
    }

    static void add(std::map<std::string, PlanLot>& kinds, const LoadFrame& each,
                    std::int64_t frames, double honeyG, double fork) {
        if (frames < 1) return;
        PlanLot& lot = kinds[each.kind];
        lot.lot = each.lot;
        lot.kind = each.kind;
        const auto before = static_cast<double>(lot.frames);
        const auto more = static_cast<double>(frames);
        lot.forkShare = (lot.forkShare * before + fork * more) / (before + more);
        lot.frames += frames;
        lot.honeyG += honeyG * more;
    }

    /// Puts a load on the day's own time. The clock may say that it began; it never says that it
    /// began before the one before it ended, nor hours behind it.
    void onDay(const SpinLoad& load, std::int64_t frames) {
        const RoomRates& rates = m_sheet.rates;
        const double atKnife = load.uncapping
                                   ? static_cast<double>(load.uncapping->value())
                                   : static_cast<double>(frames) * rates.uncapMinPerFrame;
        const double before = atKnife / static_cast<double>(m_sheet.hands) + rates.swapMin;
        const bool first = m_sheet.done.empty();
        const double free = first ? 0 : m_sheet.done.back().endMin;
        double begins = first ? before : free + rates.swapMin;
        if (load.begun && first && !m_start)
            m_start = *load.begun - std::chrono::seconds(static_cast<std::int64_t>(before * 60));
        if (load.begun && m_start) {
            double clock = minutesBetween(*m_start, *load.begun) + m_shift;
            if (clock + 1 < free || clock > free + before + longestPauseMin) {
                m_sheet.clockSet = true;
                m_shift += begins - clock;
                clock = begins;
            }
            begins = std::max(clock, free);
            if (!first)
                m_sheet.longestGapMin = std::max(m_sheet.longestGapMin, begins - free - before);
        }
        const double turned =
            load.minutes ? static_cast<double>(load.minutes->value()) : rates.spinMinPerLoad;
        const auto run = m_file.find(load.extraction);
        m_sheet.done.push_back({load.number.value(), run ? run->name.text() : std::string(), begins,
                                begins + turned, load.minutes.has_value()});
        if (load.ran != Ran::Stopped) m_loadEnds.push_back(begins + turned);
    }

    const Read& m_file;
    Day m_on;
    RoomDaySheet& m_sheet;
    Extractor m_machine;
    std::vector<Extraction> m_runs;
    std::vector<PlanLot> m_lotsLeft;
    std::vector<double> m_loadEnds;  ///< of the loads that were not stopped
    std::int64_t m_framesSpun = 0;
    std::optional<Instant> m_start;  ///< the first cut, by the clock on the wall
    double m_shift = 0;              ///< what the clock was set by since, minutes
    std::optional<double> m_turningSince;
};

}  // namespace

Result<RoomDaySheet> roomDay(const Read& file, Day on, const RoomNow& now, Working* working) {
    RoomDaySheet sheet;
    sheet.on = on;
    sheet.log = file.first<RoomDay>({is("on_day", on)});
    if (sheet.log && sheet.log->hands) sheet.hands = sheet.log->hands->value();
    DayReader reader(file, on, sheet);
    reader.rates();
    reader.runs();
    const auto plan = planDay(sheet.lots, sheet.rates, working);
    if (!plan) return plan.error();
    sheet.plan = *plan;
    reader.warmer();
    reader.loads();
    reader.now(now);
    reader.fromHere();
    return sheet;
}

}  // namespace combwright
