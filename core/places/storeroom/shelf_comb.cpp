#include "core/places/storeroom/shelf_comb.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

/// What the moves and looks of a box say of it.
struct CombPast {
    bool nest = false;             ///< it stood under an excluder, or on the floor without one
    bool alwaysAbove = false;      ///< it stood on hives, and above the excluder each time
    bool brood = false;            ///< brood was seen in it
    std::optional<Id<Hive>> hive;  ///< the last it stood on
    std::optional<Day> off;        ///< the last day it came off one, or was given back by one
    std::optional<Day> emptiedOn;  ///< it came from the honey room straight to the storeroom
};

void tell(CombPast& past, const BoxMove& move) {
    const bool leftHive = move.fromPlace == BoxPlace::OnHive;
    if (move.toPlace == BoxPlace::OnHive && move.toHive) past.hive = move.toHive;
    if (leftHive) {
        if (!past.hive) past.hive = move.fromHive;
        const bool floor = move.fromLevel && *move.fromLevel == Count();
        const bool under = move.fromUnder.value_or(floor);
        past.nest = past.nest || under;
        past.alwaysAbove = !past.nest && move.fromUnder == false;
    }
    const bool stays = move.toPlace == BoxPlace::OnHive || move.toPlace == BoxPlace::GivenBack;
    if ((leftHive || move.fromPlace == BoxPlace::GivenBack) && !stays) past.off = move.on;
    past.emptiedOn.reset();
    if (move.fromPlace == BoxPlace::Wet && !stays) past.emptiedOn = move.on;
}

/// Everything asked of the file at once.
class Shelf {
  public:
    Shelf(const Read& file, Day on, std::optional<Id<Box>> only)
        : m_on(on),
          m_held(heldThings(file, on)),
          m_dryDays(static_cast<int>(constantOr(file, "wets_dry_days", {}, on, 2))) {
        for (const FrameKind& kind : file.all<FrameKind>()) m_frameKinds[kind.id.number] = kind;
        for (const BoxKind& kind : file.all<BoxKind>()) m_boxKinds[kind.id.number] = kind;
        auto moves = only ? file.where<BoxMove>({is("box", *only)}) : file.all<BoxMove>();
        std::stable_sort(moves.begin(), moves.end(),
                         [](const BoxMove& a, const BoxMove& b) { return a.on < b.on; });
        for (const BoxMove& move : moves)
            if (move.on <= on) tell(m_pasts[move.box.number], move);
        const auto looks = only ? file.where<BoxLook>({is("box", *only)}) : file.all<BoxLook>();
        for (const BoxLook& look : looks)
            if (look.broodIn.value_or(false) && look.on <= on)
                m_pasts[look.box.number].brood = true;
        for (const FreezerRound& round : file.all<FreezerRound>())
            if (round.in <= on && !round.out) m_openRounds.insert(round.id.number);
        const auto loads =
            only ? file.where<FreezerLoad>({is("box", *only)}) : file.all<FreezerLoad>();
        for (const FreezerLoad& load : loads)
            if (m_openRounds.contains(load.round.number))
                m_loads[load.box ? load.box->number : 0].push_back(load);
    }

    ShelfBox make(const Box& box) const {
        ShelfBox made;
        made.box = box;
        if (const auto kind = m_boxKinds.find(box.kind.number); kind != m_boxKinds.end())
            made.kind = kind->second;
        made.name = box.mark.empty() ? "#" + std::to_string(box.id.number) : box.mark;
        made.stack = box.stack;
        if (const auto past = m_pasts.find(box.id.number); past != m_pasts.end()) {
            made.cameOff = past->second.hive;
            made.offSince = past->second.off;
        }
        return made;
    }

    ShelfFrame look(const Frame& frame, const std::optional<Box>& box) const {
        static const CombPast nobody;
        const auto known = box ? m_pasts.find(box->id.number) : m_pasts.end();
        const CombPast& past = known == m_pasts.end() ? nobody : known->second;
        ShelfFrame seen;
        seen.frame = frame;
        seen.use = useOf(frame, m_held.holds(frame));
        seen.held = seen.use == FrameUse::Held;
        seen.food = foodOf(frame, past);
        const bool standsWet = box && box->place == BoxPlace::Wet;
        const bool justEmptied = past.emptiedOn && m_on < *past.emptiedOn + days(m_dryDays);
        seen.wet = frame.wet.value_or(standsWet || justEmptied);
        if (frame.frozen) {
            seen.frozen = !past.off || *past.off <= *frame.frozen;
            if (!seen.frozen) seen.undone = past.off;
        }
        return seen;
    }

    void load(ShelfBox& box) const {
        const auto loads = m_loads.find(box.box ? box.box->id.number : 0);
        if (loads == m_loads.end()) return;
        for (const FreezerLoad& load : loads->second) {
            const auto present = static_cast<std::int64_t>(
                std::count_if(box.frames.begin(), box.frames.end(), [&](const ShelfFrame& each) {
                    return !each.load && each.frame.kind == load.frameKind &&
                           bearsFaults(each.frame, load.faults);
                }));
            // A letter corrected meanwhile does not let a frame out of the freezer.
            const std::string& faults = present < load.frames.value() ? std::string() : load.faults;
            for (const std::size_t at :
                 framesMeant(box.frames, load.frames, faults, load.frameKind))
                box.frames[at].load = load.id;
        }
    }

  private:
    MothFood foodOf(const Frame& frame, const CombPast& past) const {
        const auto has = [&](const char* letters) {
            return frame.faults.find_first_of(letters) != std::string::npos;
        };
        if (has("L")) return MothFood::Pollen;
        if (has("DQT") || past.nest || past.brood) return MothFood::Brood;
        if (has("W")) return MothFood::Web;
        if (past.alwaysAbove) return MothFood::None;
        const auto kind = m_frameKinds.find(frame.kind.number);
        if (kind == m_frameKinds.end() || !kind->second.height) return MothFood::None;
        return kind->second.height->mm() >= broodFrameMm ? MothFood::BroodKind : MothFood::None;
    }

    Day m_on;
    HeldThings m_held;
    int m_dryDays;
    std::map<std::int64_t, FrameKind> m_frameKinds;
    std::map<std::int64_t, BoxKind> m_boxKinds;
    std::map<std::int64_t, CombPast> m_pasts;
    std::set<std::int64_t> m_openRounds;
    std::map<std::int64_t, std::vector<FreezerLoad>> m_loads;
};

/// Lower goes into the freezer first.
int turnOf(const ShelfFrame& each) {
    if (each.held) return 6;
    if (each.use == FrameUse::Lost || each.use == FrameUse::Bare ||
        each.use == FrameUse::Foundation)
        return 5;
    if (each.frozen) return 4;
    if (each.use != FrameUse::Drawn && !each.comb()) return 3;
    if (each.frame.verdict == Verdict::Freeze) return 0;
    return each.food == MothFood::None ? 2 : 1;
}

}  // namespace

bool ShelfFrame::comb() const {
    if (frame.retired) return false;
    // Nobody counts a bare frame as mouldy: what is wrong with a comb says that there is one.
    if (!frame.comb) return frame.faults.find_first_of("WSBUODXNTGYCLQ") != std::string::npos;
    return *frame.comb != Comb::Bare && *frame.comb != Comb::Foundation;
}

bool ShelfBox::onShelf() const {
    if (!box) return true;
    switch (box->place) {
        case BoxPlace::Cleared:
        case BoxPlace::Waiting:
        case BoxPlace::Wet:
        case BoxPlace::Storeroom:
        case BoxPlace::Freezer:
            return true;
        case BoxPlace::OnHive:
        case BoxPlace::GivenBack:
        case BoxPlace::Lent:
        case BoxPlace::Gone:
            return false;
    }
    return false;
}

bool bearsFaults(const Frame& frame, const std::string& letters) {
    return std::all_of(letters.begin(), letters.end(),
                       [&](char letter) { return frame.faults.find(letter) != std::string::npos; });
}

std::vector<std::size_t> framesMeant(const std::vector<ShelfFrame>& frames,
                                     std::optional<Count> many, const std::string& faults,
                                     std::optional<Id<FrameKind>> kind) {
    std::vector<std::size_t> meant;
    for (std::size_t at = 0; at < frames.size(); ++at) {
        const ShelfFrame& each = frames[at];
        if (each.load || (kind && each.frame.kind != *kind)) continue;
        if (bearsFaults(each.frame, faults)) meant.push_back(at);
    }
    std::stable_sort(meant.begin(), meant.end(), [&](std::size_t a, std::size_t b) {
        return turnOf(frames[a]) < turnOf(frames[b]);
    });
    if (many) {
        if (static_cast<std::int64_t>(meant.size()) > many->value())
            meant.resize(static_cast<std::size_t>(many->value()));
        return meant;
    }
    const bool onlyHeld =
        std::all_of(meant.begin(), meant.end(), [&](std::size_t at) { return frames[at].held; });
    std::erase_if(meant, [&](std::size_t at) { return !onlyHeld && turnOf(frames[at]) > 3; });
    return meant;
}

std::vector<ShelfBox> shelfComb(const Read& file, Day on) {
    const Shelf shelf(file, on, std::nullopt);
    std::vector<ShelfBox> all;
    std::map<std::int64_t, std::size_t> places;
    for (const Box& box : file.all<Box>()) {
        if (!inUse(box)) continue;
        places[box.id.number] = all.size();
        all.push_back(shelf.make(box));
    }
    ShelfBox loose;
    for (const Frame& frame : file.where<Frame>({isUnknown("retired")})) {
        if (!frame.box) {
            loose.frames.push_back(shelf.look(frame, std::nullopt));
        } else if (const auto at = places.find(frame.box->number); at != places.end()) {
            all[at->second].frames.push_back(shelf.look(frame, all[at->second].box));
        }
    }
    std::erase_if(all, [](const ShelfBox& each) { return each.frames.empty() && !each.onShelf(); });
    for (ShelfBox& each : all) shelf.load(each);
    shelf.load(loose);
    std::map<std::string, ShelfBox> shelves;
    for (ShelfFrame& each : loose.frames) {
        ShelfBox& there = shelves[each.frame.stack];
        there.name = there.stack = each.frame.stack;
        there.frames.push_back(std::move(each));
    }
    for (auto& [stack, each] : shelves) all.push_back(std::move(each));
    return all;
}

ShelfBox shelfBox(const Read& file, Id<Box> id, Day on) {
    const Shelf shelf(file, on, id);
    const auto box = file.find(id);
    if (!box) return {};
    ShelfBox made = shelf.make(*box);
    for (const Frame& frame : file.where<Frame>({is("box", id), isUnknown("retired")}))
        made.frames.push_back(shelf.look(frame, box));
    shelf.load(made);
    return made;
}

ShelfBox looseFrames(const Read& file, Day on) {
    const Shelf shelf(file, on, std::nullopt);
    ShelfBox loose;
    for (const Frame& frame : file.where<Frame>({isUnknown("box"), isUnknown("retired")}))
        loose.frames.push_back(shelf.look(frame, std::nullopt));
    shelf.load(loose);
    return loose;
}

}  // namespace combwright
