#include "core/places/pull/pull_sheet.h"

#include <algorithm>
#include <cmath>

#include "core/places/honey_room/pegs.h"
#include "core/trade/honey/jars.h"
#include "core/trade/pull/clearer_rounds.h"
#include "core/words/figures.h"

namespace combwright {
namespace {

PullBox asPullBox(const PullBoxRow& row) {
    PullBox box;
    box.mark = row.box.mark;
    if (row.honey) box.honeyG = row.honey->grams;
    box.frames = row.frames;
    if (row.gross) box.grossG = row.gross->grams;
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
                const auto forced = input.asked.forced.find(box.box.id.number);
                box.forced = forced != input.asked.forced.end();
                if (box.forced) {
                    box.verdict = forced->second.verdict;
                    box.reason = forced->second.reason;
                }
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

/// What the boxes the keeper takes in any case, and those off already, use up of the limits. A hive
/// they come off needs a board; should the reckoning take from it too, that board is counted twice,
/// which never breaks the limit.
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
            // What was brought already uses up the limits like what is decided.
            for (const BroughtBox& box : hive.brought) {
                ++sum.boxes;
                sum.frames += box.frames;
                sum.grossG += box.grossG.value_or(0);
            }
            for (const PullBoxRow& box : hive.boxes) {
                if (!box.forced || box.verdict != PullVerdict::Take) continue;
                ++sum.boxes;
                sum.frames += box.frames;
                sum.honeyG += box.honey ? box.honey->grams : 0;
                sum.grossG += box.gross ? box.gross->grams : 0;
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

/// Adds a box taken to the sums of its yard and of the whole.
void takeIn(PullSheet& sheet, PullYardRow& yard, const PullBoxRow& box, PlanLot& lot) {
    const double honey = box.honey ? box.honey->grams : 0;
    ++yard.taken;
    yard.honeyG += honey;
    sheet.framesTaken += box.frames;
    sheet.honey.how = weaker(sheet.honey.how, box.honey ? box.honey->how : How::Unknown);
    // What one full comb weighs is off for all boxes alike, so their spreads add up.
    if (box.honey) sheet.honey.spreadG += box.honey->spreadG;
    if (box.gross) {
        sheet.gross.grams += box.gross->grams;
        sheet.gross.spreadG += box.gross->spreadG;
        sheet.gross.how = How::Assumed;
    } else {
        ++sheet.grossUnknown;
    }
    if (box.overLift) ++sheet.overLift;
    lot.lot = yard.yard.name.text();
    lot.kind = box.kindName;
    lot.frames += box.frames;
    lot.honeyG += honey;
}

void sumUpHive(PullSheet& sheet, PullYardRow& yard, PullHiveRow& hive,
               std::map<std::string, PlanLot>& byKind) {
    double stays = hive.nest ? hive.nest->grams : 0;
    bool known = hive.nest.has_value();
    for (PullBoxRow& box : hive.boxes) {
        // What nobody knows the weight of may be heavy; the doubt of a reckoned one counts too.
        box.overLift = !box.gross || box.gross->grams + box.gross->spreadG > liftLimitG;
        if (box.verdict == PullVerdict::Take) {
            ++hive.taken;
            takeIn(sheet, yard, box, byKind[box.kindName]);
            continue;
        }
        stays += box.honey ? box.honey->grams : 0;
        known = known && box.honey.has_value();
    }
    if (!known) return;
    hive.remainingG = stays;
    hive.shortG = std::max(0.0, hive.needG - stays);
}

/// Boards go where most boxes come off, of equal hives to the one that is met first.
void giveOutBoards(PullSheet& sheet) {
    // One to two days before; an evening is needed for the bees to go down.
    if (sheet.asked.forDay > sheet.on)
        sheet.boardsIn = std::max(sheet.on, sheet.asked.forDay - days(boardDays));
    std::vector<const PullHiveRow*> hives;
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            if (hive.taken > 0 && !hive.boardIn) hives.push_back(&hive);
    std::size_t boards = sheet.boardsIn ? hives.size() : 0;
    if (const auto& owned = sheet.asked.limits.clearerBoards; owned)
        boards =
            std::min(boards, static_cast<std::size_t>(std::max<std::int64_t>(0, owned->value())));
    // The limit chooses the hives; boards that were counted and are too few go round by round.
    std::vector<std::int64_t> boxes;
    std::vector<std::int64_t> yards;
    for (const PullHiveRow* hive : hives) {
        boxes.push_back(hive->taken);
        yards.push_back(hive->hive.yard.number);
    }
    const auto many = static_cast<std::int64_t>(boards);
    const auto chosen = clearerRounds(boxes, many, many);
    std::vector<std::int64_t> withBoard(boxes.size(), 0);
    if (!chosen.empty() && sheet.boardsOwned != 0)
        for (const std::size_t index : chosen.front()) withBoard[index] = boxes[index];
    for (std::size_t i = 0; i < hives.size(); ++i)
        (withBoard[i] > 0 ? sheet.boardsFor : sheet.brush).push_back(hives[i]->hive.mark.text());
    if (!sheet.boardsIn) return;
    const std::int64_t owned = sheet.boardsOwned.value_or(many);
    Day in = *sheet.boardsIn;
    Day out = sheet.asked.forDay;
    for (const auto& round : clearerRounds(withBoard, owned, owned, yards)) {
        ClearerRound made{in, out, {}, {}};
        for (const std::size_t index : round) {
            made.hives.push_back(hives[index]->hive.mark.text());
            made.ids.push_back(hives[index]->hive.id);
        }
        sheet.rounds.push_back(std::move(made));
        in = out;
        out = in + days(boardDays);
    }
}

/// The next free numbers in the order the boxes are met: hives as one walks, each from the top.
void proposePegs(PullSheet& sheet, std::set<std::int64_t> taken) {
    for (PullYardRow& yard : sheet.yards)
        for (PullHiveRow& hive : yard.hives) {
            sheet.brought += static_cast<int>(hive.brought.size());
            for (PullBoxRow& box : hive.boxes) {
                if (box.verdict != PullVerdict::Take) continue;
                box.peg = nextFreePeg(taken);
                taken.insert(*box.peg);
            }
        }
}

void planTheDay(PullSheet& sheet) {
    for (const PlanLot& lot : sheet.lots)
        sheet.room.slotsOfKind.emplace(lot.kind, sheet.room.slotsOfKind[""]);
    sheet.room.slotsOfKind.erase("");
    const auto day = planDay(sheet.lots, sheet.room);
    if (!day) return;
    sheet.day = *day;
    for (const PlanLoad& load : day->timeline)
        for (PullYardRow& yard : sheet.yards)
            if (yard.yard.name.text() == sheet.lots[load.lot].lot) ++yard.loads;
    for (PullYardRow& yard : sheet.yards) yard.buckets = neededFor(yard.honeyG, sheet.room.bucketG);
}

void sumUp(PullSheet& sheet, const PullInput& input) {
    for (PullYardRow& yard : sheet.yards) {
        std::map<std::string, PlanLot> byKind;
        for (PullHiveRow& hive : yard.hives) sumUpHive(sheet, yard, hive, byKind);
        for (auto& [kind, lot] : byKind) sheet.lots.push_back(std::move(lot));
        sheet.taken += yard.taken;
        sheet.honey.grams += yard.honeyG;
        if (const auto jars = countJars(yard.honeyG, input.jarG, input.jarLossShare); jars)
            yard.jars = jars->jars;
        sheet.jars += yard.jars;
    }
    giveOutBoards(sheet);
    planTheDay(sheet);
}

}  // namespace

PullSheet reckonPull(PullInput input, Working* working) {
    PullSheet sheet;
    sheet.on = input.on;
    sheet.asked = input.asked;
    sheet.constants = input.constants;
    sheet.room = input.room;
    sheet.jarG = input.jarG;
    sheet.jarLossShare = input.jarLossShare;
    sheet.boardsOwned = input.boardsOwned;
    sheet.honey.how = How::Weighed;
    FlatHives flat = flatten(input);
    // A yard's own winter need differs from the plan's; stores are shifted so that one need holds
    // for all.
    const double need = input.asked.limits.winterNeed
                            ? static_cast<double>(input.asked.limits.winterNeed->grams())
                            : 0;
    std::size_t at = 0;
    for (const PullYardRow& yard : input.yards)
        for (const PullHiveRow& hive : yard.hives)
            flat.hives[at++].expectedChangeG = need - hive.needG;
    const Decided decided = decidedTakes(input);
    PullLimits trade = asTradeLimits(input.asked.limits, need);
    const auto less = [](std::optional<std::int64_t>& limit, std::int64_t used) {
        if (limit) limit = std::max<std::int64_t>(0, *limit - used);
    };
    less(trade.boxes, decided.boxes);
    less(trade.frames, decided.frames);
    less(trade.clearerBoards, decided.hives);
    if (trade.carryG) trade.carryG = std::max(0.0, *trade.carryG - decided.grossG);
    const PullChoice choice = choosePull(flat.hives, trade, working);
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
    note(working, "decided_g", decided.honeyG, "g");
    note(working, "honey_bound", sheet.boundG, "g", "bound of the rest + decided by the keeper");
    sheet.yards = std::move(input.yards);
    sumUp(sheet, input);
    // What is to be brought in stands first; yards with nothing to take come after.
    std::stable_partition(sheet.yards.begin(), sheet.yards.end(),
                          [](const PullYardRow& yard) { return yard.taken > 0; });
    proposePegs(sheet, std::move(input.pegsTaken));
    if (sheet.taken == 0) sheet.honey.how = How::Unknown;
    return sheet;
}

std::optional<PullOtherwise> pullOtherwise(PullInput input, const PullSheet& now, std::int64_t box,
                                           PullVerdict verdict) {
    input.asked.forced[box].verdict = verdict;
    const PullSheet then = reckonPull(std::move(input));
    for (const PullYardRow& yard : then.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& row : hive.boxes) {
                if (row.box.id.number != box) continue;
                PullOtherwise answer;
                answer.verdict = verdict;
                answer.moreHoneyG = then.honey.grams - now.honey.grams;
                answer.remainingG = hive.remainingG;
                answer.shortG = hive.shortG;
                if (then.day && now.day) {
                    answer.loads = then.day->loads;
                    answer.moreLoads = then.day->loads - now.day->loads;
                    answer.moreMin = then.day->dayMin - now.day->dayMin;
                    answer.moreBuckets = then.day->bucketsWithSpare - now.day->bucketsWithSpare;
                }
                answer.brush = std::find(then.brush.begin(), then.brush.end(),
                                         hive.hive.mark.text()) != then.brush.end();
                return answer;
            }
    return std::nullopt;
}

bool asKept(const PullSheet& sheet, const KeptPull& kept) {
    const auto sorted = [](std::vector<Id<Yard>> yards) {
        std::sort(yards.begin(), yards.end(),
                  [](Id<Yard> a, Id<Yard> b) { return a.number < b.number; });
        return yards;
    };
    // Yards without a super are in no line of a plan.
    std::vector<Id<Yard>> yards;
    for (const PullYardRow& yard : sheet.yards)
        if (std::any_of(yard.hives.begin(), yard.hives.end(),
                        [](const PullHiveRow& hive) { return !hive.boxes.empty(); }))
            yards.push_back(yard.yard.id);
    // Each line was rounded to whole grams.
    const double rounding = 0.5 * sheet.taken + 0.01;
    return !sheet.asked.supposed.any() && sheet.asked.forDay == kept.asked.forDay &&
           sheet.asked.limits == kept.asked.limits && sheet.asked.forced == kept.asked.forced &&
           sorted(yards) == sorted(kept.asked.yards) && sheet.taken == kept.taken - kept.brought &&
           std::abs(sheet.honey.grams - kept.leftG) <= rounding;
}

}  // namespace combwright
