#include "core/actions/honey_room/run_rules.h"

namespace combwright {
namespace {

constexpr Mass heaviestBox = Mass::grams(60'000);
/// A tonne: a bucket may stand for a run's whole honey, cappings are weighed for a run together.
constexpr Mass heaviestSum = Mass::grams(1'000'000);

/// Of a range the upper end counts.
Result<void> demandMass(const std::optional<Known<Mass>>& mass, const char* field, Mass most) {
    if (!mass || !mass->value || mass->to.value_or(*mass->value) <= most) return {};
    return Refusal{Code::OutOfRange, field, {{"low", "0"}, {"high", std::to_string(most.grams())}}};
}

}  // namespace

Result<Extraction> openRun(const Read& file, Id<Extraction> id, Day on) {
    auto run = file.find(id);
    if (!run) return Refusal{Code::NotFound, "run", {}};
    if (on < run->on)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", run->name.text()}, {"since", isoText(run->on)}}};
    return *std::move(run);
}

Result<void> demandBoxOfRun(const Read& file, Id<Extraction> run,
                            const std::optional<Id<ExtractionBox>>& box) {
    if (!box) return {};
    const auto entry = file.find(*box);
    if (entry && entry->extraction == run) return {};
    return Refusal{Code::NotFound, "box", {{"name", "#" + std::to_string(box->number)}}};
}

Result<void> demandWeights(const ExtractionBox& entry) {
    if (auto ok = demandMass(entry.gross, "gross_g", heaviestBox); !ok) return ok;
    if (auto ok = demandMass(entry.wet, "wet_g", heaviestBox); !ok) return ok;
    const bool both = entry.gross && entry.gross->value && entry.wet && entry.wet->value;
    if (both && *entry.wet->value > *entry.gross->value)
        return Refusal{Code::Contradiction, "wet_g", {{"other", "gross_g"}}};
    return {};
}

Result<void> demandBucket(const Bucket& bucket) {
    if (auto ok = demandMass(bucket.net, "net_g", heaviestSum); !ok) return ok;
    const auto& water = bucket.water;
    if (water && (water->percent() < 10 || water->percent() > 30))
        return Refusal{Code::OutOfRange, "water_percent", {{"low", "10"}, {"high", "30"}}};
    return {};
}

Result<void> demandRoomAir(const Extraction& run) {
    if (run.room && (run.room->celsius() < coldestRoomC || run.room->celsius() > warmestRoomC))
        return Refusal{Code::OutOfRange, "room_c", {{"low", "-20"}, {"high", "60"}}};
    if (run.damp && (run.damp->value() < 0 || run.damp->value() > 1))
        return Refusal{Code::OutOfRange, "damp_share", {{"low", "0"}, {"high", "1"}}};
    return {};
}

Result<void> demandCappings(const Extraction& run) {
    if (auto ok = demandMass(run.cappings, "cappings_g", heaviestSum); !ok) return ok;
    return demandMass(run.scrapings, "scrapings_g", heaviestSum);
}

Result<void> demandHoneyCounted(const RunBalance& balance) {
    if (!balance.unweighed.empty())
        return Refusal{Code::Missing, "net_g", {{"bucket", balance.unweighed.front()}}};
    if (balance.buckets <= Mass() || balance.shares.empty())
        return Refusal{Code::Missing, "net_g", {{"lot", balance.run.name.text()}}};
    return {};
}

}  // namespace combwright
