#include "core/actions/boxes/box_steps.h"

#include "core/model/honey/pull.h"
#include "core/model/season_info.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

bool inUse(const Box& box) {
    return box.place != BoxPlace::Gone && box.condition != BoxCondition::Scrapped &&
           box.condition != BoxCondition::Burnt;
}

/// Makes room on a hive and says at which level the box will stand.
Count makeRoom(Write& file, Id<Hive> hive, std::optional<Count> wanted) {
    auto standing = boxesOn(file, hive);
    const Count top(static_cast<std::int64_t>(standing.size()));
    const Count level = wanted && *wanted < top ? *wanted : top;
    for (Box& each : standing) {
        if (!each.level || *each.level < level) continue;
        each.level = *each.level + Count(1);
        file.change(each);
    }
    return level;
}

void closeGap(Write& file, Id<Hive> hive) {
    Count level;
    for (Box& each : boxesOn(file, hive)) {
        if (each.level != level) {
            each.level = level;
            file.change(each);
        }
        level += Count(1);
    }
}

void addFrames(Write& file, const Box& box, const BoxKind& kind, const BoxContents& contents,
               Day on) {
    if (!kind.takes) return;
    for (const FrameTally& tally : contents.tallies) {
        file.add(BoxCount{{}, box.id, on, Occasion::Added, tally.comb, tally.faults, tally.frames});
        for (std::int64_t n = 0; n < tally.frames.value(); ++n) {
            Frame frame;
            frame.kind = *kind.takes;
            frame.box = box.id;
            frame.comb = tally.comb;
            frame.faults = tally.faults;
            file.add(frame);
        }
    }
}

}  // namespace

Result<Id<Box>> addBoxTo(Write& file, const ListedBox& listed, const BoxSpot& spot, Day on) {
    if (!listed.mark.empty())
        for (const Box& each : file.where<Box>({is("mark", listed.mark)}))
            if (inUse(each)) return Refusal{Code::Taken, "mark", {{"name", listed.mark}}};
    const auto kind = file.find(listed.kind);
    if (!kind) return Refusal{Code::NotFound, "kind", {}};

    Box box;
    box.kind = listed.kind;
    box.mark = listed.mark;
    box.place = spot.place;
    box.since = on;
    box.stack = spot.stack;
    if (spot.hive) {
        box.hive = spot.hive;
        box.level = makeRoom(file, *spot.hive, spot.level);
    }
    file.add(box);
    file.add(BoxMove{{},
                     box.id,
                     on,
                     std::nullopt,
                     std::nullopt,
                     std::nullopt,
                     box.place,
                     box.hive,
                     box.level,
                     std::nullopt});
    addFrames(file, box, *kind, listed.contents, on);
    return box.id;
}

Result<void> moveBoxTo(Write& file, Id<Box> id, const BoxSpot& spot, Day on,
                       std::optional<Id<Inspection>> inspection) {
    auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, "box", {}};
    if (spot.hive) {
        const auto hive = file.find(*spot.hive);
        if (!hive) return Refusal{Code::NotFound, "hive", {}};
        if (hive->closed) return Refusal{Code::Closed, "hive", {{"name", hive->mark.text()}}};
    }
    const Box before = *box;
    const bool sameSpot = before.place == spot.place && before.hive == spot.hive &&
                          (!spot.level || spot.level == before.level) && before.stack == spot.stack;
    if (sameSpot) return Refusal{Code::NothingToDo, "box", {{"name", before.mark}}};

    // Off first, so that moving within one hive counts levels without the box itself.
    box->place = spot.place;
    box->hive.reset();
    box->level.reset();
    box->stack = spot.stack;
    file.change(*box);
    if (before.hive && before.place == BoxPlace::OnHive) closeGap(file, *before.hive);
    if (spot.hive) {
        const bool stands = spot.place == BoxPlace::OnHive;
        const Count level = stands ? makeRoom(file, *spot.hive, spot.level) : Count();
        box->hive = spot.hive;
        if (stands) box->level = level;
        file.change(*box);
    }
    file.add(BoxMove{{},
                     id,
                     on,
                     before.place,
                     before.hive,
                     before.level,
                     box->place,
                     box->hive,
                     box->level,
                     inspection});
    return {};
}

Result<void> forgetBox(Write& file, Id<Box> id) {
    auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, "box", {}};
    const auto moves = file.where<BoxMove>({is("box", id)});
    const bool touched = moves.size() > 1 || file.first<BoxLook>({is("box", id)}) ||
                         file.first<Frame>({is("box", id)}) ||
                         file.first<ExtractionBox>({is("box", id)}) ||
                         file.first<PullLine>({is("box", id)}) || file.first<Hold>({is("box", id)});
    if (touched) return Refusal{Code::MovedOn, "box", {{"name", box->mark}}};
    for (const BoxMove& move : moves) file.remove(move.id);
    const auto hive = box->place == BoxPlace::OnHive ? box->hive : std::nullopt;
    file.remove(id);
    if (hive) closeGap(file, *hive);
    return {};
}

}  // namespace combwright
