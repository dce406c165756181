#include "core/storage/queries/runs.h"

#include <algorithm>

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

std::vector<Extraction> runsInRoom(const Read& file, Day on) {
    auto runs = file.all<Extraction>();
    std::erase_if(runs, [&](const Extraction& run) {
        return run.on > on || (run.on < on && run.closed && *run.closed < on);
    });
    std::stable_sort(runs.begin(), runs.end(),
                     [](const Extraction& a, const Extraction& b) { return a.on < b.on; });
    return runs;
}

std::string calledInRun(const Read& file, const ExtractionBox& box) {
    return calledInRun(file, std::vector{box}).front();
}

std::vector<std::string> calledInRun(const Read& file, const std::vector<ExtractionBox>& boxes) {
    std::vector<Id<Box>> ids;
    for (const ExtractionBox& each : boxes)
        if (each.box) ids.push_back(*each.box);
    const auto known = file.findAny(ids);
    std::vector<std::string> called;
    for (const ExtractionBox& each : boxes) {
        const auto box = each.box ? known.find(each.box->number) : known.end();
        if (box != known.end() && !box->second.mark.empty())
            called.push_back(box->second.mark);
        else
            called.push_back(each.knownAs.empty() ? "#" + std::to_string(each.id.number)
                                                  : each.knownAs);
    }
    return called;
}

std::map<std::int64_t, std::int64_t> framesSpun(const Read& file, Id<Extraction> run) {
    std::vector<Id<SpinLoad>> loads;
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run)}))
        if (load.ran != Ran::Stopped) loads.push_back(load.id);
    std::map<std::int64_t, std::int64_t> spun;
    for (const LoadBox& box : file.whereAny<LoadBox>("load", loads))
        spun[box.box.number] += box.frames.value();
    return spun;
}

std::int64_t FramesOfBox::left(std::int64_t frames) const {
    return std::max<std::int64_t>(0, frames - spun + again - unspun - broke);
}

std::int64_t FramesOfBox::most(std::int64_t frames) const {
    return std::max<std::int64_t>(0, frames - spun + again - unspun);
}

std::map<std::int64_t, FramesOfBox> framesOfBoxes(const Read& file, Id<Extraction> run) {
    std::map<std::int64_t, FramesOfBox> boxes;
    for (const auto& [box, frames] : framesSpun(file, run)) boxes[box].spun = frames;
    for (const SetAside& each : file.where<SetAside>({is("extraction", run)})) {
        if (!each.box) continue;
        FramesOfBox& box = boxes[each.box->number];
        const std::int64_t frames = each.frames.value();
        const bool again = each.became == AsideBecame::SpunAgain;
        if (!each.became) box.onPile += frames;
        if (!each.why || each.why == AsideWhy::NotEmpty) {
            // Out of the drum, or nobody said why: spun already, unless it is to go in again.
            if (again) box.again += frames;
        } else if (each.why == AsideWhy::Broke) {
            if (!again) box.broke += frames;
        } else if (!again) {
            box.unspun += frames;
        }
    }
    return boxes;
}

std::int64_t framesOnPile(const Read& file, Id<Extraction> run) {
    std::int64_t frames = 0;
    for (const SetAside& each : file.where<SetAside>({is("extraction", run), isUnknown("became")}))
        frames += each.frames.value();
    return frames;
}

}  // namespace combwright
