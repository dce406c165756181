#include "core/places/storeroom/shelf_danger.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

/// The graver of two reasons.
int graveness(MothFood food) {
    switch (food) {
        case MothFood::Web:
            return 4;
        case MothFood::Brood:
            return 3;
        case MothFood::Pollen:
            return 2;
        case MothFood::BroodKind:
            return 1;
        case MothFood::None:
            return 0;
    }
    return 0;
}

ShelfAdvice adviceFor(const ShelfBox& box, const std::vector<const ShelfFrame*>& inDanger,
                      MothFood food) {
    const auto any = [&](auto holds) {
        return std::any_of(inDanger.begin(), inDanger.end(),
                           [&](const ShelfFrame* each) { return holds(*each); });
    };
    const bool kept = any([](const ShelfFrame& each) {
        return !each.held && each.use != FrameUse::Lost && each.use != FrameUse::Bare;
    });
    // What is kept decides; held comb lies closed, and the rest is on its way to the pot.
    if (!kept)
        return any([](const ShelfFrame& each) { return each.held; }) ? ShelfAdvice::KeepCold
                                                                     : ShelfAdvice::MeltSoon;
    if (food == MothFood::Web) return ShelfAdvice::LookInside;
    const bool wet = (box.box && box.box->place == BoxPlace::Wet) ||
                     std::any_of(inDanger.begin(), inDanger.end(),
                                 [](const ShelfFrame* each) { return each->wet; });
    return wet ? ShelfAdvice::DryFirst : ShelfAdvice::Freeze;
}

std::optional<ShelfDanger> dangerOf(const ShelfBox& box,
                                    const std::map<std::int64_t, FreezerLoad>& spoilt) {
    if (!box.onShelf()) return std::nullopt;
    ShelfDanger danger;
    danger.food = MothFood::None;
    std::vector<const ShelfFrame*> inDanger;
    for (const ShelfFrame& each : box.frames) {
        if (!each.comb() || each.frozen || each.load || each.food == MothFood::None) continue;
        inDanger.push_back(&each);
        if (each.held) ++danger.held;
        if (graveness(each.food) > graveness(danger.food)) danger.food = each.food;
        if (each.undone) danger.undone = each.undone;
    }
    if (inDanger.empty()) return std::nullopt;
    danger.box = box;
    danger.frames = static_cast<std::int64_t>(inDanger.size());
    danger.advice = adviceFor(box, inDanger, danger.food);
    if (const auto load = spoilt.find(box.box ? box.box->id.number : 0); load != spoilt.end()) {
        danger.spoilt = load->second.stale;
        danger.spoiltWhy = load->second.staleWhy;
    }
    return danger;
}

}  // namespace

bool warmMonth(const Read& file, Day on) {
    const auto month = static_cast<double>(monthOf(on));
    const double from = constantOr(file, "shelf_warm_from_month", {}, on, 4);
    const double to = constantOr(file, "shelf_warm_to_month", {}, on, 10);
    // South of the equator the warm months go over the turn of the year.
    return from <= to ? month >= from && month <= to : month >= from || month <= to;
}

std::vector<ShelfDanger> shelfDangers(const Read& file, Day on) {
    std::vector<ShelfDanger> dangers;
    if (!warmMonth(file, on)) return dangers;
    std::map<std::int64_t, FreezerLoad> spoilt;  // the newest of a box
    for (const FreezerLoad& load : file.all<FreezerLoad>())
        if (load.box && load.stale && *load.stale <= on) spoilt[load.box->number] = load;
    for (const ShelfBox& box : shelfComb(file, on))
        if (auto danger = dangerOf(box, spoilt)) dangers.push_back(*std::move(danger));
    std::stable_sort(dangers.begin(), dangers.end(),
                     [](const ShelfDanger& a, const ShelfDanger& b) {
                         return std::tuple(a.food != MothFood::Web, -a.frames) <
                                std::tuple(b.food != MothFood::Web, -b.frames);
                     });
    return dangers;
}

}  // namespace combwright
