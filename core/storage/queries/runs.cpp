#include "core/storage/queries/runs.h"

namespace combwright {

std::optional<Id<Hive>> hiveThatFilled(const Read& file, Id<Box> box, Day on) {
    std::optional<Id<Hive>> hive;
    Day newest{};
    for (const BoxMove& move : file.where<BoxMove>({is("box", box)})) {
        if (move.on > on || move.on < newest) continue;
        if (move.toPlace != BoxPlace::OnHive || !move.toHive) continue;
        newest = move.on;
        hive = move.toHive;
    }
    return hive;
}

std::optional<Count> framesIn(const Read& file, const Box& box) {
    const auto counted = file.where<Frame>({is("box", box.id), isUnknown("retired")}).size();
    if (counted > 0) return Count(static_cast<std::int64_t>(counted));
    const auto kind = file.find(box.kind);
    return kind ? kind->framesNominal : std::nullopt;
}

}  // namespace combwright
