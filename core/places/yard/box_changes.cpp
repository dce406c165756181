#include "core/places/yard/box_changes.h"

#include <algorithm>
#include <map>

#include "core/model/storeroom/review.h"

namespace combwright {
namespace {

/// Between shelf and freezer nothing goes in or out.
bool keepsContents(BoxPlace place) {
    return place == BoxPlace::Storeroom || place == BoxPlace::Freezer;
}

/// What was done to frames of the box after a day. Those found missing are a count's matter.
std::vector<BoxChange> frameDeeds(const Read& file, Id<Box> box, Day day) {
    using What = BoxChange::What;
    std::vector<BoxChange> deeds;
    const auto add = [&](What what, Day on) {
        if (on > day) deeds.push_back({what, on});
    };
    for (const char* end : {"from_box", "to_box"})
        for (const FrameMove& move : file.where<FrameMove>({is(end, box)}))
            add(What::FramesMoved, move.on);
    for (const Frame& frame : file.where<Frame>({is("box", box)}))
        if (!frame.retired && frame.reviewed)
            add(What::FramesWorked, *frame.reviewed);
        else if (frame.retired && *frame.retired != Retired::Missing && frame.retiredOn)
            add(What::FramesWorked, *frame.retiredOn);
    for (const FrameCheck& check : file.where<FrameCheck>({is("box", box)}))
        add(What::FramesWorked, check.on);
    for (const RawWax& wax : file.where<RawWax>({is("box", box)}))
        if (wax.source == RawWaxSource::OldComb) add(What::FramesWorked, wax.on);
    return deeds;
}

bool changesContents(const BoxMove& move) {
    return move.fromPlace && !(keepsContents(*move.fromPlace) && keepsContents(move.toPlace));
}

}  // namespace

std::vector<BoxChange> changesOfBox(const Read& file, Id<Box> box, Day day, Day until) {
    using What = BoxChange::What;
    std::vector<BoxChange> changes;
    const auto within = [&](Day on) { return on > day && on <= until; };
    for (const BoxMove& move : file.where<BoxMove>({is("box", box)}))
        if (within(move.on) && changesContents(move))
            changes.push_back({What::Moved, move.on, move.toPlace});
    std::map<Day, Count> counted;
    for (const BoxCount& count : file.where<BoxCount>({is("box", box)}))
        if (within(count.on) && count.occasion != Occasion::WinterReview)
            counted[count.on] += count.frames;
    for (const auto& [on, frames] : counted)
        changes.push_back({What::Counted, on, std::nullopt, frames});
    for (const BoxLook& look : file.where<BoxLook>({is("box", box)}))
        if (within(look.on)) changes.push_back({What::Looked, look.on, std::nullopt, look.frames});
    for (const BoxReview& review : file.where<BoxReview>({is("box", box)}))
        if (within(review.on))
            changes.push_back({What::Reviewed, review.on, std::nullopt, review.found});
    std::stable_sort(changes.begin(), changes.end(),
                     [](const BoxChange& a, const BoxChange& b) { return a.on < b.on; });
    return changes;
}

std::optional<BoxChange> overtaken(const Read& file, Id<Box> box, Day day) {
    std::optional<BoxChange> first;
    for (const BoxChange& change : changesOfBox(file, box, day, Day::max()))
        if (change.what != BoxChange::What::Looked) {
            first = change;
            break;
        }
    for (const BoxChange& change : frameDeeds(file, box, day))
        if (!first || change.on < first->on) first = change;
    return first;
}

std::optional<Count> usualFramesIn(const Read& file, Id<BoxKind> kind, Id<Box> butNot) {
    std::map<std::int64_t, std::int64_t> inBox;
    for (const Frame& frame : file.where<Frame>({isUnknown("retired")}))
        if (frame.box && *frame.box != butNot) ++inBox[frame.box->number];
    std::map<std::int64_t, int> boxesWith;
    for (const Box& box : file.where<Box>({is("kind", kind)}))
        if (const auto held = inBox.find(box.id.number); held != inBox.end())
            ++boxesWith[held->second];
    std::optional<Count> usual;
    int most = 0;
    for (const auto& [frames, boxes] : boxesWith)
        if (boxes >= most) {
            most = boxes;
            usual = Count(frames);
        }
    return usual;
}

}  // namespace combwright
