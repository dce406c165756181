#include "core/places/yard/yard_box.h"

#include <algorithm>

#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

std::vector<Hold> standing(std::vector<Hold> holds) {
    std::erase_if(holds, [](const Hold& hold) { return hold.lifted.has_value(); });
    return holds;
}

}  // namespace

std::optional<Day> onHiveSince(const Read& file, const Box& box, Day until) {
    if (!box.hive) return std::nullopt;
    std::optional<Day> since;
    for (const BoxMove& move : file.where<BoxMove>({is("box", box.id)}))
        if (move.on <= until && move.toHive == box.hive && move.fromHive != box.hive)
            since = move.on;
    return since;
}

std::optional<BoxLook> newestLookHere(const Read& file, const Box& box, Day on) {
    const auto since = onHiveSince(file, box, on);
    std::optional<BoxLook> newest;
    for (BoxLook& look : file.where<BoxLook>({is("box", box.id)})) {
        if (look.on > on || (since && look.on < *since)) continue;
        if (!newest || look.on >= newest->on) newest = std::move(look);
    }
    return newest;
}

std::vector<Hold> holdsOn(const Read& file, Id<Box> box) {
    return standing(file.where<Hold>({is("box", box)}));
}

std::vector<Hold> holdsOn(const Read& file, Id<Hive> hive) {
    // Of a dead colony too: its combs stand there still.
    const auto colony = lastColonyIn(file, hive, lastOfAllDays);
    return colony ? standing(file.where<Hold>({is("colony", colony->id)})) : std::vector<Hold>{};
}

std::vector<Hold> holdsOn(const Read& file, Id<Hive> hive, Day on) {
    std::vector<Hold> holds;
    if (const auto colony = lastColonyIn(file, hive, on))
        for (Hold& hold : file.where<Hold>({is("colony", colony->id)}))
            if (standsOn(hold, on)) holds.push_back(std::move(hold));
    return holds;
}

std::optional<BoxInside> boxInside(const Read& file, Id<Box> id, Day on) {
    const auto box = file.find(id);
    if (!box) return std::nullopt;
    BoxInside inside;
    inside.box = *box;
    inside.kind = file.find(box->kind);
    if (inside.kind) inside.frameKind = file.find(inside.kind->takes);
    inside.look = newestLookHere(file, *box, on);
    const auto frames = file.where<Frame>({is("box", id), isUnknown("retired")});
    if (!frames.empty())
        inside.frames = framesFlat(frames, inside.look, static_cast<std::int64_t>(frames.size()));
    inside.onSince = onHiveSince(file, *box, on);
    if (const auto hive = file.find(box->hive)) {
        const auto supers = supersOn(*hive, boxesOn(file, hive->id));
        inside.nest = std::none_of(supers.begin(), supers.end(),
                                   [&](const Box& each) { return each.id == id; });
    }
    inside.holds = holdsOn(file, id);
    return inside;
}

}  // namespace combwright
