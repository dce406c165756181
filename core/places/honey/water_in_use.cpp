#include "core/places/honey/water_in_use.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "core/trade/honey/blend.h"
#include "core/trade/honey/drying.h"

namespace combwright {
namespace {

/// A part may be in a blend by several ways: each is reckoned once.
using WaterMet = std::map<std::pair<Vessel, Day>, std::optional<WaterInUse>>;
std::optional<WaterInUse> waterMet(const Read& file, const Vessel& vessel, Day on, WaterMet& met,
                                   Working* working);

std::optional<WaterInUse> ofReading(const WaterReading& reading, Day on, Working* working) {
    WaterInUse water;
    water.on = reading.on;
    water.reading = reading;
    const ScaleShown shown = shownBy(reading);
    if (reading.corrected) {
        note(working, "water_percent", reading.corrected->percent(), "%", "at 20 °C, as taken");
        water.percent = reading.corrected->percent();
    } else {
        const auto asRead = waterAsRead(shown, working);
        if (!asRead) return std::nullopt;
        water.percent = *asRead;
        if (awaitsCorrection(reading)) {
            if (const auto at20 = waterAtTwenty(shown)) water.correctedPercent = *at20;
            water.doubts.push_back(*shown.temperatureC < 20.0 ? WaterDoubt::ReadsTooDry
                                                              : WaterDoubt::NotCorrected);
        } else if (!shown.temperatureC && !reading.compensates.value_or(false)) {
            water.doubts.push_back(WaterDoubt::WarmthNotSaid);
        }
    }
    if (!reading.calibrated || *reading.calibrated + days(calibrationGoodDays) < on)
        water.doubts.push_back(WaterDoubt::CalibratedLongAgo);
    return water;
}

std::optional<WaterInUse> ofBucket(const Bucket& bucket, const std::optional<Extraction>& run) {
    if (!bucket.water) return std::nullopt;
    WaterInUse water;
    water.from = WaterFrom::AtTheGate;
    water.percent = bucket.water->percent();
    if (run) water.on = run->on;
    water.doubts.push_back(WaterDoubt::WarmthNotSaid);
    return water;
}

/// What went in, mixed; nothing where the water of one part is not known.
std::optional<WaterInUse> ofParts(const Read& file, const Lot& lot, WaterMet& met,
                                  Working* working) {
    std::vector<HoneyPart> parts;
    WaterInUse water;
    water.from = WaterFrom::Parts;
    water.on = lot.on;
    std::vector<HoneyPart> wetter;
    for (const LotPart& each : file.where<LotPart>({is("lot", lot.id)})) {
        const auto of = waterMet(file, {each.bucket, each.from}, each.on, met, nullptr);
        if (!of) return std::nullopt;
        const auto grams = static_cast<double>(each.mass.grams());
        parts.push_back({grams, of->percent});
        wetter.push_back({grams, of->wettestPercent()});
        if (of->has(WaterDoubt::ReadsTooDry) && !water.has(WaterDoubt::WetterThanShown))
            water.doubts.push_back(WaterDoubt::WetterThanShown);
        if (of->has(WaterDoubt::WetterThanShown) && !water.has(WaterDoubt::WetterThanShown))
            water.doubts.push_back(WaterDoubt::WetterThanShown);
        if (of->has(WaterDoubt::DriedSince) && !water.has(WaterDoubt::DriedSince))
            water.doubts.push_back(WaterDoubt::DriedSince);
    }
    const auto mixed = pouredTogether(parts, working);
    if (!mixed || !*mixed) return std::nullopt;
    water.percent = (*mixed)->waterPercent;
    if (water.has(WaterDoubt::WetterThanShown))
        if (const auto honest = pouredTogether(wetter); honest && *honest)
            water.correctedPercent = (*honest)->waterPercent;
    return water;
}

/// Drying steps later than the reading: where the honey was weighed before and after, its water is
/// reckoned; else it is only known that it has less.
void afterDrying(const VesselLedger& ledger, const Read& file, Day on, WaterInUse& water,
                 Working* working) {
    std::optional<Mass> before;
    for (const VesselEntry& entry : ledger.entries) {
        const auto step = file.find(entry.step);
        const bool dried = step && step->work == HoneyWork::Dried && entry.on <= on && water.on &&
                           entry.on >= *water.on &&
                           !(water.reading && water.reading->on == entry.on);
        if (!dried) {
            before = entry.left;
            continue;
        }
        if (before && step->after && step->after->value && entry.left && *before >= *entry.left) {
            const auto now = waterAtMass(static_cast<double>(before->grams()), water.percent,
                                         static_cast<double>(entry.left->grams()), working);
            if (now) {
                if (water.correctedPercent)
                    if (const auto at20 = waterAtMass(static_cast<double>(before->grams()),
                                                      *water.correctedPercent,
                                                      static_cast<double>(entry.left->grams())))
                        water.correctedPercent = *at20;
                water.percent = *now;
                water.from = WaterFrom::Drying;
                water.on = entry.on;
            }
        } else if (!water.has(WaterDoubt::DriedSince)) {
            water.doubts.push_back(WaterDoubt::DriedSince);
        }
        before = entry.left;
    }
}

std::optional<WaterInUse> waterMet(const Read& file, const Vessel& vessel, Day on, WaterMet& met,
                                   Working* working) {
    const auto known = met.find({vessel, on});
    if (known != met.end()) return known->second;
    std::optional<WaterInUse> water;
    if (const auto readings = readingsOf(file, vessel, on); !readings.empty())
        water = ofReading(readings.back(), on, working);
    else if (const auto bucket = file.find(vessel.bucket))
        water = ofBucket(*bucket, file.find(bucket->extraction));
    else if (const auto lot = file.find(vessel.lot))
        water = ofParts(file, *lot, met, working);
    if (water) afterDrying(vesselLedger(file, vessel, on), file, on, *water, working);
    met[{vessel, on}] = water;
    return water;
}

}  // namespace

std::string_view key(WaterFrom from) {
    switch (from) {
        case WaterFrom::Reading:
            return "reading";
        case WaterFrom::AtTheGate:
            return "at the gate";
        case WaterFrom::Parts:
            return "parts";
        case WaterFrom::Drying:
            return "drying";
    }
    return {};
}

std::string_view key(WaterDoubt doubt) {
    switch (doubt) {
        case WaterDoubt::NotCorrected:
            return "not corrected";
        case WaterDoubt::ReadsTooDry:
            return "reads too dry";
        case WaterDoubt::WarmthNotSaid:
            return "warmth not said";
        case WaterDoubt::CalibratedLongAgo:
            return "calibrated long ago";
        case WaterDoubt::DriedSince:
            return "dried since";
        case WaterDoubt::WetterThanShown:
            return "wetter than shown";
    }
    return {};
}

bool WaterInUse::has(WaterDoubt doubt) const {
    return std::find(doubts.begin(), doubts.end(), doubt) != doubts.end();
}

double WaterInUse::wettestPercent() const {
    return correctedPercent ? std::max(percent, *correctedPercent) : percent;
}

ScaleShown shownBy(const WaterReading& reading) {
    ScaleShown shown;
    if (reading.water) shown.waterPercent = reading.water->percent();
    if (reading.index) shown.index = reading.index->value();
    if (reading.brix) shown.brix = reading.brix->value();
    if (reading.temperature) shown.temperatureC = reading.temperature->celsius();
    shown.compensates = reading.compensates.value_or(false);
    return shown;
}

std::vector<WaterReading> readingsOf(const Read& file, const Vessel& vessel, Day upTo) {
    auto readings =
        vessel.bucket
            ? file.where<WaterReading>({is("bucket", *vessel.bucket), isUpTo("on_day", upTo)})
            : file.where<WaterReading>({is("lot", *vessel.lot), isUpTo("on_day", upTo)});
    std::stable_sort(readings.begin(), readings.end(),
                     [](const WaterReading& a, const WaterReading& b) { return a.on < b.on; });
    return readings;
}

bool awaitsCorrection(const WaterReading& reading) {
    return !reading.corrected && !reading.compensates.value_or(false) && reading.temperature &&
           std::abs(reading.temperature->celsius() - 20.0) >= correctionFromC;
}

Result<ReadingSays> readingSays(const WaterReading& reading) {
    const ScaleShown shown = shownBy(reading);
    const auto asRead = waterAsRead(shown);
    if (!asRead) return asRead.error();
    ReadingSays says;
    says.percent = *asRead;
    says.awaits = awaitsCorrection(reading);
    if (!says.awaits) return says;
    says.tooDry = *shown.temperatureC < 20.0;
    if (const auto at20 = waterAtTwenty(shown)) says.correctedPercent = *at20;
    return says;
}

std::optional<WaterInUse> waterInUse(const Read& file, const Vessel& vessel, Day on,
                                     Working* working) {
    WaterMet met;
    return waterMet(file, vessel, on, met, working);
}

std::vector<std::optional<WaterInUse>> waterOfBuckets(const Read& file,
                                                      const std::vector<Bucket>& buckets, Day on) {
    std::vector<Id<Bucket>> ids;
    for (const Bucket& each : buckets) ids.push_back(each.id);
    std::set<std::int64_t> since;
    for (const WaterReading& each : file.whereAny<WaterReading>("bucket", ids))
        since.insert(each.bucket->number);
    for (const HoneyStep& each : file.whereAny<HoneyStep>("bucket", ids))
        if (each.work == HoneyWork::Dried) since.insert(each.bucket->number);
    std::optional<Extraction> run;
    std::vector<std::optional<WaterInUse>> all;
    for (const Bucket& each : buckets) {
        if (since.contains(each.id.number)) {
            all.push_back(waterInUse(file, Vessel{each.id, std::nullopt}, on));
            continue;
        }
        if (each.water && (!run || run->id != each.extraction)) run = file.find(each.extraction);
        all.push_back(ofBucket(each, run));
    }
    return all;
}

}  // namespace combwright
