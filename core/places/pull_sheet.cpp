#include "core/places/pull_sheet.h"

#include <algorithm>
#include <cmath>

#include "core/model/season_info.h"
#include "core/places/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/trade/frames/frame_honey.h"
#include "core/trade/honey/jars.h"

namespace combwright {
namespace {

/// How long a look speaks for a box that stayed where it was. Planning assumption, no source.
constexpr int lookHoldsDays = 35;

std::optional<BoxLook> speakingLook(const Read& file, const Box& box, Day on) {
    Day since = box.since;
    for (const BoxMove& move : file.where<BoxMove>({is("box", box.id)}))
        if (move.on <= on) since = std::max(since, move.on);
    std::optional<BoxLook> newest;
    for (BoxLook& look : file.where<BoxLook>({is("box", box.id)})) {
        if (look.on > on || look.on < since || look.on + days(lookHoldsDays) < on) continue;
        if (!newest || look.on >= newest->on) newest = std::move(look);
    }
    return newest;
}

std::optional<Hold> holdOn(const Read& file, const Box& box, const std::optional<Colony>& colony,
                           Day on) {
    auto holds = file.where<Hold>({is("box", box.id), isUnknown("lifted")});
    if (colony)
        for (Hold& hold : file.where<Hold>({is("colony", colony->id), isUnknown("lifted")}))
            holds.push_back(std::move(hold));
    for (const Hold& hold : holds)
        if (hold.since <= on) return hold;
    return std::nullopt;
}

PullBoxRow boxRow(const Read& file, const Box& box, const std::optional<Colony>& colony,
                  Id<Yard> yard, Day on) {
    PullBoxRow row;
    row.box = box;
    row.hold = holdOn(file, box, colony, on);
    row.look = speakingLook(file, box, on);
    const auto kind = file.find(box.kind);
    if (!kind) return row;
    row.kindName = kind->name.text();
    row.framesNominal = kind->framesNominal;
    const auto inBox = static_cast<std::int64_t>(
        file.where<Frame>({is("box", box.id), isUnknown("retired")}).size());
    row.frames = row.look && row.look->frames ? row.look->frames->value()
                 : inBox                      ? inBox
                 : kind->framesNominal        ? kind->framesNominal->value()
                                              : 0;
    if (!row.look) return row;
    const auto capped = row.look->cappedFrames ? row.look->cappedFrames->middle() : std::nullopt;
    if (capped && row.frames > 0)
        row.cappedShare = std::min(1.0, *capped / 10.0 / static_cast<double>(row.frames));
    const auto filled = row.look->filled ? row.look->filled->middle() : std::nullopt;
    // Where only the capped frames were counted, at least those are full.
    const auto share = filled ? std::optional(*filled / 10000.0) : row.cappedShare;
    const auto frame = file.find(kind->takes);
    const auto full = frame ? fullFrameGramsOf(file, *frame, yard, on) : std::nullopt;
    if (!share || !full) return row;
    const auto one = frameHoney({*full, *share, *share, std::nullopt});
    if (!one) return row;
    const HoneyEstimate whole = alike(*one, row.frames);
    row.honey = Reckoned{whole.grams, whole.spreadG(), filled ? How::ByEye : How::Assumed};
    if (const auto empty = emptyBoxGramsOf(file, *kind, yard, on))
        row.grossG = row.honey->grams + *empty;
    return row;
}

/// Stores in the nest: the frames of stores last counted, at what a full frame of the nest holds.
std::optional<Reckoned> nestStores(const Read& file, const Hive& hive, const std::vector<Box>& nest,
                                   Day on) {
    if (nest.empty()) return std::nullopt;
    const auto kind = file.find(nest.front().kind);
    const auto frame = kind ? file.find(kind->takes) : std::nullopt;
    const auto full = frame ? fullFrameGramsOf(file, *frame, hive.yard, on) : std::nullopt;
    if (!full) return std::nullopt;
    for (const DatedInspection& each : inspectionsOf(file, hive.id, on + days(1))) {
        const auto& stores = each.inspection.seen.stores;
        if (!stores || !stores->middle()) continue;
        if (each.on + days(lookHoldsDays) < on) return std::nullopt;
        const double frames = *stores->middle() / 10.0;
        const auto one = frameHoney({*full, 1.0, 1.0, std::nullopt});
        if (!one) return std::nullopt;
        // Counted in tenths, yet how full such a frame is was judged by eye.
        return Reckoned{one->grams * frames, one->spreadG() * frames, How::ByEye};
    }
    return std::nullopt;
}

PullHiveRow hiveRow(const Read& file, const Yard& yard, const Hive& hive, Day on,
                    const PlanLimits& limits) {
    PullHiveRow row;
    row.hive = hive;
    const auto standing = boxesOn(file, hive.id);
    const auto supers = supersOn(hive, standing);
    const std::vector<Box> nest(standing.begin(),
                                standing.end() - static_cast<std::ptrdiff_t>(supers.size()));
    row.nest = nestStores(file, hive, nest, on);
    row.needG = yard.winterNeed     ? static_cast<double>(yard.winterNeed->grams())
                : limits.winterNeed ? static_cast<double>(limits.winterNeed->grams())
                                    : 0;
    const auto colony = colonyIn(file, hive.id);
    for (auto box = supers.rbegin(); box != supers.rend(); ++box)
        row.boxes.push_back(boxRow(file, *box, colony, yard.id, on));
    return row;
}

PullBox asPullBox(const PullBoxRow& row) {
    PullBox box;
    box.mark = row.box.mark;
    if (row.honey) box.honeyG = row.honey->grams;
    box.frames = row.frames;
    box.grossG = row.grossG;
    box.cappedShare = row.cappedShare;
    if (row.look && row.look->water) box.waterPercent = row.look->water->percent();
    box.brood = row.look && row.look->broodIn.value_or(false);
    box.held = row.hold.has_value();
    return box;
}

/// What the keeper decided is not asked of the reckoning: a box forced to stay counts as held, one
/// forced off is gone from its hive before the rest is chosen.
struct FlatHives {
    std::vector<PullHive> hives;
    std::vector<std::vector<PullBoxRow*>> rows;
};

FlatHives flatten(PullInput& input) {
    FlatHives flat;
    for (PullYardRow& yard : input.yards)
        for (PullHiveRow& row : yard.hives) {
            PullHive hive;
            hive.mark = row.hive.mark.text();
            if (row.nest) hive.nestStoresG = row.nest->grams;
            std::vector<PullBoxRow*> rows;
            for (PullBoxRow& box : row.boxes) {
                const auto forced = input.forced.find(box.box.id.number);
                box.forced = forced != input.forced.end();
                if (box.forced) box.verdict = forced->second;
                if (box.forced && box.verdict == PullVerdict::Take) continue;
                PullBox asked = asPullBox(box);
                if (box.forced) asked.held = true;
                hive.boxes.push_back(asked);
                rows.push_back(&box);
            }
            flat.hives.push_back(std::move(hive));
            flat.rows.push_back(std::move(rows));
        }
    return flat;
}

/// What the boxes the keeper takes in any case use up of the limits. A hive they come off needs a
/// board; should the reckoning take from it too, that board is counted twice, which never breaks
/// the limit.
struct Decided {
    std::int64_t boxes = 0;
    std::int64_t frames = 0;
    std::int64_t hives = 0;
    double honeyG = 0;
    double grossG = 0;
};

Decided decidedTakes(const PullInput& input) {
    Decided sum;
    for (const PullYardRow& yard : input.yards)
        for (const PullHiveRow& hive : yard.hives) {
            const std::int64_t before = sum.boxes;
            for (const PullBoxRow& box : hive.boxes) {
                if (!box.forced || box.verdict != PullVerdict::Take) continue;
                ++sum.boxes;
                sum.frames += box.frames;
                sum.honeyG += box.honey ? box.honey->grams : 0;
                sum.grossG += box.grossG.value_or(0);
            }
            sum.hives += sum.boxes > before ? 1 : 0;
        }
    return sum;
}

PullLimits asTradeLimits(const PlanLimits& limits, double needG) {
    PullLimits trade;
    trade.winterNeedG = needG;
    if (limits.feedUpTo) trade.feedUpToG = static_cast<double>(limits.feedUpTo->grams());
    if (limits.minCapped) trade.minCappedShare = limits.minCapped->value();
    if (limits.maxWater) trade.maxWaterPercent = limits.maxWater->percent();
    if (limits.frames) trade.frames = limits.frames->value();
    if (limits.carry) trade.carryG = static_cast<double>(limits.carry->grams());
    if (limits.boxes) trade.boxes = limits.boxes->value();
    if (limits.clearerBoards) trade.clearerBoards = limits.clearerBoards->value();
    return trade;
}

void takeChoice(const PullChoice& choice, const FlatHives& flat) {
    for (const auto& rows : flat.rows)
        for (PullBoxRow* row : rows)
            if (!row->forced) row->verdict = PullVerdict::Leave;
    for (const PullChoice::Place& place : choice.take)
        flat.rows[place.hive][place.box]->verdict = PullVerdict::Take;
    for (const PullChoice::Left& left : choice.leave) {
        PullBoxRow& row = *flat.rows[left.place.hive][left.place.box];
        if (row.forced) continue;
        row.why = left.why;
        // Nobody can say leave of a box nobody looked into: it is looked at first.
        const bool unseen = !row.look && left.why != WhyLeft::Held;
        if (unseen) row.why = WhyLeft::LookFirst;
        if (row.why == WhyLeft::LookFirst) row.verdict = PullVerdict::LookFirst;
    }
}

void sumUp(PullSheet& sheet, const PullInput& input) {
    double shared = 0;
    std::vector<PlanLot> lots;
    for (PullYardRow& yard : sheet.yards) {
        std::map<std::string, PlanLot> byKind;
        for (PullHiveRow& hive : yard.hives) {
            bool pulled = false;
            double stays = hive.nest ? hive.nest->grams : 0;
            bool known = hive.nest.has_value();
            for (PullBoxRow& box : hive.boxes) {
                const double honey = box.honey ? box.honey->grams : 0;
                if (box.verdict != PullVerdict::Take) {
                    stays += honey;
                    known = known && box.honey.has_value();
                    continue;
                }
                pulled = true;
                ++yard.taken;
                yard.honeyG += honey;
                sheet.framesTaken += box.frames;
                sheet.honey.how =
                    weaker(sheet.honey.how, box.honey ? box.honey->how : How::Unknown);
                // What one full comb weighs is off for all boxes alike, so their spreads add up.
                if (box.honey) shared += box.honey->spreadG;
                PlanLot& lot = byKind[box.kindName];
                lot.lot = yard.yard.name.text();
                lot.kind = box.kindName;
                lot.frames += box.frames;
                lot.honeyG += honey;
            }
            if (known) {
                hive.remainingG = stays;
                hive.shortG = std::max(0.0, hive.needG - stays);
            }
            if (pulled) sheet.boardsFor.push_back(hive.hive.mark.text());
        }
        for (auto& [kind, lot] : byKind) lots.push_back(std::move(lot));
        sheet.taken += yard.taken;
        sheet.honey.grams += yard.honeyG;
        const auto jars = countJars(yard.honeyG, input.jarG, input.jarLossShare);
        if (jars) sheet.jars += jars->jars;
    }
    sheet.honey.spreadG = shared;
    RoomRates room = input.room;
    for (const PlanLot& lot : lots) room.slotsOfKind.emplace(lot.kind, room.slotsOfKind[""]);
    room.slotsOfKind.erase("");
    if (auto day = planDay(lots, room); day) sheet.day = *day;
}

}  // namespace

PlanLimits startingLimits(const Read& file, Day on) {
    const auto plans = file.all<PullPlan>();
    if (!plans.empty()) return plans.back().limits;
    PlanLimits limits;
    limits.winterNeed = Mass::roundedGrams(constantOr(file, "winter_need_g", {}, on, 25000));
    limits.feedUpTo = Mass::roundedGrams(constantOr(file, "feed_up_to_g", {}, on, 0));
    limits.minCapped = Share::rounded(constantOr(file, "min_capped_share", {}, on, 0.8));
    return limits;
}

PullInput pullInput(const Read& file, const std::vector<Id<Yard>>& yards, Day on,
                    const PlanLimits& limits, const PullForced& forced) {
    PullInput input;
    input.on = on;
    input.limits = limits;
    input.forced = forced;
    for (const Id<Yard> id : yards) {
        const auto yard = file.find(id);
        if (!yard) continue;
        PullYardRow row;
        row.yard = *yard;
        for (const Hive& hive : openHives(file, id))
            row.hives.push_back(hiveRow(file, *yard, hive, on, limits));
        input.yards.push_back(std::move(row));
    }
    const auto rate = [&](const char* name, double fallback) {
        return constantOr(file, name, {}, on, fallback);
    };
    input.room.slotsOfKind[""] = static_cast<std::int64_t>(rate("extractor_slots", 12));
    input.room.uncapMinPerFrame = rate("uncap_min_per_frame", 1.5);
    input.room.spinMinPerLoad = rate("spin_min_per_load", 15);
    input.room.swapMin = rate("swap_min", 0);
    input.room.lotChangeMin = rate("lot_change_min", 0);
    input.room.setUpMin = rate("set_up_min", 45);
    input.room.washMin = rate("wash_min", 90);
    input.room.bucketG = rate("bucket_g", 13600);
    input.room.spareShare = rate("spare_share", 0.1);
    input.jarG = rate("jar_net_g", 454);
    input.jarLossShare = rate("jar_loss_share", 0.02);
    return input;
}

PullSheet reckonPull(PullInput input) {
    PullSheet sheet;
    sheet.on = input.on;
    sheet.limits = input.limits;
    sheet.jarG = input.jarG;
    sheet.honey.how = How::Weighed;
    FlatHives flat = flatten(input);
    // A yard's own winter need differs from the plan's; stores are shifted so that one need holds
    // for all.
    const double need =
        input.limits.winterNeed ? static_cast<double>(input.limits.winterNeed->grams()) : 0;
    std::size_t at = 0;
    for (const PullYardRow& yard : input.yards)
        for (const PullHiveRow& hive : yard.hives)
            flat.hives[at++].expectedChangeG = need - hive.needG;
    const Decided decided = decidedTakes(input);
    PullLimits trade = asTradeLimits(input.limits, need);
    const auto less = [](std::optional<std::int64_t>& limit, std::int64_t used) {
        if (limit) limit = std::max<std::int64_t>(0, *limit - used);
    };
    less(trade.boxes, decided.boxes);
    less(trade.frames, decided.frames);
    less(trade.clearerBoards, decided.hives);
    if (trade.carryG) trade.carryG = std::max(0.0, *trade.carryG - decided.grossG);
    const PullChoice choice = choosePull(flat.hives, trade);
    takeChoice(choice, flat);
    at = 0;
    for (PullYardRow& yard : input.yards)
        for (PullHiveRow& hive : yard.hives) {
            hive.lookFirst = std::find(choice.lookFirst.begin(), choice.lookFirst.end(), at) !=
                             choice.lookFirst.end();
            ++at;
        }
    sheet.proven = choice.proven;
    sheet.boundG = choice.boundG + decided.honeyG;
    sheet.yards = std::move(input.yards);
    sumUp(sheet, input);
    // What is to be brought in stands first; yards with nothing to take come after.
    std::stable_partition(sheet.yards.begin(), sheet.yards.end(),
                          [](const PullYardRow& yard) { return yard.taken > 0; });
    if (sheet.taken == 0) sheet.honey.how = How::Unknown;
    return sheet;
}

}  // namespace combwright
