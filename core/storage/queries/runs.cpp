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

std::string calledInRun(const Read& file, const ExtractionBox& box) {
    const auto known = file.find(box.box);
    if (known && !known->mark.empty()) return known->mark;
    return box.knownAs.empty() ? "#" + std::to_string(box.id.number) : box.knownAs;
}

std::map<std::int64_t, std::int64_t> framesSpun(const Read& file, Id<Extraction> run) {
    std::map<std::int64_t, std::int64_t> spun;
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run)})) {
        if (load.ran == Ran::Stopped) continue;
        for (const LoadBox& box : file.where<LoadBox>({is("load", load.id)}))
            spun[box.box.number] += box.frames.value();
    }
    return spun;
}

}  // namespace combwright
