#include "core/places/yard_box.h"

#include <algorithm>

#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

FrameInside ownShares(const Frame& frame) {
    FrameInside inside{frame, {}, {}, false};
    if (frame.filledA || frame.filledB) {
        const double a = frame.filledA.value_or(frame.filledB.value_or(Share())).value();
        const double b = frame.filledB.value_or(frame.filledA.value_or(Share())).value();
        inside.filled = (a + b) / 2.0;
    }
    if (frame.capped) inside.capped = frame.capped->value();
    return inside;
}

bool carriesHoney(const Frame& frame) {
    return !frame.comb || *frame.comb == Comb::Drawn || *frame.comb == Comb::DrawnFat ||
           *frame.comb == Comb::PartDrawn;
}

/// A look at the whole box says of its exchangeable frames what they are in the mean, and how many
/// of them are capped.
void spreadLook(const BoxLook& look, std::vector<FrameInside>& counted) {
    const auto filled = look.filled ? look.filled->middle() : std::nullopt;
    const auto capped = look.cappedFrames ? look.cappedFrames->middle() : std::nullopt;
    double left = capped ? *capped / 10.0 : 0.0;
    for (FrameInside& inside : counted) {
        if (!carriesHoney(inside.frame)) continue;
        inside.mean = true;
        if (filled) inside.filled = *filled / 10000.0;
        if (!capped) continue;
        const double share = std::clamp(left, 0.0, 1.0);
        left -= share;
        inside.capped = share * inside.filled.value_or(1.0);
    }
}

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
    const auto colony = colonyIn(file, hive);
    return colony ? standing(file.where<Hold>({is("colony", colony->id)})) : std::vector<Hold>{};
}

std::optional<BoxInside> boxInside(const Read& file, Id<Box> id, Day on) {
    const auto box = file.find(id);
    if (!box) return std::nullopt;
    BoxInside inside;
    inside.box = *box;
    inside.kind = file.find(box->kind);
    if (inside.kind) inside.frameKind = file.find(inside.kind->takes);
    for (const Frame& frame : file.where<Frame>({is("box", id), isUnknown("retired")}))
        (frame.position ? inside.pointed : inside.counted).push_back(ownShares(frame));
    std::stable_sort(inside.pointed.begin(), inside.pointed.end(),
                     [](const FrameInside& a, const FrameInside& b) {
                         return *a.frame.position < *b.frame.position;
                     });
    std::stable_sort(inside.counted.begin(), inside.counted.end(),
                     [](const FrameInside& a, const FrameInside& b) {
                         if (a.frame.faults.empty() != b.frame.faults.empty())
                             return a.frame.faults.empty();
                         return a.frame.comb > b.frame.comb;
                     });
    inside.look = newestLookHere(file, *box, on);
    if (inside.look) spreadLook(*inside.look, inside.counted);
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
