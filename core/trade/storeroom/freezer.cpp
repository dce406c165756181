#include "core/trade/storeroom/freezer.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/trade/honey/jars.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::int64_t mostBatchFrames = 100'000;
constexpr double mostFreezerHours = 8760;
constexpr double hoursInDay = 24;

std::string batchField(std::size_t at, const char* member) {
    return "batches[" + std::to_string(at) + "]." + member;
}

std::optional<Refusal> refuseBatches(std::span<const FreezerBatch> batches) {
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const auto& batch = batches[i];
        if (batch.frames < 0) return Refusal{Code::Negative, batchField(i, "frames")};
        if (batch.frames > mostBatchFrames)
            return Refusal{Code::TooMany,
                           batchField(i, "frames"),
                           {{"most", std::to_string(mostBatchFrames)}}};
        if (batch.capacity < 1)
            return Refusal{Code::OutOfRange, batchField(i, "capacity"), {{"low", "0"}}};
    }
    return std::nullopt;
}

/// Fills one round after the other.
class Filling {
  public:
    explicit Filling(bool mix) : m_mix(mix) {}

    void add(const FreezerBatch& batch) {
        std::int64_t left = batch.frames;
        while (left > 0) {
            const std::int64_t room = joins(batch) ? roomFor(batch) : 0;
            if (room == 0) {
                m_rounds.emplace_back();
                m_filled = 0;
                m_last = &batch;
                continue;
            }
            const std::int64_t count = std::min(left, room);
            put(batch, count);
            left -= count;
        }
    }
    std::vector<PlannedRound> rounds() && { return std::move(m_rounds); }

  private:
    /// Whether frames of this batch may lie in the round that is open.
    bool joins(const FreezerBatch& batch) const {
        if (m_rounds.empty()) return false;
        if (m_last == &batch) return true;
        if (batch.apart || m_last->apart) return false;
        return m_mix || (batch.kind == m_last->kind && batch.capacity == m_last->capacity);
    }
    std::int64_t roomFor(const FreezerBatch& batch) const {
        // A freezer filled by thirds is full, whatever the sum of three thirds comes to.
        return filledBy(std::max(0.0, 1 - m_filled), 1.0 / static_cast<double>(batch.capacity));
    }
    void put(const FreezerBatch& batch, std::int64_t count) {
        auto& frames = m_rounds.back().frames;
        const auto same = std::find_if(frames.begin(), frames.end(),
                                       [&](const auto& one) { return one.kind == batch.kind; });
        if (same == frames.end())
            frames.push_back({batch.kind, count});
        else
            same->count += count;
        m_filled += static_cast<double>(count) / static_cast<double>(batch.capacity);
        m_last = &batch;
    }

    bool m_mix;
    std::vector<PlannedRound> m_rounds;
    double m_filled = 0;  ///< share of the open round's room
    const FreezerBatch* m_last = nullptr;
};

}  // namespace

Result<std::vector<PlannedRound>> planFreezer(std::span<const FreezerBatch> batches, double hours,
                                              Day day, bool mix, Working* working) {
    if (!(hours > 0 && hours <= mostFreezerHours))
        return outOfRange("hours", hours, 0, mostFreezerHours);
    if (const auto refused = refuseBatches(batches)) return *refused;
    Filling filling(mix);
    for (const FreezerBatch& batch : batches) filling.add(batch);
    auto rounds = std::move(filling).rounds();

    const days stay(neededFor(hours, hoursInDay));
    const auto count = static_cast<std::int64_t>(rounds.size());
    const Day lastDay = *makeDay(9999, 12, 31);
    if (count > 0 && (lastDay - day).count() / stay.count() < count)
        return Refusal{Code::OutOfRange, "day"};
    Day in = day;
    for (PlannedRound& round : rounds) {
        round.in = in;
        in += stay;
        round.out = in;
    }
    note(working, "freezer_hours", hours, "h");
    note(working, "days_a_round", static_cast<double>(stay.count()), "d", "⌈hours ÷ 24⌉");
    note(working, "freezer_rounds", static_cast<double>(count), "",
         mix ? "filled in order, kinds share a round" : "filled in order, each kind by itself");
    return rounds;
}

std::vector<PlannedRound::Frames> stillWaiting(std::span<const PlannedRound> rounds,
                                               std::size_t roundsDone) {
    std::vector<PlannedRound::Frames> waiting;
    for (std::size_t i = roundsDone; i < rounds.size(); ++i)
        for (const auto& each : rounds[i].frames) {
            const auto same = std::find_if(waiting.begin(), waiting.end(),
                                           [&](const auto& one) { return one.kind == each.kind; });
            if (same == waiting.end())
                waiting.push_back(each);
            else
                same->count += each.count;
        }
    return waiting;
}

double frameLitres(double topBarLengthMm, double heightMm, double pitchMm) {
    return boxLitres(topBarLengthMm, heightMm, pitchMm);
}

double boxLitres(double lengthMm, double widthMm, double heightMm) {
    return lengthMm * widthMm * heightMm / 1e6;
}

Result<std::int64_t> freezerHolds(double litres, double eachLitres, double fillShare,
                                  Working* working) {
    if (!(litres > 0)) return Refusal{Code::OutOfRange, "litres", {{"low", "0"}}};
    if (!(eachLitres > 0)) return Refusal{Code::OutOfRange, "each_litres", {{"low", "0"}}};
    if (!(fillShare > 0 && fillShare <= 1)) return outOfRange("fill_share", fillShare, 0, 1);
    const std::int64_t holds = filledBy(litres * fillShare, eachLitres);
    note(working, "freezer_litres", litres, "L");
    note(working, "freezer_fill_share", fillShare, "", {}, "planning assumption, no source");
    note(working, "each_litres", eachLitres, "L");
    note(working, "freezer_holds", static_cast<double>(holds), "", "⌊litres · fill ÷ each⌋");
    return holds;
}

}  // namespace combwright
