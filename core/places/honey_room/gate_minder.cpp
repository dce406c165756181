#include "core/places/honey_room/gate_minder.h"

#include <algorithm>
#include <chrono>
#include <map>
#include <set>

#include "core/model/storeroom/equipment.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/storage/queries/constants.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

Id<Equipment> numberOf(const Extractor& each) {
    return each.machine ? each.machine->id : Id<Equipment>{};
}

/// Whether a load was in the drum already when the gate was opened: one of the run up to that one,
/// or one that stood by then. A load that still turned gave most of its honey afterwards.
bool spunBefore(const SpinLoad& load, const GateOpening& opening) {
    if (load.extraction == opening.extraction && load.number <= opening.afterLoad) return true;
    return opening.at && load.begun && load.on == opening.on &&
           *load.begun + std::chrono::minutes(load.minutes ? load.minutes->value() : 0) <=
               *opening.at;
}

/// Whose honey is in the drum of a machine, by the day's loads in it: all that were spun since it
/// was last run empty. An open gate alone leaves enough on the walls and in the strainer to spoil
/// another lot.
class LotsInDrum {
  public:
    LotsInDrum(const Read& file, Id<Equipment> machine, Day on) {
        const Id<Equipment> first = numberOf(extractors(file, on)[0]);
        std::set<std::int64_t> runs;
        for (SpinLoad& each : file.where<SpinLoad>({is("on_day", on)})) {
            if (each.machine.value_or(first) != machine) continue;
            runs.insert(each.extraction.number);
            m_loads.push_back(std::move(each));
        }
        for (const std::int64_t run : runs)
            for (const GateOpening& each :
                 file.where<GateOpening>({is("extraction", Id<Extraction>{run})}))
                if (each.runEmpty.value_or(false)) ranEmpty(each);
    }

    /// The lots in it before that load, or now; each once, the one spun last at the end.
    std::vector<Id<Extraction>> before(std::optional<Id<SpinLoad>> load = std::nullopt) const {
        std::int64_t emptied = 0;
        for (const std::int64_t each : m_emptiedBehind)
            if (!load || each < load->number) emptied = std::max(emptied, each);
        std::vector<Id<Extraction>> lots;
        for (const SpinLoad& each : m_loads) {
            if (each.id.number <= emptied || (load && each.id.number >= load->number)) continue;
            std::erase(lots, each.extraction);
            lots.push_back(each.extraction);
        }
        return lots;
    }

  private:
    void ranEmpty(const GateOpening& opening) {
        std::int64_t behind = 0;
        for (const SpinLoad& each : m_loads)
            if (spunBefore(each, opening)) behind = std::max(behind, each.id.number);
        m_emptiedBehind.push_back(behind);
    }

    std::vector<SpinLoad> m_loads;
    std::vector<std::int64_t> m_emptiedBehind;  ///< the last load in it each time it ran empty
};

/// Of the lots in a drum the one a load of that run would meet now; nothing where they have met.
std::optional<Id<Extraction>> metFirst(const std::vector<Id<Extraction>>& lots,
                                       Id<Extraction> run) {
    if (lots.empty() || std::find(lots.begin(), lots.end(), run) != lots.end()) return std::nullopt;
    return lots.back();
}

/// From here on a bucket under the gate is watched, as a share of what it is filled with.
constexpr double nearlyFullFrom = 0.2;

How howHoneyIsKnown(const ExtractionBox& box) {
    if (box.gross && box.gross->value && box.wet && box.wet->value)
        return weaker(box.gross->how, box.wet->how);
    if (!(box.gross && box.gross->value) && box.filled && box.filled->value) return box.filled->how;
    return How::Assumed;
}

/// The drum is one, whatever lots go through it: the loads behind its last opening, of the run and
/// of every other spun that day in the same machine, and what of the runs' honey is in buckets.
class DrumSoFar {
  public:
    DrumSoFar(const Read& file, Id<Extraction> run, const Extractor& machine, Day on)
        : m_file(file), m_machine(numberOf(machine)), m_first(numberOf(extractors(file, on)[0])) {
        for (SpinLoad& each : file.all<SpinLoad>())
            if (each.extraction == run || (each.on == on && turnedHere(each)))
                m_loads.push_back(std::move(each));
        m_runs.insert(run.number);
        for (const SpinLoad& each : m_loads) m_runs.insert(each.extraction.number);
        for (const std::int64_t id : m_runs) openingsOf(Id<Extraction>{id});
    }

    std::vector<SpinLoad> shutIn() const {
        std::vector<SpinLoad> loads;
        for (const SpinLoad& each : m_loads)
            if (each.number.value() > openedAfter(each.extraction) && each.id.number > m_opened)
                loads.push_back(each);
        return loads;
    }

    /// Grams of a run that are neither in a bucket nor gone; the drum holds no more of it. Nothing
    /// where its gate's openings were written down: those say it better than two estimates.
    std::optional<double> mostOf(Id<Extraction> run) const {
        if (!m_file.where<GateOpening>({is("extraction", run)}).empty()) return std::nullopt;
        double rest = 0;
        for (const SpinLoad& load : m_file.where<SpinLoad>({is("extraction", run)}))
            rest += honeyOfLoad(m_file, load).grams;
        for (const Bucket& each : m_file.where<Bucket>({is("extraction", run)}))
            if (each.net) rest -= each.net->middle().value_or(0);
        return std::max(0.0, rest);
    }

  private:
    bool turnedHere(const SpinLoad& load) const {
        return load.machine.value_or(m_first) == m_machine;
    }
    std::int64_t openedAfter(Id<Extraction> run) const {
        const auto found = m_openedAfter.find(run.number);
        return found == m_openedAfter.end() ? 0 : found->second;
    }

    /// What was open behind a load was open for all that were in the drum by then.
    void openingsOf(Id<Extraction> run) {
        for (const GateOpening& each : m_file.where<GateOpening>({is("extraction", run)})) {
            std::int64_t& after = m_openedAfter[run.number];
            after = std::max(after, each.afterLoad.value());
            for (const SpinLoad& load : m_loads)
                if (spunBefore(load, each) && turnedHere(load))
                    m_opened = std::max(m_opened, load.id.number);
        }
    }

    const Read& m_file;
    Id<Equipment> m_machine, m_first;
    std::vector<SpinLoad> m_loads;
    std::set<std::int64_t> m_runs;
    std::map<std::int64_t, std::int64_t> m_openedAfter;
    std::int64_t m_opened = 0;  ///< the last load of the file that was in the drum then
};

double honeyIn(const SheetLoad& load) {
    double honey = 0;
    for (const auto& place : load.places)
        if (place) honey += place->startG - place->endG;
    return honey;
}

void mindBucket(const BucketSheet& buckets, GateMinder& minder) {
    for (std::size_t n = 0; n < buckets.lines.size(); ++n) {
        if (!buckets.lines[n].underGate) continue;
        minder.bucket = buckets.lines[n].mark;
        if (buckets.lines[n].level)
            minder.takesG = std::max(0.0, buckets.fullG * (1 - *buckets.lines[n].level));
        if (n + 1 < buckets.lines.size()) minder.nextBucket = buckets.lines[n + 1].mark;
    }
    minder.bucketNearlyFull = minder.takesG && (*minder.takesG < minder.inDrumG ||
                                                *minder.takesG < nearlyFullFrom * buckets.fullG);
}

void mindStrainer(const Read& file, const Extraction& run, Day on, double ownInDrumG,
                  GateMinder& minder) {
    double spun = 0;
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run.id)}))
        spun += honeyOfLoad(file, load).grams;
    double inBuckets = 0;
    for (const Bucket& each : file.where<Bucket>({is("extraction", run.id)}))
        if (each.net) inBuckets += each.net->middle().value_or(0);
    minder.toStrainG = std::max(0.0, spun - ownInDrumG - inBuckets);
    minder.strainer = strainerOf(file, run, on);
    if (!minder.strainer || minder.strainer->kgPerH <= 0) return;
    minder.strainMin = *minder.toStrainG / 1000.0 / minder.strainer->kgPerH * 60.0;
    const double load =
        constantOr(file, "spin_min_per_load", {}, on, 15) + constantOr(file, "swap_min", {}, on, 3);
    minder.strainerBehind = minder.strainMin > load;
}

/// Whether frames of a lot are in the loads.
bool waitsFor(const LoadSheet& loads, const std::string& lot) {
    for (const SheetLoad& load : loads.loads)
        for (const auto& place : load.places)
            if (place && place->lot == lot) return true;
    return false;
}

void mindLots(const Read& file, const Extraction& run, const LoadSheet& loads, Day on,
              GateMinder& minder) {
    const auto lots = LotsInDrum(file, numberOf(loads.machine), on).before();
    minder.ranTogether = lots.size() > 1 && std::count(lots.begin(), lots.end(), run.id) > 0;
    for (const Id<Extraction> lot : lots)
        if (const auto other = file.find(lot); other && lot != run.id)
            minder.emptyOf = other->name.text();
    if (!minder.emptyOf.empty()) minder.emptyUnder = lots.back();
    const bool ours = !lots.empty() && lots.back() == run.id;
    if (!ours || waitsFor(loads, run.name.text())) return;
    for (const Extraction& other : openRuns(file))
        if (other.id != run.id && other.on <= on &&
            file.first<ExtractionBox>({is("extraction", other.id)})) {
            minder.emptyFor = other.name.text();
            return;
        }
}

}  // namespace

double bucketHoldsG(const Read& file, Day on) {
    double most = 0;
    for (const Equipment& each : file.where<Equipment>({is("item", EquipmentItem::Bucket)}))
        if (each.capacity && each.since <= on)
            most = std::max(most, static_cast<double>(each.capacity->grams()));
    if (most > 0) return most;
    return constantOr(file, "bucket_g", {}, on, 13600) *
           (1 + constantOr(file, "bucket_room_share", {}, on, 0.05));
}

std::optional<Id<Extraction>> lotInDrumBefore(const Read& file, const SpinLoad& load) {
    const Id<Equipment> machine =
        load.machine.value_or(numberOf(extractors(file, load.on).front()));
    return metFirst(LotsInDrum(file, machine, load.on).before(load.id), load.extraction);
}

std::optional<Id<Extraction>> lotInDrumFor(const Read& file, Id<Extraction> next, Day on,
                                           const std::optional<Id<Equipment>>& machine) {
    const Extractor meant = extractorMeant(file, machine, on);
    return metFirst(LotsInDrum(file, numberOf(meant), on).before(), next);
}

std::optional<StrainerFlow> strainerOf(const Read& file, const Extraction& run, Day on,
                                       Working* working) {
    const auto rate = constantInForce(file, "strain_kg_per_h", {}, on);
    if (!rate) return std::nullopt;
    const StrainerRate seen{.kgPerH = rate->value,
                            .waterPercent = constantOr(file, "strain_at_water_percent", {}, on, 17),
                            .temperatureC = constantOr(file, "strain_at_c", {}, on, 30),
                            .thisHoney = rate->own.has_value()};
    const double warmth = run.room ? run.room->celsius() : seen.temperatureC;
    HoneyRange water{seen.waterPercent - 0.5, seen.waterPercent + 0.5};
    bool any = false;
    for (const Bucket& each : file.where<Bucket>({is("extraction", run.id)})) {
        if (!each.water) continue;
        const double percent = each.water->percent();
        water = any ? HoneyRange{std::min(water.low, percent), std::max(water.high, percent)}
                    : HoneyRange{percent, percent};
        any = true;
    }
    // A thermometer in the room is no thermometer in the honey.
    // Colder than anybody measured it passes no more than in the coldest they did.
    const HoneyRange warm{std::max(warmth - 1, coldestViscosityC),
                          std::max(warmth + 1, coldestViscosityC)};
    auto flow = strainerFlow(seen, water, warm, working);
    if (!flow) return std::nullopt;
    if (warmth <= coldestViscosityC) {
        flow->atMost = true;
        flow->lowKgPerH = 0;
    }
    return *flow;
}

LoadHoney honeyOfLoad(const Read& file, const SpinLoad& load) {
    LoadHoney honey;
    const auto run = file.find(load.extraction);
    if (load.ran == Ran::Stopped || !run) return honey;
    How how = How::Weighed;
    for (const LoadBox& each : file.where<LoadBox>({is("load", load.id)})) {
        const auto box = file.find(each.box);
        const auto frame = box ? reckonFrame(file, *box, *run) : std::nullopt;
        if (!frame) {
            how = How::Unknown;
            continue;
        }
        honey.grams += (frame->startG - frame->endG) * static_cast<double>(each.frames.value());
        how = weaker(how, howHoneyIsKnown(*box));
    }
    honey.how = honey.grams > 0 ? how : How::Unknown;
    return honey;
}

GateMinder gateMinder(const Read& file, Id<Extraction> id, const LoadSheet& loads, Day on,
                      bool turning) {
    GateMinder minder;
    minder.drumG = loads.machine.drumKg * 1000.0;
    minder.drumSaid = loads.machine.drumSaid;
    const auto run = file.find(id);
    if (!run) return minder;
    const DrumSoFar drumSoFar(file, id, loads.machine, on);
    std::map<std::int64_t, double> ofRuns;
    for (const SpinLoad& load : drumSoFar.shutIn()) {
        ++minder.loadsSince;
        const LoadHoney honey = honeyOfLoad(file, load);
        if (honey.grams <= 0) continue;
        minder.how = ofRuns.empty() ? honey.how : weaker(minder.how, honey.how);
        ofRuns[load.extraction.number] += honey.grams;
    }
    for (auto& [of, grams] : ofRuns) {
        if (const auto most = drumSoFar.mostOf(Id<Extraction>{of}); most && *most < grams) {
            grams = *most;
            minder.how = weaker(minder.how, How::ByDifference);
        }
        minder.inDrumG += grams;
    }
    if (minder.inDrumG <= 0) minder.how = How::Unknown;
    mindStrainer(file, *run, on, ofRuns[id.number], minder);
    minder.now = minder.inDrumG > minder.drumG;
    minder.turning = turning && !loads.loads.empty();
    double drum = minder.inDrumG;
    if (minder.turning)
        minder.how = minder.inDrumG > 0 ? weaker(minder.how, How::Assumed) : How::Assumed;
    for (std::size_t n = 0; n < loads.loads.size() && !minder.openBefore; ++n) {
        drum += honeyIn(loads.loads[n]);
        if (minder.turning && n == 0) minder.inDrumG = drum;
        if (drum <= minder.drumG) continue;
        // A load that overfills an empty drum by itself: the gate is open while it spins.
        minder.openBefore = loads.loads[n].number;
        minder.now = minder.now || (minder.turning && n == 0);
        minder.beforeNext = n == (minder.turning ? 1U : 0U);
    }
    minder.waits = loads.loads.size() > (minder.turning ? 1U : 0U);
    mindBucket(bucketSheet(file, id, on), minder);
    mindLots(file, *run, loads, on, minder);
    return minder;
}

}  // namespace combwright
